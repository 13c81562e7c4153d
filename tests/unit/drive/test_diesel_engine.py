"""The fuel line worked by hand."""

from __future__ import annotations

import numpy as np
import pytest

from generator.physics.drive.diesel_engine import (
    fuel_rate,
    power_from_fuel,
    propeller_law_power,
    specific_consumption,
)

LITRE_PER_HOUR = 1e-3 / 3600.0


def test_fuel_rate_of_twenty_kilowatts_at_half_load() -> None:
    # 0.27 x 10 + 0.034 x 20 = 3.38 l/h
    assert fuel_rate(10e3, 20e3) == pytest.approx(3.38 * LITRE_PER_HOUR)


def test_power_from_fuel_undoes_the_line() -> None:
    assert float(power_from_fuel(3.38 * LITRE_PER_HOUR, 20e3)) == pytest.approx(10e3)


def test_power_from_fuel_below_idle_is_none() -> None:
    # The line asks for 0.68 l/h to idle.
    found = power_from_fuel(np.array([0.0, 0.5, 0.68]) * LITRE_PER_HOUR, 20e3)
    np.testing.assert_allclose(found, 0.0, atol=1e-6)


def test_specific_consumption_at_half_load() -> None:
    # 227 x 1.25 = 283.75 g/kWh
    assert specific_consumption(0.5) * 3.6e9 == pytest.approx(283.75)


def test_propeller_law_power_at_eight_tenths_of_the_turns() -> None:
    # 0.8³ = 0.512: about half of full power
    assert propeller_law_power(20e3, 0.8, 3.0) == pytest.approx(10_240.0)
