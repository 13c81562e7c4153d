"""Criterion 1: does the worst leg that must be made under engine fit?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import lacking_share, scalar, spread
from generator.analyses.use.leg_energy import wanted_usable
from generator.analyses.use.legs import LegResult
from generator.analyses.verdict.criteria.criterion import GO, Criterion, Judgement
from generator.arrays import Array
from generator.records import number, record


@record
class MustMakeLeg:
    """The leg with the least in hand of those without refuge or sail.

    ``outcome``: none, makes (it can be made, the ratio judges it), at_times (some draws cannot
    make it at all), never (more than half cannot).
    """

    SAID_BY: ClassVar[str] = "must_make_leg"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend",)
    outcome: str
    kept_in: str
    enough: bool
    leg: LegResult | None
    slower_does: bool
    larger_does: bool
    calmer_does: bool
    impossible: float | None = number("share", "chance that it cannot be made")
    slow_speed: Array | None = number("speed", "speed in shelter that does it", cautious="low")
    slow_ratio: float | None = number("ratio", "left over needed at that speed")
    wanted: Array | None = number("stored", "nominal size that does it", cautious="high")
    wind: float | None = number("wind", "most wind on the nose")
    absent: Mapping[str, str] = field(default_factory=dict)


ABSENT = dict.fromkeys(("slow_speed", "slow_ratio", "wanted", "wind"), "does_not_help") | {
    "impossible": "no_such_leg"
}


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Usable energy above reserve over the need of the worst leg without refuge or sail."""
    place = found.key.worst_leg
    if place is None:
        kept_in = found.reserve.kept_in
        none = MustMakeLeg(
            "none", kept_in, True, None, False, False, False, None, None, None, None, None, ABSENT
        )
        return Judgement(criterion, None, None, "-", GO, facts=none)
    worst = found.legs.results[place]
    ratio = spread(worst.ratio, "low")
    middle, low = scalar(ratio.middle), scalar(ratio.low)
    result = criterion.judge(low)
    sure = low > 0.0 and bool(np.isfinite(scalar(spread(worst.need, "high").high)))
    outcome = "makes" if sure else "at_times" if middle > 0.0 else "never"
    facts = _facts(criterion, found, worst, outcome, result == GO)
    return Judgement(criterion, middle, low, "-", result, per_draw=worst.ratio, facts=facts)


def _facts(
    criterion: Criterion, found: Findings, worst: LegResult, outcome: str, enough: bool
) -> MustMakeLeg:
    """What it takes, and what carries it, all else kept: slower, a larger bank, less wind."""
    slow = worst.slow
    assert slow is not None
    share = found.case.planning.reserve_share
    wanted = found.use.sizes.nominal_for(
        wanted_usable(worst.need, criterion.go, found.reserve.demand, share, worst.before)
    )
    mend = next((item for item in found.use.help if item.leg == found.key.worst_leg), None)
    ratio = scalar(spread(slow.ratio, "low").low)
    sheltered = scalar(spread(slow.speed, "low").middle) > 0.0
    slower = not enough and ratio >= criterion.go and sheltered
    larger = not enough and bool(np.isfinite(scalar(spread(wanted, "high").high)))
    calmer = not enough and not slower and not larger and mend is not None
    wind = mend.wind if calmer and mend is not None else None
    return MustMakeLeg(
        outcome=outcome,
        kept_in=worst.kept_in,
        enough=enough,
        leg=worst,
        slower_does=slower,
        larger_does=larger,
        calmer_does=wind is not None,
        impossible=lacking_share(np.where(worst.ratio > 0.0, worst.ratio, np.nan)),
        slow_speed=slow.speed if slower else None,
        slow_ratio=ratio if slower else None,
        wanted=wanted if larger else None,
        wind=wind,
        absent=ABSENT,
    )
