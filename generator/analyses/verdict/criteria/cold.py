"""Criterion 15: how cold does the battery get in use, and may it be charged then?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import scalar, spread
from generator.analyses.verdict.criteria.apart import apart
from generator.analyses.verdict.criteria.criterion import (
    CONDITIONAL,
    GO,
    Criterion,
    Judgement,
    by_chance,
)
from generator.arrays import Array, Numbers
from generator.records import number, record

FREEZING = 0.0  # degC


@record
class Cold:
    """The coldest battery in use. ``outcome``: lead (takes charge when cold), lithium."""

    SAID_BY: ClassVar[str] = "cold"
    SAID_IN: ClassVar[str] = "criteria_power"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend",)
    outcome: str
    result: str
    locks_out: bool  # the management system refuses charge when cold
    lock_out_unknown: bool
    may_freeze: bool  # at the cautious end the cells are below freezing
    coldest: Numbers = number("temperature", "coldest in use", cautious="low")
    charge: float = number("charge", "charge on the label")
    takes: Array = number("current", "charge current it may take then", cautious="low")
    gives: Array = number("share", "charge left by the cold", cautious="low")
    absent: Mapping[str, str] = field(default_factory=dict)


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """The coldest of the months in which she is used and charged; lithium then wants a lock-out."""
    bank, own = found.bank, found.option.bank
    if bank is None or own is None:
        return apart(criterion, "no_battery")
    coldest = np.asarray(bank.ageing.aged.temperature)
    told = spread(coldest, "low")
    result = GO if bank.lead else _judged(criterion, coldest, own.charge_lock_out)
    facts = Cold(
        outcome="lead" if bank.lead else "lithium",
        result=result,
        locks_out=bool(own.charge_lock_out),
        lock_out_unknown=own.charge_lock_out is None,
        may_freeze=scalar(told.low) < FREEZING,
        coldest=coldest,
        charge=bank.charge,
        takes=bank.cold_charge,
        gives=bank.cold,
        absent={"takes": "not_said"},
    )
    return Judgement(criterion, scalar(told.middle), scalar(told.low), "-", result, facts=facts)


def _judged(criterion: Criterion, coldest: Array, lock_out: bool | None) -> str:
    """Below the limit a lock-out is asked for: where nobody said, it is confirmed, not absent."""
    warm, above = criterion.reached(coldest)
    if lock_out:
        return GO if by_chance(warm, warm) == GO else CONDITIONAL
    return by_chance(warm, above if lock_out is None else warm)
