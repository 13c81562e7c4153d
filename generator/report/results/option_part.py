"""What does results.json say of one option besides its curves and its verdict?"""

from __future__ import annotations

from typing import Any

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.handling.cruising_range import Range
from generator.analyses.percentiles import scalar, spread
from generator.arrays import Array, Numbers
from generator.report.results.case_part import propeller_part
from generator.report.results.suffix import PER_SI, put

Row = dict[str, Any]
KNOT = 1852.0 / 3600.0
WIND_SPEED = 3.5 * KNOT  # the speed of the range bars against wind
NO_BANK = "no propulsion battery"


def told_of(name: str, values: Numbers, suffix: str, tail: str = "", cautious: str = "high") -> Row:
    """Middle, low and high under ``name``, each with the suffix."""
    told, factor = spread(values, cautious), PER_SI[suffix]
    end = tail or suffix
    return {
        f"{name}_{end}": scalar(told.middle) * factor,
        f"{name}_low_{end}": scalar(told.low) * factor,
        f"{name}_high_{end}": scalar(told.high) * factor,
    }


def particulars(found: Findings) -> Row:
    """What the option is made of."""
    option = found.option
    motor, diesel = option.motor, option.diesel
    return {
        "motor": None
        if motor is None
        else {
            "continuous_power_kw": put(motor.continuous_power, "kw"),
            "peak_power_kw": put(motor.peak_power, "kw"),
            "peak_time_min": put(motor.peak_time, "min"),
            "rated_speed_rpm": put(motor.rated_speed, "rpm"),
            "gear_ratio": put(motor.gear_ratio, "1"),
        },
        "diesel": None
        if diesel is None
        else {
            "rated_power_kw": put(diesel.rated_power, "kw"),
            "rated_speed_rpm": put(diesel.rated_speed, "rpm"),
            "gear_ratio": put(diesel.gear_ratio, "1"),
            "tank_l": put(diesel.tank, "l"),
        },
        "propeller": propeller_part(option.propeller),
    }


def top_speed(found: Findings) -> Row:
    """Calm top speeds."""
    top = found.power.top
    return told_of("continuous", top.continuous, "kn", cautious="low") | told_of(
        "peak", top.peak, "kn", cautious="low"
    )


def bars(found: Findings) -> list[Row]:
    """Range at planned cruise in a calm, and at 3.5 kn against wind, with the reserve apart."""
    cruise = float(np.asarray(found.case.planning.cruise_speed).flat[0])
    return [
        _bar(found, item, cruise if item.sea == "calm" else min(WIND_SPEED, cruise))
        for item in found.ranges
    ]


def slower_bar(found: Findings) -> Row | None:
    """Range one knot slower than planned cruise, in a calm, bank new; none below the curves."""
    speed = float(np.asarray(found.case.planning.cruise_speed).flat[0]) - KNOT
    item = next((item for item in found.ranges if item.sea == "calm" and item.age == "new"), None)
    if item is None or speed < found.power.speed[0]:
        return None
    return _bar(found, item, speed)


def _bar(found: Findings, item: Range, speed: float) -> Row:
    distance = _between(np.atleast_2d(item.distance), found.power.speed, speed, True)
    whole = _between(np.atleast_2d(item.whole), found.power.speed, speed, True)
    drain = _between(np.atleast_2d(item.drain), found.power.speed, speed, False)
    kept = found.reserve.of_aged if item.age == "aged" else found.reserve.of_new
    kept = np.minimum(kept, np.asarray(found.store.nominal))
    told = spread(distance)
    row: Row = {"sea": item.sea, "bank_age": item.age, "speed_kn": speed * PER_SI["kn"]}
    if scalar(told.middle) <= 0.0:
        beyond = bool(np.atleast_2d(found.power.seas[item.sea].beyond_limit)[0].any())
        why = (
            "beyond what the wave formula covers"
            if beyond and item.sea != "calm"
            else "above continuous rating"
        )
        names = ("range_nm", "range_low_nm", "range_high_nm", "whole_bank_nm", "reserve_nm")
        return row | dict.fromkeys(names) | {"range_nm_why": why}
    back = kept / drain * speed
    return (
        row
        | told_of("range", distance, "nm")
        | {
            "whole_bank_nm": scalar(spread(whole).middle) * PER_SI["nm"],
            "reserve_nm": scalar(spread(back, "low").middle) * PER_SI["nm"],
        }
    )


def _between(values: Array, speed: Array, wanted: float, zero_fails: bool) -> Array:
    """Per draw, linear between the tabulated speeds; zero on either side stays zero."""
    place = int(np.clip(np.searchsorted(speed, wanted, side="right") - 1, 0, speed.size - 2))
    share = (wanted - speed[place]) / (speed[place + 1] - speed[place])
    low, high = values[:, [place]], values[:, [place + 1]]
    if share <= 1e-9:
        return low
    mixed = low + share * (high - low)
    return np.where((low <= 0) | (high <= 0), 0.0, mixed) if zero_fails else mixed


def year_part(found: Findings) -> Row:
    """What the owner's legs take in a year, in ordinary weather."""
    legs, electric = found.legs, found.option.bank is not None
    suffix = "kwh" if electric else "l"
    return {
        "motoring_h": scalar(spread(legs.yearly_time).middle) * PER_SI["h"],
        f"energy_{suffix}": scalar(spread(legs.yearly).middle) * PER_SI[suffix],
        f"energy_{suffix}_why": "the plant does not hold the owner's speeds in a calm",
    }
