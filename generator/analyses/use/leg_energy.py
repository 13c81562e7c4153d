"""What do the parts of a leg ask of the store, at which speed, against which stream?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.motion.demand import Weather
from generator.analyses.motion.plant import house_drain, within
from generator.analyses.motion.power import KNOT, Curve, Power, at_points
from generator.analyses.store.bank_state import taken
from generator.analyses.store.outfit import Outfit
from generator.arrays import Array, Numbers
from generator.case.case import Case
from generator.case.option import Option
from generator.case.usage import Leg
from generator.tables.method import method

LEAST_THROUGH = method("passage.least_through_water")
LEAST_OVER = method("passage.least_over_ground")
ROUGH_THROUGH = method("passage.least_through_sea")
ROUGH_OVER = method("passage.least_against_sea")
ROUGH_FASTEST = 5.5 * KNOT  # the least for a mile lies below it, whatever the wind
EXPOSED_STEP = 0.5 * KNOT
BETWEEN = method("use.between_legs")
NEVER = method("passage.feasible_draws")


@dataclass(frozen=True)
class Strip:
    """What the store loses each second over speeds, in one weather, house load with it.

    ``loss`` is W or m3/s, (draws, speeds); nan where the plant does not hold it or the sea is
    beyond its formula.
    """

    speed: Array
    loss: Array
    blowing: bool

    @property
    def slowest(self) -> float:
        """Through the water; slower she is not steered [m/s]."""
        return ROUGH_THROUGH if self.blowing else LEAST_THROUGH

    @property
    def least_over(self) -> float:
        """Over the ground; slower is no passage [m/s]."""
        return ROUGH_OVER if self.blowing else LEAST_OVER

    def at(self, speed: float) -> Strip:
        """The tabulated speed next to one."""
        place = int(np.argmin(np.abs(self.speed - speed)))
        return Strip(self.speed[[place]], self.loss[:, [place]], self.blowing)


@dataclass(frozen=True)
class Stretch:
    """A part of a leg: m, m/s through the water, W or m3/s; per draw."""

    distance: Numbers
    speed: Array
    loss: Array

    def need(self, stream: Numbers) -> Array:
        """Energy or fuel against a mean stream; nan where she makes too little good."""
        if not np.any(np.asarray(self.distance)):
            return np.zeros((1, 1))
        over = np.atleast_2d(self.speed - np.asarray(stream))
        good = np.where(over >= ROUGH_OVER - 1e-9, over, np.nan)
        return np.asarray(self.distance / good * self.loss)


def read_strip(outfit: Outfit, speed: Array, curve: Curve, blowing: bool = False) -> Strip:
    """The loss along a curve that is already there."""
    drain = curve.output.drain + house_drain(outfit.case, outfit.option)
    loss = taken(outfit.option.bank, outfit.store.aged, drain)
    holds = within(curve.output.load, curve.demand.feasible & ~curve.demand.beyond_limit)
    return Strip(speed, np.where(np.atleast_2d(holds), np.atleast_2d(loss), np.nan), blowing)


@dataclass(frozen=True)
class Strips:
    """The calm strip of an option, and others as they are asked for, each made once.

    Legs of a long list meet the same weather at the same speeds.
    """

    outfit: Outfit
    calm: Strip
    made: dict[tuple[bytes, ...], Strip]

    def rough(self, leg: Leg, wind: Numbers | None = None) -> Strip:
        """The exposed part of a leg over speeds, in its own wind or another."""
        if not np.any(np.asarray(leg.exposed_distance)):
            return self.calm
        blows = leg.wind if wind is None else wind
        return self.at(exposed_speeds(self.outfit.power), Weather(blows, leg.fetch))

    def at(self, speed: Array, weather: Weather) -> Strip:
        """Chosen speeds in a weather."""
        key = tuple(np.asarray(part).tobytes() for part in (speed, weather.wind, weather.fetch))
        if key not in self.made:
            of = self.outfit
            curve = at_points(of.case, of.option, of.power, of.scale, speed, weather)
            blowing = bool(np.any(np.asarray(weather.wind)))
            self.made[key] = read_strip(of, speed, curve, blowing)
        return self.made[key]


def leg_strips(outfit: Outfit) -> Strips:
    """The strips of one option."""
    calm = read_strip(outfit, outfit.power.speed, outfit.power.curves["calm"])
    return Strips(outfit, calm, {})


def exposed_speeds(found: Power) -> Array:
    """Speeds through the water that are tried against wind and sea."""
    return np.arange(ROUGH_THROUGH, min(found.speed[-1], ROUGH_FASTEST) + 1e-9, EXPOSED_STEP)


def cheapest(
    part: Strip, distance: Numbers, stream: Numbers, fastest: float = np.inf
) -> tuple[Array, Array]:
    """Least energy for a distance over the ground, and the speed that asks for it, per draw.

    Never slower than the strip's own ``slowest`` and ``least_over``; nan where no speed is held.
    """
    if not np.any(np.asarray(distance)):
        zero = np.zeros((1, 1))
        return zero, np.full((1, 1), np.nan)
    over = np.atleast_2d(part.speed - np.asarray(stream))
    good = (part.speed >= part.slowest - 1e-9) & (part.speed <= fastest + 1e-9)
    good = good & (over >= part.least_over - 1e-9) & np.isfinite(part.loss)
    cost = np.where(good, part.loss / np.maximum(over, part.least_over), np.inf)
    place = cost.argmin(axis=1)[:, np.newaxis]
    least = cost[np.arange(len(cost))[:, np.newaxis], place]
    none = ~np.isfinite(least)
    return (
        np.where(none, np.nan, least * np.asarray(distance)),
        np.where(none, np.nan, part.speed[place]),
    )


def stretches(strips: Strips, leg: Leg, exposed: Array) -> tuple[Stretch, Stretch]:
    """The sheltered part at the owner's speed, and the exposed part at the speed it is held."""
    speed = np.atleast_2d(np.asarray(leg.speed))
    calm = strips.at(speed, Weather(0.0, 1.0))
    # lacking: a speed that is not held is asked for all the same, and found beyond her again
    open_water = np.atleast_2d(np.where(np.isfinite(exposed), exposed, np.asarray(leg.speed)))
    rough = strips.at(open_water, Weather(leg.wind, leg.fetch))
    return (
        Stretch(np.asarray(leg.distance - leg.exposed_distance), speed, calm.loss),
        Stretch(np.asarray(leg.exposed_distance), open_water, rough.loss),
    )


def spent_before(case: Case, option: Option, calm_needs: list[Array]) -> list[Array]:
    """What the legs before each leg on its outing take, and the house between them.

    They are taken in a calm: the wind that stands against the way home helped on the way out,
    and a day of wind against her both ways is a day to stay in harbour.
    """
    spent: list[Array] = []
    for leg in case.legs:
        if leg.follows is None:
            spent.append(np.zeros((1, 1)))
            continue
        first = leg.follows
        between = _between(case, option, case.legs[first])
        spent.append(np.asarray(spent[first] + calm_needs[first] + between))
    return spent


def _between(case: Case, option: Option, leg: Leg) -> Numbers:
    """What the house draws from the end of a leg to the next of the outing [J]."""
    if option.bank is None or case.house.separate_bank:
        return 0.0
    nights = np.asarray(leg.nights_away)
    return np.where(nights > 0.0, case.house.daily * nights, case.house.under_way * BETWEEN)


def in_hand(need: Array, available: Array) -> Array:
    """Energy above the reserve over the need; 0 where it cannot be done."""
    cannot = ~np.isfinite(need)
    return np.where(cannot, 0.0, available / np.where(cannot, 1.0, np.maximum(need, 1e-9)))


def wanted_usable(
    need: Array, ratio: float, demand: Array, share: Numbers, before: Numbers = 0.0
) -> Array:
    """Usable energy that leaves ``ratio`` times the need above the reserve, ``before`` spent.

    The reserve is the larger of a share of what is usable, and its demand: counted once.
    """
    # lacking: what cannot be done asks for a bank without end, which no reader is told
    wanted = ratio * np.where(np.isfinite(need), need, np.inf) + before
    return np.asarray(np.maximum(wanted / (1.0 - np.asarray(share)), wanted + demand))
