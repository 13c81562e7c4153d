"""Criterion 25: within how many years is the extra cost repaid, on the fair baseline?"""

from __future__ import annotations

import math

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import scalar, spread
from generator.analyses.verdict.criteria.criterion import (
    NOT_ASSESSED,
    TOLD,
    Criterion,
    Judgement,
    stated,
)

NAMES = {"keep": "keeping the diesel", "new diesel": "a new diesel"}


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Told, never decided: discounted payback, or that it will not pay back."""
    held = found.savings.fairly if found.savings else None
    if found.savings is None or held is None or not found.ledger.priced:
        why = "no first cost, or no diesel in the case to hold it against"
        return Judgement(criterion, None, None, "-", NOT_ASSESSED, why, "")
    told = spread(held.discounted_payback)
    middle, high = scalar(told.middle), scalar(told.high)
    other = NAMES[found.savings.fair]
    share = float(np.round(held.repaid, 4))
    numbers = {"window_years": float(held.window), "repaid_share": share}
    if math.isnan(middle):
        why = "in more than half of the draws a leg cannot be motored: its energy has no number"
        return Judgement(criterion, None, None, "-", NOT_ASSESSED, why, "", numbers=numbers)
    if math.isinf(middle):
        why = (
            f"will not pay back against {other} within {{here.window_years|years}}; it does in "
            "{here.repaid_share|share} of the draws"
        )
        return Judgement(criterion, None, None, "-", TOLD, why, "", numbers=numbers)
    side = "within" if middle <= criterion.go else "later than"
    numbers |= {"payback_years": middle, "limit_years": criterion.go}
    why = (
        f"pays back against {other} in {{here.payback_years|years}}, {side} the "
        "{here.limit_years|years} looked for; repaid in {here.repaid_share|share} of the draws"
    )
    if middle == 0.0:
        why = f"costs no more to fit than {other}, and is never behind it"
    return Judgement(criterion, middle, stated(high), "-", TOLD, why, "", numbers=numbers)
