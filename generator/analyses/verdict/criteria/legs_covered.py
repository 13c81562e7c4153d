"""Criterion 2: what share of the owner's legs lies inside the range to the reserve?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

from generator.analyses.findings import Findings
from generator.analyses.percentiles import scalar, spread
from generator.analyses.use.leg_help import LegHelp
from generator.analyses.verdict.criteria.criterion import GO, NOT_APPLICABLE, Criterion, Judgement
from generator.arrays import Array
from generator.records import number, record

MOST_NAMED = 2  # legs named in a reason; all stand in the table


@record
class LegsCovered:
    """Passages of a year whose energy above the reserve is at least their need.

    ``outcome``: none (no passage is motored), enough, or some.
    """

    SAID_BY: ClassVar[str] = "legs_covered"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend",)
    outcome: str
    named: tuple[str, ...]  # legs that do not fit
    more_named: bool
    mend: LegHelp | None  # the cheapest way of the failing leg that is made most often
    covered: Array | None = number("share", "passages that fit", cautious="low")
    miles: Array | None = number("share", "miles that fit", cautious="low")
    slow: Array | None = number("share", "passages that fit, most economical", cautious="low")
    passages: float | None = number("count", "passages a year")
    more: int = number("count", "further legs that do not fit")
    absent: Mapping[str, str] = field(default_factory=dict)


ABSENT = dict.fromkeys(("covered", "miles", "slow", "passages"), "no_passage")


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Passages of a year whose energy above the reserve is at least their need."""
    covered = found.use.coverage
    if covered is None:
        none = LegsCovered("none", (), False, None, None, None, None, None, 0, ABSENT)
        return Judgement(criterion, None, None, "-", NOT_APPLICABLE, facts=none)
    told = spread(covered.legs, "low")
    middle, low = scalar(told.middle), scalar(told.low)
    result = criterion.judge(low)
    missed = () if result == GO else found.use.help
    names = tuple(item.name for item in missed)
    facts = LegsCovered(
        outcome="enough" if result == GO else "some",
        named=names[:MOST_NAMED],
        more_named=len(names) > MOST_NAMED,
        mend=max(missed, key=lambda item: _times(found, item), default=None),
        covered=covered.legs,
        miles=covered.miles,
        slow=covered.legs_slow,
        passages=covered.passages,
        more=max(len(names) - MOST_NAMED, 0),
        absent=ABSENT,
    )
    return Judgement(criterion, middle, low, "-", result, per_draw=covered.legs, facts=facts)


def _times(found: Findings, item: LegHelp) -> float:
    return scalar(spread(found.legs.results[item.leg].leg.times_per_year).middle)
