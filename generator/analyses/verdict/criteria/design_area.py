"""Criterion 18: do her waters suit a boat whose only engine runs from a battery?"""

from __future__ import annotations

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import best, scalar
from generator.analyses.verdict.criteria.criterion import GO, NOT_APPLICABLE, Criterion, Judgement
from generator.tables.method import method

REFUGE = method("judging.refuge")
GRADES = {"sheltered": 1.0, "coastal": 1.0, "offshore": 0.0, "ocean": -1.0}
ASSESSED = ("A", "B")  # categories of the builder's plate that stand for the open sea


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Sheltered, coastal with a refuge near, offshore, or ocean; a condition, never the word."""
    if found.option.bank is None:
        return Judgement(
            criterion, None, None, "-", NOT_APPLICABLE, "no battery drives her in this option", ""
        )
    waters = found.case.waters
    distance, said = _distance(found)
    grade = GRADES[waters.exposure]
    if waters.exposure == "coastal" and distance > REFUGE:
        grade = 0.0
    result = criterion.judge(grade)
    origin = (
        "is never farther than {here.refuge_nm|distance} from a refuge"
        if said
        else "is at most {here.refuge_nm|distance} from an end of her longest leg"
    )
    why = f"{{waters.exposure|text}} waters; she {origin}"
    if found.case.boat.design_category in ASSESSED:
        why += "; category {boat.design_category|text} was given to the boat as she was built"
    flip, condition = ("", "") if result == GO else _asked(grade)
    if found.case.boat.design_category in ASSESSED:
        condition = condition or (
            "Assessment of the conversion before category {boat.design_category|text} is relied on"
        )
    numbers = {"refuge_nm": distance / 1852.0}
    return Judgement(criterion, grade, grade, "-", result, why, flip, condition, numbers)


def _distance(found: Findings) -> tuple[float, bool]:
    """Farthest from a refuge [m], as said, else half of the longest leg."""
    given = found.case.waters.refuge_distance
    if given is not None:
        return scalar(best(given)), True
    return 0.5 * max(scalar(best(np.asarray(leg.distance))) for leg in found.case.legs), False


def _asked(grade: float) -> tuple[str, str]:
    if grade < 0.0:
        return (
            "a second source of power for propulsion, independent of the battery",
            "No ocean passage on the battery alone: a second source of power before any order",
        )
    return (
        "a crew that can sail her anywhere she goes, and a second source of power",
        "A crew that can sail her home and a second source of power, beyond "
        "{here.refuge_nm|distance} from a refuge",
    )
