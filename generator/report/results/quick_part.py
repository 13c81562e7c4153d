"""Which single numbers of an option do sentences and the comparison point at?"""

from __future__ import annotations

from typing import Any

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.spread import scalar, spread
from generator.arrays import Array
from generator.report.results.suffix import PER_SI

Row = dict[str, Any]


def quick_part(found: Findings, bars: list[Row]) -> Row:
    """Needs at planned cruise, the ranges of the bars, and the worst leg."""
    key = found.key
    worst = None if key.worst_leg is None else found.legs.results[key.worst_leg]
    row: Row = {
        "continuous_shaft_kw": scalar(spread(key.continuous_shaft_power).middle) / 1e3,
        "clean_need_kw": _kilowatt(key.clean_need),
        "cruise_shaft_kw": _kilowatt(key.cruise_shaft_power),
        **_cruise(found),
        "cruise_battery_kw": None,
        "cruise_fuel_l_per_h": None,
        "worst_leg": key.worst_leg,
        "worst_leg_ratio": None if worst is None else scalar(spread(worst.ratio).low),
    }
    if found.bank is not None:
        row["cruise_battery_kw"] = _kilowatt(key.cruise_drain)
    else:
        middle = scalar(spread(key.cruise_drain).middle)
        row["cruise_fuel_l_per_h"] = middle * PER_SI["l_per_h"] if np.isfinite(middle) else None
    return row | _ranges(bars)


def _cruise(found: Findings) -> Row:
    """Thrust and doubt of the shaft power at planned cruise itself; absent beyond the curve."""
    key = found.key
    thrust, shaft = spread(key.cruise_thrust), spread(key.cruise_shaft_power)
    told = {
        "cruise_thrust_n": scalar(thrust.middle),
        "cruise_shaft_low_kw": scalar(shaft.low) / 1e3,
        "cruise_shaft_high_kw": scalar(shaft.high) / 1e3,
    }
    return {name: value if np.isfinite(value) else None for name, value in told.items()}


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
