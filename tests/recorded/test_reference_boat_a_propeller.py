"""Reference boat A: screw B3-50, 0.42 m, P/D 0.65 behind the recorded resistance."""

from __future__ import annotations

import numpy as np
import pytest

from generator.physics.drive.interaction import advance_speed, required_thrust
from generator.physics.drive.operating_point import OperatingPoint, operating_point

KNOT = 1852.0 / 3600.0
DENSITY = 1025.0
WAKE = DEDUCTION = 0.10
TOLERANCE = 0.003  # the recorded resistance and results carry three to four digits
SPEED = np.array([5.0, 6.0, 7.0]) * KNOT
RESISTANCE = np.array([432.1, 689.9, 1275.0])
BEST_PITCH = [  # D, P/D, efficiency, rpm: the best pitch for each diameter at 6 kn
    (0.33, 0.76, 0.537, 1169),
    (0.38, 0.80, 0.577, 894),
    (0.42, 0.83, 0.603, 742),
    (0.46, 0.86, 0.626, 626),
]


def point() -> OperatingPoint:
    thrust = required_thrust(RESISTANCE, DEDUCTION)
    return operating_point(thrust, advance_speed(SPEED, WAKE), 0.42, 0.65, 0.50, 3, DENSITY)


def rpm(found: OperatingPoint) -> np.ndarray[tuple[int, ...], np.dtype[np.float64]]:
    return found.revolutions * 30.0 / np.pi


def test_required_thrust_of_boat_a() -> None:
    thrust = required_thrust(RESISTANCE, DEDUCTION)
    np.testing.assert_allclose(thrust, [480.1, 766.6, 1416.6], rtol=TOLERANCE)


def test_operating_point_turns_of_boat_a() -> None:
    np.testing.assert_allclose(rpm(point()), [714.3, 882.2, 1127.2], rtol=TOLERANCE)


def test_operating_point_advance_of_boat_a() -> None:
    np.testing.assert_allclose(point().advance, [0.4630, 0.4499, 0.4107], rtol=TOLERANCE)


def test_operating_point_efficiency_of_boat_a() -> None:
    efficiency = point().open_water_efficiency
    np.testing.assert_allclose(efficiency, [0.5921, 0.5831, 0.5508], rtol=TOLERANCE)


def test_operating_point_power_of_boat_a() -> None:
    np.testing.assert_allclose(point().delivered_power, [1877, 3652, 8336], rtol=TOLERANCE)


@pytest.mark.parametrize(("diameter", "pitch_ratio", "efficiency", "turns"), BEST_PITCH)
def test_operating_point_at_the_best_pitch_of_boat_a(
    diameter: float, pitch_ratio: float, efficiency: float, turns: float
) -> None:
    thrust, speed = 766.6, 0.9 * 6.0 * KNOT
    found = operating_point(thrust, speed, diameter, pitch_ratio, 0.50, 3, DENSITY)
    assert float(found.open_water_efficiency) == pytest.approx(efficiency, rel=TOLERANCE)
    assert float(rpm(found)) == pytest.approx(turns, rel=TOLERANCE)
    others = np.linspace(0.5, 1.4, 181)
    best = operating_point(thrust, speed, diameter, others, 0.50, 3, DENSITY)
    best_pitch = others[np.argmax(best.open_water_efficiency)]
    assert best_pitch == pytest.approx(pitch_ratio, abs=0.01)
