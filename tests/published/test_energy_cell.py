"""Voltage, capacity and sag of cells and banks against printed values."""

from __future__ import annotations

import numpy as np
import pytest

from generator.physics.energy.cell import capacity_share, open_circuit_voltage
from generator.physics.energy.pack import (
    pack_resistance,
    sag_current,
    string_currents,
    terminal_voltage,
)

HOUR = 3600.0


@pytest.mark.parametrize(
    ("state", "volts"),
    [
        (0.10, 3.191), (0.20, 3.252), (0.30, 3.283), (0.40, 3.302), (0.50, 3.309),
        (0.60, 3.313), (0.70, 3.324), (0.80, 3.338), (0.90, 3.346), (0.95, 3.366),
    ],
)  # fmt: skip
def test_iron_phosphate_at_rest(state: float, volts: float) -> None:
    """Source: safari2011, positive less negative half-cell function. Half a printed digit."""
    assert float(open_circuit_voltage("LFP", state)) == pytest.approx(volts, abs=5e-4)


@pytest.mark.parametrize(
    ("state", "volts"),
    [(0.1, 3.20), (0.2, 3.25), (0.3, 3.28), (0.4, 3.295), (0.5, 3.30), (0.6, 3.31),
     (0.7, 3.325), (0.8, 3.33), (0.9, 3.335)],
)  # fmt: skip
def test_iron_phosphate_lies_near_large_rested_cells(state: float, volts: float) -> None:
    """Source: practice, large prismatic cells rested (memory). 11 mV is the stated agreement."""
    assert float(open_circuit_voltage("LFP", state)) == pytest.approx(volts, abs=0.0111)


@pytest.mark.parametrize(
    ("chemistry", "temperature", "printed", "at_label"),
    [
        ("LFP", -20.0, 0.723, 0.97), ("LFP", 0.0, 0.888, 0.97), ("LFP", 10.0, 0.930, 0.97),
        ("NMC", 0.0, 0.802, 1.0), ("AGM", 0.8, 0.721, 0.98), ("flooded", -18.3, 0.509, 0.98),
    ],
)  # fmt: skip
def test_capacity_in_the_cold(
    chemistry: str, temperature: float, printed: float, at_label: float
) -> None:
    """Source: pysam, default tables: printed share over that at 25 degC.

    The share at 25 degC is read between its neighbours, so a hundredth is allowed.
    """
    found = float(capacity_share(chemistry, temperature))
    assert found == pytest.approx(printed / at_label, abs=0.01)


def test_sag_of_sixteen_cells() -> None:
    """Source: practice, worked value: 0.5 mohm a cell, 2 mohm links, 200 A from 52.9 V.

    10 mohm, 2.0 V of sag (3.8 %), 400 W of heat; half a unit of the last digit.
    """
    resistance = float(pack_resistance(16, 0.5e-3 * 300 * HOUR, 300 * HOUR, 1.0, 2e-3))
    assert resistance == pytest.approx(0.010, abs=5e-5)
    voltage = float(terminal_voltage(52.9, resistance, 200.0))
    assert 52.9 - voltage == pytest.approx(2.0, abs=0.05)
    assert (52.9 - voltage) / 52.9 == pytest.approx(0.038, abs=5e-4)
    assert float(sag_current(52.9, resistance, 200.0 * voltage)) == pytest.approx(200.0)
    assert 200.0**2 * resistance == pytest.approx(400.0, abs=0.5)


def test_strings_share_by_conductance() -> None:
    """Source: practice, I_i = I (1/R_i) / sum(1/R): cables a third longer move ten per cent."""
    currents = string_currents(200.0, np.array([0.010, 0.012]))
    assert currents.sum() == pytest.approx(200.0)
    assert currents[0] == pytest.approx(200.0 * 12 / 22)
