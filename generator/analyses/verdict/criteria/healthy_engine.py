"""Criterion 27: is the present engine healthy, so that keeping it is the reference?"""

from __future__ import annotations

from generator.analyses.findings import Findings
from generator.analyses.percentiles import scalar
from generator.analyses.verdict.criteria.criterion import NOT_ASSESSED, TOLD, Criterion, Judgement
from generator.tables.method import method

YOUNG = method("judging.young_engine")
FEW_HOURS = method("judging.few_hours")


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Told, never decided: age, hours and condition of the engine that is in her."""
    engine, date = found.case.engine, found.case.study.date
    if engine.year is None or engine.hours is None:
        why = "year or hours of the engine are not given"
        return Judgement(criterion, None, None, "-", NOT_ASSESSED, why, "")
    age, hours = float(int(date[:4]) - engine.year), scalar(engine.hours)
    healthy = age < YOUNG and hours < FEW_HOURS and engine.condition == "good"
    numbers = {"age_years": age, "hours_h": hours / 3600.0}
    facts = f"{{here.age_years|years}} old, {{here.hours_h|hours}} run, {engine.condition}"
    why = f"{facts}: {_meaning(found, healthy)}"
    value = 1.0 if healthy else 0.0
    return Judgement(criterion, value, value, "-", TOLD, why, "", numbers=numbers)


def _meaning(found: Findings, healthy: bool) -> str:
    if healthy:
        return "healthy, so to keep it is the reference, and electric needs reasons beside money"
    if found.case.engine.condition == "dying":
        return "its life is over: to keep it counts the overhaul that it needs at once"
    return "past its first health; what it will still cost stands in the section on cost"
