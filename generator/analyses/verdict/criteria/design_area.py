"""Criterion 18: do her waters suit a boat whose only engine runs from a battery?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import best, scalar
from generator.analyses.verdict.criteria.criterion import GO, NO, Criterion, Judgement
from generator.records import number, record
from generator.tables.method import method

REFUGE = method("judging.refuge")
MILE = 1852.0
NEAR, FAR, OUT = 1.0, 0.0, -1.0  # by the limits of the table: passes, with conditions, fails
GRADES = {"narrow": NEAR, "sheltered": NEAR, "coastal": NEAR, "offshore": FAR, "ocean": OUT}
ASSESSED = ("A", "B")  # categories of the builder's plate that stand for the open sea
BANNED = "banned"


@record
class DesignArea:
    """Whether a bank may be her sole power there, and whether the waters allow her engine.

    ``outcome``: near (sheltered, or with a refuge near), far (off shore, or along a coast without
    one), ocean, diesel, banned (combustion engines are, in these waters).
    """

    SAID_BY: ClassVar[str] = "design_area"
    SAID_IN: ClassVar[str] = "criteria_boat"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend",)
    outcome: str
    result: str
    exposure: str
    said: bool  # the owner told how far a refuge is
    category: str  # of the builder's plate, where it stands for the open sea
    genset: bool
    second_propulsor: bool  # with fuel of its own
    by_sail: bool  # the owner signs that sail is her means at sea
    refuge: float | None = number("distance", "farthest from a refuge")
    absent: Mapping[str, str] = field(default_factory=dict)


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """A fact of her waters; panels and regeneration are no second source of power."""
    if found.option.bank is None:
        banned = found.case.waters.combustion_engines == BANNED
        result, outcome = (NO, "banned") if banned else (GO, "diesel")
        return Judgement(
            criterion, None, None, "-", result, facts=_facts(found, outcome, result)
        )  # fmt: skip
    waters, supply = found.case.waters, found.option.supply
    distance = _distance(found)[0]
    grade = GRADES[waters.exposure]
    if waters.exposure == "coastal" and distance > REFUGE:
        grade = FAR
    outcome = {NEAR: "near", FAR: "far", OUT: "ocean"}[grade]
    genset = supply is not None and supply.genset is not None
    if grade == OUT and (genset or _second_propulsor(found) or _by_sail(found)):
        grade = FAR
    result = criterion.judge(grade)
    return Judgement(
        criterion, grade, grade, "-", result, facts=_facts(found, outcome, result)
    )  # fmt: skip


def _second_propulsor(found: Findings) -> bool:
    return found.case.planning.fallback == "second propulsor"


def _by_sail(found: Findings) -> bool:
    return found.case.planning.at_sea == "sail"


def _facts(found: Findings, outcome: str, result: str) -> DesignArea:
    supply, category = found.option.supply, found.case.boat.design_category
    distance, said = _distance(found)
    return DesignArea(
        outcome=outcome,
        result=result,
        exposure=found.case.waters.exposure,
        said=said,
        category=category if category in ASSESSED else "",
        genset=supply is not None and supply.genset is not None,
        second_propulsor=_second_propulsor(found),
        by_sail=_by_sail(found),
        refuge=distance if np.isfinite(distance) else None,
        absent={"refuge": "no_leg_written_down"},
    )


def _distance(found: Findings) -> tuple[float, bool]:
    """Farthest from a refuge [m], as said, else half of the longest leg; nan without legs."""
    given = found.case.waters.refuge_distance
    if given is not None:
        return scalar(best(given)), True
    legs = (scalar(best(np.asarray(leg.distance))) for leg in found.case.legs)
    return 0.5 * max(legs, default=np.nan), False
