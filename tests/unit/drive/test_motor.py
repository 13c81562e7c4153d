"""Losses of motor and controller worked by hand."""

from __future__ import annotations

import numpy as np
import pytest

from generator.physics.drive.motor import efficiency, electrical_power, motor_losses


def test_motor_losses_at_rated_power() -> None:
    # 10 kW x (0.004 + 0.012 + 0.014 + 0.055) = 850 W
    assert float(motor_losses(10e3, 150.0, 10e3, 150.0)) == pytest.approx(850.0)


def test_motor_losses_at_half_turns_and_a_quarter_of_the_torque() -> None:
    # n = 0.5, P = 0.125, T = 0.25: 0.004 + 0.006 + 0.0035 + 0.055 / 16 = 0.0169375
    assert float(motor_losses(1250.0, 75.0, 10e3, 150.0)) == pytest.approx(169.375)


def test_motor_losses_without_load_are_those_of_turning() -> None:
    # n = 1, T = 0: 0.030 of 10 kW
    assert float(motor_losses(0.0, 150.0, 10e3, 150.0)) == pytest.approx(300.0)


def test_motor_losses_at_rest_are_the_constant_part() -> None:
    assert float(motor_losses(0.0, 0.0, 10e3, 150.0)) == pytest.approx(40.0)


def test_motor_losses_broadcast() -> None:
    power, rating = np.array([100.0, 1000.0]), np.array([[5e3], [10e3], [20e3]])
    assert motor_losses(power, 100.0, rating, 150.0).shape == (3, 2)


def test_electrical_power_and_efficiency() -> None:
    assert electrical_power(900.0, 100.0) == pytest.approx(1000.0)
    assert float(efficiency(900.0, 100.0)) == pytest.approx(0.9)
    assert float(efficiency(0.0, 0.0)) == 0.0
