"""What does results.json say of sun and weather, and of the year hour by hour?"""

from __future__ import annotations

from typing import Any

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.year.sun_only import SunOnly
from generator.analyses.year.weather import Sky
from generator.analyses.year.year import Year
from generator.arrays import Array
from generator.case.months import MONTHS
from generator.report.results.suffix import PER_SI, column
from generator.study import Study

Row = dict[str, Any]
KILOWATT_HOUR = PER_SI["kwh"]
DIM, MOST = 0.25, 0.75  # quantiles over the years of weather
LOW, HIGH = 0.1, 0.9
LOWEST = 0.01  # of the hours of a month
DAYS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
STARTS = np.cumsum((0, *DAYS))
BEFORE, SHOWN = 12, 72  # hours before the day of the example, and hours shown
NO_PLACE = "the case tells no latitude and longitude"
NO_BANK = "no propulsion battery"
NO_PANELS = "no panels"
NO_SPEED = "the motor holds no speed"
PERIODS = {"grid": "1983 to 2005", "weather file": "a typical year", "case": "as given"}


def weather_part(study: Study) -> Row:
    """The months at her waters, and where they come from."""
    sky = study.sky
    if sky is None:
        return {"weather": None, "weather_why": NO_PLACE}
    months = sky.months
    return {
        "weather": {
            "latitude": sky.latitude,
            "longitude": sky.longitude,
            "sun_source": months.sun_source,
            "sun_period": PERIODS[months.sun_source],
            "sea_source": months.sea_source,
            "file": months.file,
            "year_doubt_pct": months.year_doubt * 100.0,
            "month_doubt_pct": months.month_doubt * 100.0,
            "year_kwh_m2": float(np.dot(months.sun, DAYS)) * KILOWATT_HOUR,
            "years": sky.years,
            "cold_snap_k": months.cold_snap,
            "months": [_month(sky, month) for month in range(12)],
        }
    }


def _month(sky: Sky, month: int) -> Row:
    months, doubt = sky.months, sky.months.month_doubt
    sun = float(months.sun[month]) * KILOWATT_HOUR
    return {
        "month": MONTHS[month],
        "sun_day_kwh_m2": sun,
        "sun_day_low_kwh_m2": sun * (1.0 - doubt),
        "sun_day_high_kwh_m2": sun * (1.0 + doubt),
        "day_spread_pct": float(months.spread[month]) * 100.0,
        "air_c": float(months.air[month]),
        "water_c": float(months.water[month]),
        "wind_kn": float(months.wind[month]) * PER_SI["kn"],
    }


def house_year_part(study: Study) -> Row:
    """What the house draws on the propulsion bank by mode, with its converter."""
    loads = study.loads
    return {
        "house_loads": {
            "alternator_kwh": loads.alternator_year * KILOWATT_HOUR,
            "lost_services": list(loads.lost_services),
            "cooking_kwh": loads.cooking * KILOWATT_HOUR,
            "heat_kwh": loads.heat * KILOWATT_HOUR,
            "modes": [
                {"mode": mode, "consumers_w": float(own), "loss_w": float(loss)}
                for mode, own, loss in zip(loads.modes, loads.consumers, loads.loss, strict=True)
            ],
        }
    }


def energy_year_part(study: Study, found: Findings) -> Row:
    """The year of one option, or why there is none."""
    if found.year is None or study.times is None or found.panels is None:
        why = NO_PLACE if study.sky is None else NO_BANK
        return {"energy_year": None, "energy_year_why": why}
    year, times = found.year, study.times
    wanted = sum(leg.wanted for leg in year.legs)
    return {
        "energy_year": {
            "panels_w": found.panels.rated,
            "capacity_kwh": year.capacity * KILOWATT_HOUR,
            "floor_pct": year.floor / year.capacity * 100.0,
            "reserve_line_pct": (year.floor + year.reserve) / year.capacity * 100.0,
            "season_from": MONTHS[times.season[0]],
            "season_to": MONTHS[times.season[-1]],
            "season_given": times.season_given,
            "legs_wanted": wanted,
            "legs_unplaced": times.unplaced,
            "legs_made": _sum(year, "made"),
            "legs_slowed": _sum(year, "slowed"),
            "legs_refused": _sum(year, "refused"),
            "legs_refused_worst": float(np.sum([leg.refused for leg in year.legs], axis=0).max())
            if wanted
            else 0.0,
            **_totals(year),
            "governing_month": MONTHS[year.governing_month],
            "mean_charge_pct": float(year.state.mean()) * 100.0,
            "months": [_year_month(found, year, month) for month in range(12)],
            "legs": [_leg(found, year, place) for place in range(len(year.legs))],
            "example": _example(year, times.example),
            "example_day": _date(times.example),
        }
    }


def _sum(year: Year, name: str) -> float:
    return float(sum(float(getattr(leg, name).mean()) for leg in year.legs))


def _totals(year: Year) -> Row:
    """Energy, fuel, hours and cycles of a mean year."""
    sources = {
        f"{name}_kwh": float(values.sum(axis=0).mean()) * KILOWATT_HOUR
        for name, values in year.sources.items()
    }
    uses = {
        f"{name.replace(' ', '_')}_kwh": float(values.sum(axis=0).mean()) * KILOWATT_HOUR
        for name, values in year.uses.items()
    }
    return {
        **sources,
        **uses,
        "spilled_kwh": float(year.spilled.sum(axis=0).mean()) * KILOWATT_HOUR,
        "unserved_kwh": float(year.unserved.sum(axis=0).mean()) * KILOWATT_HOUR,
        "shore_wall_kwh": float(year.shore_wall.mean()) * KILOWATT_HOUR,
        "genset_fuel_l": float(year.fuel.mean()) * PER_SI["l"],
        "below_reserve_h": float(year.hours_below_reserve.mean()),
        "cold_h": float(year.hours_cold.mean()),
        "cold_worst_h": float(year.hours_cold.max()),
        "cycles": float(year.cycles.mean()),
    }


def _year_month(found: Findings, year: Year, month: int) -> Row:
    sun = year.sources["sun"][month] * KILOWATT_HOUR
    house = float(year.uses["house"][month].mean()) * KILOWATT_HOUR
    motor = float(year.uses["motor"][month].mean()) * KILOWATT_HOUR
    shore = float(year.sources["shore"][month].mean()) * KILOWATT_HOUR
    dim = float(np.quantile(sun, DIM))
    state = year.state[STARTS[month] * 24 : STARTS[month + 1] * 24]
    return {
        "month": MONTHS[month],
        "sun_kwh": float(np.quantile(sun, 0.5)),
        "sun_dim_kwh": dim,
        "sun_bright_kwh": float(np.quantile(sun, MOST)),
        **{
            f"{name}_kwh": float(year.sources[name][month].mean()) * KILOWATT_HOUR
            for name in ("wind", "screw", "genset")
        },
        "shore_kwh": shore,
        "house_kwh": house,
        "motor_kwh": motor,
        "used_kwh": house + motor,
        "spilled_kwh": float(year.spilled[month].mean()) * KILOWATT_HOUR,
        "lowest_charge_pct": float(np.quantile(state, LOWEST)) * 100.0,
        "told": _told(found, year, month, (dim, house, motor, shore)),
    }


def _told(found: Findings, year: Year, month: int, sums: tuple[float, ...]) -> str:
    """The month in plain words."""
    dim, house, motor, shore = sums
    refused = float(year.unserved[month].mean()) * KILOWATT_HOUR
    covers = month in year.months_alone
    if found.panels is not None and not found.panels.rated:
        start = "no panels"
    elif covers:
        start = "sun covers motor and house" if motor > 0.0 else "sun covers house"
    else:
        start = "sun covers house" if dim >= house else "sun falls short"
    if refused > 0.01 * (house + motor):
        return f"{start}, bank runs empty"
    if covers:
        return start
    return f"{start}, plug gives the rest" if shore > 0.0 else start


def _leg(found: Findings, year: Year, place: int) -> Row:
    leg = year.legs[place]
    return {
        "name": found.case.legs[place].name,
        "wanted": leg.wanted,
        "made": float(leg.made.mean()),
        "slowed": float(leg.slowed.mean()),
        "refused": float(leg.refused.mean()),
        "refused_worst": float(leg.refused.max()),
    }


def _date(day: int) -> str:
    month = int(np.searchsorted(STARTS, day, side="right")) - 1
    return f"{day - int(STARTS[month]) + 1} {MONTHS[month]}"


def _example(year: Year, day: int) -> list[Row]:
    """Three days around an outing: charge by the hour."""
    first = max(day * 24 - BEFORE, 0)
    hours = year.state[first : first + SHOWN] * 100.0
    low, middle, high = (np.quantile(hours, share, axis=1) for share in (LOW, 0.5, HIGH))
    return [
        {
            "hour_h": hour - BEFORE,
            "charge_low_pct": float(low[hour]),
            "charge_pct": float(middle[hour]),
            "charge_high_pct": float(high[hour]),
        }
        for hour in range(len(hours))
    ]


def sun_only_part(found: Findings) -> Row:
    """What the panels do without any other source."""
    sun = found.sun
    if sun is None:
        why = NO_BANK if found.option.bank is None else NO_PANELS
        if found.panels is not None and found.panels.rated and found.year is not None:
            why = NO_SPEED
        known = found.panels or found.option.bank is None
        return {"sun_only": None, "sun_only_why": why if known else NO_PLACE}
    return {
        "sun_only": {
            "slow_speed_kn": sun.slow_speed * PER_SI["kn"],
            "slow_drain_w": sun.slow_drain,
            "half_kwh": sun.half * KILOWATT_HOUR,
            "house_daily_kwh": sun.house_daily * KILOWATT_HOUR,
            "house_under_way_w": sun.house_under_way,
            "performance_pct": found.panels.performance * 100.0 if found.panels else None,
            "best_month": MONTHS[int(np.argmax(sun.daily))],
            "worst_month": MONTHS[int(np.argmin(sun.daily))],
            "best": _sun_month(sun, int(np.argmax(sun.daily))),
            "worst": _sun_month(sun, int(np.argmin(sun.daily))),
            "months": [_sun_month(sun, month) for month in range(12)],
        }
    }


def _sun_month(sun: SunOnly, month: int) -> Row:
    def at(values: Array, suffix: str) -> float | None:
        return column(values[month : month + 1], suffix)[0]

    return {
        "month": MONTHS[month],
        "daily_kwh": at(sun.daily, "kwh"),
        "daily_dim_kwh": at(sun.dim, "kwh"),
        "noon_w": at(sun.noon_power, "w"),
        "noon_speed_kn": at(sun.noon_speed, "kn"),
        "noon_speed_why": "slower than the study looks at",
        "distance_nm": at(sun.distance, "nm"),
        "distance_off_nm": at(sun.distance_off, "nm"),
        "refill_days_d": at(sun.refill, "1"),
        "refill_days_why": "the house takes all that the panels give",
        "refill_off_days_d": at(sun.refill_off, "1"),
    }
