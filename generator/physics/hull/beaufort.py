"""Which force is a wind, and what sea does the scale expect far from land?"""

from __future__ import annotations

import numpy as np

from generator.arrays import Array, Numbers
from generator.tables.load import read_table

KNOT = 1852.0 / 3600.0


def beaufort_force(wind: Numbers) -> Array:
    """Force of a wind on Beaufort's scale.

    F = the last force whose lowest wind is not above U, U rounded to whole knots

    Args:
        wind: U, 10 min mean at 10 m height [m/s]

    Returns:
        F, 0 to 12 [-]

    Valid: any wind
    Source: wmo_beaufort, limits in knots
    """
    knots = np.round(np.asarray(wind) / KNOT)
    starts = read_table("hull/beaufort").column("wind_from")
    return np.asarray(np.searchsorted(starts, knots, side="right") - 1, dtype=np.float64)


def open_sea_height(wind: Numbers) -> Array:
    """Probable mean wave height of the open sea by Beaufort's scale.

    H = the scale's height for the force of U

    Args:
        wind: U [m/s]

    Returns:
        H [m]

    Valid: far from land after long duration; far more than a short fetch raises
    Source: wmo_beaufort, probable mean height
    """
    heights = read_table("hull/beaufort").column("mean_height")
    return np.asarray(heights[np.asarray(beaufort_force(wind), dtype=np.int64)])
