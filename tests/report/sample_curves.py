"""Invented curves of the sample: power, range and cost by simple made-up rules."""

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


def resistance(speed: float, wind: float) -> float:
    air = 0.75 * wind * wind * (1.0 + 2.0 * speed / max(wind, 9.0)) if wind else 0.0
    sea = 0.42 * wind * wind if wind else 0.0
    return 12.0 * speed**2 + 0.0135 * speed**6 + air + sea


def shaft_power(speed: float, wind: float = 0.0, service: float = 1.24) -> float:
    calm = resistance(speed, 0.0) * (service if not wind else 1.13)
    force = calm + resistance(speed, wind) - resistance(speed, 0.0)
    overall = 0.50 - 0.00012 * force / max(speed / 5.0, 0.4)
    return force * speed * KNOT / max(overall, 0.24) / 1000.0


def battery_power(shaft: float, rated: float) -> float:
    return shaft * 1.05 + 0.025 * rated + 0.14


def top(power: float) -> float:
    speed = 2.0
    while shaft_power(speed) < power:
        speed += 0.01
    return round(speed, 2)


def speed_power(rated: float, peak: float, electric: bool) -> list[Row]:
    rows, speed = [], 2.0
    while shaft_power(speed) <= peak * 1.02:
        power = shaft_power(speed)
        within = power <= rated
        battery = battery_power(power, rated) if electric else None
        why = None if electric else "a diesel"
        rows.append(
            {
                "speed_kn": speed,
                "resistance_n": resistance(speed, 0) * 1.24,
                "thrust_n": resistance(speed, 0) * 1.24 / 0.92,
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


def range_rows(rated: float, peak: float, bank: Row | None) -> list[Row]:
    rows = []
    ages = (("new", "available_kwh"), ("aged", "available_aged_kwh")) if bank else (("tank", ""),)
    for name, wind, _ in SEAS:
        for age, key in ages:
            for quarter in range(8, 28):
                speed = quarter / 4
                shaft = shaft_power(speed, wind)
                if shaft > rated:
                    continue
                rows.append(range_row(speed, name, age, shaft, rated, bank, key))
    return rows


def range_row(
    speed: float, sea: str, age: str, shaft: float, rated: float, bank: Row | None, key: str
) -> Row:
    if bank:
        power = battery_power(shaft, rated)
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


def at_cruise(rows: list[Row], ages: tuple[str, ...]) -> list[Row]:
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
