"""Criterion 28: on what does the power curve rest?"""

from __future__ import annotations

from generator.analyses.findings import Findings
from generator.analyses.handling.confined import ConfinedLeg
from generator.analyses.verdict.criteria.criterion import CONDITIONAL, GO, Criterion, Judgement

KNOT = 1852.0 / 3600.0
GRADES = ("hull guess", "builder data", "sea trial")
FORM_FIELDS = ("prismatic_coefficient", "lcb")


def grade(found: Findings) -> int:
    """2 with a usable sea trial, 1 with given form coefficients, 0 for a guess."""
    if found.trial.model_power is not None:
        return 2
    given = {item.path for item in found.case.assumptions if item.origin == "given"}
    return int(all(f"boat.hull.{name}" in given for name in FORM_FIELDS))


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Sea trial, builder data or hull guess; only a trial lets the word be a plain go.

    Nor does a deep-water curve, for a leg in water too shallow or too narrow for it.
    """
    level = grade(found)
    result = criterion.judge(float(level))
    why = f"{GRADES[level]}: {_reason(found, level)}"
    barred = next((leg for leg in found.confined if leg.too_shallow or leg.too_narrow), None)
    if barred is not None:
        return _confined(criterion, found, barred, level, why)
    if level == 2 and found.trial.turns_wrong:
        return _turns_wrong(criterion, why, found)
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
        grade=GRADES[level],
    )


def _turns_wrong(criterion: Criterion, why: str, found: Findings) -> Judgement:
    """The turns do not fit pitch and gear, so something that the readings rest on is wrong."""
    text = (
        f"{why}; but its turns are {{trial.turns_over_model_share|share:signed}} off those at "
        "which the screw takes up that power: tachometer, gear ratio or pitch is not as stated"
    )
    return Judgement(
        criterion,
        2.0,
        2.0,
        "-",
        CONDITIONAL,
        text,
        "a photo-tachometer at two settings, and pitch and gear ratio read again",
        "Turns, gear ratio and pitch checked before any order",
        {"used_rows": float(found.trial.used)},
        grade=GRADES[2],
    )


def _confined(
    criterion: Criterion, found: Findings, leg: ConfinedLeg, level: int, why: str
) -> Judgement:
    """The curve is one of deep water, and this leg is not."""
    key, name = f"legs.{leg.place}", found.case.legs[leg.place].name
    said = f"{name}: {{{key}.speed_kn|speed}} in {{{key}.depth_m|length}} of water is "
    said += f"{{{key}.depth_froude|ratio}} of the speed of the fastest wave there"
    mend = "{here.fastest_kn|speed}" if leg.too_shallow else "half her speed"
    if leg.too_narrow:
        said += f", and she fills {{{key}.blockage_pct|percent}} of the channel"
    text = (
        f"{said}; above {{here.froude_limit|ratio}}, or {{here.blockage_limit_pct|percent}} of "
        f"a channel, she needs more than a deep-water curve says; {why}"
    )
    numbers = {
        "used_rows": float(found.trial.used),
        "fastest_kn": leg.fastest / KNOT,
        "froude_limit": leg.froude_limit,
        "blockage_limit_pct": 100.0 * leg.blockage_limit,
    }
    result = CONDITIONAL if criterion.judge(float(level)) == GO else criterion.judge(float(level))
    flip = f"a timed run on that leg, or no more than {mend} there"
    condition = f"Timed run on the leg {name}, or no more than {mend} there"
    value = float(level)
    return Judgement(
        criterion, value, value, "-", result, text, flip, condition, numbers, grade=GRADES[level]
    )


def _reason(found: Findings, level: int) -> str:
    if level == 2:
        return "{here.used_rows|count} two-way runs of the present engine set the curve"
    if found.trial.points:
        return found.trial.note
    if level == 1:
        return "form coefficients are given, but no run was timed"
    return "form coefficients are those of boats of her type, and no run was timed"
