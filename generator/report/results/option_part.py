"""What does results.json say of one option besides its curves and its verdict?"""

from __future__ import annotations

from typing import Any

import numpy as np

from generator.analyses.cruising_range import Range
from generator.analyses.findings import Findings
from generator.analyses.legs import LegResult
from generator.analyses.spread import scalar, spread
from generator.arrays import Array, Numbers
from generator.report.results.case_part import propeller_part
from generator.report.results.energy_part import condition_part
from generator.report.results.suffix import PER_SI, put
from generator.report.results.use_part import slow_row

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
        why = "not by engine alone" if beyond and item.sea != "calm" else "above continuous rating"
        names = ("range_nm", "range_low_nm", "range_high_nm", "whole_bank_nm", "reserve_nm")
        return row | dict.fromkeys(names) | {"range_nm_why": why}
    back = np.nan_to_num(kept / drain * speed)
    return (
        row
        | told_of("range", distance, "nm")
        | {
            "whole_bank_nm": scalar(spread(whole).middle) * PER_SI["nm"],
            "reserve_nm": scalar(spread(back).middle) * PER_SI["nm"],
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


def bank_part(found: Findings) -> Row | None:
    """Energy, reserve and currents of the bank."""
    bank, option = found.bank, found.option
    if bank is None or option.bank is None:
        return None
    kept = found.reserve
    return {
        "chemistry": option.bank.chemistry,
        "nominal_voltage_v": put(option.bank.nominal_voltage, "v"),
        "charge_ah": put(option.bank.charge, "ah"),
        "nominal_kwh": put(bank.nominal, "kwh"),
        **told_of("usable", bank.usable, "kwh"),
        **told_of("usable_aged", bank.usable_aged, "kwh"),
        **told_of("reserve", kept.of_new, "kwh"),
        **told_of("reserve_aged", kept.of_aged, "kwh"),
        **told_of("available", bank.available, "kwh"),
        **told_of("available_aged", bank.available_aged, "kwh"),
        "reserve_by": _by(kept.demand, kept.share_aged),
        "mass_kg": None if bank.mass is None else scalar(spread(bank.mass).middle),
        "cruise_current_a": scalar(spread(np.nan_to_num(bank.cruise_current)).middle),
        "cruise_rate_c": scalar(spread(np.nan_to_num(bank.cruise_rate)).middle) * PER_SI["c"],
        "peak_current_a": scalar(spread(np.nan_to_num(bank.peak_current, nan=np.inf)).middle),
        "peak_current_why": None
        if np.isfinite(scalar(spread(np.nan_to_num(bank.peak_current, nan=np.inf)).middle))
        else "even full, the bank does not hold peak power",
        "peak_rate_c": scalar(spread(np.nan_to_num(bank.peak_rate, nan=np.inf)).middle)
        * PER_SI["c"],
        "discharge_limit_a": scalar(spread(bank.limit).middle),
        **condition_part(found, bank),
    }


def reserve_part(found: Findings) -> Row:
    """How the reserve comes about."""
    kept, electric = found.reserve, found.option.bank is not None
    suffix = "kwh" if electric else "l"
    return {
        "by": _by(kept.demand, kept.share_new),
        "by_aged": _by(kept.demand, kept.share_aged),
        **told_of("share", kept.share_new, suffix),
        **told_of("share_aged", kept.share_aged, suffix),
        **told_of("demand", kept.demand, suffix),
        f"manoeuvring_{suffix}": scalar(spread(kept.manoeuvring).middle) * PER_SI[suffix],
        f"holding_{suffix}": scalar(spread(kept.holding).middle) * PER_SI[suffix],
        "hold_thrust_n": scalar(spread(kept.hold_thrust).middle),
        "hold_shaft_power_kw": scalar(spread(kept.hold_shaft_power).middle) / 1e3,
        "beyond_limit": kept.beyond_limit,
    }


def _by(demand: Numbers, share: Numbers) -> str:
    """Which of the two is the larger in the middle of the draws."""
    more = np.asarray(demand) - np.asarray(share)
    return "demand" if scalar(spread(more).middle) > 0 else "share"


def legs_part(found: Findings) -> list[Row]:
    """Every leg under this option."""
    rows = zip(found.legs.results, found.use.slow, strict=True)
    return [_leg(found, item) | slow_row(slow) for item, slow in rows]


def _leg(found: Findings, item: LegResult) -> Row:
    suffix = "kwh" if found.option.bank is not None else "l"
    feasible = np.isfinite(item.need)
    share = float(feasible[1:].mean() if feasible.shape[0] > 1 else feasible.mean())
    ratio = spread(item.ratio)
    speed = put(item.leg.wind, "kn")
    row: Row = {
        "name": item.leg.name,
        "must_make": item.must_make,
        "wind_kn": speed,
        **told_of("available", item.available, suffix),
        "after": None if item.leg.follows is None else found.case.legs[item.leg.follows].name,
        "after_why": "it starts charged",
        f"before_{suffix}": put(_finite(item.before), suffix),
        f"before_{suffix}_why": "the way before it cannot be made",
        "ratio": scalar(ratio.middle),
        "ratio_p10": scalar(ratio.low),
        "feasible_share": share,
        "fits": bool(scalar(ratio.low) >= 1.0),
        "unit": suffix,
    }
    if share < 0.5:
        why = (
            "not by engine alone: the sea is beyond the added-resistance formula"
            if item.beyond_limit
            else "continuous power does not hold it"
        )
        names = (f"need_{suffix}", f"need_low_{suffix}", f"need_high_{suffix}", "hours_h")
        row |= dict.fromkeys((*names, "exposed_speed_kn")) | {"why": why}
        return row
    good = np.where(feasible, item.need, np.nanmax(item.need))
    speed_made = np.atleast_2d(item.exposed_speed)
    row |= told_of("need", good, suffix)
    row["hours_h"] = scalar(spread(np.nan_to_num(item.time)).middle) * PER_SI["h"]
    row["exposed_speed_kn"] = scalar(spread(np.nan_to_num(speed_made)).middle) * PER_SI["kn"]
    row["why"] = "" if row["fits"] else "less than the need in more than one draw of ten"
    return row


def _finite(values: Array) -> float | None:
    """Middle of the draws; none where half of them have none."""
    middle = scalar(spread(values).middle)
    return middle if np.isfinite(middle) else None


def year_part(found: Findings) -> Row:
    """What the owner's legs take in a year, in ordinary weather."""
    legs, electric = found.legs, found.option.bank is not None
    suffix = "kwh" if electric else "l"
    return {
        "motoring_h": scalar(spread(legs.yearly_time).middle) * PER_SI["h"],
        f"energy_{suffix}": scalar(spread(np.nan_to_num(legs.yearly)).middle) * PER_SI[suffix],
    }
