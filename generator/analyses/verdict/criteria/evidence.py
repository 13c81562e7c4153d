"""Criterion 28: on what does the power curve rest?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

from generator.analyses.findings import Findings
from generator.analyses.handling.confined import ConfinedLeg
from generator.analyses.motion.trial import FEWEST_ROWS
from generator.analyses.percentiles import best, scalar
from generator.analyses.verdict.criteria.criterion import CONDITIONAL, GO, Criterion, Judgement
from generator.arrays import Numbers
from generator.records import number, record

GRADES = ("hull guess", "builder data", "sea trial")
FORM_FIELDS = ("prismatic_coefficient", "lcb")


@record
class Evidence:
    """What the curve rests on, and the leg that a deep-water curve does not cover.

    ``outcome``: trial, builder, guess. ``few``: a trial was run and too few of its rows count.
    ``turns_wrong``: its turns do not fit pitch and gear. ``leg`` is the shallow or narrow one.
    """

    SAID_BY: ClassVar[str] = "evidence"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend",)
    outcome: str
    few: bool
    turns_wrong: bool
    slow_turns: bool
    leg: str
    shallow: bool
    narrow: bool
    used: int = number("count", "two-way runs that set the curve")
    fewest: int = number("count", "two-way runs that are needed")
    turns: float | None = number("share", "turns off those of pitch and gear")
    depth: Numbers | None = number("length", "depth of the leg")
    speed: Numbers | None = number("speed", "speed on it")
    froude: float | None = number("ratio", "speed over that of the fastest wave there")
    froude_limit: float | None = number("ratio", "share of that speed up to which deep water holds")
    filled: float | None = number("percent", "share of the channel that she fills")
    filled_limit: float | None = number("percent", "share up to which deep water holds")
    fastest: float | None = number("speed", "speed up to which the leg is as good as deep water")
    half: float | None = number("speed", "half her speed on it")
    absent: Mapping[str, str] = field(default_factory=dict)


ABSENT = {"turns": "turns_fit"} | dict.fromkeys(
    (
        "depth", "speed", "froude", "froude_limit", "filled", "filled_limit", "fastest", "half",
    ),
    "deep_water",
)  # fmt: skip


def grade(found: Findings) -> int:
    """2 with a usable sea trial, 1 with given form coefficients, 0 for a guess."""
    if found.trial.model_power is not None:
        return 2
    given = {item.path for item in found.case.assumptions if item.origin == "given"}
    return int(all(f"boat.hull.{name}" in given for name in FORM_FIELDS))


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """A trial that passed its gates is a plain go; anything less is a condition, never a failure.

    Nor is it one where its turns fit neither pitch nor gear, or where a leg is no deep water.
    """
    level = grade(found)
    confined = next((leg for leg in found.confined if leg.too_shallow or leg.too_narrow), None)
    wrong = level == 2 and bool(found.trial.turns_wrong)
    whole = level >= criterion.go and confined is None and not wrong
    value = float(level)
    return Judgement(
        criterion, value, value, "-", GO if whole else CONDITIONAL, grade=GRADES[level],
        facts=_facts(found, level, confined, wrong),
    )  # fmt: skip


def _facts(found: Findings, level: int, confined: ConfinedLeg | None, wrong: bool) -> Evidence:
    leg = None if confined is None else found.case.legs[confined.place]
    speed = None if leg is None else best(leg.speed)
    off = (found.trial.turns_over_model or 1.0) - 1.0
    return Evidence(
        outcome=("guess", "builder", "trial")[level],
        few=level < 2 and bool(found.trial.points),
        turns_wrong=wrong,
        slow_turns=off < 0.0,
        leg="" if leg is None else leg.name,
        shallow=confined is not None and confined.too_shallow,
        narrow=confined is not None and confined.too_narrow,
        used=found.trial.used,
        fewest=FEWEST_ROWS,
        turns=abs(off) if wrong else None,
        depth=None if leg is None or leg.depth is None else best(leg.depth),
        speed=speed,
        froude=None if confined is None else confined.depth_froude,
        froude_limit=None if confined is None else confined.froude_limit,
        filled=None if confined is None else confined.blockage,
        filled_limit=None if confined is None else confined.blockage_limit,
        fastest=None if confined is None else confined.fastest,
        half=None if speed is None else 0.5 * scalar(speed),
        absent=ABSENT,
    )
