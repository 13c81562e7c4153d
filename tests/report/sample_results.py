"""An invented results dictionary, so that pages are tested apart from the study.

Boat, people, prices and numbers are made up; only their shape is that of results.json.
"""

from __future__ import annotations

from typing import Any

Row = dict[str, Any]
KNOT = 0.514444
SEAS = (
    ("calm", 0.0, 0.0),
    ("wind_15", 15.0, 0.27),
    ("wind_20", 20.0, 0.41),
    ("wind_25", 25.0, 0.56),
)
HULL_SPEED = 6.69


def _resistance(speed: float, wind: float) -> float:
    air = 0.75 * wind * wind * (1.0 + 2.0 * speed / max(wind, 9.0)) if wind else 0.0
    sea = 0.42 * wind * wind if wind else 0.0
    return 12.0 * speed**2 + 0.0135 * speed**6 + air + sea


def _shaft(speed: float, wind: float = 0.0, service: float = 1.24) -> float:
    calm = _resistance(speed, 0.0) * (service if not wind else 1.13)
    force = calm + _resistance(speed, wind) - _resistance(speed, 0.0)
    overall = 0.50 - 0.00012 * force / max(speed / 5.0, 0.4)
    return force * speed * KNOT / max(overall, 0.24) / 1000.0


def _battery(shaft: float, rated: float) -> float:
    return shaft * 1.05 + 0.025 * rated + 0.14


def _top(power: float) -> float:
    speed = 2.0
    while _shaft(speed) < power:
        speed += 0.01
    return round(speed, 2)


def sample() -> Row:
    """A sloop of 9 m with a worn diesel, a new diesel, and two motors."""
    options = [_keep(), _new_diesel(), *_motors()]
    return {
        "schema": 1,
        "tool_version": "0.1.0",
        "case": {
            "file": "sloop_sample.yaml",
            "sha256": "9f2c" * 16,
            "reference": "S-0417",
            "client": "A. Example",
            "prepared_by": "J. Example, marine electrician",
            "date": "2026-11-20",
            "valid_until": "2027-05-20",
            "currency": "GBP",
            "units": "metric",
            "draft": True,
            "draft_why": "the signatory is not given",
        },
        "study": {
            "priorities": [
                "Quiet on the river, no diesel smell in the cabin",
                "Home on Sunday evening against the ebb without worrying",
            ],
            "reasons": ["The engine needs a rebuild & its parts are hard to find"],
            "draws": 2000,
            "seed": 20,
        },
        **_boat(),
        "options": options,
        "comparison": {"rows": _comparison()},
        "criteria": [
            {
                "id": number,
                "name": name,
                "role": role,
                "limit_text": limit,
                "built": number in (1, 5, 7, 14, 28),
            }
            for number, name, role, limit in CRITERIA
        ],
        **_appendix(),
    }


def _boat() -> Row:
    seas = [
        {
            "id": name,
            "wind_kn": wind,
            "wave_height_m": height,
            "wave_period_s": 0.0 if not wind else 1.2 + 0.05 * wind,
            "label": "calm" if not wind else "head wind",
            "beyond_limit": wind > 20,
        }
        for name, wind, height in SEAS
    ]
    trial = []
    for line, rpm, out, back, used, why in (
        (64, 1600, 3.7, 3.3, True, ""),
        (65, 2100, 4.7, 4.3, True, ""),
        (66, 2600, 5.6, 5.2, True, ""),
        (67, 3100, 6.2, 5.9, True, ""),
        (68, 3550, 6.5, 6.3, True, ""),
        (69, 2400, 5.4, None, False, "one way only: no run on the opposite course"),
        (70, 2900, 6.0, 5.3, False, "depth 2.8 m is less than this speed needs"),
    ):
        speed = (out + back) / 2 if back else None
        power = 13.4 * 0.96 * (rpm / 3550) ** 2.85 if used else None
        trial.append(
            {
                "line": line,
                "engine_speed_rpm": rpm,
                "speed_out_kn": out,
                "speed_back_kn": back,
                "speed_back_kn_why": None if back else "not run",
                "speed_kn": speed,
                "speed_kn_why": None if back else "one way only",
                "wind_kn": 5.0,
                "depth_m": 2.8 if line == 70 else 8.0,
                "shaft_power_kw": power,
                "shaft_power_kw_why": None if used else "row not used",
                "shaft_power_low_kw": power * 0.85 if power else None,
                "shaft_power_high_kw": power * 1.17 if power else None,
                "model_power_kw": _shaft(speed) * 0.98 if speed else None,
                "used": used,
                "why": why,
            }
        )
    return {
        "boat": {
            "name": "Sandpiper",
            "type": "masthead sloop",
            "keel_type": "fin",
            "hull_type": "displacement monohull",
            "year_on_market": 1984,
            "market": "GB",
            "design_category": "none",
            "datum": "aft end of the waterline",
            "bottom": "light slime",
            "length_overall_m": 9.14,
            "waterline_length_m": 7.60,
            "beam_m": 3.02,
            "waterline_beam_m": 2.63,
            "draught_m": 1.45,
            "canoe_draught_m": 0.49,
            "displacement_kg": 4300.0,
            "freeboard_m": 0.98,
            "mast_height_m": 11.2,
            "drag_area_m2": 6.1,
            "length_displacement_ratio": 4.71,
            "beam_draught_ratio": 5.4,
            "prismatic_coefficient": 0.55,
            "hull_speed_kn": HULL_SPEED,
            "wetted_area_m2": 18.9,
        },
        "waters": {
            "name": "River Orwell and Harwich approaches",
            "kind": "salt",
            "exposure": "sheltered",
            "temperature_c": 15.0,
            "fetch_km": 4.0,
            "country": "GB",
        },
        "engine": {
            "rated_power_kw": 13.4,
            "rated_speed_rpm": 3600.0,
            "gear_ratio": 2.14,
            "tank_l": 55.0,
            "year": 1984,
            "hours_h": 2900.0,
            "hours_per_year_h": 45.0,
            "condition": "dying",
            "litres_per_hour_cruise_l": 1.35,
            "litres_per_year_l": 61.0,
        },
        "propeller": {
            "kind": "fixed",
            "blades": 2,
            "diameter_mm": 381.0,
            "pitch_mm": 254.0,
            "area_ratio": 0.30,
            "wake_fraction": 0.05,
            "thrust_deduction": 0.08,
            "installation": "shaft",
        },
        "trial": {
            "rows": trial,
            "resistance_scale": 1.06,
            "resistance_scale_low": 0.95,
            "resistance_scale_high": 1.18,
            "full_throttle_speed_rpm": 3550.0,
            "note": "Power by the propeller law from full throttle at "
            "{trial.full_throttle_speed_rpm|rpm}; the gear's loss is taken off.",
        },
        "evidence": {"grade": "sea trial", "level": 2, "used_rows": 5},
        "service_factor": {
            "parts": [
                {
                    "id": "hull_condition",
                    "name": "Light slime on the bottom",
                    "applies_to": "friction",
                    "value": 1.10,
                    "low": 1.06,
                    "high": 1.15,
                    "in_calm": True,
                    "in_wind": True,
                },
                {
                    "id": "propeller",
                    "name": "Propeller not clean",
                    "applies_to": "torque",
                    "value": 1.05,
                    "low": 1.0,
                    "high": 1.15,
                    "in_calm": True,
                    "in_wind": True,
                },
                {
                    "id": "chop",
                    "name": "Light wind and chop",
                    "applies_to": "resistance",
                    "value": 1.10,
                    "low": 1.0,
                    "high": 1.25,
                    "in_calm": True,
                    "in_wind": False,
                },
            ],
            "product_at_cruise": 1.24,
            "single_factor": 1.35,
        },
        "berth": {
            "name": "Marina berth, Ipswich",
            "shore_power": True,
            "breaker_a": 16.0,
            "voltage_v": 230.0,
            "charge_power_kw": 2.9,
            "days_between_use_d": 5.0,
        },
        "house": {
            "under_way_w": 45.0,
            "separate_bank": True,
            "daily_kwh": 0.9,
            "services": ["charging", "hot water"],
        },
        "planning": {
            "cruise_speed_kn": 4.8,
            "manoeuvring_speed_kn": 3.0,
            "manoeuvring_time_min": 30.0,
            "hold_speed_kn": 2.0,
            "hold_wind_kn": 25.0,
            "hold_time_min": 15.0,
            "reserve_share_pct": 20.0,
            "horizon_years": 10,
        },
        "legs": [
            {
                "name": "Berth to the sea at Harwich, and sails up",
                "distance_nm": 10.0,
                "times_per_year": 20.0,
                "speed_kn": 4.8,
                "exposed_distance_nm": 2.0,
                "exposed_speed_kn": 3.5,
                "wind_kn": 20.0,
                "fetch_km": 4.0,
                "foul_stream_kn": 0.5,
                "refuge": True,
                "sailable": True,
                "must_make": False,
            },
            {
                "name": "Home from Harwich on the ebb",
                "distance_nm": 10.0,
                "times_per_year": 12.0,
                "speed_kn": 4.8,
                "exposed_distance_nm": 3.0,
                "exposed_speed_kn": 3.5,
                "wind_kn": 20.0,
                "fetch_km": 4.0,
                "foul_stream_kn": 1.0,
                "refuge": False,
                "sailable": False,
                "must_make": True,
            },
        ],
        "sea_states": seas,
    }


def _speed_power(rated: float, peak: float, electric: bool) -> list[Row]:
    rows, speed = [], 2.0
    while _shaft(speed) <= peak * 1.02:
        power = _shaft(speed)
        within = power <= rated
        battery = _battery(power, rated) if electric else None
        why = None if electric else "a diesel"
        rows.append(
            {
                "speed_kn": speed,
                "resistance_n": _resistance(speed, 0) * 1.24,
                "thrust_n": _resistance(speed, 0) * 1.24 / 0.92,
                "shaft_speed_rpm": 190.0 * speed,
                "motor_rpm": 190.0 * speed * (1.0 if electric else 2.14),
                "shaft_power_kw": power,
                "shaft_power_low_kw": power * 0.86,
                "shaft_power_high_kw": power * 1.18,
                "clean_shaft_power_kw": power / 1.24,
                "battery_power_kw": battery,
                "battery_power_kw_why": why,
                "battery_power_low_kw": battery * 0.88 if battery else None,
                "battery_power_low_kw_why": why,
                "battery_power_high_kw": battery * 1.16 if battery else None,
                "battery_power_high_kw_why": why,
                "fuel_rate_l_per_h": None if electric else 0.27 * power + 0.034 * rated,
                "fuel_rate_l_per_h_why": "no fuel" if electric else None,
                "hull_efficiency": 0.97,
                "propeller_efficiency": 0.55,
                "within_continuous": within,
                "within_peak": power <= peak,
                "limit": None if within else "continuous rating",
            }
        )
        speed += 0.25
    return rows


def _range_rows(rated: float, peak: float, bank: Row | None) -> list[Row]:
    rows = []
    ages = (("new", "available_kwh"), ("aged", "available_aged_kwh")) if bank else (("tank", ""),)
    for name, wind, _ in SEAS:
        for age, key in ages:
            for quarter in range(8, 28):
                speed = quarter / 4
                shaft = _shaft(speed, wind)
                if shaft > rated:
                    continue
                rows.append(_range_row(speed, name, age, shaft, rated, bank, key))
    return rows


def _range_row(
    speed: float, sea: str, age: str, shaft: float, rated: float, bank: Row | None, key: str
) -> Row:
    if bank:
        power = _battery(shaft, rated)
        hours = bank[key] / power
        whole = bank["nominal_kwh"] * (1.0 if age == "new" else 0.8) / power
        mile: float | None = power / speed
    else:
        hours = 55.0 * 0.9 * 0.8 / (0.27 * shaft + 0.034 * rated)
        whole, mile = hours / 0.8, None
    return {
        "speed_kn": speed,
        "sea": sea,
        "bank_age": age,
        "range_nm": hours * speed,
        "range_low_nm": hours * speed * 0.83,
        "range_high_nm": hours * speed * 1.17,
        "endurance_h": hours,
        "whole_bank_range_nm": whole * speed,
        "energy_per_mile_kwh": mile,
        "energy_per_mile_kwh_why": None if bank else "a diesel",
    }


def _at_cruise(rows: list[Row], ages: tuple[str, ...]) -> list[Row]:
    found = []
    for name, wind, _ in SEAS:
        speed = 4.75 if not wind else 3.5
        for age in ages:
            row = next(
                (
                    row
                    for row in rows
                    if row["sea"] == name and row["bank_age"] == age and row["speed_kn"] == speed
                ),
                None,
            )
            found.append(
                {
                    "sea": name,
                    "bank_age": age,
                    "speed_kn": 4.8 if not wind else 3.5,
                    "range_nm": row["range_nm"] if row else None,
                    "range_nm_why": None if row else "more than the continuous rating",
                    "range_low_nm": row["range_low_nm"] if row else None,
                    "range_high_nm": row["range_high_nm"] if row else None,
                    "whole_bank_nm": row["whole_bank_range_nm"] if row else None,
                    "reserve_nm": row["range_nm"] * 0.25 if row else None,
                }
            )
    return found


def _leg_rows(bank: Row | None, rated: float) -> list[Row]:
    rows = []
    for name, must, need in (
        ("Berth to the sea at Harwich, and sails up", False, 7.4),
        ("Home from Harwich on the ebb", True, 9.3),
    ):
        need = need + 0.08 * (rated - 8.0)
        have = bank["available_aged_kwh"] if bank else None
        ratio = have / need if have else 39.6 / (need * 0.42)
        rows.append(
            {
                "name": name,
                "must_make": must,
                "need_kwh": need if bank else None,
                "need_kwh_why": None if bank else "a diesel",
                "need_low_kwh": need * 0.86 if bank else None,
                "need_high_kwh": need * 1.17 if bank else None,
                "need_l": None if bank else need * 0.42,
                "need_l_why": "no fuel" if bank else None,
                "available_kwh": have,
                "available_kwh_why": None if bank else "a diesel",
                "ratio": ratio,
                "ratio_p10": ratio * 0.84,
                "hours_h": 2.9,
                "exposed_speed_kn": 3.5,
                "feasible_share": 1.0 if rated > 9 else 0.97,
                "fits": ratio * 0.84 > 1.0,
                "why": "" if ratio * 0.84 > 1.0 else "at the pessimistic end the bank is empty",
            }
        )
    return rows


def _quick(rated: float, rows: list[Row], bank: Row | None) -> Row:
    """Single numbers that sentences and the comparison point at."""
    legs = _leg_rows(bank, rated if bank else 8.0)
    worst = next(place for place, leg in enumerate(legs) if leg["must_make"])
    return {
        "continuous_shaft_kw": rated,
        "cruise_shaft_kw": _shaft(4.8),
        "cruise_battery_kw": _battery(_shaft(4.8), rated) if bank else None,
        "worst_leg": worst,
        "worst_leg_ratio": legs[worst]["ratio_p10"],
    }


def _weight(removed: list[tuple[Any, ...]], added: list[tuple[Any, ...]]) -> Row:
    out, into = sum(row[1] for row in removed), sum(row[1] for row in added)
    moment = sum(row[1] * ((row[2] or 3.5) - 3.5) for row in added) - sum(
        row[1] * ((row[2] or 3.5) - 3.5) for row in removed
    )
    names = ("name", "mass_kg", "x_m", "z_m", "source")
    return {
        "removed_kg": out,
        "added_kg": into,
        "net_kg": into - out,
        "absolute_kg": into + out,
        "displacement_before_kg": 4300.0,
        "displacement_after_kg": 4300.0 + into - out,
        "sinkage_mm": (into - out) / 13.9,
        "trim_mm": moment / 9.1,
        "trim_deg": moment / 1200.0,
        "trim_why": "",
        "removed": [dict(zip(names, row, strict=True)) for row in removed],
        "added": [dict(zip(names, row, strict=True)) for row in added],
    }


def _cost(items: list[tuple[Any, ...]], yearly: float, keep: float, new: float) -> Row:
    first = float(sum(row[1] for row in items if row[2] == "first"))
    late = {row[3]: float(row[1]) for row in items if row[2] == "once"}
    path, total = [], first
    for year in range(11):
        total += (yearly if year else 0.0) + late.get(year, 0.0)
        path.append(
            {
                "year": year,
                "low_money": total * 0.9,
                "middle_money": total,
                "high_money": total * 1.16,
            }
        )
    present = first + 8.3 * yearly + 0.8 * sum(late.values())
    return {
        "first_money": first,
        "first_low_money": first * 0.93,
        "first_high_money": first * 1.2,
        "yearly_money": yearly,
        "energy_yearly_money": yearly * 0.3,
        "service_yearly_money": yearly * 0.7,
        "present_value_money": present,
        "present_value_low_money": present * 0.9,
        "present_value_high_money": present * 1.16,
        "against_keep_money": present - keep,
        "against_new_diesel_money": present - new,
        "items": [
            {
                "name": name,
                "amount_money": amount,
                "when": when,
                "year": year,
                "year_why": None if year else "not dated",
                "source": source,
            }
            for name, amount, when, year, source in items
        ],
        "cumulative": path,
    }


CRITERIA = (
    (1, "Must-make leg", "decide", "Go 1.25 and more, conditional 1.0 to 1.25, no below 1.0"),
    (2, "Coverage of legs", "decide", "95 % and more, 85 to 95 %, below"),
    (3, "Reserve", "decide", "never planned for"),
    (4, "Hold-off in 25 kn", "decide", "3 kn, 2 to 3 kn, below"),
    (5, "Continuous power", "decide", "Go 1.5 and more, conditional 1.2 to 1.5, no below 1.2"),
    (6, "Head wind at 3.5 kn", "decide", "yes, at 2.5 to 3.5 kn, no"),
    (7, "Speed at peak", "decide", "Go 0.90 and more, conditional 0.80 to 0.90, no below 0.80"),
    (8, "Power per tonne", "tell", "1.2 kW/t"),
    (9, "Foul stream", "decide", "stream + 1.5 kn"),
    (10, "One fault", "decide", "3 kn for 1 h remains"),
    (11, "Recharge", "decide", "10 h"),
    (12, "Sun on a mooring", "decide", "1.2"),
    (13, "House loads", "decide", "separate"),
    (14, "Battery currents", "decide", "Go up to 0.3 C, conditional to 0.4 C, no above"),
    (15, "Cold", "decide", "5 °C"),
    (16, "Mass change", "decide", "2 %"),
    (17, "Trim and heel", "decide", "0.5 %"),
    (18, "Design area", "condition", "coastal"),
    (19, "Compartment", "decide", "dry"),
    (20, "Insurer", "condition", "written acceptance"),
    (21, "Conversion status", "condition", "not in scope"),
    (22, "Voltage", "decide", "60 V DC"),
    (23, "Propeller match", "decide", "7 %"),
    (24, "Stopping", "decide", "1.0 LOA"),
    (25, "Payback", "tell", "10 years"),
    (26, "Cost over value", "tell", "30 %"),
    (27, "Present engine", "tell", "healthy"),
    (28, "Evidence", "condition", "sea trial"),
)


def _criteria(values: dict[int, tuple[Any, ...]]) -> list[Row]:
    rows = []
    for number, name, role, limit in CRITERIA:
        if number not in values:
            continue
        value, pessimistic, result, why, flip = values[number]
        rows.append(
            {
                "id": number,
                "name": name,
                "value": value,
                "pessimistic": pessimistic,
                "unit": "-",
                "limit": limit,
                "limit_go": 1.2,
                "limit_conditional": 1.0,
                "sense": "above",
                "result": result,
                "role": role,
                "why": why,
                "flip": flip,
            }
        )
    return rows


def _reference(index: int) -> Row:
    values = {
        number: (None, None, "not applicable", "a reference, not judged", "")
        for number in (1, 5, 7, 14, 28)
    }
    return {"word": "Reference", "reasons": [], "conditions": [], "criteria": _criteria(values)}


def _diesel(
    index: int,
    id_: str,
    name: str,
    kind: str,
    note: str,
    rated: float,
    speed: float,
    gear: float,
    weight: Row,
    cost: Row,
) -> Row:
    rows = _range_rows(rated, rated, None)
    return {
        "id": id_,
        "name": name,
        "kind": kind,
        "note": note,
        "reference": True,
        "particulars": {
            "motor": None,
            "diesel": {
                "rated_power_kw": rated,
                "rated_speed_rpm": speed,
                "gear_ratio": gear,
                "tank_l": 55.0,
            },
            "propeller": {"kind": "fixed", "blades": 2, "diameter_mm": 381.0, "pitch_mm": 254.0},
        },
        **_quick(rated, rows, None),
        "speed_power": _speed_power(rated, rated, False),
        "wind_power": [],
        "top_speed": {
            "continuous_kn": _top(rated),
            "continuous_low_kn": _top(rated * 0.85),
            "continuous_high_kn": _top(rated * 1.16),
            "peak_kn": _top(rated),
            "peak_low_kn": _top(rated * 0.85),
            "peak_high_kn": _top(rated * 1.16),
        },
        "range": rows,
        "range_at_cruise": _at_cruise(rows, ("tank",)),
        "bank": None,
        "bank_why": "a diesel",
        "reserve": None,
        "reserve_why": "a diesel",
        "legs": _leg_rows(None, 8.0),
        "weight": weight,
        "cost": cost,
        "carbon": None,
        "carbon_why": "not built yet",
        "verdict": _reference(index),
    }


def _keep() -> Row:
    items = [
        ("Engine rebuild", 4200.0, "first", None, "estimate"),
        ("Second overhaul", 2500.0, "once", 7, "estimate"),
    ]
    return _diesel(
        0,
        "keep",
        "Rebuild and keep the diesel",
        "keep",
        "Same engine, same shaft.",
        13.4,
        3600.0,
        2.14,
        _weight([], []),
        _cost(items, 410.0, 9600.0, 13100.0),
    )


def _new_diesel() -> Row:
    items = [
        ("Engine and gearbox", 9800.0, "first", None, "quote"),
        ("Fitting, exhaust and bed", 2600.0, "first", None, "estimate"),
    ]
    weight = _weight(
        [("Old engine and gearbox", 148.0, 2.10, -0.10, "builder")],
        [("New engine and gearbox", 128.0, 2.10, -0.10, "builder")],
    )
    return _diesel(
        1,
        "new",
        "New 14 kW diesel",
        "new diesel",
        "",
        14.0,
        3000.0,
        2.6,
        weight,
        _cost(items, 330.0, 9600.0, 13100.0),
    )


def _bank() -> Row:
    nominal = 15.36
    return {
        "chemistry": "LFP",
        "nominal_voltage_v": 51.2,
        "charge_ah": 300.0,
        "nominal_kwh": nominal,
        "usable_kwh": nominal * 0.9,
        "usable_aged_kwh": nominal * 0.9 * 0.8,
        "usable_aged_low_kwh": nominal * 0.65,
        "reserve_kwh": 2.76,
        "reserve_aged_kwh": 2.21,
        "reserve_by": "share",
        "available_kwh": nominal * 0.9 - 2.76,
        "available_aged_kwh": nominal * 0.72 - 2.21,
        "mass_kg": 128.0,
        "cruise_current_a": 68.0,
        "cruise_rate_c": 0.23,
        "peak_current_a": 262.0,
        "peak_rate_c": 0.87,
        "discharge_limit_a": 300.0,
    }


def _motors() -> list[Row]:
    return [
        _motor(2, "a", "Motor A, 8 kW", 8.0, 12.0, 45.0, 6200.0, "Go with conditions"),
        _motor(3, "b", "Motor B, 12 kW", 12.0, 16.0, 55.0, 7600.0, "Don't, as specified"),
    ]


def _motor(
    index: int, id_: str, name: str, rated: float, peak: float, mass: float, price: float, word: str
) -> Row:
    bank = _bank()
    rows = _range_rows(rated, peak, bank)
    legs = _leg_rows(bank, rated)
    weight = _weight(
        [
            ("Engine and gearbox", 148.0, 2.10, -0.10, "builder"),
            ("Fuel at half tank", 23.0, 1.20, 0.10, "estimate"),
            ("Exhaust, tank and fittings", 31.0, 1.0, 0.05, "estimate"),
        ],
        [
            ("Motor, controller and bed", mass, 2.00, -0.15, "builder"),
            ("Battery with boxes", 150.0, 2.60, -0.10, "estimate"),
            ("Cables, fuses, charger", 22.0, 2.40, 0.20, "estimate"),
        ],
    )
    items = [
        ("Motor and controller", price, "first", None, "quote"),
        ("Battery with boxes", 5900.0, "first", None, "quote"),
        ("Charger, cables, fuses", 1650.0, "first", None, "estimate"),
        ("Labour", 3200.0, "first", None, "estimate"),
        ("Sale of the old engine", -400.0, "first", None, "estimate"),
    ]
    own = f"options.{index}"
    return {
        "id": id_,
        "name": name,
        "kind": "battery",
        "note": "The present propeller stays.",
        "reference": False,
        "particulars": {
            "motor": {
                "continuous_power_kw": rated,
                "peak_power_kw": peak,
                "peak_time_min": 10.0,
                "rated_speed_rpm": 1500.0,
                "gear_ratio": 1.0,
            },
            "diesel": None,
            "propeller": {"kind": "fixed", "blades": 2, "diameter_mm": 381.0, "pitch_mm": 254.0},
        },
        **_quick(rated, rows, bank),
        "speed_power": _speed_power(rated, peak, True),
        "wind_power": [
            {
                "sea": sea,
                "speed_kn": 2.0 + step / 2,
                "shaft_power_kw": _shaft(2 + step / 2, wind),
                "shaft_power_low_kw": _shaft(2 + step / 2, wind) * 0.75,
                "shaft_power_high_kw": _shaft(2 + step / 2, wind) * 1.3,
                "battery_power_kw": _battery(_shaft(2 + step / 2, wind), rated),
                "within_continuous": _shaft(2 + step / 2, wind) <= rated,
                "within_peak": _shaft(2 + step / 2, wind) <= peak,
            }
            for sea, wind, _ in SEAS
            for step in range(6)
        ],
        "top_speed": {
            "continuous_kn": _top(rated),
            "continuous_low_kn": _top(rated * 0.85),
            "continuous_high_kn": _top(rated * 1.16),
            "peak_kn": _top(peak),
            "peak_low_kn": _top(peak * 0.85),
            "peak_high_kn": _top(peak * 1.16),
        },
        "range": rows,
        "range_at_cruise": _at_cruise(rows, ("new", "aged")),
        "bank": bank,
        "reserve": {
            "by": "share",
            "share_kwh": 2.76,
            "demand_kwh": 1.62,
            "manoeuvring_kwh": 0.48,
            "holding_kwh": 1.14,
            "hold_shaft_power_kw": 4.3,
            "hold_thrust_n": 1490.0,
        },
        "legs": legs,
        "weight": weight,
        "cost": _cost(items, 190.0, 9600.0, 13100.0),
        "carbon": None,
        "carbon_why": "not built yet",
        "verdict": _verdict(own, word, legs[1], rated, peak),
    }


def _verdict(own: str, word: str, leg: Row, rated: float, peak: float) -> Row:
    fits = leg["ratio_p10"]
    values = {
        1: (
            leg["ratio"],
            fits,
            "conditional" if fits > 1 else "no",
            "the bank, aged, has {own.legs.1.available_kwh|energy} above reserve and the leg needs "
            "{own.legs.1.need_kwh|energy}",
            "a bank of {own.bank.charge_ah|charge} twice over",
        ),
        5: (
            rated / 3.1,
            rated / 3.6,
            "go",
            "the continuous rating over the calm need at {planning.cruise_speed_kn|speed}",
            "",
        ),
        7: (
            _top(peak) / HULL_SPEED,
            0.86,
            "conditional" if peak < 13 else "go",
            "{own.top_speed.peak_kn|speed} at peak against a hull speed of "
            "{boat.hull_speed_kn|speed}",
            "a propeller of another pitch",
        ),
        14: (0.83, 0.97, "go", "{own.bank.cruise_current_a|current} at cruise", ""),
        28: (2.0, 2.0, "go", "sea trial: {evidence.used_rows|count} double runs", ""),
    }
    said: Row = {
        "word": word,
        "reasons": [
            "Home from Harwich on the ebb needs {own.legs.1.need_kwh|energy}; the aged bank has "
            "{own.legs.1.available_kwh|energy} above reserve.",
            "{own.particulars.motor.continuous_power_kw|power} continuous gives "
            "{own.top_speed.continuous_kn|speed}; the hull's own limit is "
            "{boat.hull_speed_kn|speed}.",
            "It costs {own.cost.against_keep_money|money:size} more than keeping the diesel over "
            "{planning.horizon_years|years}.",
        ],
        "conditions": [
            "Written acceptance by the insurer before any order.",
            "The leg home is started with the bank full: "
            "{own.bank.available_aged_kwh|energy} above reserve when aged.",
            "The compartment is shown to be dry.",
            "Mass list re-weighed: net {own.weight.net_kg|mass:signed} is an estimate.",
        ],
        "criteria": _criteria(values),
    }
    placed: Row = _placed(said, own)
    return placed


def _placed(said: Any, own: str) -> Any:
    """The same with {own. in its sentences turned into the option's key."""
    if isinstance(said, dict):
        return {key: _placed(value, own) for key, value in said.items()}
    if isinstance(said, list):
        return [_placed(value, own) for value in said]
    return said.replace("{own.", f"{{{own}.") if isinstance(said, str) else said


def _comparison() -> list[Row]:
    def row(
        id_: str,
        label: str,
        form: str,
        tail: str,
        better: int | None = None,
        why: str | None = None,
    ) -> Row:
        keys = [f"options.{place}.{tail}" for place in range(4)]
        return {"id": id_, "label": label, "form": form, "keys": keys, "better": better, "why": why}

    same = "no real difference"
    return [
        row("word", "Verdict", "text", "verdict.word"),
        row("top", "Calm speed, continuous", "speed", "top_speed.continuous_kn", 3),
        row("peak", "Calm speed, peak", "speed", "top_speed.peak_kn", None, same),
        row(
            "calm",
            "Range to reserve at cruise, calm, new",
            "distance",
            "range_at_cruise.0.range_nm",
        ),
        row("leg", "Worst must-make leg: in hand, pessimistic", "ratio", "worst_leg_ratio"),
        row("usable", "Above the reserve, aged", "energy", "bank.available_aged_kwh", None, same),
        row("net", "Net change of mass", "mass", "weight.net_kg"),
        row("first", "First cost", "money", "cost.first_money", 2),
        row("keep", "  against keeping the diesel", "money", "cost.against_keep_money"),
    ]


def _appendix() -> Row:
    inputs = [
        ("boat.hull.length_overall", 9.14, "m", "measured", "20 mm", "9.14 m"),
        ("boat.hull.waterline_length", 7.60, "m", "measured", "50 mm", "7.60 m"),
        ("boat.hull.beam", 3.02, "m", "measured", "20 mm", "3.02 m"),
        ("boat.hull.draught", 1.45, "m", "builder", None, "1.45 m"),
        ("boat.hull.displacement", 4300.0, "kg", "weighed", "4 %", "4.30 t"),
        ("engine.rated_power", 13400.0, "W", "builder", None, "13.4 kW"),
        ("engine.gear_ratio", 2.14, "", "measured", None, "2.14"),
        ("propeller.diameter", 0.381, "m", "measured", "5 mm", "15 in"),
        ("options[2].motor.continuous_power", 8000.0, "W", None, None, "8 kW"),
        ("options[2].bank.charge", 300.0, "Ah", None, None, "300 Ah"),
        ("prices.electricity", 0.45, "GBP/kWh", None, None, "0.45 GBP/kWh"),
    ]
    assumed = [
        (
            "boat.hull.prismatic_coefficient",
            0.55,
            0.52,
            0.60,
            "",
            "keuning1998",
            "published",
            "prismatic coefficient; range of the series",
        ),
        (
            "propeller.wake_fraction",
            0.05,
            0.02,
            0.10,
            "",
            "practice",
            "memory",
            "wake fraction behind a fin keel",
        ),
        (
            "propeller.thrust_deduction",
            0.08,
            0.05,
            0.12,
            "",
            "practice",
            "memory",
            "thrust deduction behind a fin keel",
        ),
        (
            "factors.fouling",
            0.75,
            0.5,
            1.0,
            "",
            "schultz2007",
            "memory",
            "share of the computed friction increase of the bottom's state that is taken",
        ),
        (
            "planning.reserve_share",
            20,
            20,
            20,
            "%",
            "practice",
            "common practice",
            "share of usable energy never planned for",
        ),
        (
            "options[2].bank.usable_share",
            90,
            85,
            95,
            "%",
            "practice",
            "common practice",
            "energy of a full bank that may be drawn",
        ),
    ]
    return {
        "input_count": {
            "measured": 20,
            "weighed": 1,
            "builder": 9,
            "estimate": 6,
            "given": 46,
            "defaults": 41,
            "total": 87,
            "sure": 21,
        },
        "inputs": [
            dict(zip(("path", "value", "unit", "from", "plus_minus", "shown"), row, strict=True))
            for row in inputs
        ],
        "assumptions": [
            {
                "path": path,
                "value": value,
                "low": low,
                "high": high,
                "unit": unit,
                "source": source,
                "mark": mark,
                "meaning": meaning,
                "shown": f"{value} {unit}".strip(),
                "shown_low": f"{low} {unit}".strip(),
                "shown_high": f"{high} {unit}".strip(),
            }
            for path, value, low, high, unit, source, mark, meaning in assumed
        ],
        "cautions": [
            {
                "id": "insurer",
                "title": "Insurer first",
                "text": "No order before written acceptance of "
                "{options.2.bank.nominal_kwh|energy} of lithium aboard.",
                "number_key": "options.2.bank.nominal_kwh",
                "confirm": "the insurer",
            },
            {
                "id": "installer",
                "title": "Fault current",
                "text": "Cables and fuses are made for {options.2.bank.peak_current_a|current}; "
                "the standard's edition is to be verified as current.",
                "number_key": "options.2.bank.peak_current_a",
                "confirm": "a qualified installer",
            },
            {
                "id": "weight",
                "title": "Float line",
                "text": "She is predicted to rise or sink by "
                "{options.2.weight.sinkage_mm|length_small:size}.",
                "number_key": "options.2.weight.sinkage_mm",
                "confirm": "the yard, afloat",
            },
        ],
        "range_warnings": [
            {
                "quantity": "beam over canoe draught",
                "low": 2.46,
                "high": 19.3,
                "message": "inside the series",
                "source": "keuning1998",
            }
        ],
        "warnings": ["mast height is from the builder"],
        "sources": [
            {
                "key": "keuning1998",
                "text": "Keuning and Sonnenberg: Approximation of the "
                "hydrodynamic forces on a sailing yacht, 1998.",
            },
            {
                "key": "schultz2007",
                "text": "Schultz: Effects of coating roughness and "
                "biofouling on ship resistance and powering, 2007.",
            },
        ],
    }
