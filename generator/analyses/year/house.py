"""What do fridge, lights, pilot, cooking and heat draw, now that no diesel feeds them?"""

from __future__ import annotations

import numpy as np

from generator.analyses.motion.plant import passage_time
from generator.analyses.percentiles import first_row
from generator.arrays import Array
from generator.case.case import Case
from generator.records import number, record
from generator.tables.method import method

MODES = ("unattended", "harbour", "anchor", "day sail", "passage", "motoring")
DAY = 86400.0  # s
DAY_SAIL = method("house.day_sail")
KILOWATT_HOUR = 3.6e6
ALTERNATOR = method("house.alternator_share")


@record
class HouseMode:
    """One way of living on board, at the terminals of the propulsion bank."""

    mode: str
    consumers: float = number("watts", "draw of the consumers")
    loss: float = number("watts", "loss in converter and inverter")


@record
class HouseLoads:
    """Power at the terminals of the propulsion bank by mode, in the order of MODES."""

    lost_services: tuple[str, ...]  # that the diesel gave and that are not counted as electric
    modes: tuple[HouseMode, ...]
    cooking: float = number("energy", "cooking, a day aboard")
    heat: float = number("energy", "heat, a day aboard")
    alternator: float = number("energy", "given by the alternator in a year")  # and no more

    @property
    def power(self) -> Array:
        """At the terminals of the bank [W], by mode."""
        return np.array([mode.consumers + mode.loss for mode in self.modes])


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
        lost_services=() if loads.heat > 0.0 else tuple(gone),
        modes=tuple(
            HouseMode(mode, float(own), float(own * (1.0 / efficiency - 1.0) + kept))
            for mode, own, kept in zip(MODES, consumers, standing, strict=True)
        ),
        cooking=float(loads.cooking),
        heat=float(loads.heat),
        alternator=_alternator(case),
    )


def _alternator(case: Case) -> float:
    """What the alternator gave while the owner's legs were motored [J a year]."""
    legs = (first_row(leg) for leg in case.legs)
    time = sum(leg.times_per_year * passage_time(leg) for leg in legs)
    return float(first_row(case.engine).alternator_power * ALTERNATOR * time)
