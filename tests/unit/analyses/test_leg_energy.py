"""Parts of a leg, the reserve and the share of legs, worked by hand."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from generator.analyses.motion.demand import Weather
from generator.analyses.motion.power import KNOT, Curve, at_points
from generator.analyses.store.outfit import Outfit
from generator.analyses.use.coverage import Coverage, coverage
from generator.analyses.use.leg_energy import (
    Stretch,
    Strip,
    cheapest,
    in_hand,
    read_strip,
    wanted_usable,
)
from generator.analyses.use.legs import Legs, passages
from generator.case.open import read_case
from generator.case.usage import Leg
from tests.alone import alone

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


@lru_cache(maxsize=1)
def outfit() -> Outfit:
    return alone(read_case(CASES / "sloop_30_weekend.yaml"), 2, 0).findings.outfit


def sheltered(**values: Any) -> Leg:
    """A leg in smooth water without a stream."""
    leg = outfit().case.legs[0]
    plain: dict[str, Any] = {
        "speed": 5.0 * KNOT, "exposed_distance": 0.0, "foul_stream": 0.0, "spring_stream": None,
        "follows": None, "times_per_year": 1.0,
    }  # fmt: skip
    return replace(leg, **{**plain, **values})


def covered(*legs: Leg, miles: float, accepts: float = 0.0) -> Coverage:
    """By a store that lasts so many miles at 5 kn in a calm, above its reserve."""
    planning = replace(outfit().case.planning, slower_accepted=accepts * KNOT)
    own = replace(outfit(), case=replace(outfit().case, legs=legs, planning=planning))
    calm = read_strip(own, np.atleast_2d(5.0 * KNOT), _calm(own)).loss
    there = miles * MILE / (5.0 * KNOT) * calm
    results = tuple(replace(item, above=there) for item in passages(own).results)
    found = coverage(own, Legs(results, one(0.0), one(0.0)))
    assert found is not None
    return found


def _calm(own: Outfit) -> Curve:
    speed = np.atleast_2d(5.0 * KNOT)
    return at_points(own.case, own.option, own.power, own.scale, speed, Weather(0.0, 1.0))


def test_coverage_counts_each_leg_as_often_as_it_is_made() -> None:
    """30 passages of 2 nm fit, 10 of 6 nm do not: 75 % of passages, half of the miles."""
    short = sheltered(distance=2 * MILE, times_per_year=30.0)
    long = sheltered(distance=6 * MILE, times_per_year=10.0)
    found = covered(short, long, miles=4.0)
    assert found.passages == 40
    assert found.legs == pytest.approx(0.75)
    assert found.miles == pytest.approx(0.5)
    assert found.missed == (1,)
    for there, share in ((5.99, 0.75), (6.01, 1.0), (1.99, 0.0)):
        assert covered(short, long, miles=there).legs == pytest.approx(share)


def test_half_of_the_passages_take_the_ordinary_wind_ahead() -> None:
    """Against a wind that no motor of hers holds one half of them is made: in a calm."""
    windy = sheltered(distance=6 * MILE, exposed_distance=3 * MILE, usual_wind=60.0 * KNOT)
    still = replace(windy, usual_wind=0.0)
    assert covered(windy, miles=6.1).legs == pytest.approx(0.5)
    assert covered(windy, miles=6.1).missed == (0,)
    assert covered(still, miles=6.1).legs == pytest.approx(1.0)
    assert covered(still, miles=6.1).missed == ()
    # the wind of a bad day judges the share that is told beside it, and nothing else
    bad = replace(still, wind=60.0 * KNOT)
    assert covered(bad, miles=6.1).legs == pytest.approx(1.0)
    assert covered(bad, miles=6.1).legs_bad_day == pytest.approx(0.0)


def test_a_leg_that_does_not_fit_tells_what_it_lacks() -> None:
    """Energy; power in the wind or in the calm; way over the ground: told by what is asked."""
    windy = sheltered(distance=6 * MILE, exposed_distance=3 * MILE, usual_wind=60.0 * KNOT)
    assert covered(windy, miles=6.1).missed_by == ("wind",)
    still = replace(windy, usual_wind=0.0)
    assert covered(still, miles=5.9).missed_by == ("range",)
    assert covered(still, miles=6.1).missed_by == ()
    assert covered(sheltered(speed=9.0 * KNOT), miles=99.0).missed_by == ("calm",)
    assert covered(sheltered(foul_stream=4.6 * KNOT), miles=99.0).missed_by == ("stream",)


def test_a_leg_that_fits_a_little_slower_is_covered_so() -> None:
    """Losses rise as more than the cube of speed: 4.5 kn go 6 nm where 5 kn go 5.5."""
    long = sheltered(distance=6 * MILE)
    found = covered(long, miles=5.5, accepts=0.5)
    assert (float(found.legs[0, 0]), float(found.slower_legs[0, 0])) == (0.0, 1.0)
    assert found.slower == pytest.approx(0.5 * KNOT)
    assert (found.missed, found.missed_slower) == ((0,), ())
    assert covered(long, miles=5.5, accepts=0.2).slower_legs == 0.0  # no step of a quarter


def test_a_leg_after_another_has_what_that_one_left() -> None:
    first = sheltered(distance=3 * MILE)
    home = sheltered(distance=3 * MILE, follows=0)
    assert covered(first, home, miles=5.9).missed == (1,)
    assert covered(first, home, miles=6.2).missed == ()


def test_coverage_of_no_passage_is_none() -> None:
    assert coverage(outfit(), Legs((), one(0.0), one(0.0))) is None
    never = sheltered(distance=MILE, times_per_year=0.0)
    own = replace(outfit(), case=replace(outfit().case, legs=(never,)))
    assert coverage(own, passages(own)) is None
