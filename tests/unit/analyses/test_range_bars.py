"""Bars of the range, by hand: between two speeds of the curve, and none where one is not held."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from generator.analyses.handling.cruising_range import Range
from generator.analyses.handling.range_bars import RangeBars, range_bars
from generator.analyses.motion.power import KNOT
from tests.alone import alone, case_of
from tests.unit.case.faulty import changed

PLACE = 16  # the fifth knot: the speeds go by quarter knots from the first


def bars(cruise: float, beyond: float = 3000.0) -> RangeBars:
    """Of a curve that has 1000 m at 5 kn and ``beyond`` at 5.25 kn, 400 m at 4 kn."""
    outfit = alone(case_of(changed()), 2, 0).findings.outfit
    plan = replace(outfit.case.planning, cruise_speed=cruise * KNOT)
    distance = np.full((1, outfit.power.speed.size), 700.0)
    drain = np.full_like(distance, 10.0)
    distance[0, [PLACE - 4, PLACE, PLACE + 1]] = 400.0, 1000.0, beyond
    drain[0, PLACE + 1] = 30.0
    items = (
        Range("calm", "new", distance, distance, 2.0 * distance, drain),
        Range("wind_20", "aged", distance, distance, distance, drain),
    )
    kept = replace(outfit.reserve, of_new=np.full((1, 1), 200.0), of_aged=np.full((1, 1), 1e12))
    store = replace(outfit.store, nominal=4000.0)
    return range_bars(replace(outfit, case=replace(outfit.case, planning=plan), reserve=kept,
                              store=store), items)  # fmt: skip


def one(value: object) -> float:
    return float(np.asarray(value).flat[0])


def test_a_range_lies_between_those_of_the_speeds_about_it() -> None:
    """Half way from 5 to 5.25 kn: 2000 m, twice that with nothing kept back; 200 J at 20 W."""
    calm, wind = bars(5.125).at_cruise
    assert (calm.sea, calm.bank_age) == ("calm", "new")
    assert one(calm.range) == pytest.approx(2000.0)
    assert one(calm.whole_bank) == pytest.approx(4000.0)
    assert one(calm.reserve) == pytest.approx(200.0 / 20.0 * 5.125 * KNOT)
    assert wind.speed == pytest.approx(3.5 * KNOT)
    assert one(wind.reserve) == pytest.approx(4000.0 / 10.0 * 3.5 * KNOT)  # no more than there is


def test_a_slow_cruise_is_slow_against_wind_as_well() -> None:
    _, wind = bars(3.0).at_cruise
    assert wind.speed == pytest.approx(3.0 * KNOT)


def test_the_range_of_a_knot_slower_is_that_of_the_calm_with_a_new_bank() -> None:
    found = bars(5.0).slower
    assert found is not None
    assert found.speed == pytest.approx(4.0 * KNOT)
    assert one(found.range) == pytest.approx(400.0)
    assert bars(1.9).slower is None  # below the slowest of the curve


def test_a_speed_that_is_not_held_on_one_side_has_no_range_and_says_why() -> None:
    calm, _ = bars(5.125, beyond=0.0).at_cruise
    assert calm.range is calm.whole_bank is calm.reserve is None
    assert set(calm.absent.values()) == {"above_continuous_rating"}
    assert one(bars(5.0, beyond=0.0).at_cruise[0].range) == pytest.approx(1000.0)
