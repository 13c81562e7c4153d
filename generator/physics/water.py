"""How heavy and how viscous is the water she floats in?"""

from __future__ import annotations

import numpy as np

from generator.arrays import Numbers
from generator.tables.load import read_table

GRAVITY = 9.81  # m/s2
TABLE = "hull/water"
MICRO = 1e-6  # the table lists viscosity in millionths


def density(kind: str, temperature: Numbers) -> Numbers:
    """Density of water by temperature.

    ρ = straight lines between the rows of the table

    Args:
        kind: salt or fresh
        temperature: of the water [degC]

    Returns:
        ρ [kg/m3]

    Valid: 0 to 30 degC, held at the ends outside; salt water of 35.165 g/kg
    Source: ittc_properties, tables of density
    """
    table = read_table(TABLE)
    values = np.interp(temperature, table.column("temperature"), table.column(f"{kind}_density"))
    return np.asarray(values) if np.ndim(temperature) else float(values)


def kinematic_viscosity(kind: str, temperature: Numbers) -> Numbers:
    """Kinematic viscosity of water by temperature.

    ν = exp(straight lines between ln ν of the rows of the table)

    Args:
        kind: salt or fresh
        temperature: of the water [degC]

    Returns:
        ν [m2/s]

    Valid: 0 to 30 degC, held at the ends outside; salt water of 35.165 g/kg; between the
        rows within 0.2 per cent
    Source: ittc_properties, tables of viscosity
    """
    table = read_table(TABLE)
    logs = np.log(table.column(f"{kind}_viscosity") * MICRO)
    values = np.exp(np.interp(temperature, table.column("temperature"), logs))
    return np.asarray(values) if np.ndim(temperature) else float(values)
