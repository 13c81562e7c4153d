"""Which rows stand side by side, and where is a difference larger than its doubt?"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import scalar, spread
from generator.arrays import Numbers

Row = dict[str, Any]


@dataclass(frozen=True)
class Line:
    """One row of the comparison: where its numbers are, and whether more is better."""

    id: str
    label: str
    form: str
    key: str  # under options.N
    better: int  # +1 more, -1 less, 0 neither
    values: Callable[[Findings], Numbers | None] | None = None


LINES = (
    Line("word", "Verdict", "text", "verdict.word", 0),
    Line("continuous", "Continuous power at the shaft, calm", "power", "continuous_shaft_kw", 0),
    Line(
        "shaft_cruise", "Shaft power at planned cruise, in service", "power", "cruise_shaft_kw", 0
    ),
    Line("battery_cruise", "Battery power at planned cruise", "power", "cruise_battery_kw", -1),
    Line(
        "top_continuous",
        "Calm speed, continuous",
        "speed",
        "top_speed.continuous_kn",
        1,
        lambda found: found.power.top.continuous,
    ),
    Line(
        "top_peak",
        "Calm speed, peak",
        "speed",
        "top_speed.peak_kn",
        1,
        lambda found: found.power.top.peak,
    ),
    Line("range_new", "Range to reserve at cruise, calm, new", "distance", "calm_range_nm", 1),
    Line("range_aged", "Range to reserve at cruise, calm, aged", "distance", "calm_aged_nm", 1),
    Line("range_wind", "Range to reserve against 20 kn, aged", "distance", "wind_aged_nm", 1),
    Line("nominal", "Bank, nominal", "energy", "bank.nominal_kwh", 0),
    Line(
        "available",
        "Above the reserve, aged",
        "energy",
        "bank.available_aged_kwh",
        1,
        lambda found: None if found.bank is None else found.bank.available_aged,
    ),
    Line("peak_current", "Battery current at peak", "current", "bank.peak_current_a", -1),
    Line("must_make", "Worst must-make leg: in hand, pessimistic", "ratio", "worst_leg_ratio", 1),
    Line(
        "net",
        "Net change of mass",
        "mass:signed",
        "weight.net_kg",
        0,
        lambda found: found.weight.net,
    ),
    Line("sinkage", "Sinkage (positive: deeper)", "length_small:signed", "weight.sinkage_mm", 0),
    Line("trim", "Trim (positive: bow down)", "length_small:signed", "weight.trim_mm", 0),
    Line(
        "first",
        "First cost",
        "money",
        "cost.first_money",
        -1,
        lambda found: found.cost.first,
    ),
    Line("yearly", "Energy and service a year", "money", "cost.yearly_money", -1),
    Line(
        "present",
        "Cost over the horizon, present value",
        "money",
        "cost.present_value_money",
        -1,
        lambda found: found.cost.present_value,
    ),
    Line("keep", "  against keeping the diesel", "money:signed", "cost.against_keep_money", 0),
    Line("new", "  against a new diesel", "money:signed", "cost.against_new_diesel_money", 0),
)


def comparison_part(options: tuple[Findings, ...]) -> Row:
    """Rows for all options; between two motors the better is marked only beyond the doubt."""
    motors = [found for found in options if found.option.motor is not None][:2]
    return {"rows": [_row(line, options, motors) for line in LINES]}


def _row(line: Line, options: tuple[Findings, ...], motors: list[Findings]) -> Row:
    keys = [f"options.{found.place}.{line.key}" for found in options]
    row: Row = {"id": line.id, "label": line.label, "form": line.form, "keys": keys}
    better, why = _better(line, motors)
    return row | {"better": better, "why": why}


def _better(line: Line, motors: list[Findings]) -> tuple[int | None, str | None]:
    """Judged draw by draw, so that shared doubt cancels: nine draws of ten must agree."""
    if line.values is None or line.better == 0 or len(motors) < 2:
        return None, None
    first, second = line.values(motors[0]), line.values(motors[1])
    if first is None or second is None:
        return None, None
    gap = spread(line.better * (np.asarray(first) - np.asarray(second)))
    if scalar(gap.low) > 0:
        return motors[0].place, None
    if scalar(gap.high) < 0:
        return motors[1].place, None
    return None, "no real difference"
