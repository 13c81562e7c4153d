"""A bank of 16 cells and two strings worked by hand."""

from __future__ import annotations

import numpy as np
import pytest

from generator.physics.energy.cell import (
    charge_rate_limit,
    lowest_voltage,
    resistance_factor,
    series_cells,
)
from generator.physics.energy.pack import lowest_state, most_power, sag_current

HOUR = 3600.0


def test_most_power_stops_at_the_cut_off_or_at_half_the_open_voltage() -> None:
    # 50 V, 10 mohm, cut-off 40 V: 40 V x 1000 A = 40 kW; cut-off 20 V: half of 50 V, 62.5 kW
    assert float(most_power(50.0, 0.01, 40.0)) == pytest.approx(40e3)
    assert float(most_power(50.0, 0.01, 20.0)) == pytest.approx(62.5e3)
    assert float(most_power(39.0, 0.01, 40.0)) == 0.0


def test_no_root_is_no_number() -> None:
    # 50 V over 10 mohm gives 62.5 kW at most
    assert np.isnan(sag_current(50.0, 0.01, 63e3))
    assert float(sag_current(50.0, 0.01, 62.5e3)) == pytest.approx(2500.0)


def test_the_floor_is_the_highest_charge_at_which_power_is_short() -> None:
    states = np.array([0.0, 0.5, 1.0])
    # 10 kW asked: short at 0.5 (8), held at 1 (12): halfway between, 0.75
    assert float(lowest_state(states, np.array([2.0, 8.0, 12.0]), 10.0)[0, 0]) == 0.75
    # a dip above does not hide: short at 0.5 although 0 holds
    assert float(lowest_state(states, np.array([11.0, 8.0, 12.0]), 10.0)[0, 0]) == 0.75
    assert float(lowest_state(states, np.array([2.0, 8.0, 9.0]), 10.0)[0, 0]) == 1.0
    assert float(lowest_state(states, np.array([11.0, 12.0, 13.0]), 10.0)[0, 0]) == 0.0


def test_the_floor_broadcasts_over_draws() -> None:
    states = np.array([0.0, 1.0])
    held = np.array([[0.0, 10.0], [0.0, 20.0]])
    floors = lowest_state(states, held, np.array([[5.0], [5.0]]))
    np.testing.assert_allclose(floors, [[0.5], [0.25]])


def test_cold_and_low_cells_resist() -> None:
    # halfway from 1.5 at 10 to 1.0 at 25 degC; doubled below a tenth of charge
    assert float(resistance_factor("LFP", 17.5, 0.5)) == pytest.approx(1.25)
    assert float(resistance_factor("LFP", 25.0, 0.05)) == pytest.approx(2.0)
    assert float(resistance_factor("LFP", 0.0, 0.05)) == pytest.approx(5.0)


def test_charge_ramp_steps() -> None:
    # 0.05 C from 0 to 5 degC, 0.15 to 15, 0.5 to 45
    found = charge_rate_limit("LFP", np.array([-1.0, 0.0, 4.9, 5.0, 14.9, 20.0])) * HOUR
    np.testing.assert_allclose(found, [0.0, 0.05, 0.05, 0.15, 0.15, 0.5])


def test_cut_off_of_sixteen_cells() -> None:
    assert series_cells("LFP", 51.2) == 16
    assert series_cells("LFP", 48.0) == 16  # so are most sold; fifteen of 3.2 V make it too
    assert series_cells("LFP", 44.8) == 14
    assert series_cells("AGM", 48.0) == 24
    assert lowest_voltage("LFP", 16) == pytest.approx(40.0)
