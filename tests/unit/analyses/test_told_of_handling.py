"""What is told of head wind, docking, streams and sailing, by hand-made results."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import numpy as np
import pytest

from generator.analyses.handling.headwind import WINDS, Headwind, Ladder
from generator.analyses.handling.headwind_table import HeadwindTable
from generator.analyses.motion.plant import LIMITS
from generator.analyses.motion.power import KNOT
from generator.report.numbers import Display
from generator.report.template import reason
from generator.report.tree import Telling, tree
from tests.unit.report.lacking import found


def told(item: Any) -> Any:
    return tree(item, "here", Telling(Display("metric", "EUR")))


def ladder(made: float, stops: float) -> Ladder:
    """So many knots against every wind; power binds below 20 kn and torque from there on."""
    speed = np.full((4, WINDS.size), made * KNOT)
    return Ladder(speed, (WINDS >= 19.9 * KNOT).astype(int), np.full((4, 1), stops * KNOT))


def headwind(continuous: Ladder, peak: Ladder) -> Headwind:
    """The formula ends at 30 kn; each knot of wind asks for 100 N and raises 2 cm of sea."""
    steps = np.arange(41.0)
    return Headwind(
        continuous, peak, 0.02 * steps[np.newaxis, :], steps // 4, 0.1 * steps,
        (steps > 30)[np.newaxis, :], np.array([[30 * KNOT]]), steps, steps, 100.0 * steps,
    )  # fmt: skip


def test_nothing_is_told_of_a_wind_beyond_the_wave_formula() -> None:
    own = headwind(ladder(4.0, 20.5), ladder(5.0, 35.0))
    table = told(HeadwindTable.of(found(headwind=own)))
    last, first = table["rows"][30], table["rows"][31]
    assert last["wind_kn"] == pytest.approx(30.0)
    assert (last["beaufort"], last["wave_height_m"]) == (7.0, pytest.approx(0.6))
    assert (last["need_n"], last["beyond_limit"]) == (3000.0, False)
    assert (last["continuous_kn"], last["peak_low_kn"]) == pytest.approx((4.0, 5.0))
    assert (last["continuous_limit"], table["rows"][19]["peak_limit"]) == (LIMITS[1], LIMITS[0])
    for name, key in (("need", "need_n"), ("continuous", "continuous_kn"), ("peak", "peak_kn")):
        assert (first[key], first[f"{name}_why"]) == (None, reason("sea_beyond_formula"))
    assert (first["beyond_limit"], first["continuous_limit"]) == (True, None)


def test_the_wind_in_which_she_stops_is_told_with_what_stops_her() -> None:
    own = headwind(ladder(4.0, 19.5), ladder(5.0, 35.0))
    table = told(HeadwindTable.of(found(headwind=own)))
    assert table["continuous"]["stops_kn"] == pytest.approx(19.5)
    assert table["continuous"]["stops_by"] == LIMITS[0]
    assert table["peak"]["stops_kn"] == table["limit_wind_kn"] == pytest.approx(30.0)
    assert table["peak"]["stops_by"] == "sea"


def test_the_lee_shore_stands_in_the_wind_of_her_waters() -> None:
    """The sloop's waters: criterion 4 names 20 kn there."""
    own = headwind(ladder(4.0, 20.5), ladder(5.0, 35.0))
    shore = told(HeadwindTable.of(found(headwind=own)))["lee_shore"]
    assert (shore["wind_kn"], shore["open_sea_m"]) == pytest.approx((20.0, 2.0))
    assert (shore["need_n"], shore["peak_kn"]) == pytest.approx((2000.0, 5.0))
    steep = replace(own, beyond_limit=np.full((1, 41), True))
    shore = told(HeadwindTable.of(found(headwind=steep)))["lee_shore"]
    assert (shore["beyond_limit"], shore["peak_kn"]) == (True, None)
    assert shore["continuous_why"] == reason("sea_beyond_formula")
