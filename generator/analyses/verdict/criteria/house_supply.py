"""Criterion 13: does a trip of the drive leave radio and lights alive, and what do they take?"""

from __future__ import annotations

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.motion.plant import house_drain
from generator.analyses.percentiles import scalar, spread
from generator.analyses.use.legs import LegResult
from generator.analyses.verdict.criteria.criterion import (
    GO,
    NO,
    NOT_APPLICABLE,
    Criterion,
    Judgement,
    stated,
)

BACKUP = "a house battery of its own, or a converter with a buffer battery"


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """House load over the energy of the longest leg; without a backup of its own it fails."""
    if found.bank is None:
        why = "the house lives on the diesel's own batteries"
        return Judgement(criterion, None, None, "-", NOT_APPLICABLE, why, "")
    house = found.case.house
    if house.separate_bank:
        why = "a battery of its own carries {house.under_way_w|watts} of house load"
        return Judgement(criterion, 0.0, 0.0, "-", GO, why, "")
    longest = _longest(found)
    share = np.zeros((1, 1))
    if longest is not None:
        drain = house_drain(found.case, found.option)
        share = longest.time * drain / longest.need
    told = spread(share)
    high = scalar(told.high)
    result = criterion.judge(high) if house.buffered else NO
    why = "{house.under_way_w|watts} of house load on the propulsion bank"
    if longest is not None and np.isfinite(high):
        why += ", {here.share_pct|percent} of “" + longest.leg.name + "”"
    why += "; a buffer keeps them alive" if house.buffered else "; a trip blacks them out"
    flip = "" if result == GO else BACKUP if not house.buffered else "less house load under way"
    numbers = {"share_pct": high * 100.0} if np.isfinite(high) else {}
    return Judgement(
        criterion, stated(scalar(told.middle)), stated(high), "-", result, why, flip,
        numbers=numbers,
    )  # fmt: skip


def _longest(found: Findings) -> LegResult | None:
    return max(
        found.legs.results,
        key=lambda leg: float(np.asarray(leg.leg.distance).flat[0]),
        default=None,
    )
