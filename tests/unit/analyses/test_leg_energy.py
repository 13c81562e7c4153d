"""Parts of a leg, the reserve and the share of legs, worked by hand."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from generator.analyses.motion.power import KNOT
from generator.analyses.use.coverage import coverage
from generator.analyses.use.leg_energy import (
    Stretch,
    Strip,
    cheapest,
    in_hand,
    wanted_usable,
)
from generator.analyses.use.legs import LegResult, Legs, SlowLeg
from generator.case.open import read_case

CASES = Path(__file__).parents[3] / "cases"
MILE = 1852.0


def one(value: float) -> np.ndarray:
    return np.array([[value]])


def test_need_is_power_times_distance_over_speed_made_good() -> None:
    """4 nm at 5 kn against 1 kn take one hour; 2 kW for it are 2 kWh."""
    part = Stretch(4.0 * MILE, one(5.0 * KNOT), one(2000.0))
    assert part.need(1.0 * KNOT) == pytest.approx(2.0 * 3.6e6)


def test_need_is_not_a_number_where_nothing_is_made_good() -> None:
    assert np.isnan(Stretch(MILE, one(2.0 * KNOT), one(500.0)).need(1.8 * KNOT))
    assert Stretch(0.0, one(2.0 * KNOT), one(500.0)).need(1.8 * KNOT) == 0.0


def test_cheapest_speed_shifts_up_against_a_stream() -> None:
    """Power as the cube of speed: the least for a mile lies at 1.5 times the stream."""
    speed = np.arange(2.5, 6.01, 0.5) * KNOT
    strip = Strip(speed, (speed / KNOT)[np.newaxis] ** 3 * 20.0, False)
    assert cheapest(strip, MILE, 0.0)[1] == pytest.approx(2.5 * KNOT)
    assert cheapest(strip, MILE, 3.0 * KNOT)[1] == pytest.approx(4.5 * KNOT)


def test_what_is_not_held_is_never_the_cheapest() -> None:
    speed = np.array([3.0, 4.0]) * KNOT
    need, through = cheapest(Strip(speed, np.array([[np.nan, 900.0]]), False), MILE, 0.0)
    assert through == pytest.approx(4.0 * KNOT)
    assert need == pytest.approx(900.0 * MILE / (4.0 * KNOT))
    assert np.isnan(cheapest(Strip(speed, np.full((1, 2), np.nan), False), MILE, 0.0)[0])


def test_an_infeasible_draw_is_a_failure() -> None:
    need = np.array([[2.0], [np.nan]])
    assert in_hand(need, np.array([[3.0], [3.0]])).ravel() == pytest.approx([1.5, 0.0])


@pytest.mark.parametrize(
    ("need", "demand", "usable"),
    [
        (8.0, 1.0, 10.0),  # a fifth is 2, more than the demand of 1: 10 - 2 = 8
        (8.0, 3.0, 11.0),  # the demand is more than a fifth of 11: 11 - 3 = 8
    ],
)
def test_the_reserve_is_counted_once(need: float, demand: float, usable: float) -> None:
    found = wanted_usable(one(need), 1.0, one(demand), 0.2)
    assert found == pytest.approx(usable)
    assert found - max(0.2 * float(found[0, 0]), demand) == pytest.approx(need)


def test_coverage_counts_each_leg_as_often_as_it_is_made() -> None:
    """30 passages of 2 nm fit, 10 of 6 nm do not: 75 % of passages, half of the miles."""
    leg = read_case(CASES / "sloop_30_weekend.yaml").legs[0]
    short = replace(leg, distance=2 * MILE, times_per_year=30.0)
    long = replace(leg, distance=6 * MILE, times_per_year=10.0)
    items = tuple(_result(leg, ratio) for leg, ratio in ((short, 1.2), (long, 0.8)))
    slow = tuple(_slow(ratio) for ratio in (1.2, 1.1))
    found = coverage(Legs(items, one(0.0), one(0.0)), slow)
    assert found is not None
    assert found.passages == 40
    assert found.legs == pytest.approx(0.75)
    assert found.miles == pytest.approx(0.5)
    assert found.legs_slow == pytest.approx(1.0)


def test_coverage_of_no_passage_is_none() -> None:
    assert coverage(Legs((), one(0.0), one(0.0)), ()) is None


def _result(leg: object, ratio: float) -> LegResult:
    result = object.__new__(LegResult)
    object.__setattr__(result, "leg", leg)
    object.__setattr__(result, "ratio", one(ratio))
    return result


def _slow(ratio: float) -> SlowLeg:
    return SlowLeg("bank", one(1.0), one(ratio), one(1.0), one(1.0), one(1.0))
