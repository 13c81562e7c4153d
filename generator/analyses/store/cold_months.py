"""How cold does the battery get in the months in which she is used and charged?"""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from generator.analyses.percentiles import scalar
from generator.arrays import Array, Numbers
from generator.case.case import Case
from generator.case.season import used_months
from generator.physics.energy.climate import bilinear, inland_water, nearest_sea
from generator.tables.grids import read_grid

# Where the owner names no season: the light half of the year, and near the equator all of it.
NORTHERN, SOUTHERN, ALL = tuple(range(3, 9)), (9, 10, 11, 0, 1, 2), tuple(range(12))
TROPIC = 23.5  # degrees
SWING, WATER = "waters.season_swing", "waters.temperature"


def coldest(case: Case) -> Numbers:
    """Lowest temperature of a battery in use [degC].

    As the owner measured it; else the water of the coldest month in which she is used, with the
    doubt of the swing; else the season's water less the swing, where he gives that or the waters
    have no position.
    """
    waters = case.waters
    if waters.coldest is not None:
        return waters.coldest
    given = {item.path for item in case.assumptions if item.origin == "given"}
    months = None if SWING in given else water_in_use(case)
    if months is None:
        return np.asarray(waters.temperature - waters.season_swing)
    doubt = np.asarray(waters.season_swing) - scalar(waters.season_swing)
    if WATER in given:  # his own water, and the climate's fall from there to the coldest month
        fall = float(months.mean() - months.min())
        return np.asarray(waters.temperature - fall - doubt)
    return np.asarray(months.min() - doubt)


def with_coldest(case: Case) -> Case:
    """The case with the coldest battery in use, whoever told it."""
    return replace(case, waters=replace(case.waters, coldest=coldest(case)))


def water_in_use(case: Case) -> Array | None:
    """Mean water of each month in which she is used [degC]; none without a position."""
    waters = case.waters
    if waters.latitude is None or waters.longitude is None:
        return None
    north, east = scalar(waters.latitude), scalar(waters.longitude)
    months = used_months(case) or _light_months(north)
    return _water(north, east, waters.kind)[list(months)]


def _light_months(north: float) -> tuple[int, ...]:
    return ALL if abs(north) < TROPIC else NORTHERN if north > 0.0 else SOUTHERN


def _water(north: float, east: float, kind: str) -> Array:
    """Twelve months of the sea; of the air, where the water is fresh or no sea is near."""
    sea = {} if kind == "fresh" else nearest_sea(read_grid("sea_climate_coads_2deg"), north, east)
    if sea:
        return sea["sst"]
    return inland_water(bilinear(read_grid("air_ncep_2p5deg"), "air", north, east))
