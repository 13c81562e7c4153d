"""How small may the bank be, at which speed, for the owner's legs to be made?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

import numpy as np

from generator.analyses.motion.power import KNOT
from generator.analyses.percentiles import best, scalar, spread
from generator.analyses.store.bank_size import BySize
from generator.analyses.use.leg_energy import (
    LEAST_THROUGH,
    Strips,
    cheapest,
    spent_before,
    wanted_usable,
)
from generator.analyses.use.legs import Legs
from generator.arrays import Array
from generator.case.usage import Leg
from generator.records import number, record, working

STEP = 0.5 * KNOT


@dataclass(frozen=True)
class Wanted:
    """What makes the legs go: ratio of the leg that must be made, share of all legs."""

    ratio: float
    coverage: float


@record
class Sizing:
    """Nominal energy of the smallest bank for go, its own mass left out [J].

    ``smallest`` is for every leg run at one speed through the water, the exposed parts no
    faster than the owner holds them; infinite where no bank does it.
    """

    ALONG = "speed"
    speed: Array = number("speed", "speed through the water on every leg")
    smallest: Array = number("energy", "smallest bank at one speed, its own mass left out")
    at_own_speeds: float = working()
    mean_speed: float = working()  # m/s, of the owner's legs by distance and times, best estimate
    nominal: float = working()  # J, of the option
    absent: Mapping[str, str] = field(default_factory=dict)


def sizing(strips: Strips, sizes: BySize, legs: Legs, wanted: Wanted) -> Sizing:
    """Bank at the owner's speeds, and over one speed for all legs."""
    tried = np.arange(LEAST_THROUGH, strips.calm.speed[-1] + 1e-9, STEP)
    own = [(np.atleast_2d(item.need), item.before) for item in legs.results]
    columns = [_all_at(strips, legs, float(speed)) for speed in tried]
    weight = [scalar(i.leg.times_per_year) * scalar(i.leg.distance) for i in legs.results]
    speeds = [scalar(item.leg.speed) for item in legs.results]
    mean = float(np.average(speeds, weights=weight)) if sum(weight) else speeds[0]
    return Sizing(
        at_own_speeds=_smallest(strips, sizes, legs, own, wanted),
        speed=tried,
        smallest=np.array([_smallest(strips, sizes, legs, c, wanted) for c in columns]),
        mean_speed=mean,
        nominal=float(best(strips.outfit.store.nominal)[0]),
        absent={"smallest": "no_continuous_power"},
    )


def _all_at(strips: Strips, legs: Legs, speed: float) -> list[tuple[Array, Array]]:
    """Need of every leg at one speed, and what those before it on the outing take at it."""
    every = [item.leg for item in legs.results]
    calm = [cheapest(strips.calm.at(speed), leg.distance, leg.stream)[0] for leg in every]
    of = strips.outfit
    spent = spent_before(of.case, of.option, [np.fmin(each, np.inf) for each in calm])
    return [(_at(strips, leg, speed), before) for leg, before in zip(every, spent, strict=True)]


def _at(strips: Strips, leg: Leg, speed: float) -> Array:
    """Need of a leg with its sheltered part at one speed, exposed no faster than the owner."""
    sheltered = np.asarray(leg.distance - leg.exposed_distance)
    smooth, _ = cheapest(strips.calm.at(speed), sheltered, leg.stream)
    most = min(speed, max(scalar(leg.exposed_speed), LEAST_THROUGH))
    slow, _ = cheapest(strips.rough(leg), leg.exposed_distance, leg.stream, most)
    return smooth + slow


def _smallest(
    strips: Strips,
    sizes: BySize,
    legs: Legs,
    needs: list[tuple[Array, Array]],
    wanted: Wanted,
) -> float:
    """Nominal energy that nine draws of ten find enough for both wishes [J]."""
    demand = strips.outfit.reserve.demand
    share = strips.outfit.case.planning.reserve_share
    must = [
        sizes.nominal_for(wanted_usable(need, wanted.ratio, demand, share, before))
        for (need, before), item in zip(needs, legs.results, strict=True)
        if item.must_make
    ]
    each = [
        sizes.nominal_for(wanted_usable(need, 1.0, demand, share, before)) for need, before in needs
    ]
    times = np.array([scalar(item.leg.times_per_year) for item in legs.results])
    worst = [scalar(spread(np.atleast_2d(bank)).high) for bank in must]
    if times.sum() > 0.0:
        worst.append(scalar(spread(_covering(each, times, wanted.coverage)).high))
    return max(worst, default=0.0)


def _covering(each: list[Array], times: Array, share: float) -> Array:
    """Per draw, the bank that carries at least a share of the passages."""
    banks = np.hstack(np.broadcast_arrays(*(np.atleast_2d(bank) for bank in each)))
    order = np.argsort(banks, axis=1)
    carried = np.cumsum(times[order], axis=1) / times.sum()
    place = np.argmax(carried >= share - 1e-9, axis=1)[:, np.newaxis]
    return np.take_along_axis(np.take_along_axis(banks, order, axis=1), place, axis=1)
