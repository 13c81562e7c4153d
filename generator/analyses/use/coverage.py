"""What share of the owner's passages and miles lies inside the range, in ordinary weather?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.motion.demand import Weather
from generator.analyses.motion.plant import within
from generator.analyses.motion.power import KNOT, at_points
from generator.analyses.percentiles import scalar, side_by_side, spread
from generator.analyses.store.outfit import Outfit
from generator.analyses.use.leg_energy import LEAST_OVER, read_strip, spent_before
from generator.analyses.use.legs import Legs
from generator.arrays import Array, Flags, Numbers
from generator.case.usage import Leg
from generator.records import number, record, working

STEP = 0.25 * KNOT  # by which the owner slows down
SURE = 0.9  # share of draws in which a leg that fits does so
# What most of the draws lack in which a leg does not fit: energy above the reserve, the power of
# the motor in a calm or in the wind, the current of the bank, or way over the ground.
CAUSES = ("range", "calm", "wind", "current", "stream")
ALL = 0.995  # share of the trips that is told as all of them
HALF = 0.5  # of a leg's passages meet the ordinary wind ahead, the other half a calm


@record
class Coverage:
    """Shares per draw [-]; half of a leg's passages take the wind ahead, half a calm.

    ``ordinary`` and ``bad_day``: all, some or none of the trips are made then.
    """

    ordinary: str
    bad_day: str

    legs: Array = number("share", "passages that fit, at the owner's speeds", cautious="low")
    miles: Array = number("share", "miles that fit, at the owner's speeds", cautious="low")
    slower_legs: Array = number("share", "passages that fit, as slowly as he accepts", "low")
    slower_miles: Array = number("share", "miles that fit, as slowly as he accepts", "low")
    passages: float = number("mean_count", "passages a year")
    trips: Array = number("count", "trips a year made in ordinary weather", cautious="low")
    trips_slower: Array = number("count", "trips a year made if slower", cautious="low")
    trips_bad_day: Array = number("count", "trips a year made on a bad day", cautious="low")
    legs_bad_day: Array = working()  # with the wind of a bad day ahead, as the leg to be made
    slower: float = working()  # m/s by which they are slower
    missed: tuple[int, ...] = working()  # legs that do not fit in nine draws of ten, either half
    missed_slower: tuple[int, ...] = working()
    missed_by: tuple[str, ...] = working(())  # of each of `missed`: CAUSES


@dataclass(frozen=True)
class Needs:
    """What every leg takes in a calm and in its ordinary wind, and what is gone before it [J].

    Nan where a speed is not held, infinite where the way before it cannot be made.
    """

    calm: tuple[Array, ...]
    windy: tuple[Array, ...]
    before: tuple[Array, ...]
    weak_calm: tuple[Flags, ...]  # draws in which the motor, whatever the bank, does not hold it
    weak_windy: tuple[Flags, ...]


@dataclass(frozen=True)
class _Halves:
    """Whether each leg fits above the reserve in a calm and in the wind, (draws, legs)."""

    calm: Flags
    windy: Flags

    def either(self, other: _Halves) -> _Halves:
        """What fits in one way or the other."""
        return _Halves(self.calm | other.calm, self.windy | other.windy)


@dataclass(frozen=True)
class _Part:
    """A part of a leg at one speed in one weather: what is asked of her there."""

    distance: Numbers
    speed: Array
    stream: Numbers
    wind: Numbers
    fetch: Numbers

    @property
    def key(self) -> tuple[bytes, ...]:
        """By which parts that ask the same are asked once."""
        return tuple(np.asarray(each).tobytes() for each in (self.speed, self.wind, self.fetch))


def coverage(outfit: Outfit, legs: Legs) -> Coverage | None:
    """Passages whose need is at most what is left above the reserve; none without passages."""
    if sum(scalar(item.leg.times_per_year) for item in legs.results) <= 0.0:
        return None
    return covered(outfit, legs, passage_needs(outfit, legs))


def covered(outfit: Outfit, legs: Legs, needs: tuple[Needs, ...]) -> Coverage:
    """The same with needs that are known, against what each leg has above the reserve."""
    items = legs.results
    times = np.array([scalar(item.leg.times_per_year) for item in items])
    miles = times * np.array([scalar(item.leg.distance) for item in items])
    accepted = scalar(outfit.case.planning.slower_accepted)
    fits = [_halves(legs, each) for each in needs]
    own, slower = fits[0], fits[0]
    for each in fits[1:]:
        slower = slower.either(each)
    missed = _missed(own)
    bad = [(np.atleast_2d(item.ratio) >= 1.0) * 1.0 for item in items]
    made, made_slower = _share(own, times), _share(slower, times)
    on_bad_day = _weighed(np.hstack(np.broadcast_arrays(*bad)), times)
    passages = float(times.sum())
    return Coverage(
        ordinary=_how_many(made),
        bad_day=_how_many(on_bad_day),
        legs=made,
        miles=_share(own, miles),
        slower_legs=made_slower,
        slower_miles=_share(slower, miles),
        legs_bad_day=on_bad_day,
        passages=passages,
        trips=made * passages,
        trips_slower=made_slower * passages,
        trips_bad_day=on_bad_day * passages,
        slower=accepted,
        missed=missed,
        missed_slower=_missed(slower),
        missed_by=tuple(_cause(items[place].leg, needs[0], place, own) for place in missed),
    )


def _how_many(shares: Array) -> str:
    """Of the trips, by the cautious figure all, by the estimate none, else some."""
    told = spread(shares, "low")
    if scalar(told.low) >= ALL:
        return "all"
    return "some" if scalar(told.middle) > 1.0 - ALL else "none"


def passage_needs(outfit: Outfit, legs: Legs) -> tuple[Needs, ...]:
    """At the owner's speeds, then slower by each step that he accepts; those before it likewise."""
    accepted = scalar(outfit.case.planning.slower_accepted)
    steps = [0.0, *np.arange(STEP, accepted + 1e-9, STEP).tolist()]
    every = [item.leg for item in legs.results]
    calm = {(n, by): _calm(leg, by) for by in steps for n, leg in enumerate(every)}
    windy = {(n, by): _windy(leg, by) for by in steps for n, leg in enumerate(every)}
    parts = [part for group in (calm, windy) for both in group.values() for part in both]
    losses, weak = _losses(outfit, parts)
    found = []
    for by in steps:
        smooth, rough = (
            tuple(_need(group[n, by], losses) for n in range(len(every))) for group in (calm, windy)
        )
        gone = [np.fmin(each, np.inf) for each in smooth]
        before = spent_before(outfit.case, outfit.option, gone)
        too_weak = (
            tuple(_weak(group[n, by], weak) for n in range(len(every))) for group in (calm, windy)
        )
        found.append(Needs(smooth, rough, tuple(before), *too_weak))
    return tuple(found)


def _halves(legs: Legs, needs: Needs) -> _Halves:
    """What of either half fits above the reserve."""
    left = [
        np.maximum(item.above - spent, 0.0)
        for item, spent in zip(legs.results, needs.before, strict=True)
    ]
    return _Halves(_inside(needs.calm, left), _inside(needs.windy, left))


def _calm(leg: Leg, slower: float) -> tuple[_Part, ...]:
    return (_Part(leg.distance, _speed(leg.speed, slower), leg.stream, 0.0, leg.fetch),)


def _windy(leg: Leg, slower: float) -> tuple[_Part, ...]:
    """The exposed part against the ordinary wind, at what the owner holds there if he says so."""
    if not np.any(np.asarray(leg.exposed_distance)):
        return _calm(leg, slower)
    assert leg.usual_wind is not None
    own = np.minimum(leg.exposed_speed, leg.speed) if leg.holds_outside else leg.speed
    sheltered = np.asarray(leg.distance - leg.exposed_distance)
    smooth = _Part(sheltered, _speed(leg.speed, slower), leg.stream, 0.0, leg.fetch)
    outside = _speed(own, slower)
    rough = _Part(leg.exposed_distance, outside, leg.stream, leg.usual_wind, leg.fetch)
    return (smooth, rough)


def _speed(own: Numbers, slower: float) -> Array:
    return np.maximum(np.atleast_2d(own) - slower, STEP)


def _losses(
    outfit: Outfit, parts: list[_Part]
) -> tuple[dict[tuple[bytes, ...], Array], dict[tuple[bytes, ...], Flags]]:
    """What the store loses each second in every part, all asked at once; nan where not held.

    With it whether the motor is too weak for it, whatever the bank.
    """
    unlike = {part.key: part for part in parts}
    asked = list(unlike.values())
    speed = side_by_side(*(part.speed for part in asked))
    weather = Weather(
        side_by_side(*(part.wind for part in asked)), side_by_side(*(part.fetch for part in asked))
    )
    curve = at_points(outfit.case, outfit.option, outfit.power, outfit.scale, speed, weather)
    loss = read_strip(outfit, speed, curve).loss
    weak = ~np.atleast_2d(within(curve.output.motor_load, curve.demand.feasible))
    columns = enumerate(unlike)
    of_each = {key: (loss[:, [column]], weak[:, [column]]) for column, key in columns}
    return {key: pair[0] for key, pair in of_each.items()}, {
        key: pair[1] for key, pair in of_each.items()
    }


def _weak(parts: tuple[_Part, ...], weak: dict[tuple[bytes, ...], Flags]) -> Flags:
    """Whether the motor is too weak for a part of a passage, per draw."""
    found: Flags = np.zeros((1, 1), dtype=bool)
    for part in parts:
        if np.any(np.asarray(part.distance)):
            found = found | weak[part.key]
    return found


def _need(parts: tuple[_Part, ...], losses: dict[tuple[bytes, ...], Array]) -> Array:
    """Energy of the parts of a passage; nan where one is not held or makes too little good."""
    total = np.zeros((1, 1))
    for part in parts:
        if np.any(np.asarray(part.distance)):
            over = np.atleast_2d(part.speed - np.asarray(part.stream))
            good = np.where(over >= LEAST_OVER - 1e-9, over, np.nan)
            total = total + np.asarray(part.distance) / good * losses[part.key]
    return np.asarray(total)


def _cause(leg: Leg, needs: Needs, place: int, halves: _Halves) -> str:
    """What most of the draws lack in which one leg does not fit."""
    if scalar(leg.speed) - scalar(leg.stream) < LEAST_OVER - 1e-9:
        return "stream"
    short = ~(halves.calm & halves.windy)[:, [place]]
    short = short[1:] if short.shape[0] > 1 else short

    def of_them(flags: Flags) -> bool:
        rows = np.broadcast_to(flags, halves.calm[:, [place]].shape)
        rows = rows[1:] if rows.shape[0] > 1 else rows
        return bool(rows[short].mean() > HALF)

    if of_them(needs.weak_calm[place]):
        return "calm"
    if of_them(needs.weak_windy[place]):
        return "wind"
    known = np.isfinite(needs.calm[place]) & np.isfinite(needs.windy[place])
    return "range" if not of_them(~known) else "current"


def _inside(needs: tuple[Array, ...], left: list[Array]) -> Flags:
    fits = [
        # lacking: what cannot be done needs more than any store
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
    rows = both[1:] if both.shape[0] > 1 else both
    return tuple(int(place) for place in np.flatnonzero(rows.mean(axis=0) < SURE))
