"""Criterion 12: does the sun carry her where there is no plug?"""

from __future__ import annotations

from generator.analyses.criteria.criterion import (
    CONDITIONAL,
    NO,
    NOT_APPLICABLE,
    NOT_ASSESSED,
    Criterion,
    Judgement,
)
from generator.analyses.criteria.recharge import second_source
from generator.analyses.findings import Findings
from generator.analyses.spread import scalar, spread


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Weekly sun less the house over weekly use, one week in four below; a plug needs none."""
    berth = found.use.berth
    if berth is None:
        why = "no propulsion battery" if found.bank is None else "no passage is motored"
        return Judgement(criterion, None, None, "-", NOT_APPLICABLE, why, "")
    numbers = {"outings": scalar(spread(berth.outings).low)}
    if found.case.berth.shore_power:
        why = "there is a plug; without it the bank lasts {here.outings|ratio} usual days"
        return Judgement(criterion, None, None, "-", NOT_APPLICABLE, why, "", numbers=numbers)
    supply = found.option.supply
    if supply is not None and supply.panels:
        why = "the year by the sun is not there: latitude and longitude are not given"
        return Judgement(criterion, None, None, "-", NOT_ASSESSED, why, "", numbers=numbers)
    result = CONDITIONAL if second_source(found.option) else NO
    why = "no plug and no panel: a full bank lasts {here.outings|ratio} usual days"
    flip = "a berth with a plug, panels, or a genset"
    return Judgement(criterion, 0.0, 0.0, "-", result, why, flip, numbers=numbers)
