"""Which wind stands over the exposed part of a leg on an ordinary day of her season?"""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from generator.case.case import Case
from generator.case.months import season_months
from generator.physics.energy.climate import nearest_sea
from generator.tables.grids import read_grid
from generator.tables.method import method

MEDIAN = method("weather.median_wind")  # of a season's winds over their mean
OPEN_WIND = method("weather.season_wind")  # m/s, where no position is given or no sea is near
# Share of the open sea's wind that is left over waters of a kind.
LEFT = {
    "narrow": method("weather.wind_narrow"),
    "sheltered": method("weather.wind_sheltered"),
    "coastal": method("weather.wind_coastal"),
    "offshore": 1.0,
    "ocean": 1.0,
}
NORTHERN, SOUTHERN = tuple(range(3, 9)), (9, 10, 11, 0, 1, 2)  # April to September, and October on


def with_ordinary_wind(case: Case) -> Case:
    """The case with an ordinary day's wind on every leg that does not tell its own."""
    legs = tuple(
        leg
        if leg.usual_wind is not None
        else replace(leg, usual_wind=ordinary_wind(case, leg.season or case.planning.season))
        for leg in case.legs
    )
    return replace(case, legs=legs)


def ordinary_wind(case: Case, season: str) -> float:
    """Wind that half of the season's hours stay below, over waters of her kind [m/s]."""
    return MEDIAN * season_wind(case, season) * LEFT[case.waters.exposure]


def season_wind(case: Case, season: str) -> float:
    """Mean wind over open water in her season [m/s]; a usual one where nothing tells it."""
    waters = case.waters
    if waters.latitude is None or waters.longitude is None:
        return OPEN_WIND
    north, east = (float(np.ravel(each)[0]) for each in (waters.latitude, waters.longitude))
    found = nearest_sea(read_grid("sea_climate_coads_2deg"), north, east)
    if not found:
        return OPEN_WIND
    months = season_months(season) if season else NORTHERN if north >= 0.0 else SOUTHERN
    return float(found["wspd"][list(months)].mean())
