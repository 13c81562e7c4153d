"""How far at planned cruise in a calm, against wind, and a knot slower, with the reserve apart?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

import numpy as np

from generator.analyses.handling.cruising_range import Range
from generator.analyses.motion.power import KNOT
from generator.analyses.percentiles import best, scalar, spread
from generator.analyses.store.outfit import Outfit
from generator.arrays import Array
from generator.records import number, record

WIND_SPEED = 3.5 * KNOT  # the speed of the bars against wind, where cruise is no slower
SLOWER = 1.0 * KNOT
TOLD = ("range", "whole_bank", "reserve")


@record
class RangeBar:
    """Range at one speed in one sea, with one age of the bank; none where most draws have none."""

    sea: str
    bank_age: str  # new, aged, tank
    speed: float = number("speed", "speed that the range is told for")
    range: Array | None = number("distance", "range to the reserve", cautious="low")
    whole_bank: Array | None = number("distance", "range with nothing kept back", cautious="low")
    reserve: Array | None = number("distance", "distance that the reserve would go", "low")
    absent: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True)
class RangeBars:
    """The bars of the charts, in the order of the ranges, and that of a knot slower."""

    at_cruise: tuple[RangeBar, ...]
    slower: RangeBar | None  # in a calm, bank new; none below the curves


def range_bars(outfit: Outfit, ranges: tuple[Range, ...]) -> RangeBars:
    """At planned cruise in a calm, no faster than 3.5 kn against wind."""
    cruise = scalar(best(outfit.case.planning.cruise_speed))
    speeds = {"calm": cruise}
    bars = (_bar(outfit, item, speeds.get(item.sea, min(WIND_SPEED, cruise))) for item in ranges)
    calm = next((item for item in ranges if (item.sea, item.age) == ("calm", "new")), None)
    slow = cruise - SLOWER
    below = calm is None or slow < outfit.power.speed[0]
    return RangeBars(tuple(bars), None if below or calm is None else _bar(outfit, calm, slow))


def _bar(outfit: Outfit, item: Range, speed: float) -> RangeBar:
    at = outfit.power.speed
    distance, whole = (
        _between(np.atleast_2d(each), at, speed, True) for each in (item.distance, item.whole)
    )
    drain = _between(np.atleast_2d(item.drain), at, speed, False)
    kept = outfit.reserve.of_aged if item.age == "aged" else outfit.reserve.of_new
    kept = np.minimum(kept, np.asarray(outfit.store.nominal))
    there = scalar(spread(distance).middle) > 0.0
    beyond = bool(np.atleast_2d(outfit.power.seas[item.sea].beyond_limit)[0].any())
    why = "beyond_wave_formula" if beyond and item.sea != "calm" else "above_continuous_rating"
    return RangeBar(
        sea=item.sea,
        bank_age=item.age,
        speed=speed,
        range=distance if there else None,
        whole_bank=whole if there else None,
        reserve=kept / drain * speed if there else None,
        absent=dict.fromkeys(TOLD, why),
    )


def _between(values: Array, speed: Array, wanted: float, zero_fails: bool) -> Array:
    """Per draw, linear between the tabulated speeds; zero on either side stays zero."""
    place = int(np.clip(np.searchsorted(speed, wanted, side="right") - 1, 0, speed.size - 2))
    share = (wanted - speed[place]) / (speed[place + 1] - speed[place])
    low, high = values[:, [place]], values[:, [place + 1]]
    if share <= 1e-9:
        return low
    mixed = low + share * (high - low)
    return np.where((low <= 0) | (high <= 0), 0.0, mixed) if zero_fails else mixed
