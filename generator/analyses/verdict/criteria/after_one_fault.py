"""Criterion 10: what is left after any one fault, of a string, a controller or the throttle?"""

from __future__ import annotations

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.motion.power import KNOT
from generator.analyses.percentiles import scalar, spread
from generator.analyses.verdict.criteria.criterion import (
    CONDITIONAL,
    GO,
    NO,
    NOT_APPLICABLE,
    Criterion,
    Judgement,
)

PLAN = "A second propulsor or a tow plan, named before any order"


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """One motor has one controller: only a second propulsor passes; sails and a plan do half."""
    fault = found.fault
    if fault is None:
        why = "no propulsion battery; a diesel that fails leaves the sails as well"
        return Judgement(criterion, None, None, "-", NOT_APPLICABLE, why, "")
    plan = found.case.planning
    other = 0.0 if plan.fallback_speed is None else scalar(
        spread(np.asarray(plan.fallback_speed)).low
    ) / KNOT  # fmt: skip
    if plan.fallback != "second propulsor":
        other = 0.0
    result = _result(criterion, plan.fallback, other)
    key = f"options.{found.place}.one_fault"
    why = f"one string lost leaves {{{key}.power_kw|power}} and {{{key}.speed_kn|speed}}"
    if fault.strings == 1:
        why = "one string: its trip takes all power"
    why += "; a lost controller leaves the sails"
    if other:
        why += " and {here.other_kn|speed} of a second propulsor"
    elif plan.fallback == "tow":
        why += " and a tow"
    flip = "" if result == GO else "a second propulsor that brings {here.wanted_kn|speed}"
    return Judgement(
        criterion, other, other, "kn", result, why, flip,
        condition="" if plan.fallback else PLAN,
        numbers={"other_kn": other, "wanted_kn": criterion.go},
    )  # fmt: skip


def _result(criterion: Criterion, fallback: str | None, other: float) -> str:
    if other >= criterion.go:
        return GO
    return NO if fallback == "none" else CONDITIONAL
