"""Criterion 28: on what does the power curve rest?"""

from __future__ import annotations

from generator.analyses.criteria.criterion import Criterion, Judgement
from generator.analyses.findings import Findings

GRADES = ("hull guess", "builder data", "sea trial")
FORM_FIELDS = ("prismatic_coefficient", "lcb")


def grade(found: Findings) -> int:
    """2 with a usable sea trial, 1 with given form coefficients, 0 for a guess."""
    if found.trial.model_power is not None:
        return 2
    given = {item.path for item in found.case.assumptions if item.origin == "given"}
    return int(all(f"boat.hull.{name}" in given for name in FORM_FIELDS))


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Sea trial, builder data or hull guess; only a trial lets the word be a plain go."""
    level = grade(found)
    result = criterion.judge(float(level))
    why = f"{GRADES[level]}: {_reason(found, level)}"
    flip = "" if level == 2 else "a sea trial of the present engine, five settings, both ways"
    condition = "" if level == 2 else "Sea trial of the present engine before any order"
    numbers = {"used_rows": float(found.trial.used)}
    return Judgement(
        criterion,
        float(level),
        float(level),
        "-",
        result,
        why,
        flip,
        condition,
        numbers,
        GRADES[level],
    )


def _reason(found: Findings, level: int) -> str:
    if level == 2:
        return "{here.used_rows|count} two-way runs of the present engine set the curve"
    if found.trial.points:
        return found.trial.note
    if level == 1:
        return "form coefficients are given, but no run was timed"
    return "form coefficients are those of boats of her type, and no run was timed"
