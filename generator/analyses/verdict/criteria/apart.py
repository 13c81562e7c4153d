"""Why is a question of the verdict not asked of an option?"""

from __future__ import annotations

from typing import ClassVar

from generator.analyses.verdict.criteria.criterion import NOT_APPLICABLE, Criterion, Judgement
from generator.records import record


@record
class Apart:
    """``outcome``: no_battery, no_passage, no_plug, drive_stays, no_mass_moves."""

    SAID_BY: ClassVar[str] = "apart"
    SAID_IN: ClassVar[str] = "apart"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend",)
    outcome: str


def apart(criterion: Criterion, outcome: str) -> Judgement:
    """The row of an option of which it is not asked."""
    return Judgement(criterion, None, None, "-", NOT_APPLICABLE, facts=Apart(outcome))
