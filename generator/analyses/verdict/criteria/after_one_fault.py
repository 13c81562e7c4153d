"""Criterion 10: what is left after any one fault, electrical or mechanical?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.motion.power import KNOT
from generator.analyses.percentiles import best, scalar, spread
from generator.analyses.verdict.criteria.criterion import (
    CONDITIONAL,
    GO,
    NO,
    NOT_APPLICABLE,
    Criterion,
    Judgement,
    by_chance,
)
from generator.arrays import Array, Numbers
from generator.case.usage import OPEN_WATERS
from generator.records import number, record

NARROW, SECOND, OARS = "narrow", "second propulsor", "oars"


@record
class AfterOneFault:
    """What moves her when the drive does not.

    ``outcome``: no_bank (a diesel), second (a second propulsor that is fast enough), slow (one
    that is not, or whose speed nobody gave), tow, oars, none (the owner has no plan), open (nobody
    said). ``result`` is what it comes to in her waters. ``direct``: no belt or gear.
    """

    SAID_BY: ClassVar[str] = "after_one_fault"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend",)
    outcome: str
    result: str
    exposure: str
    one_string: bool
    direct: bool
    other_known: bool
    left: Array | None = number("power", "power left with one string lost", cautious="low")
    left_speed: Array | None = number("speed", "speed left with one string lost", cautious="low")
    other: Numbers | None = number("speed", "speed of the second propulsor", cautious="low")
    wanted: float = number("speed", "speed asked of a second propulsor")
    absent: Mapping[str, str] = field(default_factory=dict)


ABSENT = {"left": "no_other_string", "left_speed": "no_other_string", "other": "no_propulsor"}


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """One motor has one controller, one coupling and one shaft: what moves her without them?"""
    other = found.case.planning.fallback_speed
    plan = _plan(criterion, found)
    if found.fault is None:
        facts = _facts(criterion, found, "no_bank", NOT_APPLICABLE)
        return Judgement(criterion, None, None, "-", NOT_APPLICABLE, facts=facts)
    result = _result(plan, found.case.waters.exposure)
    known = other is not None and found.case.planning.fallback == SECOND
    speed = scalar(spread(np.asarray(other), "low").low) / KNOT if known else 0.0
    facts = _facts(criterion, found, plan, result)
    return Judgement(criterion, speed, speed, "kn", result, facts=facts)


def _plan(criterion: Criterion, found: Findings) -> str:
    """What there is beside the drive, in a word."""
    plan = found.case.planning
    if plan.fallback is None:
        return "open"
    if plan.fallback != SECOND:
        return plan.fallback
    if plan.fallback_speed is None:
        return "slow"
    reached = by_chance(*criterion.reached(np.asarray(plan.fallback_speed) / KNOT))
    return {GO: "second", CONDITIONAL: "slow"}.get(reached, "none")


def _result(plan: str, exposure: str) -> str:
    """Narrow waters want a rope or oars, wider ones a motor; a plan not asked for is a doubt."""
    if plan == "second":
        return GO
    if exposure == NARROW and plan in ("slow", "tow", OARS):
        return GO
    alone = exposure in OPEN_WATERS and plan in ("none", OARS)  # oars move nobody along a coast
    return NO if alone else CONDITIONAL


def _facts(criterion: Criterion, found: Findings, outcome: str, result: str) -> AfterOneFault:
    fault, motor, plan = found.fault, found.option.motor, found.case.planning
    several = fault is not None and fault.strings > 1
    return AfterOneFault(
        outcome=outcome,
        result=result,
        exposure=found.case.waters.exposure,
        one_string=not several,
        direct=motor is None or scalar(best(motor.gear_ratio)) == 1.0,
        other_known=plan.fallback == SECOND and plan.fallback_speed is not None,
        left=fault.power if several and fault is not None else None,
        left_speed=fault.speed if several and fault is not None else None,
        other=plan.fallback_speed if plan.fallback == SECOND else None,
        wanted=criterion.go * KNOT,
        absent=ABSENT,
    )
