"""How does an option stand on each criterion?"""

from __future__ import annotations

from collections.abc import Callable

from generator.analyses.criteria import (
    battery_currents,
    boat_value,
    calm_speed,
    continuous_power,
    evidence,
    healthy_engine,
    must_make_leg,
    payback,
)
from generator.analyses.criteria.catalogue import criteria
from generator.analyses.criteria.criterion import NOT_ASSESSED, Criterion, Judgement
from generator.analyses.findings import Findings

JUDGES: dict[int, Callable[[Criterion, Findings], Judgement]] = {
    1: must_make_leg.judge,
    5: continuous_power.judge,
    7: calm_speed.judge,
    14: battery_currents.judge,
    25: payback.judge,
    26: boat_value.judge,
    27: healthy_engine.judge,
    28: evidence.judge,
}


def evaluate(found: Findings) -> tuple[Judgement, ...]:
    """Judge every criterion; those that no analysis answers yet are listed as not assessed."""
    return tuple(_one(criterion, found) for criterion in criteria())


def _one(criterion: Criterion, found: Findings) -> Judgement:
    judge = JUDGES.get(criterion.id)
    if judge is None:
        why = "not assessed in this version; it does not cap the word"
        return Judgement(criterion, None, None, "-", NOT_ASSESSED, why, "")
    return judge(criterion, found)
