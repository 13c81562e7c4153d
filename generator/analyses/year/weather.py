"""What sun, warmth and wind do her waters give, month by month and hour by hour?"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import gamma

import numpy as np

from generator.arrays import Array
from generator.case.case import Case
from generator.case.files.weather_file import WeatherFile
from generator.physics.energy.climate import (
    MONTH_LENGTHS,
    MONTH_OF_DAY,
    bilinear,
    inland_water,
    low_sun_correction,
    month_days,
    nearest_known,
    nearest_sea,
)
from generator.physics.energy.daily_sun import (
    CLEAREST,
    PERSISTENCE,
    SHARES,
    day_ratios,
    deviates,
    normal_quantiles,
    spread_by_clearness,
    to_monthly_means,
    with_ends,
)
from generator.physics.energy.sun import SunPath, sun_path
from generator.tables.grids import read_grid
from generator.tables.method import method

YEARS = 25
SEED = 20
DAYS, HOURS = 365, 8760
KILOWATT_HOUR = 3.6e6  # J
SPREAD_REACH = method("weather.spread_reach") / 1e3  # km to the cell that tells how days scatter
# Doubt of a year and of a month, nine times in ten, against nine stations; the user's own 12
# values and files are taken as they are.
GRID_DOUBT = (method("weather.grid_year"), method("weather.grid_month"))
FILE_DOUBT = (method("weather.file_year"), method("weather.file_month"))
HARBOUR_WIND = method("weather.harbour_share")  # of the wind over open water
HARBOUR_SHAPE = method("weather.harbour_shape")
INLAND_WIND = method("weather.inland_wind")
COLD_PERSISTENCE = method("weather.cold_persistence")  # of a day in the next
WIND_PERSISTENCE = method("weather.wind_persistence")
COLD_SNAP = {False: method("weather.cold_snap"), True: method("weather.cold_snap_inland")}
CONTINENTAL = method("weather.continental")
ONE_IN_A_HUNDRED = 2.326  # normal deviate


@dataclass(frozen=True)
class Months:
    """Twelve mean months at her waters, (12,) each, and where they come from.

    ``sun`` and ``top`` are J/m2 a day on the level and above the air, ``air`` and ``water``
    degC, ``wind`` m/s at an anchorage. ``quantiles`` are days over the month's mean, (9, 12).
    """

    sun: Array
    top: Array
    spread: Array  # standard deviation of a day over the month's mean
    quantiles: Array
    air: Array
    water: Array
    wind: Array
    sun_source: str  # case, weather file, grid
    sea_source: str  # grid; grid without sea, where none is near
    file: str
    year_doubt: float  # share, nine times in ten
    month_doubt: float
    cold_snap: float  # K


@dataclass(frozen=True)
class Sky:
    """Hours of many years, all of them together with the means of the months.

    ``sun`` is W/m2 on the level, (8760, years); ``days`` the same as J/m2, (365, years);
    ``wind`` m/s at an anchorage, ``air`` and ``water`` degC, by day, (365, years).
    """

    latitude: float
    longitude: float
    months: Months
    path: SunPath
    sun: Array
    days: Array
    wind: Array
    air: Array
    water: Array

    @property
    def years(self) -> int:
        """How many years of weather there are."""
        return int(self.sun.shape[1])


def weather(case: Case) -> Sky | None:
    """Years of weather at the case's position; none where the case does not tell it."""
    place = _position(case)
    if place is None:
        return None
    sun = tuple(float(np.ravel(month)[0]) for month in case.waters.sun)
    return weather_years(place, sun, case.weather, YEARS)


def _position(case: Case) -> tuple[float, float] | None:
    waters, file = case.waters, case.weather
    if waters.latitude is not None and waters.longitude is not None:
        return float(np.ravel(waters.latitude)[0]), float(np.ravel(waters.longitude)[0])
    return None if file is None else (file.latitude, file.longitude)


def weather_years(
    place: tuple[float, float], sun: tuple[float, ...], file: WeatherFile | None, years: int
) -> Sky:
    """Years of weather at a position, from her own months, a file, or the grids."""
    path = _path(*place)
    top = _by_month(path.top.reshape(DAYS, 24).sum(axis=1) * 3600.0)
    months = _months(place, top, sun, file)
    days = _sunny_days(path, months, years)
    shape = path.clear.reshape(DAYS, 24)
    total = shape.sum(axis=1, keepdims=True)
    share = np.divide(shape, total, out=np.zeros_like(shape), where=total > 0.0) / 3600.0
    cold = deviates(DAYS, years, COLD_PERSISTENCE, SEED + 1) * months.cold_snap / ONE_IN_A_HUNDRED
    return Sky(
        latitude=place[0],
        longitude=place[1],
        months=months,
        path=path,
        sun=(share[:, :, np.newaxis] * days[:, np.newaxis, :]).reshape(HOURS, years),
        days=days,
        wind=_windy_days(months.wind, years),
        air=month_days(months.air)[:, np.newaxis] + cold,
        water=np.broadcast_to(month_days(months.water)[:, np.newaxis], (DAYS, years)),
    )


@lru_cache(maxsize=4)
def _path(latitude: float, longitude: float) -> SunPath:
    """The sun by the clock of the place itself: noon when it stands highest."""
    return sun_path(latitude, longitude, longitude / 15.0)


def _by_month(days: Array) -> Array:
    return np.asarray(np.bincount(MONTH_OF_DAY, days) / MONTH_LENGTHS)


def _months(
    place: tuple[float, float], top: Array, sun: tuple[float, ...], file: WeatherFile | None
) -> Months:
    """Her own twelve values come first, then a file, then the grids."""
    source = "case" if sun else "weather file" if file else "grid"
    sunshine = _sunshine(place, sun, file)
    air, water, wind, sea = _sea(place)
    if file is not None:
        air, wind = _by_month(_daily(file.air)), _by_month(_daily(file.wind))
    spread, quantiles = _scatter(place, sunshine / np.maximum(top, 1.0))
    doubt = GRID_DOUBT if source == "grid" else FILE_DOUBT
    return Months(
        sun=sunshine,
        top=top,
        spread=spread,
        quantiles=quantiles,
        air=air,
        water=water,
        wind=wind,
        sun_source=source,
        sea_source=sea,
        file=file.name if file else "",
        year_doubt=doubt[0],
        month_doubt=doubt[1],
        cold_snap=COLD_SNAP[bool(np.ptp(air) > CONTINENTAL)],
    )


def _daily(hours: Array) -> Array:
    return np.asarray(hours.reshape(DAYS, 24).mean(axis=1))


def _sunshine(
    place: tuple[float, float], sun: tuple[float, ...], file: WeatherFile | None
) -> Array:
    """J/m2 a day on the level, by month."""
    if sun:
        return np.array(sun)
    if file is not None:
        return _by_month(_daily(file.sun)) * 86400.0
    found = bilinear(read_grid("ghi_sse_1deg"), "ghi", *place)
    return found * low_sun_correction(found) * KILOWATT_HOUR


def _sea(place: tuple[float, float]) -> tuple[Array, Array, Array, str]:
    """Air, water [degC] and wind at an anchorage [m/s]; what is meant by the sea's own grid."""
    land = bilinear(read_grid("air_ncep_2p5deg"), "air", *place)
    found = nearest_sea(read_grid("sea_climate_coads_2deg"), *place)
    if not found:
        return land, inland_water(land), np.full(12, INLAND_WIND), "grid without sea"
    return 0.5 * (land + found["air"]), found["sst"], HARBOUR_WIND * found["wspd"], "grid"


def _scatter(place: tuple[float, float], clearness: Array) -> tuple[Array, Array]:
    """How single days scatter, from the nearest cell or from the clearness of the month."""
    found = nearest_known(read_grid("ghi_daily_spread_3deg"), *place, SPREAD_REACH)
    if not found:
        spread = spread_by_clearness(clearness)
        return spread, with_ends(normal_quantiles(spread))
    names = [f"p{100 * share:02.0f}" for share in SHARES]
    return found["cv"], with_ends(np.vstack([found[name] for name in names]))


def _sunny_days(path: SunPath, months: Months, years: int) -> Array:
    """Days of many years: the clear day's own course through the month, times its scatter."""
    clear = path.clear.reshape(DAYS, 24).sum(axis=1)
    monthly = _by_month(clear)
    kept = np.divide(months.sun, monthly, out=np.zeros(12), where=monthly > 0.0)
    course = clear * month_days(kept)
    ratios = day_ratios(months.quantiles, MONTH_OF_DAY, deviates(DAYS, years, PERSISTENCE, SEED))
    highest = CLEAREST * path.top.reshape(DAYS, 24).sum(axis=1) * 3600.0
    return to_monthly_means(
        ratios * np.maximum(course, 0.0)[:, np.newaxis], months.sun, highest, MONTH_OF_DAY
    )


def _windy_days(wind: Array, years: int) -> Array:
    """Means of days by Weibull's law about the month's mean."""
    from scipy.special import ndtr  # slow to import, so only when a year is asked for

    below = ndtr(deviates(DAYS, years, WIND_PERSISTENCE, SEED + 2))
    scale = month_days(wind) / gamma(1.0 + 1.0 / HARBOUR_SHAPE)
    return np.asarray(
        scale[:, np.newaxis] * (-np.log(np.maximum(1.0 - below, 1e-9))) ** (1.0 / HARBOUR_SHAPE)
    )
