"""What does results.json say of bank, motor duty, one fault, losses and other chemistries?"""

from __future__ import annotations

from typing import Any

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import best, scalar, spread
from generator.analyses.store.duty import Duty, Hold
from generator.analyses.store.one_fault import OneFault
from generator.arrays import Array, Numbers
from generator.report.results.suffix import BEYOND, CRUISE_BEYOND, NOT_MOTORED, PER_SI, excused

Row = dict[str, Any]
FOR_GOOD = 24 * 3600.0  # s; what is held for a day is held for good
KNOT = PER_SI["kn"]


def _middle(values: Numbers, suffix: str = "1", cautious: str = "high") -> float:
    return scalar(spread(np.asarray(values), cautious).middle) * PER_SI[suffix]


def _minutes(name: str, seconds: Array) -> Row:
    """Middle and pessimistic end of a time in minutes; absent where it is held for good."""
    told = spread(np.minimum(seconds, 2.0 * FOR_GOOD), "low")
    row: Row = {}
    for end, value in (("", told.middle), ("_low", told.low)):
        good = scalar(value) >= FOR_GOOD
        row[f"{name}{end}_min"] = None if good else scalar(value) * PER_SI["min"]
    row[f"{name}_why"] = "for good" if row[f"{name}_min"] is None else None
    return row


def _hold(hold: Hold, place: int) -> Row:
    share = hold.possible[:, [place]]
    possible = float(share[1:].mean() if share.shape[0] > 1 else share.mean())
    return {
        **excused({"load_share": _middle(hold.load[:, [place]])}, BEYOND),
        "possible_share": possible,
        "heat_w": _middle(hold.heat[:, [place]]) if possible >= 0.5 else None,
        "heat_why": "cannot be held",
        **_minutes("cold", hold.from_cold[:, [place]]),
        **_minutes("warm", hold.after_cruise[:, [place]]),
        "state": _state(hold, place, possible),
    }


def _state(hold: Hold, place: int, possible: float) -> str:
    """For good, for a time, or not at all, in the middle of the draws."""
    if possible < 0.5:
        return "not"
    middle = scalar(spread(np.minimum(hold.after_cruise[:, [place]], 2 * FOR_GOOD), "low").middle)
    return "for good" if middle >= FOR_GOOD else "for a time"


def duty_part(found: Findings) -> Row | None:
    """The motor in its warm space, and how long it holds what."""
    duty, motor, set_to = found.duty, found.option.motor, found.power.as_set
    if duty is None or motor is None or set_to is None:
        return None
    before, of_motor, of_controller = duty.chart
    return {
        "plate_kw": _middle(motor.continuous_power, "kw"),
        "continuous_kw": _middle(duty.continuous_power, "kw"),
        "continuous_low_kw": scalar(spread(duty.continuous_power).low) / 1e3,
        "warm_share": _middle(duty.warm_share),
        "rated_ambient_c": _middle(motor.rated_ambient),
        "intake_c": _middle(motor.intake_temperature),
        "airflow_m3_per_h": _middle(motor.airflow) * 3600.0,
        **_at_cruise(duty),
        "space_full_c": _middle(duty.space_full),
        "heat_full_w": _middle(duty.heat_full),
        "heat_peak_w": _middle(duty.heat_peak),
        "heat_standing_w": _middle(duty.heat_standing),
        "peak_kw": _middle(set_to.peak_power, "kw"),
        "peak_load": _middle(duty.peak_load),
        "stated_peak_min": _middle(motor.peak_time, "min"),
        **_minutes("peak_cold", duty.peak_cold),
        **_minutes("peak_warm", duty.peak_warm),
        "holding": _hold(duty.holding, 0) | {"needed_min": _needed(found)},
        "speeds": [
            {
                "speed_kn": float(speed) * KNOT,
                **{sea: _hold(hold, place) for sea, hold in duty.holds.items()},
            }
            for place, speed in enumerate(duty.speed)
            if any(float(h.possible[:, place].mean()) >= 0.5 for h in duty.holds.values())
        ],
        "chart": [
            {
                "before_share": float(load),
                "motor_min": _chart_minutes(of_motor, place),
                "controller_min": _chart_minutes(of_controller, place),
            }
            for place, load in enumerate(before)
        ],
    }


def _at_cruise(duty: Duty) -> Row:
    """Load, heat and warmth of the long run at planned cruise."""
    row = {
        "space_cruise_c": _middle(duty.space_cruise),
        "heat_cruise_w": _middle(duty.heat_cruise),
        "before_share": _middle(duty.before),
    }
    return excused(row, CRUISE_BEYOND)


def _needed(found: Findings) -> float:
    return _middle(found.case.planning.hold_time, "min")


def _chart_minutes(times: Array, place: int) -> float | None:
    value = float(best(times)[place])
    return value * PER_SI["min"] if np.isfinite(value) else None


def one_fault_part(found: Findings) -> Row | None:
    """The bank with one string less."""
    fault, own = found.fault, found.option.bank
    if fault is None or own is None:
        return None
    half = fault.half_power
    left = {
        "distance_nm": _middle(fault.distance, "nm", "low"),
        "endurance_h": _middle(fault.endurance, "h", "low"),
    }
    return {
        "strings": fault.strings,
        "power_kw": _middle(fault.power, "kw"),
        "power_low_kw": scalar(spread(fault.power).low) / 1e3,
        "speed_kn": _middle(fault.speed, "kn"),
        "speed_low_kn": scalar(spread(fault.speed).low) * KNOT,
        **excused(left, f"manoeuvring speed is {BEYOND}"),
        "string_limit_a": None if fault.string_limit is None else _middle(fault.string_limit),
        "string_limit_why": None
        if fault.string_limit is not None
        else "no limit of a management system is given",
        "string_carries_a": _middle(fault.string_carries),
        "string_carries_by": fault.bound_by,
        "cruise_string_a": _string(fault.cruise_share),
        "peak_string_a": _string(fault.peak_share),
        "string_why": _string_why(fault),
        "cruise_trips_share": float(fault.cruise_trips.mean()),
        "peak_trips_share": float(fault.peak_trips.mean()),
        "split": own.split,
        "half_kw": None if half is None else _middle(half, "kw"),
        "half_why": None if half is not None else "the bank is not split",
    }


def _string_why(fault: OneFault) -> str | None:
    """Why a current of one string is absent; nothing where both are there."""
    if None not in (_string(fault.cruise_share), _string(fault.peak_share)):
        return None
    if fault.strings == 1:
        return "no string is left"
    lacks_cruise = _string(fault.cruise_share) is None
    return "planned cruise cannot be had" if lacks_cruise else "peak power cannot be had"


def _string(current: Array) -> float | None:
    value = _middle(current)
    return value if np.isfinite(value) else None


def losses_part(found: Findings) -> list[Row] | None:
    """Watts of every step at each of the speeds, best estimate, so that they add up."""
    ledger = found.losses
    if ledger is None:
        return None
    rows = []
    for place, speed in enumerate(ledger.speed):
        whole = float(best(ledger.taken)[place])
        steps = {name: float(best(values)[place]) for name, values in ledger.steps.items()}
        if not np.isfinite(whole):
            continue
        rows.append(
            {
                "speed_kn": float(speed) * KNOT,
                "taken_kw": whole / 1e3,
                "useful_share": steps["towing"] / whole,
                **{f"{name}_w": value for name, value in steps.items()},
            }
        )
    return rows


def chemistries_part(found: Findings) -> Row | None:
    """What every chemistry needs for the same legs and currents."""
    all_of = found.chemistries
    if all_of is None:
        return None
    need = all_of.need
    return {
        "leg": need.leg,
        "need_kwh": need.energy * PER_SI["kwh"],
        "peak_current_a": need.peak_current,
        "cruise_current_a": need.cruise_current,
        "banks": [
            {
                **excused({"life_years": bank.life}, NOT_MOTORED),
                "chemistry": bank.chemistry,
                "own": bank.own,
                "nominal_kwh": bank.nominal * PER_SI["kwh"],
                "legs_kwh": bank.asked["legs"] * PER_SI["kwh"],
                "peak_kwh": bank.asked["peak current"] * PER_SI["kwh"],
                "cruise_kwh": bank.asked["cruise current"] * PER_SI["kwh"],
                "binds": bank.binds,
                "mass_kg": bank.mass,
                "volume_l": bank.volume * PER_SI["l"],
                "price_money": bank.price,
            }
            for bank in all_of.banks
        ],
    }
