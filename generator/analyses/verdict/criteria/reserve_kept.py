"""Criterion 3: is as much kept back, and is it there, as no plan may touch?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import best, held_share, scalar, spread
from generator.analyses.verdict.criteria.criterion import (
    CONDITIONAL,
    GO,
    NO,
    SURE,
    Criterion,
    Judgement,
)
from generator.arrays import Array, Numbers
from generator.records import number, record


@record
class ReserveKept:
    """What is kept back and there, and what the usual rule keeps.

    ``outcome``: kept, lowered (the owner keeps less, with or without his reason), none (nothing is
    kept), not_held (the aged store does not hold it).
    """

    SAID_BY: ClassVar[str] = "reserve_kept"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend",)
    outcome: str
    kept_in: str
    reason: str  # of the owner, for keeping less
    given_reason: bool
    kept: Array = number("stored", "kept in reserve and there", cautious="low")
    wanted: Array = number("stored", "kept by the usual rule", cautious="high")
    held: Array = number("minutes", "time that the warm motor holds her", cautious="low")
    hold_time: Numbers = number("minutes", "time that the reserve is kept for", cautious="high")
    hold_speed: Numbers = number("speed", "speed at which she is held", cautious="high")
    hold_wind: Numbers = number("wind", "wind against which she is held", cautious="high")
    absent: Mapping[str, str] = field(default_factory=dict)


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """The reserve by the rule, the owner's own lower one, or one that the store does not hold.

    What the motor cannot deliver is no part of it: that shortage is criterion 4's alone.
    """
    kept, plan = found.reserve, found.case.planning
    usable = np.asarray(found.store.usable_aged)
    there = np.minimum(kept.of_aged, usable)
    told = spread(np.round(there / np.maximum(kept.by_rule, 1e-9), 9), "low")
    holds = held_share(np.atleast_2d(usable >= kept.of_aged - 1e-6)) >= SURE
    outcome = _outcome(kept.of_aged, holds, bool(kept.lowered))
    result = {"kept": GO, "lowered": CONDITIONAL}.get(outcome, NO)
    facts = ReserveKept(
        outcome=outcome,
        kept_in=kept.kept_in,
        reason=plan.reserve_reason,
        given_reason=bool(plan.reserve_reason),
        kept=there,
        wanted=kept.by_rule,
        held=_held_for(found) * scalar(best(plan.hold_time)),
        hold_time=plan.hold_time,
        hold_speed=plan.hold_speed,
        hold_wind=plan.hold_wind,
        absent=dict.fromkeys(("kept", "wanted", "held"), "cannot_hold"),
    )
    return Judgement(criterion, scalar(told.middle), scalar(told.low), "-", result, facts=facts)


def _outcome(kept: Array, holds: bool, lowered: bool) -> str:
    if scalar(spread(kept).middle) <= 0.0:
        return "none"
    if not holds:
        return "not_held"
    return "lowered" if lowered else "kept"


def _held_for(found: Findings) -> Array:
    """Time that the warm motor holds on, over the time that the reserve plans for, at most 1."""
    wanted = np.asarray(found.case.planning.hold_time, dtype=np.float64)
    if found.duty is None or float(np.min(wanted)) <= 0.0:
        return np.ones((1, 1))
    return np.minimum(found.duty.holding.after_cruise / wanted, 1.0)
