"""How many cells make a voltage, and how high does charging bring them?"""

from __future__ import annotations

from generator.tables.load import read_table


def series_cells(chemistry: str, nominal_voltage: float) -> int:
    """Cells in series that make up a nominal voltage.

    N = U / U_cell, rounded to a whole number.

    Args:
        chemistry: LFP, NMC, AGM or flooded [-]
        nominal_voltage: of the bank [V]

    Returns:
        cells in series [-]

    Valid: banks of 12 to 400 V of one chemistry
    Source: practice, nominal voltage of one cell
    """
    table = read_table("energy/cells")
    return round(
        nominal_voltage / float(table.column("nominal")[table.row_of("chemistry", chemistry)])
    )


def charge_ceiling(chemistry: str, cells: int) -> float:
    """Highest voltage of a bank on charge.

    U_max = N U_charge.

    Args:
        chemistry: LFP, NMC, AGM or flooded [-]
        cells: in series [-]

    Returns:
        voltage at the end of charge [V]

    Valid: 25 degC for lead; lithium at any temperature at which it may be charged
    Source: practice, charge voltage of one cell
    """
    table = read_table("energy/cells")
    return cells * float(table.column("charge")[table.row_of("chemistry", chemistry)])
