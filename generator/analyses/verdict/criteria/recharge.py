"""Criterion 11: is a usual day put back at the berth before she is used again?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import lacking_share, scalar, spread
from generator.analyses.use.berth import Berthed
from generator.analyses.verdict.criteria.apart import apart
from generator.analyses.verdict.criteria.criterion import (
    CONDITIONAL,
    GO,
    HALF,
    NO,
    Criterion,
    Judgement,
    by_chance,
    stated,
)
from generator.arrays import Array, Numbers
from generator.case.option import Option
from generator.records import number, record

HOUR = 3600.0


@record
class Recharge:
    """How long the post takes to put back what a usual day has taken.

    ``outcome``: back (has its hours), unread (nobody has read the post), no_day (a leg of the day
    cannot be motored), never (nothing charges the bank).
    """

    SAID_BY: ClassVar[str] = "recharge"
    SAID_IN: ClassVar[str] = "criteria_power"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend",)
    outcome: str
    result: str
    bound_by: str  # berth, charger, bank
    unattended: bool  # she may charge with nobody aboard
    other_source: bool  # and without one it would be too slow
    charger_does: bool
    attended_does: bool
    day: Array = number("energy", "missing after a usual day", cautious="high")
    hours: Array | None = number("hours", "time to put a usual day back", cautious="high")
    worst: Array | None = number("hours", "time from the reserve to full", cautious="high")
    between: Numbers | None = number("days", "days until she is used again", cautious="low")
    breaker: Numbers | None = number("current", "breaker at the berth", cautious="low")
    charger: float | None = number("power", "power into the bank that does it in a night")
    absent: Mapping[str, str] = field(default_factory=dict)


ABSENT = {
    "day": "leg_not_motored",
    "hours": "not_put_back",
    "worst": "not_put_back",
    "between": "not_said",
    "breaker": "not_said",
    "charger": "does_not_help",
}


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Hours from a usual day's end to full, at the derated breaker.

    A night, or as long as she lies where she may charge with nobody aboard; a day, or as long as
    she lies where somebody attends.
    """
    berth = found.use.berth
    if berth is None:
        return apart(criterion, "no_battery" if found.bank is None else "no_passage")
    if not found.case.berth.shore_power:
        return apart(criterion, "no_plug")
    hours = berth.typical_hours
    if hours is None:
        facts = _facts(found, berth, "unread", CONDITIONAL)
        return Judgement(criterion, None, None, "h", CONDITIONAL, facts=facts)
    result = _judged(criterion, found, hours)
    slow = result == NO and second_source(found.option)
    told = spread(hours / HOUR)
    facts = _facts(found, berth, _outcome(berth), CONDITIONAL if slow else result, slow)
    return Judgement(
        criterion, stated(scalar(told.middle)), stated(scalar(told.high)), "h", facts.result,
        facts=facts, per_draw=hours / HOUR,
    )  # fmt: skip


def _judged(criterion: Criterion, found: Findings, hours: Array) -> str:
    """By what the plug alone does."""
    berth = found.case.berth
    lies = 0.0 if berth.days_between_use is None else np.asarray(berth.days_between_use)
    night, day = criterion.go * HOUR, np.maximum(criterion.conditional * HOUR, lies)
    long = np.maximum(night, lies) if berth.unattended else night
    return by_chance(hours <= long, hours <= day)


def _outcome(berth: Berthed) -> str:
    if lacking_share(berth.typical) > 1.0 - HALF:
        return "no_day"
    assert berth.typical_hours is not None
    return "back" if np.isfinite(scalar(spread(berth.typical_hours).middle)) else "never"


def _facts(
    found: Findings, berth: Berthed, outcome: str, result: str, other: bool = False
) -> Recharge:
    mends = result != GO and outcome == "back"
    return Recharge(
        outcome=outcome,
        result=result,
        bound_by=berth.bound_by or "",
        unattended=found.case.berth.unattended,
        other_source=other,
        charger_does=mends and berth.least_charger is not None,
        attended_does=mends and result == CONDITIONAL and not other,
        day=berth.typical,
        hours=berth.typical_hours,
        worst=berth.worst_hours,
        between=found.case.berth.days_between_use,
        breaker=found.case.berth.breaker,
        charger=berth.least_charger,
        absent=ABSENT,
    )


def second_source(option: Option) -> bool:
    """Panels, a genset or a wind generator aboard."""
    supply = option.supply
    return supply is not None and bool(supply.panels or supply.genset or supply.wind)
