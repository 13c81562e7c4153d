"""What does results.json say of speed, power and range of one option?"""

from __future__ import annotations

from typing import Any

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.handling.cruising_range import Range
from generator.analyses.motion.plant import LIMITS
from generator.analyses.motion.power import Curve
from generator.analyses.percentiles import Spread, spread
from generator.arrays import Array, Flags
from generator.report.results.suffix import BEYOND, PER_SI, column, excused

Row = dict[str, Any]
SLOWEST_SHOWN = 1.5 * 1852.0 / 3600.0
MOST_BEYOND = 0.1  # share of draws beyond the formulas above which a speed is not tabulated:
# the band of its power would have no upper end


def _told(values: Array, feasible: Flags, cautious: str = "high") -> Spread:
    """Percentiles at each speed; none where the formulas hold in less than nine draws of ten."""
    table = np.atleast_2d(values)
    good = np.isfinite(table) & np.atleast_2d(feasible)
    if not good.all():
        table = np.where(good, table, np.nan)
    return spread(table, cautious, MOST_BEYOND)


def curve_rows(found: Findings, sea: str) -> list[Row]:
    """One row per tabulated speed, in one sea; middle of the draws, low and high of power."""
    curve, electric = found.power.curves[sea], found.option.motor is not None
    output, demand, clean = curve.output, curve.demand, found.power.clean
    good = demand.feasible
    shaft, drain = _told(demand.shaft_power, good), _told(output.drain, good)
    efficiency = _told(demand.propeller_efficiency, good, "low")
    middle = {
        "resistance_n": column(_told(demand.resistance, good).middle, "n"),
        "thrust_n": column(_told(demand.thrust, good).middle, "n"),
        "shaft_speed_rpm": column(_told(demand.shaft_speed, good).middle, "rpm"),
        "motor_rpm": column(_told(output.turns, good).middle, "rpm"),
        "propeller_efficiency": column(efficiency.middle, "1"),
        "shaft_power_kw": column(shaft.middle, "kw"),
        "shaft_power_low_kw": column(shaft.low, "kw"),
        "shaft_power_high_kw": column(shaft.high, "kw"),
        "clean_shaft_power_kw": column(_told(clean.shaft_power, clean.feasible).middle, "kw"),
    }
    if electric:
        for name, values in (("", drain.middle), ("_low", drain.low), ("_high", drain.high)):
            middle[f"battery_power{name}_kw"] = column(values, "kw")
    else:
        middle["fuel_rate_l_per_h"] = column(drain.middle, "l_per_h")
    load, peak = _told(output.load, good), _told(output.peak_load, good)
    return [
        _row(found, curve, middle, load.middle, peak.middle, place, electric)
        for place in range(found.power.speed.size)
        if found.power.speed[place] >= SLOWEST_SHOWN - 1e-9
        and middle["shaft_power_kw"][place] is not None
    ]


def _row(
    found: Findings,
    curve: Curve,
    middle: dict[str, list[float | None]],
    load: Array,
    peak: Array,
    place: int,
    electric: bool,
) -> Row:
    row: Row = {"speed_kn": found.power.speed[place] * PER_SI["kn"]}
    row |= {name: values[place] for name, values in middle.items()}
    row |= {f"{name}_why": BEYOND for name in middle if row[name] is None}
    if not electric:
        row |= {"battery_power_kw": None, "battery_power_kw_why": "no propulsion battery"}
        row |= {"battery_power_low_kw": None, "battery_power_high_kw": None}
    row["within_continuous"] = bool(load[place] <= 1.0)
    row["within_peak"] = bool(peak[place] <= 1.0)
    binding = np.atleast_2d(curve.output.binding)[0, place]
    row["limit"] = None if row["within_continuous"] else LIMITS[int(binding)]
    return row


def wind_rows(found: Findings) -> list[Row]:
    """The same against wind and sea; rows beyond the wave formula say so."""
    rows: list[Row] = []
    for sea in found.power.curves:
        if sea == "calm":
            continue
        beyond = bool(np.atleast_2d(found.power.seas[sea].beyond_limit)[0].any())
        for row in curve_rows(found, sea):
            rows.append({"sea": sea, "beyond_limit": beyond, **row})
    return rows


def range_rows(found: Findings) -> list[Row]:
    """Range to reserve by sea, age of the bank and speed."""
    return [row for item in found.ranges for row in _range_rows(found, item)]


def _range_rows(found: Findings, item: Range) -> list[Row]:
    speed, curve = found.power.speed, found.power.curves[item.sea]
    per_mile = "kwh_per_nm" if found.option.bank is not None else "l_per_nm"
    energy = f"energy_per_mile_{per_mile.split('_')[0]}"
    told = spread(item.distance)
    drain = spread(item.drain).middle / speed
    values = {
        "range_nm": told.middle * PER_SI["nm"],
        "range_low_nm": told.low * PER_SI["nm"],
        "range_high_nm": told.high * PER_SI["nm"],
        "endurance_h": spread(item.endurance).middle * PER_SI["h"],
        "whole_bank_range_nm": spread(item.whole).middle * PER_SI["nm"],
        energy: drain * PER_SI[per_mile],
    }
    rows: list[Row] = []
    for place in np.flatnonzero(speed >= SLOWEST_SHOWN - 1e-9):
        row: Row = {
            "speed_kn": speed[place] * PER_SI["kn"],
            "sea": item.sea,
            "bank_age": item.age,
        }
        if told.middle[place] > 0.0:
            row |= excused({name: column[place] for name, column in values.items()}, BEYOND)
        else:
            row |= dict.fromkeys(values) | {"range_nm_why": _why_not(found, curve, int(place))}
        rows.append(row)
    return rows


def _why_not(found: Findings, curve: Curve, place: int) -> str:
    if np.atleast_2d(curve.demand.beyond_limit)[0, place]:
        return "the sea is beyond what the wave formula covers"
    if not np.atleast_2d(curve.demand.feasible)[0, place]:
        return "beyond what the hull form or the propeller series allow"
    if np.atleast_2d(curve.output.load)[0, place] > 1.0:
        limit = LIMITS[int(np.atleast_2d(curve.output.binding)[0, place])]
        return f"above the continuous rating: {limit}"
    return "nothing left above the reserve"
