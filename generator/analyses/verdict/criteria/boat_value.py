"""Criterion 26: how much of the boat's worth goes into the project?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import scalar, spread
from generator.analyses.verdict.criteria.criterion import NOT_ASSESSED, TOLD, Criterion, Judgement
from generator.arrays import Array, Numbers
from generator.records import number, record


@record
class BoatValue:
    """First cost over what she is worth.

    ``outcome``: no_worth, no_price, within (of what comes back at a sale), above, far_above.
    """

    SAID_BY: ClassVar[str] = "boat_value"
    SAID_IN: ClassVar[str] = "criteria_papers"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend",)
    outcome: str
    cost: Array | None = number("money", "first cost", cautious="high", expected=True)
    worth: Numbers | None = number(
        "money", "worth of the boat as she lies", cautious="low", expected=True
    )
    spent: Array | None = number(
        "share", "first cost over her worth", cautious="high", expected=True
    )
    limit: float = number("share", "share after which little comes back")
    absent: Mapping[str, str] = field(default_factory=dict)


ABSENT = {"cost": "no_price", "worth": "not_said", "spent": "no_price"}


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Told, never decided: first cost over what she is worth as she lies."""
    worth = found.case.boat.worth
    if worth is None or not found.ledger.priced:
        outcome = "no_worth" if worth is None else "no_price"
        facts = BoatValue(outcome, None, worth, None, criterion.go, ABSENT)
        return Judgement(criterion, None, None, "-", NOT_ASSESSED, facts=facts)
    spent = np.atleast_2d(found.cost.first / np.asarray(worth))
    told = spread(spent)
    middle, high = scalar(spent), scalar(told.high)  # as the table of the cost has it
    outcome = "within" if high <= criterion.go else "above"
    if high > criterion.conditional:
        outcome = "far_above"
    facts = BoatValue(outcome, found.cost.first, worth, spent, criterion.go, ABSENT)
    return Judgement(criterion, middle, high, "-", TOLD, facts=facts)
