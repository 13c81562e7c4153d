"""How many cells make a voltage, and what does one cell give when it is cold or low?"""

from __future__ import annotations

import numpy as np

from generator.arrays import Array, Numbers
from generator.tables.cell_labels import cell_counts, cell_voltage
from generator.tables.load import read_table

LEAD = ("AGM", "flooded")
LABEL_TEMPERATURE = 25.0  # degC at which the charge on a label is measured: common practice


def series_cells(chemistry: str, nominal_voltage: float) -> int:
    """Cells in series that make up a nominal voltage.

    N = U / U_cell, rounded to a whole number; the usual one where a label fits two.

    Args:
        chemistry: LFP, NMC, AGM or flooded [-]
        nominal_voltage: of the bank [V]

    Returns:
        cells in series [-]

    Valid: banks of 12 to 400 V of one chemistry
    Source: practice, nominal voltage of one cell, and labels that fit two counts
    """
    return cell_counts(chemistry, nominal_voltage)[0]


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
    return cells * cell_voltage(chemistry, "charge")


def lowest_voltage(chemistry: str, cells: int) -> float:
    """Voltage below which a bank is cut off, to save its cells.

    U_min = N U_lowest.

    Args:
        chemistry: LFP, NMC, AGM or flooded [-]
        cells: in series [-]

    Returns:
        voltage under load [V]

    Valid: discharge; the maker's sheet comes first
    Source: practice, cut-off voltage of one cell
    """
    return cells * cell_voltage(chemistry, "lowest")


def open_circuit_voltage(chemistry: str, state: Numbers) -> Array:
    """Voltage of a cell at rest.

    Uoc(s), straight lines between the rows of a table.

    Args:
        chemistry: LFP, NMC, AGM or flooded [-]
        state: s, state of charge 0 to 1 [-]

    Returns:
        Uoc of one cell [V]

    Valid: 25 degC, rested; it tells nothing of the charge of LFP between 0.2 and 0.9
    Source: safari2011, half-cell functions; practice, NMC and lead
    """
    table = read_table("energy/open_circuit")
    return np.asarray(np.interp(state, table.column("state"), table.column(chemistry)))


def resistance_factor(chemistry: str, temperature: Numbers, state: Numbers) -> Array:
    """Resistance of a cell over that at 25 degC and half charge.

    R / R0 = f(T) g(s), straight lines between the rows of two tables.

    Args:
        chemistry: LFP, NMC, AGM or flooded [-]
        temperature: T of the cell [degC]
        state: s, state of charge 0 to 1 [-]

    Returns:
        factor [-]

    Valid: 0 to 45 degC, held at the end values outside; currents of 10 s and longer
    Source: practice, resistance against temperature and state of charge
    """
    warmth = read_table("energy/resistance_temperature")
    depth = read_table("energy/resistance_state")
    f = np.interp(temperature, warmth.column("temperature"), warmth.column(chemistry))
    g = np.interp(state, depth.column("state"), depth.column(chemistry))
    return np.asarray(f * g)


def capacity_share(chemistry: str, temperature: Numbers) -> Array:
    """What of the charge on the label comes out at a temperature.

    c(T) / c(25 degC), at most 1; straight lines between the rows of a table.

    Args:
        chemistry: LFP, NMC, AGM or flooded [-]
        temperature: T of the cells [degC]

    Returns:
        share of the charge measured at 25 degC [-]

    Valid: -20 to 45 degC for LFP, 0 to 45 for NMC, -27 to 38 for lead; held at the ends. The
        label is taken to be measured at 25 degC, and warmth to give no more than the label
    Source: pysam, default tables of the battery model
    """
    table = read_table("energy/capacity_temperature")
    family = "lead" if chemistry in LEAD else chemistry
    rows = np.array([name == family for name in table.text("family")])
    warm, share = table.column("temperature")[rows], table.column("capacity")[rows]
    label = np.interp(LABEL_TEMPERATURE, warm, share)
    return np.asarray(np.minimum(np.interp(temperature, warm, share) / label, 1.0))


def charge_rate_limit(chemistry: str, temperature: Numbers) -> Array:
    """Highest charge current over capacity that the cold or the heat allows.

    r(T) in steps: the row of the highest temperature that is not above T.

    Args:
        chemistry: LFP, NMC, AGM or flooded [-]
        temperature: T of the cells [degC]

    Returns:
        r, a C rate [1/s]

    Valid: where the maker says nothing else; lithium must not be charged below 0 degC at all
    Source: practice, charging in the cold
    """
    table = read_table("energy/charge_ramp")
    place = np.searchsorted(table.column("temperature"), temperature, side="right") - 1
    return np.asarray(table.column(chemistry)[np.maximum(place, 0)] / 3600.0)
