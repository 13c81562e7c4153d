"""Criterion 2: what share of the owner's passages lies inside the range, in ordinary weather?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import held_share, scalar, spread
from generator.analyses.use.coverage import Coverage
from generator.analyses.verdict.criteria.criterion import (
    GO,
    HALF,
    NO,
    NOT_APPLICABLE,
    Criterion,
    Judgement,
    by_chance,
)
from generator.arrays import Array, Flags, Numbers
from generator.case.usage import Leg
from generator.records import number, record

MOST_NAMED = 3  # legs named in a reason; all stand in the table


@record
class LegNotHeld:
    """A leg whose speed she does not hold in ordinary weather, whatever is left in the bank.

    ``cause``: calm or wind (the motor is too weak for it there), current (the bank does not give
    what it takes), stream (too little is left over the ground).
    """

    name: str
    cause: str
    speed: Numbers = number("speed", "speed that is not held", cautious="low")
    wind: Numbers | None = number("wind", "ordinary wind ahead", cautious="high")
    absent: Mapping[str, str] = field(default_factory=dict)


@record
class LegsCovered:
    """Passages of a year inside the range above the reserve, after the legs before them.

    ``outcome``: none (no passage is motored), enough (at the owner's speed), slower (at a speed
    that he accepts), most (a part of them), some (too few).
    """

    SAID_BY: ClassVar[str] = "legs_covered"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend",)
    outcome: str
    named: tuple[str, ...]  # legs for which the store is too small at the owner's speed
    more_named: bool
    not_held: tuple[LegNotHeld, ...]  # legs whose speed is not held, whatever the store
    all_named: tuple[str, ...]  # of both, as many as are told
    by_energy: bool  # a larger store would help
    by_power: bool  # the motor is too weak for a leg
    by_current: bool  # the bank does not give the current for a leg
    by_stream: bool
    covered: Array | None = number("share", "passages inside range", cautious="low")
    miles: Array | None = number("share", "miles inside range", cautious="low")
    slower: Array | None = number("share", "passages inside range, slower", cautious="low")
    bad_day: Array | None = number("share", "passages inside range on a bad day", cautious="low")
    by: float | None = number("speed", "by which they are slower")
    passages: float | None = number("count", "passages a year")
    more: int = number("count", "further legs that do not fit")
    absent: Mapping[str, str] = field(default_factory=dict)


ABSENT = dict.fromkeys(("covered", "miles", "slower", "bad_day", "by", "passages"), "no_passage")


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Passages in ordinary weather, half with the wind ahead, half in a calm."""
    covered = found.use.coverage
    if covered is None:
        none = LegsCovered(
            "none",
            (),
            False,
            (),
            (),
            False,
            False,
            False,
            False,
            None,
            None,
            None,
            None,
            None,
            None,
            0,
            ABSENT,
        )
        return Judgement(criterion, None, None, "-", NOT_APPLICABLE, facts=none)
    own, slower, part = _reached(criterion, covered)
    result = by_chance(own, slower | part)
    told = spread(covered.legs, "low")
    missed = () if result == GO else tuple(zip(covered.missed, covered.missed_by, strict=True))
    names = tuple(found.case.legs[place].name for place, cause in missed if cause == "range")
    held = tuple(_not_held(found.case.legs[place], why) for place, why in missed if why != "range")
    facts = LegsCovered(
        outcome=_outcome(result, slower),
        named=names[:MOST_NAMED],
        more_named=len(names) > MOST_NAMED,
        not_held=held[:MOST_NAMED],
        all_named=tuple(found.case.legs[place].name for place, _ in missed)[:MOST_NAMED],
        by_energy=bool(names),
        by_power=any(each.cause in ("calm", "wind") for each in held),
        by_current=any(each.cause == "current" for each in held),
        by_stream=any(each.cause == "stream" for each in held),
        covered=covered.legs,
        miles=covered.miles,
        slower=covered.slower_legs,
        bad_day=covered.legs_bad_day,
        by=covered.slower,
        passages=covered.passages,
        more=max(len(names) - MOST_NAMED, 0),
        absent=ABSENT,
    )
    return Judgement(
        criterion, scalar(told.middle), scalar(told.low), "-", result, per_draw=covered.legs,
        facts=facts,
    )  # fmt: skip


def _not_held(leg: Leg, cause: str) -> LegNotHeld:
    outside = cause == "wind" and leg.holds_outside
    return LegNotHeld(
        name=leg.name,
        cause=cause,
        speed=np.minimum(leg.exposed_speed, leg.speed) if outside else leg.speed,
        wind=leg.usual_wind if cause == "wind" else None,
        absent={"wind": "not_asked_for"},
    )


def _reached(criterion: Criterion, covered: Coverage) -> tuple[Flags, Flags, Flags]:
    """Draws in which enough fits at the owner's speed, at a slower one, and in which most does."""
    second = criterion.second
    assert second is not None
    own = (covered.legs >= criterion.go - 1e-9) & (covered.miles >= second.go - 1e-9)
    slower = (covered.slower_legs >= criterion.go - 1e-9) & (
        covered.slower_miles >= second.go - 1e-9
    )
    most = (covered.legs >= criterion.conditional - 1e-9) & (
        covered.miles >= second.conditional - 1e-9
    )
    return own, slower, most


def _outcome(result: str, slower: Flags) -> str:
    if result == GO:
        return "enough"
    if result == NO:
        return "some"
    return "slower" if held_share(slower) >= HALF else "most"
