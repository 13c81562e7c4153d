"""What sea does a wind raise, and what does it cost to drive into it?"""

from __future__ import annotations

import numpy as np

from generator.arrays import Numbers
from generator.physics.water import GRAVITY
from generator.tables.load import Table, read_table


def fetch_sea(wind: Numbers, fetch: Numbers) -> tuple[Numbers, Numbers]:
    """Sea that a steady wind raises over open water to windward.

    H = H* U^2/g, T = T* U/g, F* = g F/U^2; H* = 0.0016 F*^(1/2), at most 0.243;
    T* = 0.286 F*^(1/3), at most 8.13

    Args:
        wind: U [m/s]
        fetch: F, open water to windward [m]

    Returns:
        significant height H [m] and peak period T [s]

    Valid: deep water, steady wind of long enough duration, no swell from elsewhere
    Source: fetch_law, deep-water growth formulas
    """
    table = read_table("hull/fetch_law")
    height = _growth(table, "height", wind, fetch, 2)
    return height, _growth(table, "period", wind, fetch, 1)


def _growth(table: Table, quantity: str, wind: Numbers, fetch: Numbers, power: int) -> Numbers:
    """The law multiplied out, so that no wind is a flat sea and nothing is divided by it."""
    row = table.row_of("quantity", quantity)
    factor, exponent, ceiling = (
        float(table.column(name)[row]) for name in ("factor", "exponent", "ceiling")
    )
    grown = factor * (GRAVITY * fetch) ** exponent * wind ** (power - 2 * exponent)
    return np.minimum(grown, ceiling * wind**power) / GRAVITY


def added_resistance(
    height: Numbers, waterline_beam: Numbers, bow_length: Numbers, density: Numbers
) -> Numbers:
    """Mean added resistance in head seas, whatever the speed.

    R = 1/16 ρ g H^2 B (B / LBWL)^(1/2)

    Args:
        height: H, significant [m]
        waterline_beam: B [m]
        bow_length: LBWL, along the waterline from the stem to 95 per cent of the beam [m]
        density: ρ [kg/m3]

    Returns:
        R [N]

    Valid: heights to ``height_limit``, head seas, small motions; made for ships, so within
        50 per cent for yachts that pitch
    Source: stawave, STAWAVE-1
    """
    return (
        density * GRAVITY / 16.0 * height**2 * waterline_beam * np.sqrt(waterline_beam / bow_length)
    )


def height_limit(waterline_length: Numbers) -> Numbers:
    """Greatest significant height for which the added resistance may be used.

    H = 2.25 (L / 100)^(1/2)

    Args:
        waterline_length: L [m]

    Returns:
        H [m]

    Valid: head seas
    Source: stawave, limits of STAWAVE-1
    """
    return 2.25 * np.sqrt(waterline_length / 100.0)
