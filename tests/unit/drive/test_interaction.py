"""Wake, thrust deduction and their quotient."""

from __future__ import annotations

import pytest

from generator.physics.drive.interaction import (
    advance_speed,
    hull_efficiency,
    power_behind_hull,
    required_thrust,
)


def test_advance_speed_is_slower_by_the_wake() -> None:
    # 2.5 (1 - 0.2) = 2.0
    assert advance_speed(2.5, 0.2) == pytest.approx(2.0)


def test_required_thrust_is_more_by_the_suction() -> None:
    # 450 / (1 - 0.1) = 500
    assert required_thrust(450.0, 0.1) == pytest.approx(500.0)


def test_hull_efficiency_is_tow_power_over_thrust_power() -> None:
    # (1 - 0.1) / (1 - 0.2) = 1.125, and so is R V / (T VA) = 450 x 2.5 / (500 x 2.0)
    assert hull_efficiency(0.2, 0.1) == pytest.approx(1.125)
    tow = 450.0 * 2.5 / (required_thrust(450.0, 0.1) * advance_speed(2.5, 0.2))
    assert tow == pytest.approx(1.125)


def test_power_behind_hull_falls_with_rotative_efficiency() -> None:
    # 980 / 0.98 = 1000
    assert power_behind_hull(980.0, 0.98) == pytest.approx(1000.0)
