"""Criterion 2: what share of the owner's passages lies inside the range, in ordinary weather?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

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
from generator.arrays import Array, Flags
from generator.records import number, record

MOST_NAMED = 3  # legs named in a reason; all stand in the table


@record
class LegsCovered:
    """Passages of a year inside the range above the reserve, after the legs before them.

    ``outcome``: none (no passage is motored), enough (at the owner's speed), slower (at a speed
    that he accepts), most (a part of them), some (too few).
    """

    SAID_BY: ClassVar[str] = "legs_covered"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend",)
    outcome: str
    named: tuple[str, ...]  # legs that do not fit at the owner's speed
    more_named: bool
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
        none = LegsCovered("none", (), False, None, None, None, None, None, None, 0, ABSENT)
        return Judgement(criterion, None, None, "-", NOT_APPLICABLE, facts=none)
    own, slower, part = _reached(criterion, covered)
    result = by_chance(own, slower | part)
    told = spread(covered.legs, "low")
    missed = () if result == GO else covered.missed
    names = tuple(found.case.legs[place].name for place in missed)
    facts = LegsCovered(
        outcome=_outcome(result, slower),
        named=names[:MOST_NAMED],
        more_named=len(names) > MOST_NAMED,
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
