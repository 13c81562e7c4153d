"""What is told of range over speed, by sea and age of the bank?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from itertools import chain
from typing import Any, ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.handling.cruising_range import Range
from generator.analyses.motion.plant import LIMITS
from generator.analyses.motion.power import KNOT, Curve
from generator.analyses.percentiles import side_by_side, spread
from generator.arrays import Array, Places
from generator.records import number, record

SLOWEST_SHOWN = 1.5 * KNOT
NUMBERS = ("range", "endurance", "whole_bank_range", "per_mile")


@record
class RangeRows:
    """Range to the reserve at each speed, per draw; a row without a range says why in all of it.

    ``bank_age``: new, aged or tank. ``whole_bank_range`` keeps nothing back.
    """

    ALONG: ClassVar[str] = "speed"
    kept_in: str
    sea: tuple[str, ...]
    bank_age: tuple[str, ...]
    speed: Array = number("speed", "speed through the water")
    range: Array = number("distance", "range to the reserve", cautious="low")
    endurance: Array = number("hours", "time to the reserve", cautious="low")
    whole_bank_range: Array = number("distance", "range, nothing kept back", cautious="low")
    per_mile: Array = number("per_mile", "mile through the water", cautious="high")
    absent: Mapping[str, tuple[str, ...]] = field(default_factory=dict)

    @classmethod
    def of(cls, found: Findings) -> RangeRows:
        """Every sea and age of one option, one behind the other."""
        places = np.flatnonzero(found.power.speed >= SLOWEST_SHOWN - 1e-9)
        tables = [_columns(found, item, places) for item in found.ranges]
        numbers: dict[str, Any] = {
            name: side_by_side(*(table[name] for table in tables)) for name in NUMBERS
        }
        why = tuple(chain.from_iterable(_whys(found, item, places) for item in found.ranges))
        return cls(
            kept_in="tank" if found.option.bank is None else "bank",
            sea=tuple(item.sea for item in found.ranges for _ in places),
            bank_age=tuple(item.age for item in found.ranges for _ in places),
            speed=np.tile(found.power.speed[places], len(tables)),
            **numbers,
            absent=dict.fromkeys(NUMBERS, why),
        )


def _reached(item: Range, places: Places) -> Array:
    """Where the middle of the draws has a range at all."""
    return np.asarray(spread(item.distance).middle[places] > 0.0)


def _columns(found: Findings, item: Range, places: Places) -> dict[str, Array]:
    there = _reached(item, places)
    values = (item.distance, item.endurance, item.whole, item.drain / found.power.speed)
    return {
        name: np.where(there, np.atleast_2d(each)[:, places], np.nan)
        for name, each in zip(NUMBERS, values, strict=True)
    }


def _whys(found: Findings, item: Range, places: Places) -> list[str]:
    curve, there = found.power.curves[item.sea], _reached(item, places)
    return [
        "beyond_in_draws" if reached else _why_not(curve, int(place))
        for place, reached in zip(places, there, strict=True)
    ]


def _why_not(curve: Curve, place: int) -> str:
    """What stands in the way of the best estimate."""
    if np.atleast_2d(curve.demand.beyond_limit)[0, place]:
        return "sea_beyond_formula"
    if not np.atleast_2d(curve.demand.feasible)[0, place]:
        return "beyond_formulas"
    if np.atleast_2d(curve.output.load)[0, place] > 1.0:
        limit = LIMITS[int(np.atleast_2d(curve.output.binding)[0, place])]
        return f"above_rating_{limit.replace(' ', '_')}"
    return "nothing_above_reserve"
