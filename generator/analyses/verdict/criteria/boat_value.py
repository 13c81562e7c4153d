"""Criterion 26: how much of the boat's worth goes into the project?"""

from __future__ import annotations

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import scalar, spread
from generator.analyses.verdict.criteria.criterion import NOT_ASSESSED, TOLD, Criterion, Judgement


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Told, never decided: first cost over what she is worth as she lies."""
    worth = found.case.boat.worth
    if worth is None or not found.ledger.priced:
        why = "what she is worth is not given" if worth is None else "no first cost is given"
        return Judgement(criterion, None, None, "-", NOT_ASSESSED, why, "")
    told = spread(found.cost.first / np.asarray(worth))
    middle, high = scalar(told.middle), scalar(told.high)
    side = "within" if high <= criterion.go else "above"
    if high > criterion.conditional:
        side = "far above"
    key = f"options.{found.place}.cost.first_money"
    why = (
        f"{{{key}|money}} is {{here.cost_share|share}} of the {{here.worth_money|money}} she is "
        f"worth (one in ten: above {{here.high_share|share}}), {side} the "
        "{here.limit_share|share} after which little of it comes back at a sale"
    )
    numbers = {
        "cost_share": middle,
        "high_share": high,
        "worth_money": scalar(worth),
        "limit_share": criterion.go,
    }
    return Judgement(criterion, middle, high, "-", TOLD, why, "", numbers=numbers)
