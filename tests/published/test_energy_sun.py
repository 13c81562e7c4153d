"""Does the sun meet printed examples: FAO-56, weather files, stations, scatter, panel losses?"""

from __future__ import annotations

import csv
from pathlib import Path

import numpy as np
import pvlib
import pytest

from generator.analyses.year.weather import HARBOUR_WIND, Sky, weather_years
from generator.arrays import Array
from generator.case.files.weather_file import WeatherFile, typical_year
from generator.case.register import find_default
from generator.physics.energy.climate import (
    MONTH_LENGTHS,
    MONTH_OF_DAY,
    bilinear,
    low_sun_correction,
)
from generator.physics.energy.sun import (
    cell_temperature,
    daily_light_above_air,
    daylight,
    panel_power,
    sun_path,
    sunshine_by_hours,
)
from generator.tables.grids import read_grid

HERE = Path(__file__).parent
FILES = Path(pvlib.__file__).parent / "data"
KILOWATT_HOUR, MEGAJOULE = 3.6e6, 1e6

# Source: monthly sums kWh/m2 a day, to the digits printed in the notes on the three files.
MONTHLY = {
    "12839.tm2": ([3.49, 4.43, 5.16, 6.16, 6.03, 5.76, 5.99, 5.67, 4.91, 4.37, 3.57, 3.36], 1792.6),
    "703165TY.csv": (
        [0.58, 1.05, 1.85, 3.06, 3.28, 3.81, 5.00, 2.70, 3.04, 1.61, 0.74, 0.46], 829.2,
    ),
    "723170TYA.CSV": (
        [2.41, 3.06, 4.25, 5.41, 5.64, 6.25, 6.08, 5.61, 4.43, 3.59, 2.43, 2.24], 1566.2,
    ),
}  # fmt: skip
# Station kWh/m2 a year, and that of the grid between cell centres, from the comparison of the grid
# with nine stations (stations). Positions are those of the airports.
STATIONS = {
    "Miami": (25.80, -80.27, 1792, 1788),
    "Greensboro": (36.10, -79.95, 1566, 1513),
    "London Gatwick": (51.15, -0.18, 1010, 1059),
    "Sand Point": (55.32, -160.52, 829, 903),
    "Victoria": (48.65, -123.43, 1235, 1245),
    "Seattle": (47.45, -122.31, 1240, 1244),
    "Shearwater": (44.63, -63.50, 1286, 1280),
    "Honolulu": (21.32, -157.92, 1953, 2204),
    "Abu Dhabi": (24.43, 54.65, 2205, 2058),
}
LEE_OF_A_HIGH_ISLAND = "the cell is mostly open sea: 13 % above the station behind the hills"


def monthly(hours: Array) -> Array:
    """Mean daily sums of the months [kWh/m2]."""
    days = hours.reshape(365, 24).sum(axis=1) / 1e3
    return np.asarray(np.bincount(MONTH_OF_DAY, days) / MONTH_LENGTHS)


def file_of(name: str) -> WeatherFile:
    found = typical_year(name, (FILES / name).read_bytes())
    assert isinstance(found, WeatherFile)
    return found


def test_light_above_the_air_on_a_day() -> None:
    """Source: fao56, example 8: 20 S on 3 September, 32.2 MJ/m2, to the digit."""
    assert daily_light_above_air(-20.0, 246) / MEGAJOULE == pytest.approx(32.2, abs=0.05)


def test_length_of_a_day() -> None:
    """Source: fao56, example 9: 20 S on 3 September, 11.7 h, to the digit."""
    assert daylight(-20.0, 246) / 3600.0 == pytest.approx(11.7, abs=0.05)


def test_sunshine_from_hours_of_sun() -> None:
    """Source: fao56, example 10: Rio de Janeiro in May, 7.1 h of sun: 25.1, 10.9, 14.5.

    The print rounds between its steps, so that the last is met to one unit of its digit.
    """
    above = float(daily_light_above_air(-22.9, 135))
    hours = float(daylight(-22.9, 135)) / 3600.0
    assert above / MEGAJOULE == pytest.approx(25.1, abs=0.05)
    assert hours == pytest.approx(10.9, abs=0.05)
    assert sunshine_by_hours(above, 7.1 / hours) / MEGAJOULE == pytest.approx(14.5, abs=0.1)


def test_light_above_the_air_at_lyon() -> None:
    """Source: fao56, example 15: 45 deg 43 min N in July, 40.6 MJ/m2, to the digit."""
    assert daily_light_above_air(45.72, 196) / MEGAJOULE == pytest.approx(40.6, abs=0.05)


@pytest.mark.parametrize("latitude", [-35.0, 0.0, 52.0])
def test_hours_of_the_almanac_add_up_to_the_days_of_fao(latitude: float) -> None:
    """Source: fao56, equation 21; two ways to the same sum.

    6 % of a month: the paper's declination is a sine, 1.3 degrees off in October; 1.5 % of a year.
    """
    path = sun_path(latitude, 0.0, 0.0)
    by_hour = path.top.reshape(365, 24).sum(axis=1) * 3600.0
    by_day = daily_light_above_air(latitude, np.arange(1.0, 366.0))
    for month in range(12):
        days = month == MONTH_OF_DAY
        assert by_hour[days].mean() == pytest.approx(by_day[days].mean(), rel=0.06)
    assert by_hour.mean() == pytest.approx(by_day.mean(), rel=0.015)


@pytest.mark.parametrize("name", MONTHLY)
def test_weather_files_have_their_printed_sums(name: str) -> None:
    """Source: pvlib, the three files of its wheel; sums to the digits printed."""
    months, year = MONTHLY[name]
    found = file_of(name)
    assert monthly(found.sun) == pytest.approx(months, abs=0.0051)
    assert found.sun.sum() / 1e3 == pytest.approx(year, abs=0.06)


@pytest.mark.parametrize("name", MONTHLY)
def test_weather_files_agree_with_the_reader_of_the_library(name: str) -> None:
    """Source: pvlib, its own readers; hour by hour, so that no column is taken for another."""
    if name.endswith(".tm2"):
        table, _ = pvlib.iotools.read_tmy2(FILES / name)
        columns, tenths = ("GHI", "DryBulb", "Wspd"), 10.0
    else:
        table, _ = pvlib.iotools.read_tmy3(FILES / name, map_variables=True)
        columns, tenths = ("ghi", "temp_air", "wind_speed"), 1.0
    found = file_of(name)
    sun, air, wind = (table[column].to_numpy(dtype=np.float64) for column in columns)
    assert found.sun == pytest.approx(sun)
    assert found.air == pytest.approx(air / tenths)
    assert found.wind == pytest.approx(wind / tenths)


@pytest.mark.parametrize(
    ("latitude", "longitude", "month", "printed"),
    [
        *[(50.75, -1.30, month, value) for month, value in enumerate(
            [0.87, 1.58, 2.61, 4.05, 5.16, 5.44, 5.36, 4.65, 3.19, 1.90, 1.05, 0.66])],
        (17.1, -61.8, 0, 5.18), (-36.7, 174.9, 0, 6.56), (-36.7, 174.9, 5, 2.01),
        (59.4, 18.8, 11, 0.26), (37.0, 25.3, 6, 8.22),
    ],
)  # fmt: skip
def test_grid_between_its_cells(
    latitude: float, longitude: float, month: int, printed: float
) -> None:
    """Source: nasa_sse, values between cell centres; 0.01 for the rounding of halves."""
    found = bilinear(read_grid("ghi_sse_1deg"), "ghi", latitude, longitude)
    assert found[month] == pytest.approx(printed, abs=0.0101)


def test_grid_holds_the_cell_of_the_portal() -> None:
    """Source: nasa_sse, web page for 42.075 N 1.821 E; the file is 0.01 off in two months."""
    printed = [1.81, 2.77, 3.92, 4.66, 5.44, 6.28, 6.56, 5.67, 4.51, 2.96, 2.00, 1.56]
    found = bilinear(read_grid("ghi_sse_1deg"), "ghi", 42.5, 1.5)
    assert found == pytest.approx(printed, abs=0.0101)


@pytest.mark.parametrize("name", STATIONS)
def test_grid_at_stations_is_what_was_compared(name: str) -> None:
    """Source: stations, the grid's own year there; 0.4 % for positions of two digits."""
    latitude, longitude, _, grid = STATIONS[name]
    found = bilinear(read_grid("ghi_sse_1deg"), "ghi", latitude, longitude)
    assert found @ MONTH_LENGTHS == pytest.approx(grid, rel=0.004)


@pytest.mark.parametrize(
    "name",
    [
        pytest.param(name, marks=pytest.mark.xfail(reason=LEE_OF_A_HIGH_ISLAND))
        if name == "Honolulu"
        else name
        for name in STATIONS
    ],
)
def test_year_of_sun_holds_within_its_stated_doubt(name: str) -> None:
    """Source: stations, typical years; the report states 10 % for a year."""
    latitude, longitude, station, _ = STATIONS[name]
    found = bilinear(read_grid("ghi_sse_1deg"), "ghi", latitude, longitude)
    year = (found * low_sun_correction(found)) @ MONTH_LENGTHS
    assert year == pytest.approx(station, rel=0.10)


def test_air_water_and_wind_of_sailing_areas() -> None:
    """Source: coads and ncep, a readable extract; half a digit, and one for wind in knots."""
    with (HERE / "sailing_areas.csv").open(encoding="utf-8") as file:
        rows = list(csv.DictReader(line for line in file if not line.startswith("#")))[1:]
    for row in rows:
        place, month = (float(row["latitude"]), float(row["longitude"])), int(row["month"]) - 1
        months = weather_years(place, (), None, 1).months
        assert months.air[month] == pytest.approx(float(row["air"]), abs=0.051), row
        assert months.water[month] == pytest.approx(float(row["water"]), abs=0.051), row
        open_wind = months.wind[month] / HARBOUR_WIND * 3600.0 / 1852.0
        assert open_wind == pytest.approx(float(row["wind"]), abs=0.051), row


def clearness_rows() -> dict[str, list[dict[str, str]]]:
    with (HERE / "daily_clearness.csv").open(encoding="utf-8") as file:
        lines = [line for line in file if not line.startswith("#")]
    rows = list(csv.DictReader(lines))[1:]
    return {site: [row for row in rows if row["site"] == site] for site in
            dict.fromkeys(row["site"] for row in rows)}  # fmt: skip


CLEARNESS = clearness_rows()
SITES = {
    "Miami": (25.80, -80.27, "12839.tm2"),
    "Sand Point": (55.32, -160.52, "703165TY.csv"),
    "Greensboro": (36.10, -79.95, "723170TYA.CSV"),
    "London Gatwick": (51.15, -0.18, ""),
}


def daily_clearness(sky: Sky) -> Array:
    top = sky.path.top.reshape(365, 24).sum(axis=1) * 3600.0
    return np.asarray(sky.days / top[:, np.newaxis])


def spread_in_months(clearness: Array) -> float:
    """Mean over the months of the standard deviation of a day's clearness."""
    return float(np.mean([clearness[month == MONTH_OF_DAY].std() for month in range(12)]))


@pytest.mark.parametrize("site", ["Miami", "Sand Point", "Greensboro"])
def test_clearness_of_the_files_days(site: str) -> None:
    """Source: pvlib, the files' days over the light above the air; 3 % for two sun positions."""
    latitude, longitude, name = SITES[site]
    path = sun_path(latitude, longitude, file_of(name).zone)
    top = monthly(path.top)
    for month, row in enumerate(CLEARNESS[site]):
        assert monthly(file_of(name).sun)[month] / top[month] == pytest.approx(
            float(row["clearness"]), rel=0.03
        )


@pytest.mark.parametrize("site", SITES)
def test_days_scatter_as_the_days_of_the_files(site: str) -> None:
    """Source: pvlib, files; 30 % is what the shipped cells miss single stations by.

    Mean over the year of the scatter of a day within its month.
    """
    latitude, longitude, _ = SITES[site]
    printed = float(np.mean([float(row["spread"]) for row in CLEARNESS[site]]))
    found = spread_in_months(daily_clearness(weather_years((latitude, longitude), (), None, 25)))
    assert found == pytest.approx(printed, rel=0.30)


@pytest.mark.parametrize("site", SITES)
def test_a_day_is_like_the_one_before_as_in_the_files(site: str) -> None:
    """Source: graham1988, 0.29; files 0.23 to 0.31, so 0.06 either side."""
    latitude, longitude, _ = SITES[site]
    clearness = daily_clearness(weather_years((latitude, longitude), (), None, 25))
    standard = np.empty_like(clearness)
    for month in range(12):
        days = month == MONTH_OF_DAY
        part = clearness[days]
        standard[days] = (part - part.mean()) / part.std()
    lag = float((standard[1:] * standard[:-1]).mean())
    assert lag == pytest.approx(0.29, abs=0.06)


def test_losses_of_the_panel_chain_against_a_published_list() -> None:
    """Source: pvwatts, default losses: soiling 2, mismatch 2, wiring 2, connections 0.5 %.

    With the converter at 0.96 on both sides: 0.900 published; the register has 0.892. 2 % is
    what marine salt is above land dust.
    """
    published = 0.98 * 0.98 * 0.98 * 0.995 * 0.96
    chain = 1.0
    for name in ("salt", "conversion"):
        row = find_default(f"options.supply.panels.{name}", ())
        assert row is not None
        chain *= row.value
    assert chain == pytest.approx(published, rel=0.02)


def test_performance_ratio_of_a_year() -> None:
    """Source: pvwatts, shade 3, new cells 2.5, standstill 3 % besides; in print 0.75 to 0.85.

    Level panels on open racks at Gatwick, 51 N, in the air and wind of the grid.
    """
    sky = weather_years((51.15, -0.18), (), None, 5)
    kept = 0.97 * 0.92 * 0.97 * 0.985 * 0.99 * 0.97
    air, wind = sky.months.air.mean(), sky.months.wind.mean()
    cells = cell_temperature(sky.sun, float(air), float(wind), "free")
    power = panel_power(1000.0, sky.sun, cells, 0.0037, kept)
    assert 0.75 <= power.sum() / sky.sun.sum() <= 0.85
