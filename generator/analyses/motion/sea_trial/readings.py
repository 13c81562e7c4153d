"""What shaft power does a row of the sea trial tell, by each way of reading it?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.motion.plant import battery_power
from generator.analyses.motion.sea_trial.gates import first
from generator.arrays import Array, Numbers
from generator.case.case import Case
from generator.case.option import Motor
from generator.case.trial import SeaTrial, TrialRow
from generator.physics.drive.diesel_engine import power_from_fuel, propeller_law_power
from generator.tables.load import read_table
from generator.tables.method import method

NEAR_RATED = method("trial.near_rated")
LAW_FROM = method("trial.law_from")
FUEL_FROM, FUEL_DOUBTFUL = 0.40, 0.25  # of rated power
BATTERY_FROM = method("trial.battery_from")
ROUNDS = 12  # of the fixed point from battery to motor; each shrinks the error tenfold


@dataclass(frozen=True)
class Reading:
    """Shaft power [W] by one method; sigmas of its logarithm: shared by all rows, and its own."""

    method: str  # propeller_law, fuel, battery
    power: Numbers
    error: Numbers  # drawn, shared by all rows of the method
    shared: float
    own: float


@dataclass(frozen=True)
class Doubts:
    """What the trial itself has shown of its methods: more sigma for each, shared by all rows."""

    more: dict[str, float]

    def shared(self, method: str, usual: float) -> float:
        """Sigma shared by all rows of a method."""
        return float(np.hypot(usual, self.more.get(method, 0.0)))


def accuracy(reading: str, column: str = "usual") -> float:
    """One sigma of the logarithm of a reading."""
    table = read_table("drive/trial_accuracy")
    return float(table.column(column)[table.row_of("reading", reading)])


def by_law(case: Case, trial: SeaTrial, row: TrialRow, doubts: Doubts) -> Reading | None:
    """Shaft power by propeller law from full throttle."""
    full = trial.full_throttle_speed
    if full is None or case.engine.rated_power is None or row.battery_power is not None:
        return None
    share = row.engine_speed / full
    shaft = _at_shaft(case, row, full_throttle_power(case, trial))
    power = propeller_law_power(shaft, share, trial.propeller_law_exponent)
    usual = first(case.factors.trial_sigma)
    shared = doubts.shared("propeller_law", usual)
    doubtful = 0.0 if first(share) >= LAW_FROM else accuracy("propeller_law", "doubtful")
    error = np.asarray(case.factors.trial_error) ** (shared / usual)
    return Reading("propeller_law", power, error, shared, _beyond(doubtful, usual))


def full_throttle_power(case: Case, trial: SeaTrial) -> Numbers:
    """Flywheel power [W] at full throttle: by the maker's full-load curve, else by torque."""
    engine, full = case.engine, trial.full_throttle_speed
    assert full is not None
    read = [row.curve_power for row in trial.rows if at_full_throttle(trial, row)]
    given = next((power for power in read if power is not None), None)
    if given is not None:
        return given
    ratio = full / engine.rated_speed
    return engine.rated_power * np.where(np.asarray(ratio) >= NEAR_RATED, 1.0, ratio)


def at_full_throttle(trial: SeaTrial, row: TrialRow) -> bool:
    """Whether a row was run at full throttle, where the maker's full-load curve holds."""
    full = trial.full_throttle_speed
    return full is not None and first(row.engine_speed) >= NEAR_RATED * first(full)


def _at_shaft(case: Case, row: TrialRow, flywheel: Numbers) -> Numbers:
    """What is left of flywheel power behind alternator and gear [W]."""
    engine = case.engine
    own = row.alternator_power
    taken = engine.alternator_power if own is None else own
    return (flywheel - taken) * engine.gear_efficiency


def by_fuel(case: Case, row: TrialRow, doubts: Doubts) -> Reading | None:
    """Shaft power by metered fuel; none where the fuel hardly turns the engine."""
    if row.fuel_rate is None or row.battery_power is not None:
        return None
    rated = case.engine.rated_power
    flywheel = power_from_fuel(np.asarray(row.fuel_rate) / case.engine.fuel_scale, rated)
    power = np.asarray(_at_shaft(case, row, flywheel))
    if not np.all(power > 0.0):
        return None
    usual = accuracy("fuel")
    shared = doubts.shared("fuel", usual)
    load = first(flywheel) / first(rated)
    doubtful = np.interp(load, [FUEL_DOUBTFUL, FUEL_FROM], [accuracy("fuel", "doubtful"), usual])
    error = np.asarray(case.factors.fuel_error) ** (shared / usual)
    return Reading("fuel", power, error, shared, _beyond(float(doubtful), usual))


def by_battery(case: Case, motor: Motor | None, row: TrialRow) -> Reading | None:
    """Shaft power by what the converted boat's battery gave."""
    if row.battery_power is None or motor is None:
        return None
    power = motor_power(case, motor, row.battery_power, row.engine_speed)
    shaft = (power - motor.seal_and_bearings) * motor.gear_efficiency
    if not np.all(np.asarray(shaft) > 0.0):
        return None
    usual = accuracy("battery")
    little = first(power) < BATTERY_FROM * first(motor.continuous_power)
    doubtful = accuracy("battery", "doubtful") if little else 0.0
    return Reading("battery", shaft, 1.0, usual, _beyond(doubtful, usual))


def motor_power(case: Case, motor: Motor, drawn: Numbers, turns: Numbers) -> Array:
    """Power at the motor shaft [W] for a power ``drawn`` [W] from the battery."""
    power = np.asarray(drawn, dtype=np.float64)
    for _ in range(ROUNDS):
        taken = battery_power(motor, power, turns, case.factors)
        power = np.maximum(power + (drawn - np.asarray(taken)), 0.0)
    return power


def _beyond(sigma: float, shared: float) -> float:
    """What a row's own doubt adds to the shared one."""
    return float(np.sqrt(max(sigma * sigma - shared * shared, 0.0)))


@dataclass(frozen=True)
class Combined:
    """One row's shaft power [W] out of all its readings, weighted by variance in logarithms."""

    power: Numbers
    weights: dict[str, float]
    shared: dict[str, float]
    own: float


def combined(readings: tuple[Reading, ...]) -> Combined:
    """The mean of the logarithms, each weighted by one over its variance."""
    inverse = {item.method: 1.0 / (item.shared**2 + item.own**2) for item in readings}
    total = sum(inverse.values())
    weights = {method: value / total for method, value in inverse.items()}
    logarithm: Numbers = 0.0
    for item in readings:
        logarithm = logarithm + weights[item.method] * np.log(item.power * item.error)
    return Combined(
        power=np.exp(logarithm),
        weights=weights,
        shared={item.method: item.shared for item in readings},
        own=float(np.sqrt(sum((weights[item.method] * item.own) ** 2 for item in readings))),
    )
