"""What does the hull model say at the rows' speeds, and what factor makes it meet each row?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.motion.demand import (
    Demand,
    calm_parts,
    calm_resistance,
    shaft_demand,
    still_air,
)
from generator.analyses.motion.hull import Vessel
from generator.analyses.motion.sea_trial.fit import Noise
from generator.analyses.motion.sea_trial.gates import first
from generator.analyses.motion.sea_trial.readings import Combined, accuracy
from generator.analyses.percentiles import side_by_side
from generator.arrays import Array
from generator.case.case import Case
from generator.case.option import Option
from generator.case.trial import TrialRow

ROUNDS = 5  # of the fixed point; each shrinks the error about tenfold
ELASTICITY = 1.18  # of shaft power to resistance near cruise
SLOPE = 1e-3  # step in ln v for the slope of the model
LAW_EXPONENT = 3.0  # of power to turns, for the doubt of turns only


@dataclass(frozen=True)
class Met:
    """The hull model and the rows: W, [-], rad/s; a column for each row."""

    rows: list[Combined]
    turns_read: Array  # of the shaft, best estimate
    speed: Array
    power: Array  # of the model, before scaling
    ratio: Array  # factor on resistance that meets the row's power
    turns: Array  # of the shaft, where the screw takes up that power


def trial_option(case: Case) -> Option | None:
    """The battery option that was aboard during the trial; none with the present engine."""
    named = None if case.trial is None else case.trial.with_option
    return next((option for option in case.options if option.id == named), None)


def shaft_turns(case: Case, row: TrialRow) -> float:
    """Turns of the shaft [rad/s], best estimate: of the motor where it drove her."""
    option = trial_option(case)
    motor = None if option is None else option.motor
    driven = motor is not None and row.battery_power is not None
    ratio = motor.gear_ratio if motor is not None and driven else case.engine.gear_ratio
    return first(row.engine_speed) / first(ratio)


def met(
    case: Case, vessel: Vessel, rows: list[TrialRow], read: list[Combined], speed: Array
) -> Met:
    """Power before scaling, the factor on resistance that meets each row, and its turns."""
    wanted = side_by_side(*(row.power for row in read))
    water, air = _water(case, vessel, speed), still_air(vessel, speed)
    ratio: Array = np.ones(np.broadcast_shapes(water.shape, wanted.shape))
    before: Array | None = None
    for _ in range(ROUNDS):
        demand = _demand(case, vessel, speed, water * ratio + air)
        before = demand.shaft_power if before is None else before
        ratio = ratio * (wanted / demand.shaft_power) ** (1.0 / ELASTICITY)
    assert before is not None
    turns_read = np.array([shaft_turns(case, row) for row in rows])
    return Met(read, turns_read, speed, before, ratio, demand.shaft_speed)


def power_at(case: Case, vessel: Vessel, speed: Array, scale: Array) -> Array:
    """Shaft power [W] in a calm with a factor on the resistance of the hull model."""
    water, air = _water(case, vessel, speed), still_air(vessel, speed)
    return _demand(case, vessel, speed, water * scale + air).shaft_power


def _demand(case: Case, vessel: Vessel, speed: Array, resistance: Array) -> Demand:
    option = trial_option(case)
    propeller = case.propeller if option is None else option.propeller
    return shaft_demand(vessel, propeller, case.factors.propeller_condition, speed, resistance)


def _water(case: Case, vessel: Vessel, speed: Array) -> Array:
    factors = case.factors
    return calm_resistance(calm_parts(vessel, factors, speed), factors, case.boat, 1.0)


def turns_over_model(model: Met) -> float:
    """Shaft turns read over those at which the screw takes up the power, best estimate."""
    return float(np.exp(np.median(np.log(model.turns_read / np.atleast_2d(model.turns)[0]))))


def noise(case: Case, vessel: Vessel, model: Met) -> Noise:
    """Doubts of the rows, as of ln R."""
    methods = sorted({method for row in model.rows for method in row.weights})
    shared = [
        [row.weights.get(method, 0.0) * row.shared.get(method, 0.0) for method in methods]
        for row in model.rows
    ]
    speed = np.atleast_2d(model.speed)[:1]
    up, down = (
        np.log(np.atleast_2d(_water(case, vessel, speed * np.exp(step)))[0])
        for step in (SLOPE, -SLOPE)
    )
    by_speed = ((up - down) / (2.0 * SLOPE) + 1.0) * accuracy("speed")
    law = np.array([row.weights.get("propeller_law", 0.0) for row in model.rows])
    by_turns = LAW_EXPONENT * law * accuracy("tachometer")
    own = np.array([row.own for row in model.rows])
    total = np.sqrt(own**2 + by_speed**2 + by_turns**2)
    return Noise(np.array(shared) / ELASTICITY, total / ELASTICITY)
