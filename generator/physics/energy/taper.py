"""How fast does a bank take the last of its charge?"""

from __future__ import annotations

from math import exp

from generator.tables.load import read_table


def taper_share(chemistry: str, time: float) -> float:
    """Share of the room left that a charger at constant voltage fills in a time.

    k = 1 - exp(-t / τ), τ = (1 - s) / r; s the knee, r the rate there

    Args:
        chemistry: LFP, NMC, AGM or flooded [-]
        time: t [s]

    Returns:
        k [-]

    Valid: from the knee on; below it the current is the limit
    Source: practice, constant voltage over a falling current
    """
    table = read_table("energy/taper")
    row = table.row_of("chemistry", chemistry)
    knee, rate = float(table.column("knee")[row]), float(table.column("rate")[row]) / 3600.0
    return 1.0 - exp(-time * rate / (1.0 - knee))
