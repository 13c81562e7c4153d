"""On which legs is the water too shallow or too narrow for a deep-water curve?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.motion.hull import Vessel
from generator.analyses.percentiles import best, scalar, spread
from generator.case.case import Case
from generator.case.usage import Leg
from generator.physics.hull.confined import blockage, depth_froude_number
from generator.tables.load import read_table

LIMITS = "rules/confined_water"


@dataclass(frozen=True)
class ConfinedLeg:
    """One leg whose depth or width is given; shares at the unfavourable end of their doubt."""

    place: int  # of the leg in the case
    depth_froude: float
    blockage: float | None
    froude_limit: float
    blockage_limit: float
    fastest: float  # speed [m/s] at which the depth is still as good as deep water

    @property
    def too_shallow(self) -> bool:
        """Whether waves of her own feel the bottom."""
        return self.depth_froude > self.froude_limit

    @property
    def too_narrow(self) -> bool:
        """Whether the water running back past her counts."""
        return self.blockage is not None and self.blockage > self.blockage_limit


def confined_legs(case: Case, vessel: Vessel) -> tuple[ConfinedLeg, ...]:
    """Depth Froude number and blockage of every leg that says how deep or wide it is."""
    found = (_leg(case, vessel, place, leg) for place, leg in enumerate(case.legs))
    return tuple(item for item in found if item is not None)


def _leg(case: Case, vessel: Vessel, place: int, leg: Leg) -> ConfinedLeg | None:
    if leg.depth is None:
        return None
    froude = scalar(spread(depth_froude_number(leg.speed, leg.depth)).high)
    filled = None
    if leg.width is not None:
        section = blockage(vessel.form, case.boat.hull.draught, leg.width, leg.depth)
        filled = scalar(spread(np.asarray(section)).high)
    return ConfinedLeg(
        place=place,
        depth_froude=froude,
        blockage=filled,
        froude_limit=_limit("depth_froude"),
        blockage_limit=_limit("blockage"),
        fastest=_limit("depth_froude") / froude * scalar(best(leg.speed)),
    )


def _limit(name: str) -> float:
    """Highest value at which the deep-water curve is taken as it is [-]."""
    table = read_table(LIMITS)
    return float(table.column("limit")[table.row_of("quantity", name)])
