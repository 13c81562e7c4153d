"""The sample's invented options: two diesels and two motors."""

from __future__ import annotations

from typing import Any

from tests.report.sample_curves import (
    SEAS,
    Row,
    at_cruise,
    battery_power,
    range_rows,
    shaft_power,
    speed_power,
    top,
)
from tests.report.sample_verdict import criteria, verdict


def leg_rows(bank: Row | None, rated: float) -> list[Row]:
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


def quick(rated: float, rows: list[Row], bank: Row | None) -> Row:
    """Single numbers that sentences and the comparison point at."""
    legs = leg_rows(bank, rated if bank else 8.0)
    worst = next(place for place, leg in enumerate(legs) if leg["must_make"])
    return {
        "continuous_shaft_kw": rated,
        "cruise_shaft_kw": shaft_power(4.8),
        "cruise_battery_kw": battery_power(shaft_power(4.8), rated) if bank else None,
        "worst_leg": worst,
        "worst_leg_ratio": legs[worst]["ratio_p10"],
    }


def weighed(removed: list[tuple[Any, ...]], added: list[tuple[Any, ...]]) -> Row:
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


def costed(items: list[tuple[Any, ...]], yearly: float, keep: float, new: float) -> Row:
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


def reference(index: int) -> Row:
    values = {
        number: (None, None, "not applicable", "a reference, not judged", "")
        for number in (1, 5, 7, 14, 28)
    }
    return {"word": "Reference", "reasons": [], "conditions": [], "criteria": criteria(values)}


def diesel(
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
    rows = range_rows(rated, rated, None)
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
        **quick(rated, rows, None),
        "speed_power": speed_power(rated, rated, False),
        "wind_power": [],
        "top_speed": {
            "continuous_kn": top(rated),
            "continuous_low_kn": top(rated * 0.85),
            "continuous_high_kn": top(rated * 1.16),
            "peak_kn": top(rated),
            "peak_low_kn": top(rated * 0.85),
            "peak_high_kn": top(rated * 1.16),
        },
        "range": rows,
        "range_at_cruise": at_cruise(rows, ("tank",)),
        "bank": None,
        "bank_why": "a diesel",
        "reserve": None,
        "reserve_why": "a diesel",
        "legs": leg_rows(None, 8.0),
        "weight": weight,
        "cost": cost,
        "carbon": None,
        "carbon_why": "not built yet",
        "verdict": reference(index),
    }


def keep() -> Row:
    items = [
        ("Engine rebuild", 4200.0, "first", None, "estimate"),
        ("Second overhaul", 2500.0, "once", 7, "estimate"),
    ]
    return diesel(
        0,
        "keep",
        "Rebuild and keep the diesel",
        "keep",
        "Same engine, same shaft.",
        13.4,
        3600.0,
        2.14,
        weighed([], []),
        costed(items, 410.0, 9600.0, 13100.0),
    )


def new_diesel() -> Row:
    items = [
        ("Engine and gearbox", 9800.0, "first", None, "quote"),
        ("Fitting, exhaust and bed", 2600.0, "first", None, "estimate"),
    ]
    weight = weighed(
        [("Old engine and gearbox", 148.0, 2.10, -0.10, "builder")],
        [("New engine and gearbox", 128.0, 2.10, -0.10, "builder")],
    )
    return diesel(
        1,
        "new",
        "New 14 kW diesel",
        "new diesel",
        "",
        14.0,
        3000.0,
        2.6,
        weight,
        costed(items, 330.0, 9600.0, 13100.0),
    )


def lithium_bank() -> Row:
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


def motors() -> list[Row]:
    return [
        motor(2, "a", "Motor A, 8 kW", 8.0, 12.0, 45.0, 6200.0, "Go with conditions"),
        motor(3, "b", "Motor B, 12 kW", 12.0, 16.0, 55.0, 7600.0, "Don't, as specified"),
    ]


def motor(
    index: int, id_: str, name: str, rated: float, peak: float, mass: float, price: float, word: str
) -> Row:
    bank = lithium_bank()
    rows = range_rows(rated, peak, bank)
    legs = leg_rows(bank, rated)
    weight = weighed(
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
        **quick(rated, rows, bank),
        "speed_power": speed_power(rated, peak, True),
        "wind_power": [
            {
                "sea": sea,
                "speed_kn": 2.0 + step / 2,
                "shaft_power_kw": shaft_power(2 + step / 2, wind),
                "shaft_power_low_kw": shaft_power(2 + step / 2, wind) * 0.75,
                "shaft_power_high_kw": shaft_power(2 + step / 2, wind) * 1.3,
                "battery_power_kw": battery_power(shaft_power(2 + step / 2, wind), rated),
                "within_continuous": shaft_power(2 + step / 2, wind) <= rated,
                "within_peak": shaft_power(2 + step / 2, wind) <= peak,
            }
            for sea, wind, _ in SEAS
            for step in range(6)
        ],
        "top_speed": {
            "continuous_kn": top(rated),
            "continuous_low_kn": top(rated * 0.85),
            "continuous_high_kn": top(rated * 1.16),
            "peak_kn": top(peak),
            "peak_low_kn": top(peak * 0.85),
            "peak_high_kn": top(peak * 1.16),
        },
        "range": rows,
        "range_at_cruise": at_cruise(rows, ("new", "aged")),
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
        "cost": costed(items, 190.0, 9600.0, 13100.0),
        "carbon": None,
        "carbon_why": "not built yet",
        "verdict": verdict(own, word, legs[1], rated, peak),
    }
