"""Criterion 13: does a trip of the drive leave radio and lights alive, and what do they take?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.motion.plant import house_drain, passage_time
from generator.analyses.percentiles import scalar, spread
from generator.analyses.use.legs import LegResult
from generator.analyses.verdict.criteria.apart import apart
from generator.analyses.verdict.criteria.criterion import (
    CONDITIONAL,
    GO,
    NO,
    Criterion,
    Judgement,
    stated,
)
from generator.arrays import Array, Numbers
from generator.records import number, record


@record
class HouseSupply:
    """What the house draws from the drive bank, and what keeps it alive without that.

    ``outcome``: separate (a battery of its own), buffered (a small one behind a converter),
    shared (nothing).
    """

    SAID_BY: ClassVar[str] = "house_supply"
    SAID_IN: ClassVar[str] = "criteria_power"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend",)
    outcome: str
    result: str
    small: bool  # so little that a light and a radio of their own mend it
    longest: str | None  # the longest leg
    house: Numbers = number("watts", "house load under way", cautious="high")
    of_leg: Array | None = number("share", "house load of the longest leg", cautious="high")
    of_bank: Array | None = number("share_small", "the same, of the aged bank", cautious="high")
    absent: Mapping[str, str] = field(default_factory=dict)


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """A fact without draws: separate, buffered, or shared, by the middle of what it takes."""
    if found.bank is None:
        return apart(criterion, "no_battery")
    house, longest = found.case.house, _longest(found)
    of_leg = of_bank = None
    if longest is not None and not house.separate_bank:
        drain = house_drain(found.case, found.option)
        of_leg = np.atleast_2d(longest.time * drain / longest.need)
        of_bank = np.atleast_2d(passage_time(longest.leg) * drain / found.store.usable_aged)
    outcome = "separate" if house.separate_bank else "buffered" if house.buffered else "shared"
    small = of_bank is not None and _is_small(criterion, of_bank)
    result = GO if house.separate_bank else _judged(criterion, of_leg, bool(house.buffered), small)
    facts = HouseSupply(
        outcome=outcome,
        result=result,
        small=small,
        longest=None if longest is None else longest.leg.name,
        house=house.under_way,
        of_leg=of_leg,
        of_bank=of_bank,
        absent=dict.fromkeys(("of_leg", "of_bank"), "leg_not_motored"),
    )
    told = spread(0.0 if of_leg is None else of_leg)
    middle, high = scalar(told.middle), scalar(told.high)
    return Judgement(criterion, stated(middle), stated(high), "-", result, facts=facts)


def _is_small(criterion: Criterion, of_bank: Array) -> bool:
    assert criterion.second is not None
    return scalar(spread(of_bank).middle) < criterion.second.go


def _judged(criterion: Criterion, of_leg: Array | None, buffered: bool, small: bool) -> str:
    """Without a buffer it fails, with too much of a leg too; not where it takes next to nothing.

    A leg that cannot be made at all is a shortage of other rows: it leaves a doubt here.
    """
    result = NO
    if buffered:
        share = 0.0 if of_leg is None else scalar(spread(of_leg).middle)
        result = criterion.judge(share) if np.isfinite(share) else CONDITIONAL
    return CONDITIONAL if result == NO and small else result


def _longest(found: Findings) -> LegResult | None:
    return max(
        found.legs.results,
        key=lambda leg: float(np.asarray(leg.leg.distance).flat[0]),
        default=None,
    )
