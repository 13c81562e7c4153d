"""Which defaults of an option's motor become others when the motor does?"""

from __future__ import annotations

from dataclasses import fields, replace
from typing import Any

import numpy as np

from generator.analyses.findings import Findings
from generator.arrays import Array, Numbers
from generator.case.assumption import Assumption
from generator.case.option import Motor
from generator.case.register import Default, find_default, sized
from generator.draws import quantile, strata

KEY = "options.motor"


def refilled(
    found: Findings, place: int, power: float, ratio: float, cooling: str | None
) -> dict[tuple[str, ...], Any]:
    """Fields of the motor that the case leaves to the register and that change, as drawn."""
    words = (*(("direct",) if ratio == 1.0 else ()), *((cooling,) if cooling else ()))
    taken = {item.path: item for item in found.case.assumptions}
    changed: dict[tuple[str, ...], Any] = {}
    for part in fields(Motor):
        own = taken.get(f"options[{place}].motor.{part.name}")
        row = find_default(f"{KEY}.{part.name}", words)
        if own is None or own.origin != "default" or row is None:
            continue
        row = sized(row, {"continuous power": power})
        if (row.value, row.low, row.high) != (own.value, own.low, own.high):
            changed["options", str(place), "motor", part.name] = _drawn(row, own, found)
    return changed


def _drawn(row: Default, own: Assumption, found: Findings) -> Numbers:
    """The values that the study would draw for a row of the register."""
    count = np.shape(found.holding.share)[0] - 1
    if count == 0 or row.high == row.low:
        return row.value
    like = replace(own, value=row.value, low=row.low, high=row.high, shape=row.shape)
    drawn: Array = quantile(like, strata(row.draw_key, count))
    return np.concatenate(([row.value], drawn))[:, np.newaxis]
