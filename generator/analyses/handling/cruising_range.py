"""How far and how long at each speed, down to the reserve?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.motion.plant import house_drain, within
from generator.analyses.motion.power import Curve
from generator.analyses.store.bank_state import BankState, taken
from generator.analyses.store.outfit import Outfit
from generator.arrays import Array, Numbers


@dataclass(frozen=True)
class Range:
    """Range [m] and endurance [s] over speed in one sea, with one age of the bank.

    Draws in which the plant cannot hold the speed count as zero. ``whole`` takes the whole
    nominal store with nothing kept back: the way sellers quote it.
    """

    sea: str
    age: str  # new, aged, tank
    distance: Array
    endurance: Array
    whole: Array
    drain: Array


def cruising_range(outfit: Outfit) -> tuple[Range, ...]:
    """Range to reserve for every sea and, for a bank, as new and aged."""
    case, option, found = outfit.case, outfit.option, outfit.power
    held, kept = outfit.store, outfit.reserve
    ages: tuple[tuple[str, Numbers, Array, BankState | None], ...] = (
        ("new", held.usable, kept.of_new, held.new),
        ("aged", held.usable_aged, kept.of_aged, held.aged),
    )
    if option.bank is None:
        ages = (("tank", held.usable, kept.of_new, None),)
    house = house_drain(case, option)
    ranges = []
    for sea, curve in found.curves.items():
        for age, usable, reserve, state in ages:
            drain = np.atleast_2d(taken(option.bank, state, curve.output.drain + house))
            left = np.maximum(np.asarray(usable) - reserve, 0.0)
            ranges.append(_range(sea, age, curve, found.speed, left, held.nominal, drain))
    return tuple(ranges)


def _range(
    sea: str,
    age: str,
    curve: Curve,
    speed: Array,
    left: Array,
    nominal: Numbers,
    drain: Array,
) -> Range:
    fits = within(curve.output.load, curve.demand.feasible & ~curve.demand.beyond_limit)
    fits = np.asarray(fits & np.isfinite(drain))
    endurance = np.where(fits, left / drain, 0.0)
    whole = np.where(fits, np.asarray(nominal) / drain, 0.0) * speed
    return Range(sea, age, endurance * speed, endurance, whole, drain)
