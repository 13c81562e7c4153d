"""What does the wind on hull and rig cost?"""

from __future__ import annotations

from functools import cache

import numpy as np

from generator.arrays import Numbers
from generator.tables.load import read_table

AIR_DENSITY = 1.225  # kg/m3: dry air of 15 degC at sea level


def drag_area(
    beam: Numbers,
    freeboard: Numbers,
    mast_height: Numbers,
    mast_diameter: Numbers,
    wire_width: Numbers,
    furled_sail_width: Numbers,
    sprayhood_area: Numbers,
) -> Numbers:
    """Drag area of hull, bare rig and canvas seen from ahead.

    CdA = 1.13 (B FB + hm (dm + df)) + 1.1 hm dw + 1.2 As

    Args:
        beam: B, greatest [m]
        freeboard: FB, mean [m]
        mast_height: hm [m]
        mast_diameter: dm, mean [m]
        wire_width: dw, summed diameters of the wires over the mast height [m]
        furled_sail_width: df, added by a furled headsail over the mast height [m]
        sprayhood_area: As, sprayhood, bimini and the like from ahead [m2]

    Returns:
        CdA [m2]

    Valid: wind within 30 degrees of the bow, sails down
    Source: hazen1980, bare hull and rig; practice, wires and canvas
    """
    rig = (
        _coefficient("mast") * mast_diameter
        + _coefficient("furled_sail") * furled_sail_width
        + _coefficient("wires") * wire_width
    )
    hull = _coefficient("hull") * beam * freeboard
    return hull + mast_height * rig + _coefficient("sprayhood") * sprayhood_area


@cache
def _coefficient(part: str) -> float:
    table = read_table("hull/windage")
    return float(table.column("drag_coefficient")[table.row_of("part", part)])


def wind_force(drag_area: Numbers, wind: Numbers, speed: Numbers) -> Numbers:
    """Force of the air against the boat's way.

    F = 1/2 ρ CdA Va |Va|, Va = wind + v

    Args:
        drag_area: CdA [m2]
        wind: true wind, from ahead positive [m/s]
        speed: v of the boat [m/s]

    Returns:
        F, backwards positive [N]

    Valid: wind from ahead or astern; on the beam it is none of the thrust's business
    Source: hazen1980, definition of the drag area
    """
    apparent = wind + speed
    return 0.5 * AIR_DENSITY * drag_area * apparent * np.abs(apparent)
