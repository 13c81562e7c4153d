"""Which single numbers of an option do sentences and the comparison point at?"""

from __future__ import annotations

from typing import Any

from generator.analyses.findings import Findings
from generator.analyses.percentiles import scalar, spread
from generator.report.results.suffix import CRUISE_BEYOND, PER_SI, excused

Row = dict[str, Any]


def quick_part(found: Findings, bars: list[Row]) -> Row:
    """Needs at planned cruise, the ranges of the bars, and the worst leg."""
    key = found.key
    worst = None if key.worst_leg is None else found.legs.results[key.worst_leg]
    row: Row = {
        "continuous_shaft_kw": scalar(spread(key.continuous_shaft_power, "low").middle) / 1e3,
        **_cruise(found),
        "cruise_battery_kw": None,
        "cruise_fuel_l_per_h": None,
        "worst_leg": key.worst_leg,
        "worst_leg_ratio": None if worst is None else scalar(spread(worst.ratio, "low").low),
    }
    drain = scalar(spread(key.cruise_drain).middle)
    taken = {"cruise_battery_kw": drain / 1e3}
    if found.bank is None:
        taken = {"cruise_fuel_l_per_h": drain * PER_SI["l_per_h"]}
    return row | excused(taken, CRUISE_BEYOND) | _ranges(bars)


def _cruise(found: Findings) -> Row:
    """Thrust, needs and doubt of the shaft power at planned cruise; absent beyond the curve."""
    key = found.key
    thrust, shaft = spread(key.cruise_thrust), spread(key.cruise_shaft_power)
    told = {
        "clean_need_kw": scalar(spread(key.clean_need).middle) / 1e3,
        "cruise_shaft_kw": scalar(shaft.middle) / 1e3,
        "cruise_thrust_n": scalar(thrust.middle),
        "cruise_shaft_low_kw": scalar(shaft.low) / 1e3,
        "cruise_shaft_high_kw": scalar(shaft.high) / 1e3,
    }
    return excused(told, CRUISE_BEYOND)


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
