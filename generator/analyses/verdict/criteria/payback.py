"""Criterion 25: within how many years is the extra cost repaid, on the fair baseline?"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.money.savings import Saving
from generator.analyses.percentiles import scalar, spread
from generator.analyses.verdict.criteria.criterion import (
    NOT_ASSESSED,
    TOLD,
    Criterion,
    Judgement,
    stated,
)
from generator.arrays import Array
from generator.records import number, record


@record
class Payback:
    """Years until the extra cost is back.

    ``outcome``: unpriced (a price or the diesel is not there), unknown (too many draws have no
    energy), never (not within the window), at_once, within, later (than what is looked for).
    """

    SAID_BY: ClassVar[str] = "payback"
    SAID_IN: ClassVar[str] = "criteria_papers"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend",)
    outcome: str
    against: str  # keep, new diesel
    after: Array | None = number("years", "payback with interest", cautious="high", expected=True)
    limit: float = number("years", "payback looked for")
    window: float | None = number("years", "time within which it is looked for")
    repaid: float | None = number("share", "chance that it is repaid in that time")
    absent: Mapping[str, str] = field(default_factory=dict)


ABSENT = {"after": "never_paid_back", "window": "no_price", "repaid": "no_price"}


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Told, never decided: discounted payback, or that it will not pay back."""
    held = found.savings.fairly if found.savings else None
    if found.savings is None or held is None or not found.ledger.priced:
        facts = Payback("unpriced", "", None, criterion.go, None, None, ABSENT)
        return Judgement(criterion, None, None, "-", NOT_ASSESSED, facts=facts)
    told = spread(held.discounted_payback)
    # The best estimate, as the word on money and the table of the cost have it.
    middle = scalar(told.middle if np.isnan(told.middle).any() else held.discounted_payback)
    high = scalar(told.high)
    facts = Payback(
        outcome=_outcome(criterion, middle),
        against=found.savings.fair,
        after=held.discounted_payback,
        limit=criterion.go,
        window=float(held.window),
        repaid=_repaid(held),
        absent=ABSENT,
    )
    if not math.isfinite(middle):
        result = NOT_ASSESSED if math.isnan(middle) else TOLD
        return Judgement(criterion, None, None, "-", result, facts=facts)
    return Judgement(criterion, middle, stated(high), "-", TOLD, facts=facts)


def _repaid(held: Saving) -> float:
    return float(np.round(held.repaid, 4))


def _outcome(criterion: Criterion, middle: float) -> str:
    if math.isnan(middle):
        return "unknown"
    if math.isinf(middle):
        return "never"
    if middle == 0.0:
        return "at_once"
    return "within" if middle <= criterion.go else "later"
