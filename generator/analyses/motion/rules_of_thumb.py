"""Is the computed power below what the trade would install for the same speed?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.motion.power import Power
from generator.analyses.percentiles import best, scalar, spread
from generator.arrays import Array
from generator.case.case import Case
from generator.physics.hull.rules_of_thumb import (
    gerr_power,
    keith_power,
    speed_length_ratio,
    wyman_power,
)


@dataclass(frozen=True)
class RulesOfThumb:
    """Installed power by three rules at planned cruise, and the computed need; W, best estimate."""

    speed: float  # m/s
    speed_length: float  # kn/ft^0.5
    gerr: float
    keith: float
    wyman: float
    computed: float  # shaft power in service, middle of the draws; nan where too many have none

    @property
    def above(self) -> bool:
        """The computed power is more than the rule would install: likely an input error."""
        return self.computed > self.gerr


def rules_of_thumb(case: Case, found: Power, cruise_power: Array) -> RulesOfThumb:
    """Gerr, Keith and Wyman at planned cruise for the boat as the option leaves her."""
    speed = scalar(np.atleast_1d(np.asarray(case.planning.cruise_speed, dtype=np.float64)))
    length = scalar(best(found.vessel.form.waterline_length))
    mass = scalar(best(found.vessel.displacement))
    return RulesOfThumb(
        speed=speed,
        speed_length=float(speed_length_ratio(speed, length)),
        gerr=float(gerr_power(speed, length, mass)),
        keith=float(keith_power(speed, length, mass)),
        wyman=float(wyman_power(speed, length, mass)),
        computed=scalar(spread(cruise_power).middle),
    )
