"""How long does the motor hold each speed and headwind, and what heat must leave its space?"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np

from generator.analyses.motion.demand import Weather
from generator.analyses.motion.engine_space import heat, space_temperature, warm_share
from generator.analyses.motion.plant import house_drain
from generator.analyses.motion.power import KNOT, Curve, at_points
from generator.analyses.store.bank_state import taken
from generator.analyses.store.outfit import Outfit
from generator.arrays import Array, Flags, Numbers
from generator.case.case import Case
from generator.case.option import Motor
from generator.physics.drive.thermal import overload_time, time_constant

BEFORE = np.linspace(0.0, 1.0, 21)  # preceding loads of the chart


@dataclass(frozen=True)
class Hold:
    """Loads over the warm continuous rating, and how long they are held [s]; heat [W]."""

    load: Array
    from_cold: Array
    after_cruise: Array
    heat: Array
    possible: Flags


@dataclass(frozen=True)
class Duty:
    """The motor in its warm space. W, degC, s, m/s; loads over the warm rating."""

    warm_share: Array
    continuous_power: Array  # W at the motor's shaft
    space_cruise: Array
    space_full: Array
    heat_cruise: Array
    heat_full: Array
    heat_peak: Array
    heat_standing: Array
    before: Array  # load of the long run at planned cruise; nan where it has none
    peak_load: Array
    peak_cold: Array
    peak_warm: Array
    chart: tuple[Array, Array, Array]  # preceding load, time of motor and of controller
    speed: Array  # whole knots
    holds: dict[str, Hold]  # by sea, over those speeds
    holding: Hold  # at hold speed against hold wind


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
    whole = np.isclose(found.speed / KNOT, np.round(found.speed / KNOT), atol=1e-6)
    picked = np.flatnonzero(whole & (found.speed > 1.5 * KNOT))
    plan = case.planning
    wind = Weather(plan.hold_wind, case.waters.fetch)
    against = at_points(
        case, option, found, scale, np.atleast_2d(np.asarray(plan.hold_speed)), wind
    )
    return Duty(
        warm_share=share,
        continuous_power=rating,
        space_cruise=space_temperature(motor, heat_cruise),
        space_full=space_temperature(motor, heat_full),
        heat_cruise=heat_cruise,
        heat_full=heat_full,
        heat_peak=heat(motor, highest, motor.rated_speed, case.factors),
        heat_standing=heat(motor, 0.0, 0.0, case.factors),
        before=load,
        peak_load=peak,
        peak_cold=_time(motor, peak, 0.0),
        peak_warm=_time(motor, peak, before),
        chart=_chart(motor, peak),
        speed=found.speed[picked],
        holds={
            sea: _hold(outfit, rating, before, curve, picked) for sea, curve in found.curves.items()
        },
        holding=_hold(outfit, rating, before, against, None),
    )


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


def _chart(motor: Motor, peak: Array) -> tuple[Array, Array, Array]:
    """Time at peak of motor and controller over the load of the run before."""
    of_motor, of_controller = _constants(motor)
    return (
        BEFORE,
        np.atleast_2d(overload_time(of_motor, peak, BEFORE)),
        np.atleast_2d(overload_time(of_controller, peak, BEFORE)),
    )


def _hold(outfit: Outfit, rating: Array, before: Array, curve: Curve, picked: Any) -> Hold:
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
    return Hold(
        load=load,
        from_cold=np.where(possible, _time(motor, load, 0.0), 0.0),
        after_cruise=np.where(possible, _time(motor, load, before), 0.0),
        heat=losses,
        possible=possible,
    )
