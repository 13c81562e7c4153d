"""What does the propeller drag while she sails?"""

from __future__ import annotations

import numpy as np

from generator.arrays import Numbers
from generator.tables.load import read_table


def drag_coefficient(state: str) -> tuple[float, float, float]:
    """Drag coefficient on expanded blade area by the state of the propeller.

    CD of the table: middle, low, high

    Args:
        state: locked, free, feathered or folded

    Returns:
        CD, its low and its high end [-]

    Valid: as the table
    Source: lammeren1969, beta 90 degrees; larsson_eliasson, free and folded; maddock2009, folded
    """
    table = read_table("drive/sailing_drag")
    row = table.row_of("state", state)
    return tuple(float(table.column(name)[row]) for name in ("drag_coefficient", "low", "high"))  # type: ignore[return-value]


def propeller_drag(
    coefficient: Numbers,
    diameter: Numbers,
    area_ratio: Numbers,
    advance_speed: Numbers,
    density: Numbers,
) -> Numbers:
    """Drag of a propeller that does not drive.

    R = CD 1/2 ρ VA² AE/A0 π D²/4

    Args:
        coefficient: CD on expanded blade area [-]
        diameter: D [m]
        area_ratio: AE/A0 [-]
        advance_speed: VA [m/s]
        density: ρ of the water [kg/m3]

    Returns:
        R [N]

    Valid: as the coefficient
    Source: ufc_moorings, propeller drag on expanded area
    """
    return coefficient * 0.5 * density * advance_speed**2 * area_ratio * np.pi * diameter**2 / 4.0
