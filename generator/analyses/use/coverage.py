"""What share of the owner's passages and miles lies inside the range, in ordinary weather?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.motion.demand import Weather
from generator.analyses.motion.power import KNOT
from generator.analyses.percentiles import held_share, scalar
from generator.analyses.use.leg_energy import LEAST_OVER, Strips, spent_before
from generator.analyses.use.legs import Legs
from generator.arrays import Array, Flags, Numbers
from generator.case.usage import Leg

STEP = 0.25 * KNOT  # by which the owner slows down
STILL = Weather(0.0, 1.0)
SURE = 0.9  # share of draws in which a leg that fits does so
HALF = 0.5  # of a leg's passages meet the ordinary wind ahead, the other half a calm


@dataclass(frozen=True)
class Coverage:
    """Shares per draw [-]; half of a leg's passages take the wind ahead, half a calm."""

    legs: Array  # at the owner's speeds
    miles: Array
    legs_slower: Array  # slower by as much as he accepts
    miles_slower: Array
    legs_bad_day: Array  # with the wind of a bad day ahead, as the leg that must be made
    passages: float  # a year, best estimate
    slower: float  # m/s by which they are slower
    missed: tuple[int, ...]  # legs that do not fit in nine draws of ten, one half or the other
    missed_slower: tuple[int, ...]


@dataclass(frozen=True)
class _Halves:
    """Whether each leg fits above the reserve in a calm and in the wind, (draws, legs)."""

    calm: Flags
    windy: Flags

    def either(self, other: _Halves) -> _Halves:
        """What fits in one way or the other."""
        return _Halves(self.calm | other.calm, self.windy | other.windy)


def coverage(strips: Strips, legs: Legs) -> Coverage | None:
    """Passages whose need is at most what is left above the reserve; none without passages."""
    items = legs.results
    times = np.array([scalar(item.leg.times_per_year) for item in items])
    if not items or times.sum() <= 0.0:
        return None
    miles = times * np.array([scalar(item.leg.distance) for item in items])
    accepted = scalar(strips.outfit.case.planning.slower_accepted)
    own = _fit(strips, legs, 0.0)
    slower = own
    for by in np.arange(STEP, accepted + 1e-9, STEP):
        slower = slower.either(_fit(strips, legs, float(by)))
    bad = [(np.atleast_2d(item.ratio) >= 1.0) * 1.0 for item in items]
    return Coverage(
        legs=_share(own, times),
        miles=_share(own, miles),
        legs_slower=_share(slower, times),
        miles_slower=_share(slower, miles),
        legs_bad_day=_weighed(np.hstack(np.broadcast_arrays(*bad)), times),
        passages=float(times.sum()),
        slower=accepted,
        missed=_missed(own),
        missed_slower=_missed(slower),
    )


def _fit(strips: Strips, legs: Legs, slower: float) -> _Halves:
    """Every leg at the owner's speeds less ``slower``, and those before it in a calm likewise."""
    of, every = strips.outfit, [item.leg for item in legs.results]
    calm = [_need(strips, leg, _speed(leg, slower), None) for leg in every]
    before = spent_before(of.case, of.option, [np.fmin(each, np.inf) for each in calm])
    windy = [_need(strips, leg, _speed(leg, slower), _outside(leg, slower)) for leg in every]
    left = [
        np.maximum(item.above - spent, 0.0)
        for item, spent in zip(legs.results, before, strict=True)
    ]
    return _Halves(*(_inside(needs, left) for needs in (calm, windy)))


def _speed(leg: Leg, slower: float) -> Array:
    return np.maximum(np.atleast_2d(leg.speed) - slower, STEP)


def _outside(leg: Leg, slower: float) -> Array:
    """What the owner holds outside where he said so, else his speed."""
    own = leg.exposed_speed if leg.holds_outside else leg.speed
    return np.maximum(np.atleast_2d(np.minimum(own, leg.speed)) - slower, STEP)


def _need(strips: Strips, leg: Leg, speed: Array, outside: Array | None) -> Array:
    """Energy of a passage; the exposed part against the ordinary wind where one is given."""
    if outside is None or not np.any(np.asarray(leg.exposed_distance)):
        return _part(strips, leg.distance, speed, leg.foul_stream, STILL)
    assert leg.usual_wind is not None
    sheltered = np.asarray(leg.distance - leg.exposed_distance)
    smooth = _part(strips, sheltered, speed, leg.foul_stream, STILL)
    windy = Weather(leg.usual_wind, leg.fetch)
    return smooth + _part(strips, leg.exposed_distance, outside, leg.foul_stream, windy)


def _part(
    strips: Strips, distance: Numbers, speed: Array, stream: Numbers, weather: Weather
) -> Array:
    """Energy of one part; nan where the speed is not held or makes too little good."""
    if not np.any(np.asarray(distance)):
        return np.zeros((1, 1))
    over = np.atleast_2d(speed - np.asarray(stream))
    good = np.where(over >= LEAST_OVER - 1e-9, over, np.nan)
    return np.asarray(np.asarray(distance) / good * strips.at(speed, weather).loss)


def _inside(needs: list[Array], left: list[Array]) -> Flags:
    # lacking: what cannot be done needs more than any store
    fits = [
        np.atleast_2d(np.where(np.isfinite(need), need, np.inf) <= there)
        for need, there in zip(needs, left, strict=True)
    ]
    return np.hstack(np.broadcast_arrays(*fits))


def _share(halves: _Halves, weight: Array) -> Array:
    return _weighed(HALF * halves.calm + (1.0 - HALF) * halves.windy, weight)


def _weighed(inside: Array, weight: Array) -> Array:
    return np.asarray((inside @ weight / weight.sum())[:, np.newaxis])


def _missed(halves: _Halves) -> tuple[int, ...]:
    """Legs that fit in fewer than nine draws of ten, in a calm or in the ordinary wind."""
    both = halves.calm & halves.windy
    return tuple(n for n in range(both.shape[1]) if held_share(both[:, [n]]) < SURE)
