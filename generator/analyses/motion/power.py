"""What power for what speed: hull, shaft, battery; in a calm and against wind and sea?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

import numpy as np

from generator.analyses.motion.as_set import AsSet, as_set
from generator.analyses.motion.demand import (
    CalmParts,
    Demand,
    Scale,
    Sea,
    Weather,
    calm_parts,
    calm_resistance,
    in_weather,
    sea_state,
    shaft_demand,
    still_air,
    thrust_kept,
)
from generator.analyses.motion.hull import Vessel
from generator.analyses.motion.plant import Output, plant_output
from generator.analyses.store.bank_state import BankState
from generator.arrays import Array, Flags
from generator.case.case import Case
from generator.case.option import Option
from generator.physics.water import GRAVITY
from generator.records import number, record

KNOT = 1852.0 / 3600.0
SPEED_STEP = 0.25 * KNOT
SLOWEST = 1.0 * KNOT
TOP_FROUDE = 0.45
WINDS = {"calm": 0.0, "wind_15": 15 * KNOT, "wind_20": 20 * KNOT, "wind_25": 25 * KNOT}


@dataclass(frozen=True)
class Curve:
    """Demand and plant over speed, in one sea."""

    demand: Demand
    output: Output


@record
class TopSpeed:
    """Calm speed that the plant holds for good and for a short time [m/s], per draw."""

    continuous: Array = number("speed", "calm speed, continuous", cautious="low")
    peak: Array = number("speed", "calm speed, peak", cautious="low")
    absent: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True)
class Power:
    """One option on her hull: curves by sea, the clean need, and the top speeds."""

    vessel: Vessel
    aged: BankState | None  # old and cold, what limits the plant; none with a tank
    parts: CalmParts
    speed: Array
    clean: Demand
    curves: dict[str, Curve]
    seas: dict[str, Sea]
    top: TopSpeed
    as_set: AsSet | None  # none with a tank


def speeds(case: Case) -> Array:
    """Speeds that the study tabulates [m/s]: from 1 kn by quarter knots to Froude 0.45."""
    length = float(np.atleast_1d(np.asarray(case.boat.hull.waterline_length)).flat[0])
    top = TOP_FROUDE * np.sqrt(GRAVITY * length)
    return np.arange(SLOWEST, top + 1e-9, SPEED_STEP)


def power(
    case: Case,
    option: Option,
    hull: Vessel,
    scale: Scale,
    aged: BankState | None = None,
    winds: Mapping[str, float] = WINDS,
) -> Power:
    """Speed-power of an option on a hull that its ledgers have immersed.

    ``scale`` is what the sea trial says of the resistance curve; ``aged`` is the old, cold bank.
    """
    speed = speeds(case)
    parts = calm_parts(hull, case.factors, speed)
    water = calm_resistance(parts, case.factors, case.boat, scale.at(speed))
    clean = parts.total() * case.factors.hull_model * scale.at(speed) + still_air(hull, speed)
    curves, seas = {}, {}
    for name, wind in winds.items():
        weather = Weather(wind, case.waters.fetch)
        resistance = in_weather(hull, water, weather, speed, case.factors)
        seas[name] = sea_state(hull, weather)
        curves[name] = _curve(case, option, hull, aged, speed, resistance, seas[name])
    return Power(
        vessel=hull,
        aged=aged,
        parts=parts,
        speed=speed,
        clean=shaft_demand(hull, option.propeller, 1.0, speed, clean),
        curves=curves,
        seas=seas,
        top=_top_speed(curves["calm"], speed),
        as_set=_as_set(case, option, aged),
    )


def _as_set(case: Case, option: Option, aged: BankState | None) -> AsSet | None:
    if option.motor is None or aged is None:
        return None
    return as_set(option.motor, aged, case.factors)


def _curve(
    case: Case,
    option: Option,
    hull: Vessel,
    aged: BankState | None,
    speed: Array,
    resistance: Array,
    sea: Sea,
) -> Curve:
    condition = case.factors.propeller_condition
    kept = thrust_kept(case.factors, sea.height, hull)
    demand = shaft_demand(hull, option.propeller, condition, speed, resistance, kept)
    demand = replace(demand, beyond_limit=np.asarray(demand.feasible & sea.beyond_limit))
    return Curve(demand, plant_output(option, demand, case.factors, aged))


def at_points(
    case: Case, option: Option, found: Power, scale: Scale, speed: Array, weather: Weather
) -> Curve:
    """Demand and plant at chosen speeds, each in its own weather (wind 0 is a calm)."""
    return on_hull(case, option, found.vessel, found.aged, scale, speed, weather)


def on_hull(
    case: Case,
    option: Option,
    hull: Vessel,
    aged: BankState | None,
    scale: Scale,
    speed: Array,
    weather: Weather,
) -> Curve:
    """The same for a hull whose curves are not known yet."""
    parts = calm_parts(hull, case.factors, speed)
    water = calm_resistance(parts, case.factors, case.boat, scale.at(speed))
    resistance = in_weather(hull, water, weather, speed, case.factors)
    return _curve(case, option, hull, aged, speed, resistance, sea_state(hull, weather))


def _top_speed(calm: Curve, speed: Array) -> TopSpeed:
    usable = calm.demand.feasible
    return TopSpeed(
        speed_at_limit(calm.output.load, usable, speed),
        speed_at_limit(calm.output.peak_load, usable, speed),
    )


def speed_at_limit(load: Array, usable: Flags, speed: Array) -> Array:
    """Highest speed [m/s] at which ``load`` is not above 1, between the tabulated speeds.

    Where the plant still has power in hand at the last speed that the hull form allows, that
    speed is the answer; where even the slowest is too much, the answer is 0. Shape (draws, 1).
    """
    load = np.atleast_2d(load)
    fits = np.atleast_2d(usable) & (load <= 1.0)
    last = np.where(fits.all(axis=1), speed.size - 1, np.argmin(fits, axis=1) - 1)
    found = np.zeros(last.size)
    rows = np.flatnonzero(last >= 0)
    place = last[rows]
    following = np.minimum(place + 1, speed.size - 1)
    low, high = load[rows, place], load[rows, following]
    open_end = (following == place) | ~np.isfinite(high) | (high <= low)
    step = np.where(open_end, 0.0, (1.0 - low) / np.where(open_end, 1.0, high - low))
    found[rows] = speed[place] + np.clip(step, 0.0, 1.0) * (speed[following] - speed[place])
    return found[:, np.newaxis]


def at_speed(values: Array, speed: Array, wanted: float) -> Array:
    """Log-linear value at a speed between the tabulated ones; nan outside them."""
    if not speed[0] <= wanted <= speed[-1]:
        return np.full((values.shape[0], 1), np.nan)
    place = min(int(np.searchsorted(speed, wanted, side="right")) - 1, speed.size - 2)
    share = (wanted - speed[place]) / (speed[place + 1] - speed[place])
    low, high = np.log(values[:, place]), np.log(values[:, place + 1])
    result = np.exp(low + share * (high - low)) if share > 0 else values[:, place]
    return np.asarray(result)[:, np.newaxis]
