"""How hard does an option pull against a wind, beside the engine that is in her, and how long?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.handling.headwind import Headwind
from generator.analyses.handling.yardstick import SPEEDS, Yardstick, effective
from generator.analyses.motion.plant import peak_lasts
from generator.analyses.motion.pull import drain_of, greatest_pull
from generator.analyses.store.bank_state import taken
from generator.analyses.store.outfit import Outfit
from generator.arrays import Array
from generator.tables.method import method

HOLDING_TIME = method("lee_shore.holding_time")


@dataclass(frozen=True)
class Holding:
    """Pull that lasts half an hour (at 3 kn) and for good (at 3.5 kn), over that of the engine.

    Shares and N per draw, with the suction on the hull taken off. ``lasts`` is how long a full
    bank, aged, keeps the pull of 3 kn up above nothing but its floor [s]; infinite with a tank.
    """

    at_peak: bool  # the peak rating may be used for so long
    pull: Array  # N, at SPEEDS
    share: Array  # of the engine's
    lasts: Array
    ladder: Array  # speed made good against WINDS on the rating that lasts [m/s]


def holding(outfit: Outfit, against: Headwind, yard: Yardstick) -> Holding:
    """The rating that lasts half an hour for the lee shore, the continuous one for hours."""
    option, factors = outfit.option, outfit.case.factors
    peak = peak_lasts(option, HOLDING_TIME)
    pulls = [
        greatest_pull(option, outfit.power, factors, SPEEDS[[place]], each)
        for place, each in ((0, peak), (1, False))
    ]
    pull = np.hstack(np.broadcast_arrays(*(effective(option, each.thrust) for each in pulls)))
    drain = np.atleast_2d(drain_of(option, pulls[0], factors))
    loss = np.atleast_2d(taken(option.bank, outfit.store.aged, drain))
    usable = np.asarray(outfit.store.usable_aged)
    return Holding(
        at_peak=peak,
        pull=pull,
        share=np.asarray(pull / yard.pull),
        lasts=np.asarray(usable / loss),
        ladder=(against.peak if peak else against.continuous).speed,
    )
