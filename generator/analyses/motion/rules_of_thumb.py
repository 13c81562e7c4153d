"""Is the computed power below what the trade would install for the same speed?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field

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
from generator.records import number, record


@record
class RulesOfThumb:
    """Installed power by three rules at planned cruise, and the computed need in service.

    ``above``: that is more than the first would install, likely an input error. The need is the
    middle of the draws; nan where too many have none.
    """

    above: bool
    speed: float = number("speed", "planned cruise")
    speed_length: float = number("ratio", "knots over root of feet")
    gerr: float = number("power", "power by Gerr's rule")
    keith: float = number("power", "power by Keith's rule")
    wyman: float = number("power", "power by Wyman's rule")
    computed: float = number("power", "computed need at planned cruise")
    of_gerr: float = number("share", "computed need over Gerr's rule")
    absent: Mapping[str, str] = field(
        default_factory=lambda: dict.fromkeys(("computed", "of_gerr"), "cruise_beyond_formulas")
    )


def rules_of_thumb(case: Case, found: Power, cruise_power: Array) -> RulesOfThumb:
    """Gerr, Keith and Wyman at planned cruise for the boat as the option leaves her."""
    speed = scalar(np.atleast_1d(np.asarray(case.planning.cruise_speed, dtype=np.float64)))
    length = scalar(best(found.vessel.form.waterline_length))
    mass = scalar(best(found.vessel.displacement))
    gerr, computed = float(gerr_power(speed, length, mass)), scalar(spread(cruise_power).middle)
    return RulesOfThumb(
        above=computed > gerr,
        speed=speed,
        speed_length=float(speed_length_ratio(speed, length)),
        gerr=gerr,
        keith=float(keith_power(speed, length, mass)),
        wyman=float(wyman_power(speed, length, mass)),
        computed=computed,
        of_gerr=computed / gerr,
    )
