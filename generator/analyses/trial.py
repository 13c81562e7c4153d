"""What does the owner's sea trial say of the resistance curve, and which rows count?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.demand import calm_parts, calm_resistance, shaft_demand, still_air
from generator.analyses.hull import Vessel
from generator.analyses.power import TOP_FROUDE
from generator.analyses.spread import best, scalar, side_by_side
from generator.arrays import Array, Numbers
from generator.case.case import Case
from generator.case.trial import SeaTrial, TrialRow
from generator.physics.drive.diesel_engine import propeller_law_power
from generator.physics.water import GRAVITY

KNOT = 1852.0 / 3600.0
WIND_LIMIT = 12 * KNOT  # stop the trial above: common practice, no source
SHALLOW, SHALLOW_SPEED = 4.0, 5 * KNOT  # reject faster runs in less water: common practice
LOWEST_SHARE = 0.5  # of full-throttle turns; below it the propeller law is worth 25 %
NEAR_RATED = 0.97
FEWEST_ROWS = 2
ROUNDS = 5  # of the fixed point; each shrinks the error about tenfold
ELASTICITY = 1.18  # of shaft power to resistance near cruise


@dataclass(frozen=True)
class TrialPoint:
    """One row of the trial as the study reads it. SI."""

    row: TrialRow
    speed: Numbers | None
    shaft_power: Numbers | None
    used: bool
    why: str


@dataclass(frozen=True)
class TrialResult:
    """Rows with their reasons, and the factor on calm resistance that they ask for."""

    points: tuple[TrialPoint, ...]
    scale: Numbers
    used: int
    model_power: Array | None  # W at the used rows before scaling
    note: str


def read_trial(case: Case, vessel: Vessel) -> TrialResult:
    """Reduce the trial by the propeller law from full throttle and weigh it with the hull model.

    The factor on resistance is drawn with the trial's error and shrunk towards the hull model
    by the two variances, which gives each draw its own consistent curve.
    """
    trial = case.trial
    if trial is None:
        return TrialResult((), 1.0, 0, None, "no sea trial given")
    top = _first(TOP_FROUDE * np.sqrt(GRAVITY * vessel.form.waterline_length))
    points = tuple(_point(case, trial, row, top) for row in trial.rows)
    used = [point for point in points if point.used]
    if len(used) < FEWEST_ROWS:
        note = f"{len(used)} usable rows; {FEWEST_ROWS} are needed, so the hull model stands alone"
        return TrialResult(points, 1.0, len(used), None, note)
    speed = side_by_side(*(point.speed for point in used if point.speed is not None))
    powers = (point.shaft_power for point in used if point.shaft_power is not None)
    wanted = side_by_side(*powers) * case.factors.trial_error
    model, ratio = _fit(case, vessel, speed, wanted)
    weight = _weight(case)
    scale = np.exp(weight * np.log(ratio).mean(axis=-1, keepdims=True))
    return TrialResult(points, scale, len(used), model, "")


def _weight(case: Case) -> Numbers:
    """How far the trial pulls the curve: variance of the model over both variances."""
    model, trial = case.factors.prior_sigma, case.factors.trial_sigma
    return np.asarray(model**2 / (model**2 + trial**2))


def _point(case: Case, trial: SeaTrial, row: TrialRow, top: float) -> TrialPoint:
    if row.speed_back is None:
        return TrialPoint(
            row, None, None, False, "one course only: stream and wind not averaged out"
        )
    speed = (row.speed_out + row.speed_back) / 2.0
    why = _refusal(trial, row, speed)
    if not why and _first(speed) > top:
        why = "faster than the hull form reaches"
    power = _shaft_power(case, trial, row) if trial.full_throttle_speed is not None else None
    return TrialPoint(row, speed, power, not why, why)


def _refusal(trial: SeaTrial, row: TrialRow, speed: Numbers) -> str:
    if trial.full_throttle_speed is None:
        return "turns at full throttle not given: the propeller law has no anchor"
    share = _first(row.engine_speed / trial.full_throttle_speed)
    if _first(row.wind) > WIND_LIMIT:
        return "wind above 12 kn"
    if row.depth is not None and _first(row.depth) < SHALLOW and _first(speed) > SHALLOW_SPEED:
        return "less than 4 m of water above 5 kn"
    if share < LOWEST_SHARE:
        return f"{100 * share:.0f} % of full-throttle turns: below half the law is too doubtful"
    if share > 1.0:
        return "turns above those given for full throttle"
    return ""


def _first(value: Numbers) -> float:
    """The best estimate."""
    return scalar(best(value))


def _shaft_power(case: Case, trial: SeaTrial, row: TrialRow) -> Numbers:
    """Shaft power [W] by propeller law; at full throttle the engine gives its rated torque."""
    engine = case.engine
    full = trial.full_throttle_speed
    assert full is not None
    ratio = full / engine.rated_speed
    flywheel = engine.rated_power * np.where(np.asarray(ratio) >= NEAR_RATED, 1.0, ratio)
    shaft = (flywheel - engine.alternator_power) * engine.gear_efficiency
    return propeller_law_power(shaft, row.engine_speed / full, trial.propeller_law_exponent)


def _fit(case: Case, vessel: Vessel, speed: Array, wanted: Array) -> tuple[Array, Array]:
    """Model power before scaling, and the factor on resistance that gives the wanted power."""
    factors, bottom = case.factors, case.boat.bottom
    parts, air = calm_parts(vessel, factors, speed), still_air(vessel, speed)
    water = calm_resistance(vessel, parts, factors, bottom, 1.0) * factors.wind_and_chop
    scale: Array = np.ones_like(wanted)
    model: Array | None = None
    for _ in range(ROUNDS):
        demand = shaft_demand(
            vessel, case.propeller, factors.propeller_condition, speed, water * scale + air
        )
        model = demand.shaft_power if model is None else model
        scale = scale * (wanted / demand.shaft_power) ** (1.0 / ELASTICITY)
    assert model is not None
    return model, scale
