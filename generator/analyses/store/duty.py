"""How long does the motor hold each speed and headwind, and what heat must leave its space?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

import numpy as np

from generator.analyses.motion.demand import Weather
from generator.analyses.motion.engine_space import heat, space_temperature, warm_share
from generator.analyses.motion.plant import house_drain
from generator.analyses.motion.power import KNOT, Curve, at_points
from generator.analyses.percentiles import best, held_share, scalar, spread
from generator.analyses.store.bank_state import taken
from generator.analyses.store.outfit import Outfit
from generator.arrays import Array, Flags, Numbers, Places
from generator.case.case import Case
from generator.case.option import Motor
from generator.physics.drive.thermal import overload_time, time_constant
from generator.records import number, record, working

# Why a number of the run at planned cruise, and a time at peak, are absent.
WITHOUT = dict.fromkeys(("space_cruise", "heat_cruise", "before"), "cruise_beyond") | dict.fromkeys(
    ("peak_cold", "peak_warm"), "for_good"
)
BEFORE = np.linspace(0.0, 1.0, 21)  # preceding loads of the chart


FOR_GOOD = 24 * 3600.0  # s; what is held for a day is held for good
HALF = 0.5  # share of draws from which a speed counts as one that can be held


@record
class Hold:
    """How one speed is held in one sea. ``state``: for good, for a time, or not, by most draws."""

    state: str
    load: Array = number("share", "load over the warm rating", cautious="high")
    possible: float = number("share", "chance that motor and battery hold it at all")
    heat: Array | None = number("watts", "heat of the motor at a speed held", cautious="high")
    cold: Array = number("minutes", "time that it is held from cold", cautious="low")
    warm: Array = number("minutes", "time that it is held after planned cruise", cautious="low")
    after_cruise: Array = working()  # s; as counted, however long
    absent: Mapping[str, str] = field(default_factory=dict)


@record
class SpeedHeld:
    """How one speed is held in each sea; a brief look knows the calm only."""

    calm: Hold
    wind_15: Hold | None
    wind_20: Hold | None
    wind_25: Hold | None
    speed: float = number("speed", "speed through the water")


@record
class PeakTimes:
    """Time at peak over the load of the run before, by the best estimate."""

    ALONG = "before"
    before: Array = number("share", "load of the run before")
    motor: Array = number("minutes", "time at peak, of the motor", expected=True)
    controller: Array = number("minutes", "time at peak, of the controller", expected=True)
    absent: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True)
class Held:
    """Loads over the warm continuous rating, and how long they are held [s]; heat [W]."""

    load: Array
    from_cold: Array
    after_cruise: Array
    heat: Array
    possible: Flags


@record
class Duty:
    """The motor in its warm space. W, degC, s, m/s; loads over the warm rating, per draw."""

    holding: Hold  # at hold speed against hold wind
    speeds: tuple[SpeedHeld, ...]  # those that most draws hold in one sea at least
    chart: PeakTimes
    plate: Numbers = number("power", "continuous power on the plate")
    continuous_power: Array = number("power", "continuous power in its own warm air", "low")
    warm: Array = number("share", "share of the plate left in its own warm air", cautious="low")
    rated_ambient: Numbers = number("temperature", "air that the plate is for")
    intake: Numbers = number("temperature", "air that its space takes in")
    airflow: Numbers = number("air", "air through its space")
    space_cruise: Array = number("temperature", "air about the motor at planned cruise", "high")
    space_full: Array = number("temperature", "air about the motor at its warm rating", "high")
    heat_cruise: Array = number("watts", "heat at planned cruise", cautious="high")
    heat_full: Array = number("watts", "heat at the warm rating", cautious="high")
    heat_peak: Array = number("watts", "heat at peak", cautious="high")
    heat_standing: Array = number("watts", "heat standing by", cautious="high")
    before: Array = number("share", "load of the long run at planned cruise", cautious="high")
    peak_power: Numbers = number("power", "peak power as it is set")
    peak_load: Array = number("ratio", "peak power over the warm rating", cautious="high")
    stated_peak: Numbers = number("minutes", "time at peak by its maker")
    peak_cold: Array = number("minutes", "time at peak from cold", cautious="low")
    peak_warm: Array = number("minutes", "time at peak after planned cruise", cautious="low")
    hold_time: Numbers = number("minutes", "time of holding on that the reserve plans for")
    speed: Array = working()  # whole knots
    holds: dict[str, Held] = working()  # by sea, over those speeds
    absent: Mapping[str, str] = field(default_factory=dict)


def duty(outfit: Outfit) -> Duty | None:
    """Warm rating, time at peak after the preceding leg, and a hold time for every speed."""
    case, option, found = outfit.case, outfit.option, outfit.power
    scale, motor = outfit.scale, option.motor
    if motor is None:
        return None
    share = warm_share(motor, case.factors)
    rating = np.asarray(motor.continuous_power * share)
    points = np.atleast_2d(np.asarray(case.planning.cruise_speed))
    cruise = at_points(case, option, found, scale, points, Weather(0.0, 1.0))
    load = _load(motor, rating, cruise)
    # lacking: a run that has no load of its own leaves the motor as warm as a full one can
    before = np.nan_to_num(load, nan=1.0)
    assert found.as_set is not None
    highest = found.as_set.peak_power
    peak = np.asarray(highest / np.maximum(rating, 1e-9))
    heat_cruise = _heat(case, motor, cruise)
    heat_full = heat(motor, rating, motor.rated_speed, case.factors)
    picked, holds = _holds(outfit, rating, before)
    return Duty(
        holding=_hold(_against_wind(outfit, rating, before), 0),
        speeds=_speeds(found.speed[picked], holds),
        chart=_chart(motor, peak),
        plate=motor.continuous_power,
        continuous_power=rating,
        warm=share,
        rated_ambient=motor.rated_ambient,
        intake=motor.intake_temperature,
        airflow=motor.airflow,
        space_cruise=space_temperature(motor, heat_cruise),
        space_full=space_temperature(motor, heat_full),
        heat_cruise=heat_cruise,
        heat_full=heat_full,
        heat_peak=heat(motor, highest, motor.rated_speed, case.factors),
        heat_standing=heat(motor, 0.0, 0.0, case.factors),
        before=load,
        peak_power=highest,
        peak_load=peak,
        stated_peak=motor.peak_time,
        peak_cold=_told(_time(motor, peak, 0.0)),
        peak_warm=_told(_time(motor, peak, before)),
        hold_time=case.planning.hold_time,
        speed=found.speed[picked],
        holds=holds,
        absent=WITHOUT,
    )


def _holds(outfit: Outfit, rating: Array, before: Array) -> tuple[Places, dict[str, Held]]:
    """Places of the whole knots among the speeds, and how each sea lets her hold them."""
    found = outfit.power
    whole = np.isclose(found.speed / KNOT, np.round(found.speed / KNOT), atol=1e-6)
    picked = np.flatnonzero(whole & (found.speed > 1.5 * KNOT))
    curves = found.curves.items()
    return picked, {sea: _held(outfit, rating, before, curve, picked) for sea, curve in curves}


def _against_wind(outfit: Outfit, rating: Array, before: Array) -> Held:
    """Hold speed against hold wind."""
    case, plan = outfit.case, outfit.case.planning
    wind = Weather(plan.hold_wind, case.waters.fetch)
    speed = np.atleast_2d(np.asarray(plan.hold_speed))
    curve = at_points(case, outfit.option, outfit.power, outfit.scale, speed, wind)
    return _held(outfit, rating, before, curve, None)


def _load(motor: Motor, rating: Array, curve: Curve) -> Array:
    """Current over the continuous one: the larger of torque and power over their ratings."""
    of_power = np.atleast_2d(curve.output.power) / np.maximum(rating, 1e-9)
    slow = np.maximum(np.atleast_2d(curve.output.turns), 1e-6)
    return np.asarray(np.maximum(of_power, of_power * motor.rated_speed / slow))


def _heat(case: Case, motor: Motor, curve: Curve) -> Array:
    power, turns = np.atleast_2d(curve.output.power), np.atleast_2d(curve.output.turns)
    return heat(motor, power, turns, case.factors)


def _time(motor: Motor, load: Array, before: Numbers) -> Array:
    """The shorter time of motor and controller."""
    both = [overload_time(constant, load, before) for constant in _constants(motor)]
    return np.asarray(np.minimum(*both))


def _constants(motor: Motor) -> tuple[Numbers, Array]:
    """Time constants of motor and controller.

    The second follows from the maker's peak time, from cold and on the plate's rating, unless
    a shorter one is given.
    """
    stated = time_constant(motor.peak_time, motor.peak_power / np.asarray(motor.continuous_power))
    # lacking: no peak above the plate gives no constant; the motor's own is then the shorter
    stated = np.where(np.isfinite(stated), stated, motor.time_constant)
    if motor.controller_time_constant is not None:
        stated = np.minimum(motor.controller_time_constant, stated)
    return motor.time_constant, stated


def _told(seconds: Array) -> Array:
    """A time without end where it is held for good."""
    return np.where(np.asarray(seconds) >= FOR_GOOD, np.inf, seconds)


def _chart(motor: Motor, peak: Array) -> PeakTimes:
    """Time at peak of motor and controller over the load of the run before."""
    of_motor, of_controller = (
        best(overload_time(constant, peak, BEFORE)) for constant in _constants(motor)
    )
    absent = dict.fromkeys(("motor", "controller"), "for_good")
    return PeakTimes(BEFORE, of_motor, of_controller, absent)


def _speeds(speed: Array, holds: Mapping[str, Held]) -> tuple[SpeedHeld, ...]:
    """The speeds that at least half of the draws hold in one of the seas."""
    picked = [
        place
        for place in range(speed.size)
        if any(float(held.possible[:, place].mean()) >= HALF for held in holds.values())
    ]
    found = []
    for place in picked:
        seas = {sea: _hold(held, place) for sea, held in holds.items()}
        winds = (seas.get("wind_15"), seas.get("wind_20"), seas.get("wind_25"))
        found.append(SpeedHeld(seas["calm"], *winds, speed=float(speed[place])))
    return tuple(found)


def _hold(held: Held, place: int) -> Hold:
    """One speed of a table."""
    possible = held_share(held.possible[:, [place]])
    cold, warm = (_told(each[:, [place]]) for each in (held.from_cold, held.after_cruise))
    state = "not"
    if possible >= HALF:
        ends = np.isfinite(scalar(spread(warm, "low").middle))
        state = "for a time" if ends else "for good"
    return Hold(
        state=state,
        load=held.load[:, [place]],
        possible=possible,
        heat=held.heat[:, [place]] if possible >= HALF else None,
        cold=cold,
        warm=warm,
        after_cruise=held.after_cruise[:, [place]],
        absent={"load": "formulas_end", "heat": "not_held", "cold": "for_good", "warm": "for_good"},
    )


def _held(outfit: Outfit, rating: Array, before: Array, curve: Curve, picked: Any) -> Held:
    """Times for a row of speeds; zero where the plant or the bank cannot do it at all."""
    case, option, motor = outfit.case, outfit.option, outfit.option.motor
    assert motor is not None
    load = _load(motor, rating, curve)
    loss = taken(option.bank, outfit.store.aged, curve.output.drain + house_drain(case, option))
    possible = np.atleast_2d(curve.demand.feasible & ~curve.demand.beyond_limit)
    possible = possible & (np.atleast_2d(curve.output.peak_load) <= 1.0) & np.isfinite(loss)
    losses = _heat(case, motor, curve)
    columns = slice(None) if picked is None else picked
    load, possible, losses = load[:, columns], possible[:, columns], losses[:, columns]
    return Held(
        load=load,
        from_cold=np.where(possible, _time(motor, load, 0.0), 0.0),
        after_cruise=np.where(possible, _time(motor, load, before), 0.0),
        heat=losses,
        possible=possible,
    )
