"""What speed does each option make good against the wind, and what stops it?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.motion.demand import (
    Scale,
    Sea,
    Weather,
    blown,
    calm_parts,
    calm_resistance,
    sea_state,
    still_air,
    thrust_kept,
)
from generator.analyses.motion.hull import Vessel
from generator.analyses.motion.power import KNOT, Power
from generator.analyses.motion.pull import Pull, greatest_pull
from generator.analyses.percentiles import best, scalar
from generator.arrays import Array, Flags
from generator.case.case import Case
from generator.case.option import Option
from generator.case.register import find_default
from generator.physics.hull.beaufort import beaufort_force, open_sea_height
from generator.physics.hull.waves import added_resistance
from generator.physics.hull.windage import wind_force
from generator.physics.water import GRAVITY
from generator.tables.method import method

WINDS = np.arange(41.0) * KNOT
# Froude numbers of the speeds that are tabulated: closer together where resistance climbs.
NODES = np.array(
    [1e-4, 0.06, 0.12, 0.17, 0.21, 0.245, 0.275, 0.30, 0.325, 0.35, 0.375, 0.40, 0.425, 0.45]
)
LEAST_WAY = method("lee_shore.least_way")


@dataclass(frozen=True)
class Ladder:
    """Speed made good against each of WINDS, per draw [m/s], and the wind that ends it [m/s].

    Where the sea is beyond the added-resistance formula it is taken at the formula's limit, so
    that the speed there is an upper bound and not an answer.
    """

    speed: Array
    binding: Array  # place in LIMITS for the best estimate, one per wind
    stops: Array  # wind in which she makes 2 kn, the sea taken at the limit of its formula


@dataclass(frozen=True)
class Headwind:
    """Ladders for good and at peak, the sea that each wind raises, and where its formula ends."""

    continuous: Ladder
    peak: Ladder
    height: Array  # m, by the fetch law, per draw and wind
    force: Array  # Beaufort, one per wind
    open_sea: Array  # m, of the open sea by Beaufort's scale, one per wind
    beyond_limit: Flags
    limit_wind: Array  # m/s, at which the sea reaches the limit of the formula
    shaft_power: Array  # W at peak, at the speed made good, best estimate, one per wind
    pull: Array  # N, thrust there
    need: Array  # N, at 2 kn, best estimate, one per wind


@dataclass(frozen=True)
class _Water:
    """What the water alone asks for at the tabulated speeds, N."""

    speed: Array
    calm: Array  # in service, without air
    air: Array  # still


def headwind(
    case: Case, option: Option, found: Power, scale: Scale, winds: Array = WINDS
) -> Headwind:
    """Both ladders of an option, with the fetch of the waters; ``winds`` are the first of WINDS."""
    hull, factors = found.vessel, case.factors
    water = _water(case, hull, scale)
    sea = sea_state(hull, Weather(winds, case.waters.fetch))
    asked = _asked(case, option, hull, water, sea, winds)
    pulls = [
        greatest_pull(option, found, factors, water.speed, peak)
        for peak in ((False, True) if option.motor is not None else (False,))
    ]
    ladders = [_ladder(water, asked, pull) for pull in pulls]
    made, speed = ladders[-1].speed[0], np.atleast_2d(water.speed)[0]
    return Headwind(
        continuous=ladders[0],
        peak=ladders[-1],
        height=np.atleast_2d(sea.free_height),
        force=beaufort_force(winds),
        open_sea=open_sea_height(winds),
        beyond_limit=np.atleast_2d(sea.beyond_limit),
        limit_wind=_wind_of(np.atleast_2d(sea.free_height - np.asarray(sea.limit))),
        shaft_power=np.interp(made, speed, np.atleast_2d(pulls[-1].shaft_power)[0]),
        pull=np.interp(made, speed, np.atleast_2d(pulls[-1].thrust)[0]),
        need=np.array([np.interp(LEAST_WAY, speed, row) for row in asked[:, 0, :]]),
    )


def asked_winds(case: Case, brief: bool) -> Array:
    """The winds of the ladders: all, or as many of the first as the rows of the verdict read."""
    if not brief:
        return WINDS
    keys = ("legs.wind", "planning.hold_wind")
    rows = (find_default(key, (case.waters.exposure,)) for key in keys)
    winds = [row.value for row in rows if row is not None]
    most = max(*winds, scalar(best(case.planning.hold_wind)))
    return WINDS[: int(most / KNOT) + 2]


def _water(case: Case, hull: Vessel, scale: Scale) -> _Water:
    length = np.asarray(hull.form.waterline_length)
    speed = NODES * np.sqrt(GRAVITY * length)
    parts = calm_parts(hull, case.factors, speed)
    calm = calm_resistance(parts, case.factors, case.boat, scale.at(speed))
    return _Water(np.asarray(speed), np.atleast_2d(calm), np.atleast_2d(still_air(hull, speed)))


def _asked(
    case: Case, option: Option, hull: Vessel, water: _Water, sea: Sea, winds: Array
) -> Array:
    """Thrust asked for against each wind [N], (winds, draws, speeds), as ``in_weather``."""
    waves = np.atleast_2d(
        added_resistance(sea.height, hull.form.waterline_beam, hull.bow_length, hull.water_density)
        * case.factors.wave_resistance
    )
    passed = 1.0 - np.asarray(option.propeller.thrust_deduction)
    kept = np.atleast_2d(passed * thrust_kept(case.factors, sea.height, hull))
    speed = np.broadcast_to(water.speed, water.calm.shape)
    asked = np.empty((winds.size, max(kept.shape[0], waves.shape[0], speed.shape[0]), NODES.size))
    for place, wind in enumerate(winds):
        steered = water.calm * blown(case.factors.steering_and_trim, wind)
        met = steered + wind_force(hull.drag_area, wind, speed) + waves[:, [place]]
        chop = steered * blown(case.factors.wind_and_chop, wind) + water.air
        np.maximum(met, chop, out=met)
        np.divide(met, kept[:, [place]], out=asked[place])
    return asked


def _ladder(water: _Water, asked: Array, pull: Pull) -> Ladder:
    """Highest speed at which pull is not less than what is asked, for every wind; 0 at least."""
    surplus = pull.thrust - asked
    speed = np.broadcast_to(water.speed, surplus.shape)
    rows = surplus.reshape(-1, surplus.shape[-1])  # every wind of every draw
    made = _crossing(speed.reshape(rows.shape), rows).reshape(surplus.shape[:-1]).T
    return Ladder(made, _binding(water, pull, made), _wind_of(LEAST_WAY - made))


def _crossing(speed: Array, surplus: Array) -> Array:
    """Speed at which the surplus falls through zero, straight between the tabulated ones."""
    speed, surplus = np.broadcast_arrays(np.atleast_2d(speed), np.atleast_2d(surplus))
    holds = surplus >= 0.0
    last = np.where(holds.all(axis=1), speed.shape[1] - 1, holds.argmin(axis=1) - 1)
    rows = np.arange(speed.shape[0])
    place = np.maximum(last, 0)
    following = np.minimum(place + 1, speed.shape[1] - 1)
    low, high = surplus[rows, place], surplus[rows, following]
    falls = np.isfinite(high) & (high < low)
    share = np.where(falls, low / np.where(falls, low - high, 1.0), 0.0)
    step = np.clip(share, 0.0, 1.0) * (speed[rows, following] - speed[rows, place])
    return np.asarray(np.where(last >= 0, speed[rows, place] + step, 0.0))


def _binding(water: _Water, pull: Pull, made: Array) -> Array:
    """What binds at the speed made good, for the best estimate: at the nearest tabulated speed."""
    speed = np.atleast_2d(water.speed)[0]
    nearest = np.abs(speed[np.newaxis, :] - made[0][:, np.newaxis]).argmin(axis=1)
    found: Array = np.atleast_2d(pull.binding)[0][nearest]
    return found


def _wind_of(rising: Array) -> Array:
    """Wind in which a table that rises with the wind passes zero [m/s]; the last if it never does.

    0 where it is above zero in a calm already.
    """
    below = rising <= 0.0
    count = np.where(below.all(axis=1), rising.shape[1], below.argmin(axis=1))
    low = np.clip(count - 1, 0, rising.shape[1] - 2)
    rows = np.arange(rising.shape[0])
    before, after = rising[rows, low], rising[rows, low + 1]
    rise = np.where(after > before, after - before, 1.0)
    found = WINDS[low] + np.clip(-before / rise, 0.0, 1.0) * (WINDS[1] - WINDS[0])
    found = np.where(count == 0, 0.0, np.where(count == rising.shape[1], WINDS[-1], found))
    return np.asarray(found[:, np.newaxis])
