"""How large must a bank of the option's kind be to have so much usable, old and cold?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.motion.plant import Store, controller_cut_off, peak_drain
from generator.analyses.store.bank_state import bank_state, floored
from generator.analyses.store.limits import limits
from generator.arrays import Array
from generator.case.case import Case
from generator.case.option import Option

FACTORS = np.append(np.geomspace(0.4, 1.25, 24), np.geomspace(1.4, 4.0, 6))  # times the own bank
CLIFF = 0.9  # of the usable share: less, and the floor has run away between two sizes


@dataclass(frozen=True)
class BySize:
    """Usable over nominal store of one kind, J or m3, (draws, sizes), both rising.

    A smaller bank sags more under the same power, so that its floor lies higher.
    """

    nominal: Array
    usable: Array
    factors: Array  # how many times the own bank each size is

    def usable_at(self, factor: float) -> Array:
        """What is usable of the own bank times a factor, (draws, 1); in proportion beyond."""
        sizes = self.factors
        inside = float(np.clip(factor, sizes[0], sizes[-1]))
        above = int(np.clip(np.searchsorted(sizes, inside), 1, sizes.size - 1))
        low, high = self.usable[:, [above - 1]], self.usable[:, [above]]
        share = (inside - sizes[above - 1]) / (sizes[above] - sizes[above - 1])
        return np.asarray((low + share * (high - low)) * factor / inside)

    def nominal_for(self, usable: Array) -> Array:
        """The least nominal store that has so much usable, (draws, 1); infinite where none has.

        Between the sizes on a straight line, but the larger of two where what is asked is lost
        between them; beyond the sizes in proportion to the last.
        """
        asked, table = np.broadcast_arrays(np.atleast_2d(usable), self.usable)
        nominal = np.broadcast_to(self.nominal, table.shape)
        above = np.clip((table < asked).sum(axis=1), 1, table.shape[1] - 1)[:, np.newaxis]
        draw = np.arange(len(table))[:, np.newaxis]
        low, high = (table[draw, above - step] for step in (1, 0))
        start, end = (nominal[draw, above - step] for step in (1, 0))
        share = (asked[:, :1] - low) / np.where(high > low, high - low, 1.0)
        lost = low / start < CLIFF * high / end
        inside = np.where(lost, end, start + share * (end - start))
        first, last = self.usable[:, :1], self.usable[:, -1:]
        larger = asked[:, :1] / np.where(last > 0.0, last, np.nan) * self.nominal[:, -1:]
        smaller = np.where(first > 0.0, asked[:, :1] / np.where(first > 0.0, first, 1.0), 1.0)
        found = np.where(asked[:, :1] > last, larger, inside)
        found = np.where(asked[:, :1] < first, smaller * self.nominal[:, :1], found)
        # lacking: no size gives what has no value; without end, and no reader is told it
        return np.where(np.isfinite(found), found, np.inf)


def by_size(case: Case, option: Option, held: Store, factors: Array = FACTORS) -> BySize:
    """The option's own bank at some factors of its size; a tank has the same share at each."""
    nominal = np.atleast_2d(np.asarray(held.nominal)) * factors
    bank, motor = option.bank, option.motor
    if bank is None or motor is None or held.aged is None:
        share = np.asarray(held.usable_aged) / np.asarray(held.nominal)
        return BySize(nominal, np.atleast_2d(share) * nominal, factors)
    peak, controller = peak_drain(motor, case.factors), controller_cut_off(bank, motor)
    beside, age = held.aged.limits.beside, held.aged.condition
    sizes = [bank.resized(float(factor)) for factor in factors]
    tried = []
    for own in sizes:
        state = bank_state(own, age, peak, controller, limits(own, beside))
        asked = peak if held.asked is None else held.asked
        tried.append(floored(own, state, asked, controller).usable)
    usable = np.hstack(np.broadcast_arrays(*(np.atleast_2d(each) for each in tried)))
    return BySize(np.broadcast_to(nominal, usable.shape), usable, factors)
