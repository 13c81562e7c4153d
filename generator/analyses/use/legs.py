"""Which of the owner's legs fit, and does the leg that must be made?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

import numpy as np

from generator.analyses.motion.demand import Weather
from generator.analyses.motion.plant import LEAST_MADE_GOOD, house_drain, passage_time, within
from generator.analyses.motion.power import Curve, at_points
from generator.analyses.percentiles import (
    best,
    held_share,
    lacking_share,
    scalar,
    side_by_side,
    spread,
)
from generator.analyses.store.bank_state import taken
from generator.analyses.store.outfit import Outfit
from generator.analyses.use.exposed_part import Curves, exposed
from generator.analyses.use.leg_energy import spent_before
from generator.arrays import Array, Flags, Numbers, Places
from generator.case.usage import Leg, as_if_marked, must_be_made
from generator.records import number, record, working

HALF = 0.5  # share of draws from which a leg counts as one that can be made


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

    It is judged on a bad day, the exposed part at the fastest speed held with which what is left
    suffices, down to 1 kn over the ground. ``untouched`` and ``with_reserve`` are shares of draws.
    ``stopped_by`` is what most of the draws that cannot make it lack: stream, hull (a calm speed
    beyond her form), current (the motor would hold it, the bank does not give it) or power; where
    all can, reserve (the bank has nothing above it).
    """

    name: str
    must_make: bool
    as_if_marked: bool  # nobody said whether it must be made: judged as if it must
    slack: bool  # the stream against her is left out, because she works the tide there
    beyond_sea: bool  # the sea is steeper than the formula of added resistance covers
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
    powered: float = number("share", "chance that the motor holds it, whatever the bank")
    untouched: float = number("share", "chance that the reserve stays, where the motor holds it")
    with_reserve: float = number("share", "chance that the reserve does it, where it holds it")
    unworked: LegResult | None = working(default=None)  # against the stream, where slack leaves it
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


@record
class YearOfLegs:
    """What the owner's legs take in a year, in ordinary weather."""

    kept_in: str
    motoring: Array = number("hours", "time under way in a year", cautious="high")
    energy: Array = number("stored", "taken by the legs in a year", cautious="high")
    absent: Mapping[str, str] = field(default_factory=dict)

    @classmethod
    def of(cls, legs: Legs, kept_in: str) -> YearOfLegs:
        """Those of an option that keeps its energy so."""
        return cls(kept_in, legs.yearly_time, legs.yearly, {"energy": "calm_speeds_not_held"})


def passages(outfit: Outfit, curves: Curves | None = None) -> Legs:
    """Energy or fuel of every leg, against what the aged store holds above the reserve.

    ``curves`` are those of the exposed parts of the same plant, where its legs were asked before.
    """
    case, option, store = outfit.case, outfit.option, outfit.store
    if not case.legs:
        zero = np.zeros((1, 1))
        return Legs((), zero, zero)
    speeds = side_by_side(*(leg.speed for leg in case.legs))
    calm = at_points(case, option, outfit.power, outfit.scale, speeds, Weather(0.0, 1.0))
    above = np.maximum(np.asarray(store.usable_aged) - outfit.reserve.of_aged, 0.0)
    house = house_drain(case, option)
    spent = spent_before(case, option, _calm_needs(outfit, calm))
    marked, asked = must_be_made(case.legs), as_if_marked(case.legs, case.waters.exposure)
    results = []
    yearly, yearly_time = np.zeros((1, 1)), np.zeros((1, 1))
    curves = {} if curves is None else curves
    for place, leg in enumerate(case.legs):
        drain = np.atleast_2d(calm.output.drain)[:, [place]] + house
        fits, by_motor = (
            np.atleast_2d(within(load, calm.demand.feasible))[:, [place]]
            for load in (calm.output.load, calm.output.motor_load)
        )
        in_form = bool(np.atleast_2d(calm.demand.feasible)[0, place])
        part = _Sheltered(drain, fits, by_motor, in_form)
        result = _leg(outfit, leg, part, (above, spent[place]), curves)
        if result.slack:
            plain = replace(leg, tide_worked=False)
            against = _leg(outfit, plain, part, (above, spent[place]), curves)
            result = replace(result, unworked=against)
        results.append(
            replace(result, must_make=marked[place] or place == asked, as_if_marked=place == asked)
        )
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
    in_form: bool  # the best estimate's speed lies within her hull form


def _leg(
    outfit: Outfit,
    leg: Leg,
    part: _Sheltered,
    stock: tuple[Array, Array],
    curves: Curves,
) -> LegResult:
    sheltered, stream = np.asarray(leg.distance - leg.exposed_distance), leg.stream
    over = np.atleast_2d(leg.speed - stream)
    calm_time = sheltered / np.maximum(over, LEAST_MADE_GOOD)
    rough = exposed(outfit, leg, curves)
    calm_loss = np.atleast_2d(taken(outfit.option.bank, outfit.store.aged, part.drain))
    given = part.fits & np.isfinite(calm_loss)
    swept = rough.swept or bool((np.broadcast_to(over, given.shape)[0] < LEAST_MADE_GOOD).any())
    stopped = ~given | ((over < LEAST_MADE_GOOD) & (sheltered > 0.0))
    above, before = stock
    available = np.maximum(above - before, 0.0)
    powered = np.atleast_2d(part.by_motor & rough.by_motor)
    needs = np.where(rough.held & ~stopped, calm_time * calm_loss + rough.time * rough.loss, np.nan)
    place = _fastest(needs, available)
    need = np.take_along_axis(needs, place, axis=1)
    cannot = ~np.isfinite(need)
    # lacking: what cannot be done needs more than any store, so that what is there is 0 times it
    ratio = np.where(cannot, 0.0, available / np.where(cannot, 1.0, need))
    feasible = 1.0 - lacking_share(need)
    outside = _at(rough.speed, place, needs.shape)
    low = scalar(spread(ratio, "low").low)
    why = ""
    if feasible < 1.0:
        why = _stopped_by(part, swept, powered, cannot)
    elif low <= 0.0:
        why = "reserve"
    usable = np.asarray(outfit.store.usable_aged) - before
    return LegResult(
        name=leg.name,
        must_make=False,
        as_if_marked=False,
        slack=slack_water(leg),
        beyond_sea=rough.beyond_limit,
        kept_in=outfit.kept_in,
        fits=low >= 1.0,
        possible=feasible >= HALF,
        stopped_by=why,
        after=None if leg.follows is None else outfit.case.legs[leg.follows].name,
        wind=leg.wind,
        time=np.where(cannot, np.nan, calm_time + _at(rough.time, place, needs.shape)),
        need=need,
        above=above,
        before=before,
        available=available,
        ratio=ratio,
        exposed_speed=np.where(cannot, np.nan, outside),
        feasible=feasible,
        powered=held_share(powered),
        untouched=_among(powered, need <= available),
        with_reserve=_among(powered, _least(needs) <= usable),
        leg=leg,
        outside=_at(np.where(rough.held, rough.speed, np.nan), place, needs.shape),
        absent=dict.fromkeys(("time", "need", "exposed_speed"), f"stopped_by_{why}")
        | {"before": "way_before_not_made", "above": "cannot_hold", "available": "cannot_hold"},
    )


def slack_water(leg: Leg) -> bool:
    """Whether a stream against her is left out because the owner works the tide."""
    return leg.tide_worked and scalar(best(leg.foul_stream)) > 0.0


def _at(values: Array, place: Places, shape: tuple[int, ...]) -> Array:
    return np.take_along_axis(np.broadcast_to(values, shape), place, axis=1)


def _among(powered: Flags, made: Flags) -> float:
    """Of the draws in which the first holds, the share in which the other does; 0 of none."""
    held = np.broadcast_to(powered, made.shape)
    rows = slice(1, None) if made.shape[0] > 1 else slice(None)
    count = int(held[rows].sum())
    return float((made & held)[rows].sum() / count) if count else 0.0


def _least(needs: Array) -> Array:
    """The least of what the tried speeds ask for; nothing is enough where none is held."""
    # lacking: a speed that is not held asks for more than any store
    least: Array = np.where(np.isfinite(needs), needs, np.inf).min(axis=1, keepdims=True)
    return least


def _fastest(needs: Array, available: Array) -> Places:
    """Place of the fastest speed with which what is left suffices, else of the cheapest."""
    # lacking: as above
    asked = np.where(np.isfinite(needs), needs, np.inf)
    fits = asked <= available
    place = np.where(fits.any(axis=1), fits.argmax(axis=1), asked.argmin(axis=1))
    return np.asarray(place[:, np.newaxis])


def _stopped_by(part: _Sheltered, swept: bool, powered: Flags, cannot: Flags) -> str:
    """What most of the draws that cannot make it lack; stream and hull form first, as for all."""
    if swept:
        return "stream"
    if not part.in_form:
        return "hull"
    return "current" if _among(cannot, np.broadcast_to(powered, cannot.shape)) > HALF else "power"


def with_slow(legs: Legs, slow: tuple[SlowLeg, ...]) -> Legs:
    """The legs with what each asks at its most economical speed."""
    pairs = zip(legs.results, slow, strict=True)
    return replace(legs, results=tuple(replace(item, slow=each) for item, each in pairs))
