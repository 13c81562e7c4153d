"""Criterion 8: how much continuous power has each tonne of her?"""

from __future__ import annotations

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import scalar, spread
from generator.analyses.verdict.criteria.criterion import TOLD, Criterion, Judgement
from generator.tables.method import method

SHELTERED_SHARE = method("judging.sheltered_power")


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Told, never decided: a rule of thumb beside the computed criteria 4 to 7.

    The power is that of criterion 5: the plate's, as far as her propeller lets it come about.
    """
    tonnes = np.asarray(found.weight.displacement) / 1e3
    each = np.atleast_2d(found.key.continuous_shaft_power / 1e3 / tonnes)
    told = spread(each)
    sheltered = found.case.waters.exposure == "sheltered"
    rule = criterion.go * (SHELTERED_SHARE if sheltered else 1.0)
    middle = scalar(told.middle)
    against = "at least the rule's" if middle >= rule else "below the rule's"
    where = "sheltered waters" if sheltered else "open coast"
    each_tonne, rule_says = "{here.each_kw_per_t|ratio}", "{here.rule_kw_per_t|ratio}"
    why = f"{each_tonne} kW a tonne on her propeller, {against} {rule_says} for {where}"
    numbers = {"each_kw_per_t": middle, "rule_kw_per_t": rule}
    low = scalar(told.low)
    return Judgement(criterion, middle, low, "kW/t", TOLD, why, "", numbers=numbers, per_draw=each)
