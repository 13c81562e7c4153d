"""Which single numbers of an option do sentences and the comparison point at?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field

from generator.analyses.findings import Findings
from generator.analyses.handling.range_bars import RangeBar
from generator.analyses.percentiles import scalar, spread
from generator.arrays import Array
from generator.records import number, record

AT_CRUISE = ("clean_need", "cruise_shaft", "cruise_thrust", "cruise_battery", "cruise_fuel")
# The range that each stands for: its sea, and the ages of the bank, of which one is there.
RANGES = {
    "calm_range": ("calm", ("new", "tank")),
    "calm_aged": ("calm", ("aged", "tank")),
    "wind_aged": ("wind_20", ("aged", "tank")),
}


@record
class KeyNumbers:
    """Needs at planned cruise, the ranges of the bars, and the worst leg that must be made."""

    worst_leg: int | None
    continuous_shaft: Array = number("power", "continuous power at the shaft, calm", "low")
    clean_need: Array = number("power", "shaft power of the clean hull at planned cruise", "high")
    cruise_shaft: Array = number("power", "shaft power at planned cruise, in service", "high")
    cruise_thrust: Array = number("force", "thrust at planned cruise, in service", "high")
    cruise_battery: Array | None = number("power", "battery power at planned cruise", "high")
    cruise_fuel: Array | None = number("fuel_rate", "fuel at planned cruise", "high")
    calm_range: Array | None = number("distance", "range to reserve at cruise, calm, new", "low")
    calm_aged: Array | None = number("distance", "range to reserve at cruise, calm, aged", "low")
    wind_aged: Array | None = number("distance", "range to reserve against 20 kn, aged", "low")
    worst_leg_ratio: float | None = number(
        "ratio", "left over needed on the worst leg that must be made, tenth percentile"
    )
    absent: Mapping[str, str] = field(default_factory=dict)

    @classmethod
    def of(cls, found: Findings) -> KeyNumbers:
        """Those of an option."""
        key, electric = found.key, found.bank is not None
        worst = None if key.worst_leg is None else found.legs.results[key.worst_leg]
        bars = {name: _bar(found, *wanted) for name, wanted in RANGES.items()}
        unused = (
            ("cruise_fuel", "no_tank") if electric else ("cruise_battery", "no_propulsion_bank")
        )
        return cls(
            worst_leg=key.worst_leg,
            continuous_shaft=key.continuous_shaft_power,
            clean_need=key.clean_need,
            cruise_shaft=key.cruise_shaft_power,
            cruise_thrust=key.cruise_thrust,
            cruise_battery=key.cruise_drain if electric else None,
            cruise_fuel=None if electric else key.cruise_drain,
            **{name: None if bar is None else bar.range for name, bar in bars.items()},
            worst_leg_ratio=None if worst is None else scalar(spread(worst.ratio, "low").low),
            absent=dict.fromkeys(AT_CRUISE, "cruise_beyond")
            | dict([unused])
            | {"worst_leg_ratio": "no_such_leg", "worst_leg": "no_such_leg"}
            | {name: _why(bar) for name, bar in bars.items()},
        )


def _bar(found: Findings, sea: str, ages: tuple[str, ...]) -> RangeBar | None:
    bars = (bar for bar in found.bars.at_cruise if bar.sea == sea and bar.bank_age in ages)
    return next(bars, None)


def _why(bar: RangeBar | None) -> str:
    """Why a range is absent."""
    return "not_asked_for" if bar is None else bar.absent["range"]
