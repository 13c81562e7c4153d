"""What does a place on the world grid have for sunshine, warmth and wind, month by month?"""

from __future__ import annotations

import numpy as np

from generator.arrays import Array
from generator.tables.grids import Grid

EARTH = 6371.0  # km
REACH, LEAST = 330.0, 40.0  # km: cells this far count, and none counts more than one so near
NEAREST = 4
COLDEST_INLAND = 2.0  # degC: under ice a lake is hardly colder


def bilinear(grid: Grid, field: str, latitude: float, longitude: float) -> Array:
    """Twelve months between the four nearest points of a grid without gaps.

    x = sum of the four corners by the shares of the opposite rectangles; longitude goes round

    Args:
        grid: an even world grid
        field: its name in the grid
        latitude: degrees north [degree]
        longitude: degrees east [degree]

    Returns:
        (12,) [unit of the field]

    Valid: the whole world; held at the outermost row near the poles
    Source: practice, interpolation on a grid
    """
    values, rows = grid.fields[field], grid.latitude
    step, around = rows[1] - rows[0], len(grid.longitude)
    north = np.clip((latitude - rows[0]) / step, 0.0, len(rows) - 1.0)
    low = min(int(north), len(rows) - 2)
    east = (longitude - grid.longitude[0]) / (grid.longitude[1] - grid.longitude[0])
    west = int(np.floor(east))
    up, right = north - low, east - west
    left = values[:, low : low + 2, west % around] @ np.array([1.0 - up, up])
    other = values[:, low : low + 2, (west + 1) % around] @ np.array([1.0 - up, up])
    return np.asarray(left * (1.0 - right) + other * right)


def distances(grid: Grid, latitude: float, longitude: float) -> Array:
    """Great-circle distance of every cell from a place.

    d = 2 R asin(sqrt(sin²(Δφ/2) + cos φ cos φ' sin²(Δλ/2))), R = 6371 km

    Args:
        grid: an even world grid
        latitude: φ [degree]
        longitude: λ [degree]

    Returns:
        d, (latitudes, longitudes) [km]

    Valid: a round earth
    Source: practice, great circle
    """
    north, east = np.deg2rad(grid.latitude)[:, np.newaxis], np.deg2rad(grid.longitude)
    here, along = np.deg2rad(latitude), np.deg2rad(longitude)
    half = np.sin((north - here) / 2.0) ** 2
    half = half + np.cos(here) * np.cos(north) * np.sin((east - along) / 2.0) ** 2
    return np.asarray(2.0 * EARTH * np.arcsin(np.sqrt(np.clip(half, 0.0, 1.0))))


def inland_water(air: Array) -> Array:
    """Water of a lake or river from the air of its months.

    t = max((t_air + t_air of the month before) / 2, 2)

    Args:
        air: mean air by month [degC]

    Returns:
        mean water by month [degC]

    Valid: shallow fresh water; a deep lake follows later and stays milder
    Source: practice, half a month behind the air
    """
    return np.asarray(np.maximum((air + np.roll(air, 1)) / 2.0, COLDEST_INLAND))


def nearest_sea(grid: Grid, latitude: float, longitude: float) -> dict[str, Array]:
    """Twelve months of every field from the nearest cells that have data.

    x = sum w x / sum w over the 4 nearest cells within 330 km; w = 1 / max(d, 40 km)²

    Args:
        grid: the grid of the seas
        latitude: degrees north [degree]
        longitude: degrees east [degree]

    Returns:
        (12,) by field [unit of the field]; empty where no cell is near

    Valid: coasts and open sea; narrow land between two seas mixes both
    Source: practice, inverse distance
    """
    far = distances(grid, latitude, longitude)
    known = np.all([np.isfinite(values).all(axis=0) for values in grid.fields.values()], axis=0)
    far = np.where(known & (far <= REACH), far, np.inf)
    places = np.argsort(far, axis=None)[:NEAREST]
    places = places[np.isfinite(far.flat[places])]
    if not places.size:
        return {}
    weight = 1.0 / np.maximum(far.flat[places], LEAST) ** 2
    weight = weight / weight.sum()
    return {
        field: np.asarray(values.reshape(12, -1)[:, places] @ weight)
        for field, values in grid.fields.items()
    }


def nearest_known(grid: Grid, latitude: float, longitude: float, reach: float) -> dict[str, Array]:
    """Twelve months of every field from the nearest cell that has data.

    the cell of the least great-circle distance

    Args:
        grid: a grid with gaps
        latitude: degrees north [degree]
        longitude: degrees east [degree]
        reach: furthest distance that counts [km]

    Returns:
        (12,) by field [unit of the field]; empty where no cell is within reach

    Valid: the whole world
    Source: practice, nearest neighbour
    """
    far = distances(grid, latitude, longitude)
    known = np.all([np.isfinite(values).all(axis=0) for values in grid.fields.values()], axis=0)
    far = np.where(known, far, np.inf)
    place = int(np.argmin(far))
    if not far.flat[place] <= reach:
        return {}
    return {field: values.reshape(12, -1)[:, place] for field, values in grid.fields.items()}


def low_sun_correction(sunshine: Array) -> Array:
    """What the grid's months of low sun are multiplied by.

    f = 0.90 up to 1.5 kWh/m2 a day, 1 from 2.0, a straight line between

    Args:
        sunshine: of the grid, on the level, a day [kWh/m2]

    Returns:
        f [-]

    Valid: fitted on nine weather stations; does no harm elsewhere
    Source: stations, 18 months of nine stations against the grid
    """
    return np.asarray(np.interp(sunshine, [1.5, 2.0], [0.90, 1.0]))


def month_days(months: Array) -> Array:
    """Values of 365 days through the middles of twelve months, each month keeping its mean.

    straight lines through the mid-months, going round; then each month raised by what it lacks

    Args:
        months: (12,) [any unit]

    Returns:
        (365,) [the same]

    Valid: a year of 365 days
    Source: practice, interpolation of monthly means
    """
    starts = np.concatenate([[0], np.cumsum(MONTH_LENGTHS)])
    middles = (starts[:-1] + starts[1:]) / 2.0
    around = np.concatenate([middles[-1:] - 365.0, middles, middles[:1] + 365.0])
    values = np.concatenate([months[-1:], months, months[:1]])
    days = np.interp(np.arange(365) + 0.5, around, values)
    for start, length, wanted in zip(starts[:-1], MONTH_LENGTHS, months, strict=True):
        part = slice(start, start + length)
        days[part] += wanted - days[part].mean()
    return np.asarray(days)


MONTH_LENGTHS = np.array([31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31])
MONTH_OF_DAY = np.repeat(np.arange(12), MONTH_LENGTHS)
