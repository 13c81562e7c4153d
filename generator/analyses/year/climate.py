"""What are the months at her waters, and where do they come from?"""

from __future__ import annotations

import numpy as np

from generator.analyses.year.weather import Sky
from generator.case.months import MONTHS
from generator.physics.energy.climate import MONTH_LENGTHS
from generator.records import number, record

PERIODS = {"grid": "1983 to 2005", "weather file": "a typical year", "case": "as given"}


@record
class ClimateMonth:
    """One mean month; low and high by the doubt of a month, nine times in ten."""

    month: str
    sun_day: float = number("sunshine", "sunshine of a day on the level")
    sun_day_low: float = number("sunshine", "sunshine of a day, low by the doubt of a month")
    sun_day_high: float = number("sunshine", "sunshine of a day, high by the doubt of a month")
    day_spread: float = number("percent", "scatter of a day’s sun about the month")
    air: float = number("temperature", "temperature of the air")
    water: float = number("temperature", "temperature of the water")
    wind: float = number("wind", "wind at an anchorage")


@record
class Climate:
    """Her position, its sun and its sea."""

    sun_source: str
    sun_period: str
    sea_source: str
    file: str
    months: tuple[ClimateMonth, ...]
    latitude: float = number("angle", "latitude")
    longitude: float = number("angle", "longitude")
    year_doubt: float = number("percent", "doubt of a year’s sun, nine in ten")
    month_doubt: float = number("percent", "doubt of a month’s sun, nine in ten")
    year: float = number("sunshine", "sunshine of a year on the level")
    years: int = number("count", "years of weather")
    cold_snap: float = number("temperature_step", "cold snap, below the month’s mean")


def climate(sky: Sky | None) -> Climate | None:
    """None where the case tells no position."""
    if sky is None:
        return None
    months = sky.months
    return Climate(
        sun_source=months.sun_source,
        sun_period=PERIODS[months.sun_source],
        sea_source=months.sea_source,
        file=months.file,
        months=tuple(_month(sky, month) for month in range(12)),
        latitude=float(np.radians(sky.latitude)),
        longitude=float(np.radians(sky.longitude)),
        year_doubt=months.year_doubt,
        month_doubt=months.month_doubt,
        year=float(np.dot(months.sun, MONTH_LENGTHS)),
        years=sky.years,
        cold_snap=months.cold_snap,
    )


def _month(sky: Sky, month: int) -> ClimateMonth:
    months, doubt = sky.months, sky.months.month_doubt
    sun = float(months.sun[month])
    return ClimateMonth(
        month=MONTHS[month],
        sun_day=sun,
        sun_day_low=sun * (1.0 - doubt),
        sun_day_high=sun * (1.0 + doubt),
        day_spread=float(months.spread[month]),
        air=float(months.air[month]),
        water=float(months.water[month]),
        wind=float(months.wind[month]),
    )
