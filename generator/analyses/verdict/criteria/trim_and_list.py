"""Criterion 17: does she float on her lines afterwards, upright, with her drains above water?"""

from __future__ import annotations

import math

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import scalar, spread
from generator.analyses.verdict.criteria.criterion import (
    CONDITIONAL,
    GO,
    NOT_APPLICABLE,
    Criterion,
    Judgement,
)

# Half a degree of list weighs as much as the go limit of trim, a whole degree as the other one.
LIST_PER_TRIM = math.radians(0.5) / 0.005


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """The worse of trim over waterline length and list, as weighed; drains that stay dry."""
    weight = found.weight
    key = f"options.{found.place}.weight"
    if not weight.ledger.items:
        return Judgement(criterion, None, None, "-", NOT_APPLICABLE, "no mass leaves or comes", "")
    if weight.trim is None:
        why = f"her trim is not worked out: {{{key}.trim_why|text}}"
        flip = "a position along the boat for every mass"
        return Judgement(criterion, None, None, "-", CONDITIONAL, why, flip)
    trim = np.abs(np.tan(np.asarray(weight.trim)))
    listing = np.abs(np.asarray(weight.change.list)) / LIST_PER_TRIM
    worse = spread(np.maximum(trim, listing))
    high = scalar(worse.high)
    result = criterion.judge(high)
    drain = found.case.boat.floatation.drain_height
    wet = False
    why = (
        f"trims {{{key}.trim_mm|length_small:size}} by the {_end(found)} and lists "
        f"{{{key}.list_deg|angle:size}}"
    )
    if drain is not None:
        wet = scalar(spread(drain - np.asarray(weight.change.aft)).low) <= 0.0
        why += f"; the lowest drain is left {{{key}.drain_after_mm|length_small}} above water"
    else:
        why += "; no drain was measured"
    if wet and result == GO:
        result = CONDITIONAL
    flip = "" if result == GO else _flip(key, _ways(found), high > criterion.go, wet)
    return Judgement(criterion, scalar(worse.middle), high, "-", result, why, flip)


def _ways(found: Findings) -> tuple[str, str]:
    """Where masses must move to: against trim and against list."""
    starboard = scalar(spread(found.weight.change.list).middle) >= 0
    return ("aft" if _end(found) == "bow" else "forward", "port" if starboard else "starboard")


def _end(found: Findings) -> str:
    return "bow" if scalar(spread(found.weight.change.trim).middle) >= 0 else "stern"


def _flip(key: str, ends: tuple[str, str], off: bool, wet: bool) -> str:
    """What would bring her level, and what would keep the drain dry."""
    parts = []
    if off:
        parts.append(
            f"{{{key}.level_trim_kg|mass}} moved one metre {ends[0]} and "
            f"{{{key}.level_list_kg|mass}} one metre to {ends[1]}, or blocks and ballast of the "
            "same moments"
        )
    if wet:
        parts.append("the drain raised or fitted with a valve")
    return "; ".join(parts)
