"""Criterion 8: how much continuous power has each tonne of her?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import scalar, spread
from generator.analyses.verdict.criteria.criterion import TOLD, Criterion, Judgement
from generator.arrays import Array
from generator.case.usage import OPEN_WATERS
from generator.records import number, record
from generator.tables.method import method

SHELTERED_SHARE = method("judging.sheltered_power")


@record
class PowerPerTonne:
    """Continuous power at the shaft over displacement, beside a rule of thumb.

    ``outcome``: reached or below. ``open``: the rule of open coasts, not of sheltered waters.
    """

    SAID_BY: ClassVar[str] = "power_per_tonne"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend",)
    outcome: str
    open: bool
    each: Array = number("specific_power", "continuous power a tonne", cautious="low")
    rule: float = number("specific_power", "power a tonne by the rule of thumb")
    absent: Mapping[str, str] = field(default_factory=dict)


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Told, never decided: a rule of thumb beside the computed criteria 4 to 7.

    The power is the plate's, as far as her propeller lets it come about.
    """
    tonnes = np.asarray(found.weight.displacement) / 1e3
    each = np.atleast_2d(found.key.continuous_shaft_power / 1e3 / tonnes)
    told = spread(each, "low")
    coast = found.case.waters.exposure in OPEN_WATERS
    rule = criterion.go * (1.0 if coast else SHELTERED_SHARE)
    middle = scalar(told.middle)
    facts = PowerPerTonne("reached" if middle >= rule else "below", coast, each, rule)
    return Judgement(criterion, middle, scalar(told.low), "kW/t", TOLD, facts=facts, per_draw=each)
