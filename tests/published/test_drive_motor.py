"""Losses of motor with controller against two published efficiency curves."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from generator.physics.drive.motor import bounded_losses, efficiency, motor_losses, published_losses
from generator.tables.load import read_file

CURVES = read_file(Path(__file__).parent / "motor_efficiency.csv", "motor_efficiency")
POINTS = [
    (float(share), float(large), float(small))
    for share, large, small in CURVES.matrix("power_share", "large", "small")
    if share > 0.0  # at no output every efficiency is zero; the curves' first points are stops
]
LOW = [point for point in POINTS if point[0] < 0.3]
HIGH = [point for point in POINTS if point[0] > 0.3]
POINT = 0.01  # of efficiency


def model(share: float) -> float:
    """Efficiency on the propeller curve: power as the cube of the turns."""
    return float(efficiency(share, motor_losses(share, share ** (1.0 / 3.0), 1.0, 1.0)))


@pytest.mark.parametrize(("share", "large", "small"), LOW)
def test_motor_losses_lie_between_the_curves_at_low_load(
    share: float, large: float, small: float
) -> None:
    """Source: fastsim, baseline curves of a large and a small machine.

    No tolerance: the two curves are the doubt.
    """
    assert small < model(share) < large


@pytest.mark.parametrize(("share", "large", "small"), HIGH)
def test_motor_losses_lie_within_two_points_of_the_small_machine(
    share: float, large: float, small: float
) -> None:
    """Source: fastsim, baseline curve of a small machine.

    Tolerance two points of efficiency: the curves are given in whole points and differ by two.
    """
    assert abs(model(share) - small) <= 2.0 * POINT


@pytest.mark.parametrize(
    ("share", "large", "small"),
    [
        pytest.param(
            *point,
            marks=[
                pytest.mark.xfail(
                    reason="a known miss: 2.4 points below the large machine at 40 per cent"
                )
            ]
            if point[0] == 0.4
            else [],
        )
        for point in HIGH
    ],
)
def test_motor_losses_lie_within_two_points_of_the_large_machine(
    share: float, large: float, small: float
) -> None:
    """Source: fastsim, baseline curve of a large machine.

    Tolerance as for the small machine.
    """
    assert abs(model(share) - large) <= 2.0 * POINT


@pytest.mark.parametrize("share", [0.02, 0.05, 0.1, 0.2])
@pytest.mark.parametrize("scale", [0.01, 0.6, 1.8, 100.0])
def test_losses_at_part_load_stay_between_the_published_curves(share: float, scale: float) -> None:
    """Source: fastsim, both baseline curves at 2, 10 and 20 %; between them straight lines."""
    rated, power = 8000.0, 8000.0 * share
    losses = scale * motor_losses(power, 100.0 * share ** (1 / 3), rated, 100.0) + 35.0
    found = bounded_losses(losses, power, rated)
    low, high = published_losses(np.asarray(share))
    assert low * rated <= found <= high * rated
    inside = bool(low * rated < losses < high * rated)
    assert (found == losses) == inside


def test_standing_losses_do_not_vanish_with_the_load() -> None:
    """Source: fastsim, worst curve 0.16 at 2 %: 0.02 (1/0.16 - 1) = 0.105 of rated power."""
    assert bounded_losses(60.0, 0.0, 8000.0) == 60.0
    assert bounded_losses(2000.0, 0.0, 8000.0) == pytest.approx(0.105 * 8000.0)
