"""What share of the owner's legs and miles lies inside the range to the reserve?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.percentiles import scalar
from generator.analyses.use.legs import Legs, SlowLeg
from generator.arrays import Array


@dataclass(frozen=True)
class Coverage:
    """Shares per draw, each leg counted as often as it is made in a year [-]."""

    legs: Array  # at the owner's speeds
    miles: Array
    legs_slow: Array  # at the least-energy speeds
    miles_slow: Array
    passages: float  # a year, best estimate


def coverage(legs: Legs, slow: tuple[SlowLeg, ...]) -> Coverage | None:
    """Legs whose energy above the reserve is at least their need; none without passages."""
    items = legs.results
    times = np.array([scalar(item.leg.times_per_year) for item in items])
    if not items or times.sum() <= 0.0:
        return None
    miles = times * np.array([scalar(item.leg.distance) for item in items])
    owner = _inside([item.ratio for item in items])
    least = _inside(
        [
            np.maximum(*np.broadcast_arrays(own.ratio, item.ratio))
            for own, item in zip(slow, items, strict=True)
        ]
    )
    return Coverage(
        legs=_share(owner, times),
        miles=_share(owner, miles),
        legs_slow=_share(least, times),
        miles_slow=_share(least, miles),
        passages=float(times.sum()),
    )


def _inside(ratios: list[Array]) -> Array:
    columns = np.broadcast_arrays(*(np.atleast_2d(ratio) for ratio in ratios))
    return np.hstack([column >= 1.0 for column in columns]).astype(np.float64)


def _share(inside: Array, weight: Array) -> Array:
    return np.asarray((inside @ weight / weight.sum())[:, np.newaxis])
