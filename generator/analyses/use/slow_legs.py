"""Which legs fit at the speed that asks for least energy over the ground?"""

from __future__ import annotations

import numpy as np

from generator.analyses.use.leg_energy import (
    Strips,
    cheapest,
    in_hand,
    spent_before,
)
from generator.analyses.use.legs import Legs, SlowLeg
from generator.arrays import Array, Numbers

ABSENT = {
    "need": "no_speed_held",
    "time": "no_speed_held",
    "speed": "no_such_part",
    "exposed_speed": "no_such_part",
}


def slow_legs(strips: Strips, legs: Legs) -> tuple[SlowLeg, ...]:
    """Each leg at its least-energy speeds, and those before it on the outing likewise."""
    results = []
    calm = [np.fmin(cheapest(strips.calm, item.leg.distance, item.leg.stream)[0], np.inf)
            for item in legs.results]  # fmt: skip
    before = spent_before(strips.outfit.case, strips.outfit.option, calm)
    for item, spent in zip(legs.results, before, strict=True):
        leg = item.leg
        available = np.maximum(item.above - np.fmin(spent, item.before), 0.0)
        sheltered = np.asarray(leg.distance - leg.exposed_distance)
        smooth = cheapest(strips.calm, sheltered, leg.stream)
        rough = cheapest(strips.rough(leg), leg.exposed_distance, leg.stream)
        need = np.fmin(smooth[0] + rough[0], item.need)
        time = _time(sheltered, smooth[1], leg.stream)
        time = time + _time(leg.exposed_distance, rough[1], leg.stream)
        results.append(
            SlowLeg(
                kept_in=item.kept_in,
                need=need,
                ratio=in_hand(need, available),
                speed=smooth[1],
                exposed_speed=rough[1],
                time=time,
                absent=ABSENT,
            )
        )
    return tuple(results)


def _time(distance: Numbers, speed: Array, stream: Numbers) -> Array:
    if not np.any(np.asarray(distance)):
        return np.zeros((1, 1))
    return np.asarray(distance / (speed - np.asarray(stream)))
