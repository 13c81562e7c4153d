"""What do fridge, lights, pilot, cooking and heat draw, now that no diesel feeds them?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.motion.plant import passage_time
from generator.analyses.percentiles import first_row
from generator.arrays import Array
from generator.case.case import Case
from generator.tables.method import method

MODES = ("unattended", "harbour", "anchor", "day sail", "passage", "motoring")
DAY = 86400.0  # s
DAY_SAIL = method("house.day_sail")
KILOWATT_HOUR = 3.6e6
ALTERNATOR = method("house.alternator_share")


@dataclass(frozen=True)
class HouseLoads:
    """Power at the terminals of the propulsion bank by mode [W], and where it goes.

    ``consumers`` is what the consumers get, ``loss`` what converter and inverter take on top;
    both (6,) in the order of MODES. ``alternator_year`` is what the diesel's alternator gave in
    a year of motoring and gives no more [J].
    """

    modes: tuple[str, ...]
    consumers: Array
    loss: Array
    cooking: float  # J a day aboard, in consumers
    heat: float
    lost_services: tuple[str, ...]  # that the diesel gave and that are not counted as electric
    alternator_year: float

    @property
    def power(self) -> Array:
        """At the terminals of the bank [W], by mode."""
        return np.asarray(self.consumers + self.loss)


def house(case: Case) -> HouseLoads:
    """Mean power of each way of living on board, through the converter."""
    loads = first_row(case.house)
    daily = np.array([loads.harbour, loads.daily]) / DAY
    under_way = [loads.day_sail / DAY_SAIL, loads.passage / DAY, loads.under_way]
    aboard = float((loads.cooking + loads.heat) / DAY)
    consumers = np.array([loads.unattended, *(daily + aboard), *under_way], dtype=np.float64)
    consumers[4] += aboard  # who is at sea by night cooks there
    standing = np.full(len(MODES), float(loads.converter_standing))
    if loads.cooking > 0.0:
        standing[[1, 2, 4]] += float(loads.inverter_standing)
    efficiency = float(loads.converter_efficiency)
    gone = [name for name in loads.services if name in ("hot water", "cabin heat")]
    return HouseLoads(
        modes=MODES,
        consumers=consumers,
        loss=consumers * (1.0 / efficiency - 1.0) + standing,
        cooking=float(loads.cooking),
        heat=float(loads.heat),
        lost_services=() if loads.heat > 0.0 else tuple(gone),
        alternator_year=_alternator(case),
    )


def _alternator(case: Case) -> float:
    """What the alternator gave while the owner's legs were motored [J a year]."""
    legs = (first_row(leg) for leg in case.legs)
    time = sum(leg.times_per_year * passage_time(leg) for leg in legs)
    return float(first_row(case.engine).alternator_power * ALTERNATOR * time)
