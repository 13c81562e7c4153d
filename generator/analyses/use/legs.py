"""Which of the owner's legs fit, and does the leg that must be made?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

import numpy as np

from generator.analyses.motion.demand import Weather
from generator.analyses.motion.plant import LEAST_MADE_GOOD, house_drain, passage_time, within
from generator.analyses.motion.power import Curve, at_points
from generator.analyses.percentiles import lacking_share, scalar, side_by_side, spread
from generator.analyses.store.bank_state import taken
from generator.analyses.store.outfit import Outfit
from generator.analyses.use.leg_energy import spent_before
from generator.arrays import Array, Flags, Numbers
from generator.case.usage import Leg
from generator.records import number, record, working

HALF = 0.5  # share of draws from which a leg counts as one that can be made
SLOWER = (1.0, 0.85, 0.7, 0.55)  # shares of the exposed speed that are tried in turn


@record
class SlowLeg:
    """One leg at the speeds that ask for least energy over the ground; per draw."""

    kept_in: str
    need: Array = number("stored", "needed at the most economical speed", cautious="high")
    ratio: Array = number("ratio", "left over needed, most economical", cautious="low")
    speed: Array = number("speed", "most economical speed in shelter", cautious="low")
    exposed_speed: Array = number("speed", "most economical speed outside", cautious="low")
    time: Array = number("hours", "time at the most economical speed", cautious="high")
    absent: Mapping[str, str] = field(default_factory=dict)


@record
class LegResult:
    """One leg under one option. J or m3, s, m/s; arrays are per draw.

    ``stopped_by`` is what keeps the best estimate from it, or where that makes it, what a draw
    that cannot make it lacks: weather, current (the bank does not give it), reserve (the bank has
    nothing above it) or power.
    """

    name: str
    must_make: bool
    kept_in: str
    fits: bool  # nine draws of ten have what it takes
    possible: bool  # at least half of the draws can make it at all
    stopped_by: str
    after: str | None  # the leg before it on the same outing
    wind: Numbers = number("wind", "wind on the nose", cautious="high")
    time: Array = number("hours", "time under way", cautious="high")
    need: Array = number("stored", "needed", cautious="high")  # nan where it cannot be done
    above: Array = number("stored", "above the reserve, charged", cautious="low")
    before: Array = number("stored", "gone before it", cautious="high")  # inf: cannot be made
    available: Array = number("stored", "left above the reserve", cautious="low")  # at its start
    ratio: Array = number("ratio", "left over needed", cautious="low")
    exposed_speed: Array = number("speed", "speed held outside", cautious="low")
    feasible: float = number("share", "chance that it can be made at all")
    slow: SlowLeg | None = None  # found after all legs are
    leg: Leg = working(default=None)
    outside: Array = working(default=None)  # held there, whether the rest can be made or not
    absent: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True)
class Legs:
    """All legs, and what the year takes out of the store in ordinary weather."""

    results: tuple[LegResult, ...]
    yearly: Array  # J or m3
    yearly_time: Array  # s


def is_must_make(leg: Leg) -> bool:
    """A leg without refuge that cannot be sailed instead."""
    return not leg.refuge and not leg.sailable


def passages(outfit: Outfit) -> Legs:
    """Energy or fuel of every leg, against what the aged store holds above the reserve."""
    case, option, store = outfit.case, outfit.option, outfit.store
    if not case.legs:
        zero = np.zeros((1, 1))
        return Legs((), zero, zero)
    speeds = side_by_side(*(leg.speed for leg in case.legs))
    calm = at_points(case, option, outfit.power, outfit.scale, speeds, Weather(0.0, 1.0))
    above = np.maximum(np.asarray(store.usable_aged) - outfit.reserve.of_aged, 0.0)
    house = house_drain(case, option)
    spent = spent_before(case, option, _calm_needs(outfit, calm))
    results = []
    yearly, yearly_time = np.zeros((1, 1)), np.zeros((1, 1))
    curves: dict[tuple[bytes, ...], Curve] = {}
    for place, leg in enumerate(case.legs):
        drain = np.atleast_2d(calm.output.drain)[:, [place]] + house
        fits, by_motor = (
            np.atleast_2d(within(load, calm.demand.feasible))[:, [place]]
            for load in (calm.output.load, calm.output.motor_load)
        )
        part = _Sheltered(drain, fits, by_motor)
        results.append(_leg(outfit, leg, part, (above, spent[place]), curves))
        time = leg.times_per_year * passage_time(leg)
        yearly = yearly + drain * time
        yearly_time = yearly_time + time
    return Legs(tuple(results), yearly, yearly_time)


def _calm_needs(outfit: Outfit, calm: Curve) -> list[Array]:
    """What each leg takes in a calm at the owner's speed; infinite where it cannot be made."""
    case, option = outfit.case, outfit.option
    drain = np.atleast_2d(calm.output.drain) + house_drain(case, option)
    loss = np.atleast_2d(taken(option.bank, outfit.store.aged, drain))
    fits = np.atleast_2d(within(calm.output.load, calm.demand.feasible)) & np.isfinite(loss)
    return [
        np.where(fits[:, [place]], loss[:, [place]] * passage_time(leg), np.inf)
        for place, leg in enumerate(case.legs)
    ]


@dataclass(frozen=True)
class _Sheltered:
    """The part of a leg in smooth water: W or m3/s, and whether plant and motor alone hold it."""

    drain: Array
    fits: Flags
    by_motor: Flags


@dataclass(frozen=True)
class _Exposed:
    """The part of a leg in wind and sea, at the fastest tried speed that the plant holds."""

    time: Array
    loss: Array
    speed: Array
    beyond_limit: bool
    bank_short: bool  # the motor would do it, the bank does not give the current


def _leg(
    outfit: Outfit,
    leg: Leg,
    part: _Sheltered,
    stock: tuple[Array, Array],
    curves: dict[tuple[bytes, ...], Curve],
) -> LegResult:
    sheltered = np.asarray(leg.distance - leg.exposed_distance)
    calm_time = sheltered / np.maximum(np.asarray(leg.speed - leg.foul_stream), LEAST_MADE_GOOD)
    rough = _exposed(outfit, leg, curves)
    calm_loss = np.atleast_2d(taken(outfit.option.bank, outfit.store.aged, part.drain))
    given = part.fits & np.isfinite(calm_loss)
    short = rough.bank_short or bool((part.by_motor & ~given)[0].any())
    need = calm_time * calm_loss + rough.time * rough.loss
    too_slow = np.asarray(leg.speed - leg.foul_stream) < LEAST_MADE_GOOD
    cannot = ~part.fits | too_slow | ~np.isfinite(need)
    above, before = stock
    available = np.maximum(above - before, 0.0)
    # lacking: what cannot be done needs more than any store, so that what is there is 0 times it
    ratio = np.where(cannot, 0.0, available / np.where(cannot, 1.0, need))
    feasible = 1.0 - lacking_share(np.where(cannot, np.nan, need))
    low = scalar(spread(ratio, "low").low)
    why = ""
    if feasible < 1.0:
        why = _stopped_by(outfit, rough.beyond_limit, short, available)
    elif low <= 0.0:
        why = "reserve"
    return LegResult(
        name=leg.name,
        must_make=is_must_make(leg),
        kept_in=outfit.kept_in,
        fits=low >= 1.0,
        possible=feasible >= HALF,
        stopped_by=why,
        after=None if leg.follows is None else outfit.case.legs[leg.follows].name,
        wind=leg.wind,
        time=np.where(cannot, np.nan, calm_time + rough.time),
        need=np.where(cannot, np.nan, need),
        above=above,
        before=before,
        available=available,
        ratio=ratio,
        exposed_speed=np.where(cannot, np.nan, rough.speed),
        feasible=feasible,
        leg=leg,
        outside=rough.speed,
        absent=dict.fromkeys(("time", "need", "exposed_speed"), f"stopped_by_{why}")
        | {"before": "way_before_not_made"},
    )


def _stopped_by(outfit: Outfit, beyond: bool, short: bool, available: Array) -> str:
    """What a draw that cannot make it lacks."""
    if beyond:
        return "weather"
    if short:
        return "current"
    empty = outfit.option.bank is not None and scalar(spread(available, "low").low) <= 0.0
    return "reserve" if empty else "power"


def _exposed(outfit: Outfit, leg: Leg, curves: dict[tuple[bytes, ...], Curve]) -> _Exposed:
    """The fastest tried speed that the plant holds in wind and sea, what it loses, and why not."""
    case, option = outfit.case, outfit.option
    if float(np.asarray(leg.exposed_distance).flat[0]) <= 0.0:
        zero = np.zeros((1, 1))
        return _Exposed(zero, zero, zero + np.asarray(leg.exposed_speed), False, False)
    tried = np.asarray(leg.exposed_speed) * np.array(SLOWER)
    key = tuple(np.asarray(part).tobytes() for part in (tried, leg.wind, leg.fetch))
    if key not in curves:  # legs of a long list meet the same weather at the same speeds
        weather = Weather(leg.wind, leg.fetch)
        curves[key] = at_points(case, option, outfit.power, outfit.scale, tried, weather)
    curve = curves[key]
    over_ground = np.asarray(tried - leg.foul_stream)
    drain = curve.output.drain + house_drain(case, option)
    loss = np.atleast_2d(taken(option.bank, outfit.store.aged, drain))
    workable = curve.demand.feasible & ~curve.demand.beyond_limit
    workable = workable & (over_ground >= LEAST_MADE_GOOD)
    by_motor = np.atleast_2d(within(curve.output.motor_load, workable))[0].any()
    fits: Flags = np.atleast_2d(within(curve.output.load, workable) & np.isfinite(loss))
    first = np.argmax(fits, axis=1)[:, np.newaxis]
    possible = np.any(fits, axis=1, keepdims=True)

    def pick(values: Array) -> Array:
        table = np.broadcast_to(values, fits.shape)
        return np.where(possible, np.take_along_axis(table, first, axis=1), np.nan)

    made_good = pick(np.maximum(over_ground, LEAST_MADE_GOOD))
    return _Exposed(
        time=np.asarray(leg.exposed_distance) / made_good,
        loss=pick(loss),
        speed=pick(np.atleast_2d(tried)),
        beyond_limit=bool(np.atleast_2d(curve.demand.beyond_limit)[0].any()),
        bank_short=bool(by_motor and not fits[0].any()),
    )


def with_slow(legs: Legs, slow: tuple[SlowLeg, ...]) -> Legs:
    """The legs with what each asks at its most economical speed."""
    pairs = zip(legs.results, slow, strict=True)
    return replace(legs, results=tuple(replace(item, slow=each) for item, each in pairs))
