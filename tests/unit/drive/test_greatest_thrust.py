"""The screw at the limits of what turns it, against the balance that works the other way."""

from __future__ import annotations

import numpy as np
import pytest

from generator.physics.drive.greatest_thrust import (
    TURN,
    power_at,
    thrust_at,
    turns_at_power_line,
    wheel,
)
from generator.physics.drive.operating_point import bollard, operating_point

SCREW = (0.42, 0.65, 0.50, 3, 1025.0)


def test_power_line_gives_the_bollard_pull_of_a_power() -> None:
    screw = wheel(*SCREW)
    turns = turns_at_power_line(screw, 0.0, 10_000.0, 0.0, 100.0)
    expected = bollard(10_000.0, *SCREW)
    assert TURN * float(turns) == pytest.approx(float(expected.revolutions), rel=1e-6)
    assert float(thrust_at(screw, 0.0, turns)) == pytest.approx(float(expected.thrust), rel=1e-6)


@pytest.mark.parametrize("speed", [0.5, 1.5, 3.0])
def test_thrust_at_a_power_asks_for_that_power(speed: float) -> None:
    screw = wheel(*SCREW)
    turns = turns_at_power_line(screw, speed, 5_000.0, 0.0, 60.0)
    thrust = float(thrust_at(screw, speed, turns))
    point = operating_point(thrust, speed, *SCREW)
    assert float(point.delivered_power) == pytest.approx(5_000.0, rel=1e-5)
    assert float(point.revolutions) == pytest.approx(TURN * float(turns), rel=1e-5)


def test_torque_line_holds_the_torque() -> None:
    screw, torque = wheel(*SCREW), 60.0
    turns = turns_at_power_line(screw, 1.0, 0.0, TURN * torque, 60.0)
    assert float(power_at(screw, 1.0, turns) / (TURN * turns)) == pytest.approx(torque, rel=1e-6)


def test_a_line_that_allows_more_leaves_the_turns() -> None:
    turns = turns_at_power_line(wheel(*SCREW), 1.0, 1e6, 0.0, 10.0)
    assert float(turns) == 10.0


def test_a_screw_overtaken_by_the_water_does_not_pull() -> None:
    assert float(thrust_at(wheel(*SCREW), 3.0, 5.0)) == 0.0


def test_draws_and_speeds_broadcast() -> None:
    screw = wheel(0.42, np.array([[0.6], [0.8]]), 0.50, 3, 1025.0)
    turns = turns_at_power_line(screw, np.array([0.0, 1.0, 2.0]), 4_000.0, 0.0, 60.0)
    assert turns.shape == thrust_at(screw, np.array([0.0, 1.0, 2.0]), turns).shape == (2, 3)
