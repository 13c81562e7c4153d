"""Turns and power through a reduction."""

from __future__ import annotations

import pytest

from generator.physics.drive.gear import input_power, motor_speed, output_power


def test_motor_speed_is_ratio_times_screw() -> None:
    assert motor_speed(80.0, 2.5) == pytest.approx(200.0)


def test_input_power_carries_the_loss() -> None:
    # 1940 / 0.97 = 2000, of which 60 W stay in the gear
    assert input_power(1940.0, 0.97) == pytest.approx(2000.0)
    assert output_power(2000.0, 0.97) == pytest.approx(1940.0)
