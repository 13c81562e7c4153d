"""What does results.json say of speed, power and range of one option?"""

from __future__ import annotations

from typing import Any

import numpy as np

from generator.analyses.cruising_range import Range
from generator.analyses.findings import Findings
from generator.analyses.plant import LIMITS
from generator.analyses.power import Curve
from generator.analyses.spread import spread
from generator.arrays import Array
from generator.report.results.suffix import PER_SI, column

Row = dict[str, Any]
SLOWEST_SHOWN = 1.5 * 1852.0 / 3600.0


def _masked(values: Array, curve: Curve) -> Array:
    """Values where the formulas hold in at least nine draws of ten, else nothing.

    The few draws without a number take the highest of the others, the pessimistic end.
    """
    table = np.atleast_2d(values)
    good = np.isfinite(table) & np.atleast_2d(curve.demand.feasible)
    if good.all():
        return table
    highest = np.where(good, table, -np.inf).max(axis=0)
    return np.where(good.mean(axis=0) >= 0.9, np.where(good, table, highest), np.nan)


def curve_rows(found: Findings, sea: str) -> list[Row]:
    """One row per tabulated speed, in one sea; middle of the draws, low and high of power."""
    curve, electric = found.power.curves[sea], found.option.motor is not None
    output, demand = curve.output, curve.demand
    shaft = spread(_masked(demand.shaft_power, curve))
    drain = spread(_masked(output.drain, curve))
    middle = {
        "resistance_n": column(spread(_masked(demand.resistance, curve)).middle, "n"),
        "thrust_n": column(spread(_masked(demand.thrust, curve)).middle, "n"),
        "shaft_speed_rpm": column(spread(_masked(demand.shaft_speed, curve)).middle, "rpm"),
        "motor_rpm": column(spread(_masked(output.turns, curve)).middle, "rpm"),
        "propeller_efficiency": column(
            spread(_masked(demand.propeller_efficiency, curve)).middle, "1"
        ),
        "shaft_power_kw": column(shaft.middle, "kw"),
        "shaft_power_low_kw": column(shaft.low, "kw"),
        "shaft_power_high_kw": column(shaft.high, "kw"),
        "clean_shaft_power_kw": column(
            spread(_masked(found.power.clean.shaft_power, Curve(found.power.clean, output))).middle,
            "kw",
        ),
    }
    if electric:
        for name, values in (("", drain.middle), ("_low", drain.low), ("_high", drain.high)):
            middle[f"battery_power{name}_kw"] = column(values, "kw")
    else:
        middle["fuel_rate_l_per_h"] = column(drain.middle, "l_per_h")
    load = spread(np.nan_to_num(_masked(output.load, curve), nan=np.inf))
    peak = spread(np.nan_to_num(_masked(output.peak_load, curve), nan=np.inf))
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
    if not electric:
        row |= {"battery_power_kw": None, "battery_power_kw_why": "no propulsion battery"}
        row |= {"battery_power_low_kw": None, "battery_power_high_kw": None}
    row["within_continuous"] = bool(load[place] <= 1.0)
    row["within_peak"] = bool(peak[place] <= 1.0)
    binding = np.atleast_2d(curve.output.binding)[0, place]
    row["limit"] = LIMITS[int(binding)] if load[place] > 1.0 else None
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
    drain = spread(np.nan_to_num(item.drain)).middle / speed
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
            row |= {name: column[place] for name, column in values.items()}
        else:
            row |= dict.fromkeys(values) | {"range_nm_why": _why_not(found, curve, int(place))}
        rows.append(row)
    return rows


def _why_not(found: Findings, curve: Curve, place: int) -> str:
    if np.atleast_2d(curve.demand.beyond_limit)[0, place]:
        return "not by engine alone: the sea is beyond the added-resistance formula"
    if not np.atleast_2d(curve.demand.feasible)[0, place]:
        return "beyond what the hull form or the propeller series allow"
    if np.atleast_2d(curve.output.load)[0, place] > 1.0:
        limit = LIMITS[int(np.atleast_2d(curve.output.binding)[0, place])]
        return f"above the continuous rating: {limit}"
    return "nothing left above the reserve"
