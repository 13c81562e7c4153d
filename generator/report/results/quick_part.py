"""Which single numbers of an option do sentences and the comparison point at?"""

from __future__ import annotations

from typing import Any

import numpy as np

from generator.analyses.criteria.continuous_power import (
    at_speed,
    clean_need,
    continuous_shaft_power,
)
from generator.analyses.criteria.must_make_leg import worst_leg
from generator.analyses.findings import Findings
from generator.analyses.spread import scalar, spread
from generator.arrays import Array
from generator.report.results.suffix import PER_SI

Row = dict[str, Any]


def quick_part(found: Findings, bars: list[Row]) -> Row:
    """Needs at planned cruise, the ranges of the bars, and the worst leg."""
    curve = found.power.curves["calm"]
    cruise = float(np.asarray(found.case.planning.cruise_speed).flat[0])
    shaft = _at_cruise(np.atleast_2d(curve.demand.shaft_power), found, cruise)
    drain = _at_cruise(np.atleast_2d(curve.output.drain), found, cruise)
    worst = worst_leg(found)
    row: Row = {
        "continuous_shaft_kw": scalar(spread(continuous_shaft_power(found)).middle) / 1e3,
        "clean_need_kw": _kilowatt(clean_need(found)),
        "cruise_shaft_kw": _kilowatt(shaft),
        "cruise_battery_kw": None,
        "cruise_fuel_l_per_h": None,
        "worst_leg": None if worst is None else found.legs.results.index(worst),
        "worst_leg_ratio": None if worst is None else scalar(spread(worst.ratio).low),
    }
    if found.bank is not None:
        row["cruise_battery_kw"] = _kilowatt(drain)
    else:
        middle = scalar(spread(drain).middle)
        row["cruise_fuel_l_per_h"] = middle * PER_SI["l_per_h"] if np.isfinite(middle) else None
    return row | _ranges(bars)


def _at_cruise(values: Array, found: Findings, cruise: float) -> Array:
    return at_speed(values, found.power.speed, cruise)


def _kilowatt(values: Array) -> float | None:
    middle = scalar(spread(values).middle)
    return middle / 1e3 if np.isfinite(middle) else None


def _ranges(bars: list[Row]) -> Row:
    """Calm range as new (or of the tank) and aged, and against 20 kn at the end of the horizon."""
    wanted = {
        "calm_range_nm": ("calm", ("new", "tank")),
        "calm_aged_nm": ("calm", ("aged", "tank")),
        "wind_aged_nm": ("wind_20", ("aged", "tank")),
    }
    return {
        name: next(
            (bar["range_nm"] for bar in bars if bar["sea"] == sea and bar["bank_age"] in ages),
            None,
        )
        for name, (sea, ages) in wanted.items()
    }
