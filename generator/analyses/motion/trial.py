"""What does the owner's sea trial say of the resistance curve, and which rows count?"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from generator.analyses.motion.demand import Covered, Scale
from generator.analyses.motion.hull import Vessel
from generator.analyses.motion.sea_trial.fit import Fitted, Prior, fit
from generator.analyses.motion.sea_trial.gates import first, mean_speed, out_of_order, refusal
from generator.analyses.motion.sea_trial.model import (
    ELASTICITY,
    Met,
    met,
    noise,
    power_at,
    shaft_turns,
    trial_option,
    turns_over_model,
)
from generator.analyses.motion.sea_trial.readings import (
    Combined,
    Doubts,
    Reading,
    at_full_throttle,
    by_battery,
    by_fuel,
    by_law,
    combined,
)
from generator.analyses.percentiles import side_by_side
from generator.arrays import Array, Numbers
from generator.case.case import Case
from generator.case.trial import SeaTrial, TrialRow
from generator.tables.method import method

FEWEST_ROWS = 2
APART = method("trial.methods_apart")
TURNS_WRONG = 0.08  # ln of turns over those that pitch and gear ask for: 10 % less what pitch hides
TURNS_DOUBTFUL = 0.03  # smaller differences than this are pitch and wake
REACH = method("trial.reach")
OUT_OF_ORDER = "contradicts the other runs"
NOTHING_READ = "no power can be read from it"
OFF_CURVE = "full-load curve read at part throttle"


@dataclass(frozen=True)
class TrialPoint:
    """One row of the trial as the study reads it. SI; sigma of ln power."""

    row: TrialRow
    speed: Numbers | None
    shaft_power: Numbers | None
    readings: tuple[Reading, ...]
    sigma: float | None
    used: bool
    why: str
    remark: str = ""


@dataclass(frozen=True)
class TrialResult:
    """Rows with their reasons, and the factor on calm resistance that they ask for."""

    points: tuple[TrialPoint, ...]
    scale: Scale
    used: int
    model_power: Array | None  # W at the used rows by the hull model alone
    note: str
    law_over_fuel: float | None = None  # mean over the rows that have both
    turns_over_model: float | None = None  # shaft turns read over those that the screw asks for
    sigma: float | None = None  # of ln shaft power behind the fit
    grows: bool = False
    curve_power: Array | None = None  # W at the used rows on the curve that the study uses

    @property
    def replaces(self) -> bool:
        """Whether the rows stand in the hull model's place over the speeds they cover."""
        return self.scale.inside is not None

    @property
    def apart(self) -> bool:
        """Whether propeller law and fuel differ by more than a quarter."""
        ratio = self.law_over_fuel
        return ratio is not None and abs(np.log(ratio)) > np.log(APART)

    @property
    def turns_wrong(self) -> bool:
        """Whether the tachometer is off by about a tenth or more."""
        ratio = self.turns_over_model
        return ratio is not None and abs(np.log(ratio)) > TURNS_WRONG


def read_trial(case: Case, vessel: Vessel) -> TrialResult:
    """Reduce the rows by every reading they carry and weigh them with the hull model."""
    trial = case.trial
    if trial is None:
        return TrialResult((), Scale(), 0, None, "no sea trial given")
    points = _points(case, trial, vessel, Doubts({}))
    used = [point for point in points if point.used]
    if len(used) < FEWEST_ROWS:
        note = f"{len(used)} usable runs; {FEWEST_ROWS} are needed"
        return TrialResult(points, Scale(), len(used), None, note)
    model = _met(case, vessel, used)
    ratio, turns = _law_over_fuel(used), turns_over_model(model)
    doubts = _doubts(ratio, turns)
    if doubts.more:
        points = _points(case, trial, vessel, doubts)
        model = _met(case, vessel, [point for point in points if point.used])
    found, alone = (_fitted(case, vessel, model, with_model) for with_model in (True, False))
    good = _good(alone, first(case.factors.prior_sigma) / ELASTICITY, ratio, turns)
    scale = _scale(found, alone if good else None, model.speed)
    return TrialResult(
        points=points,
        scale=scale,
        used=len(used),
        model_power=model.power,
        note="",
        law_over_fuel=ratio,
        turns_over_model=turns,
        sigma=(alone if good else found).sigma * ELASTICITY,
        grows=found.grows,
        curve_power=power_at(case, vessel, model.speed, scale.at(model.speed)),
    )


def _good(alone: Fitted, model_sigma: float, ratio: float | None, turns: float) -> bool:
    """Whether the rows may replace the hull model: they agree, and know more than it does."""
    agree = ratio is None or abs(np.log(ratio)) <= np.log(APART)
    return agree and abs(np.log(turns)) <= TURNS_WRONG and alone.sigma <= model_sigma


def _met(case: Case, vessel: Vessel, used: list[TrialPoint]) -> Met:
    rows = [combined(point.readings) for point in used]
    speed = side_by_side(*(point.speed for point in used if point.speed is not None))
    return met(case, vessel, [point.row for point in used], rows, speed)


def _fitted(case: Case, vessel: Vessel, model: Met, with_model: bool) -> Fitted:
    """The factor on resistance, per draw; with the hull model's own weight, or by the rows."""
    factors = case.factors
    prior = Prior(first(factors.prior_sigma) / ELASTICITY, first(factors.prior_growth))
    deviates = (factors.trial_level_deviate, factors.trial_growth_deviate)
    speed = np.atleast_2d(model.speed)[0]
    return fit(speed, np.log(np.atleast_2d(model.ratio)), noise(case, vessel, model),
               prior if with_model else None, deviates)  # fmt: skip


def _scale(found: Fitted, alone: Fitted | None, speed: Array) -> Scale:
    slowest, fastest = float(speed[0].min()), float(speed[0].max())
    inside = None
    if alone is not None:
        inside = Covered(np.exp(alone.level), alone.growth, slowest, fastest)
    ends = slowest / REACH, fastest * REACH
    return Scale(np.exp(found.level), found.growth, found.reference, *ends, inside)


def _points(case: Case, trial: SeaTrial, vessel: Vessel, doubts: Doubts) -> tuple[TrialPoint, ...]:
    """Every row gated by itself, then the rows that do not rise with the others."""
    points = [_point(case, trial, vessel, row, doubts) for row in trial.rows]
    good = [place for place, point in enumerate(points) if point.used]
    turns = [shaft_turns(case, points[place].row) for place in good]
    speeds = [first(_known(points[place].speed)) for place in good]
    for place in out_of_order(turns, speeds):
        points[good[place]] = replace(points[good[place]], used=False, why=OUT_OF_ORDER)
    return tuple(points)


def _known(speed: Numbers | None) -> Numbers:
    assert speed is not None  # a row without a mean speed has been refused
    return speed


def _point(
    case: Case, trial: SeaTrial, vessel: Vessel, row: TrialRow, doubts: Doubts
) -> TrialPoint:
    option = trial_option(case)
    read = (
        by_law(case, trial, row, doubts),
        by_fuel(case, row, doubts),
        by_battery(case, None if option is None else option.motor, row),
    )
    readings = tuple(item for item in read if item is not None)
    off_curve = row.curve_power is not None and not at_full_throttle(trial, row)
    why = refusal(trial, row, vessel)
    if not why and not readings:
        why = OFF_CURVE if off_curve else NOTHING_READ
    speed, one = mean_speed(row), combined(readings) if readings else None
    return TrialPoint(
        row=row,
        speed=speed,
        shaft_power=None if one is None or speed is None else one.power,
        readings=readings,
        sigma=None if one is None else _sigma(one),
        used=not why,
        why=why,
        remark=OFF_CURVE if off_curve and readings else "",
    )


def _sigma(one: Combined) -> float:
    """One sigma of a row's own power, all its doubts together."""
    shared = sum((weight * one.shared[method]) ** 2 for method, weight in one.weights.items())
    return float(np.sqrt(shared + one.own**2))


def _law_over_fuel(used: list[TrialPoint]) -> float | None:
    both = []
    for point in used:
        powers = {item.method: first(item.power) for item in point.readings}
        if {"propeller_law", "fuel"} <= set(powers):
            both.append(np.log(powers["propeller_law"] / powers["fuel"]))
    return float(np.exp(np.mean(both))) if both else None


def _doubts(ratio: float | None, turns: float) -> Doubts:
    """Readings that disagree, and turns that do not fit the screw, widen the band."""
    more: dict[str, float] = {}
    if ratio is not None and abs(np.log(ratio)) > np.log(APART):
        more = {"propeller_law": abs(np.log(ratio)) / 2.0, "fuel": abs(np.log(ratio)) / 2.0}
    if abs(np.log(turns)) > TURNS_DOUBTFUL:
        more["propeller_law"] = float(np.hypot(more.get("propeller_law", 0.0), np.log(turns)))
    return Doubts(more)
