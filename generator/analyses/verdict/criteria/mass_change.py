"""Criterion 16: how far do the masses move her from the boat that was designed?

No rule of yachts has such limits. Those of towing vessels are borrowed: 2 per cent of lightweight
and 1 per cent of length. They count the sum of all that leaves and comes; here the net change
decides and the sum is told. 5 per cent is a growth margin of shipbuilding practice.
"""

from __future__ import annotations

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import scalar, spread
from generator.analyses.verdict.criteria.criterion import (
    CONDITIONAL,
    GO,
    NO,
    NOT_APPLICABLE,
    Criterion,
    Judgement,
)
from generator.tables.method import method

CENTRE_LIMIT = method("judging.gravity_shift")


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Net change over lightship, the shift of the centre of gravity, and the builder's plate."""
    weight = found.weight
    if not weight.ledger.items:
        return Judgement(criterion, None, None, "-", NOT_APPLICABLE, "no mass leaves or comes", "")
    share = spread(np.abs(np.asarray(weight.net)) / weight.light_displacement)
    high = scalar(share.high)
    shift = weight.centre_shift
    far = None if shift is None else scalar(spread(np.abs(np.asarray(shift))).high)
    left = None if weight.plate_left is None else scalar(spread(weight.plate_left).low)
    result = _result(criterion, high, far, left)
    key = f"options.{found.place}.weight"
    why = (
        f"net {{{key}.net_kg|mass:signed}}, {{{key}.net_share_pct|percent:size}} of her "
        f"{{{key}.light_displacement_kg|mass}} light (out and in together "
        f"{{{key}.absolute_share_pct|percent}}, which the borrowed 46 CFR 144.315 counts)"
    )
    why += _more(key, far, left)
    flip = "" if result == GO else _flip(high > criterion.go, far, left).replace("KEY", key)
    return Judgement(criterion, scalar(share.middle), high, "-", result, why, flip)


def _result(criterion: Criterion, share: float, far: float | None, left: float | None) -> str:
    """The worst of mass, centre of gravity and plate."""
    found = criterion.judge(share)
    if left is not None and left < 0.0:
        return NO
    if found == GO and (far is None or far > CENTRE_LIMIT):
        return CONDITIONAL
    return found


def _more(key: str, far: float | None, left: float | None) -> str:
    text = f"; {{{key}.trim_why|text}}"
    if far is not None:
        text = f"; centre of gravity moves {{{key}.centre_shift_pct|percent:size}} of waterline"
    if left is not None:
        text += (
            f"; {{{key}.plate_left_kg|mass:signed}} of the builder's plate is left when cruising"
        )
    return text


def _flip(heavy: bool, far: float | None, left: float | None) -> str:
    parts = []
    if left is not None and left < 0.0:
        parts.append("less cruising load or a lighter plant, until the builder's plate is kept")
    if heavy:
        parts.append("a naval architect's word on {KEY.net_kg|mass:signed} before the order")
    if far is None:
        parts.append("a position along the boat for every mass")
    elif far > CENTRE_LIMIT:
        parts.append(
            "masses nearer to those that leave, or a naval architect's word on the "
            "{KEY.centre_shift_pct|percent:size} by which her centre of gravity moves"
        )
    return "; ".join(parts)
