"""A bank of 16 cells of 300 Ah worked by hand."""

from __future__ import annotations

import numpy as np
import pytest

from generator.errors import TableError
from generator.physics.energy.battery import (
    current,
    nominal_energy,
    peukert_capacity,
    peukert_exponent,
    peukert_time,
    rate,
    rated_discharge_time,
    usable_energy,
)

HOUR = 3600.0
KILOWATT_HOUR = 3.6e6


def test_nominal_and_usable_energy() -> None:
    # 51.2 V x 300 Ah = 15.36 kWh; 0.8 of it at 0.9 of its capacity: 11.0592 kWh
    nominal = nominal_energy(51.2, 300 * HOUR)
    assert nominal == pytest.approx(15.36 * KILOWATT_HOUR)
    assert usable_energy(nominal, 0.8, 0.9) == pytest.approx(11.0592 * KILOWATT_HOUR)


def test_current_and_rate() -> None:
    # 5120 W / 51.2 V = 100 A, a third of 300 Ah in an hour
    assert current(5120.0, 51.2) == pytest.approx(100.0)
    assert rate(100.0, 300 * HOUR) * HOUR == pytest.approx(1 / 3)


def test_peukert_never_gives_more_than_is_rated() -> None:
    currents = np.array([0.0, 1.0, 5.0])  # rated current 100 Ah / 20 h = 5 A
    capacity = peukert_capacity(20 * HOUR, 100 * HOUR, currents, 1.2)
    np.testing.assert_allclose(capacity, 100 * HOUR)
    time = peukert_time(20 * HOUR, 100 * HOUR, currents, 1.2)
    np.testing.assert_allclose(time, np.array([np.inf, 100.0, 20.0]) * HOUR)


def test_peukert_with_exponent_one_is_plain_division() -> None:
    assert float(peukert_time(20 * HOUR, 100 * HOUR, 50.0, 1.0)) == pytest.approx(2 * HOUR)
    assert float(peukert_capacity(20 * HOUR, 100 * HOUR, 50.0, 1.0)) == pytest.approx(100 * HOUR)


def test_peukert_exponent_is_of_the_chemistry() -> None:
    assert peukert_exponent("LFP") == peukert_exponent("NMC") == 1.0
    assert 1.05 <= peukert_exponent("AGM") <= 1.15
    assert 1.2 <= peukert_exponent("flooded") <= 1.3
    assert rated_discharge_time("AGM") == 20 * HOUR


def test_peukert_exponent_of_an_unknown_chemistry_is_a_fault() -> None:
    with pytest.raises(TableError, match="nickel"):
        peukert_exponent("nickel")
