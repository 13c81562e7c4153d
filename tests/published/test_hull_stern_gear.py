"""Do shaft, bracket and leg drag what the handbook figures say, and do the defaults lie there?"""

from __future__ import annotations

import numpy as np
import pytest

from generator.case.register import find_default
from generator.physics.hull.stern_gear import SternGear, blunt_drag, shaft_drag, stern_gear_drag

DENSITY, VISCOSITY = 1025.0, 1.19e-6
# A shaft of 25 mm, 1 m of it in the water at 12 degrees, at 2.5 m/s; see the test of it.
SHAFT = (1.0, 0.025, np.radians(12.0))


def test_bare_shaft_by_the_rule_of_the_sine_cubed() -> None:
    """Source: hoerner, chapter 3: 1.1 sin^3 on length times diameter, and friction all round.

    sin 12 = 0.207912, cubed 0.0089876, x 1.1 x 0.025 m2 x 3203.125 Pa = 0.79168 N;
    Rn 2.10084e6, CF 0.075/(6.32239 - 2)^2 = 0.0040143, x 0.0785398 m2 x 3203.125 = 1.00990 N.
    To the last digit of the working.
    """
    drag = shaft_drag(*SHAFT, 2.5, DENSITY, VISCOSITY)
    assert drag == pytest.approx(0.79168 + 1.00990, abs=2e-4)


def test_shaft_across_the_flow_is_a_cylinder() -> None:
    """Source: hoerner, chapter 3: drag coefficient 1.1 on length times diameter, square to it."""
    across = shaft_drag(1.0, 0.025, np.pi / 2.0, 2.5, DENSITY, VISCOSITY)
    along = shaft_drag(1.0, 0.025, 0.0, 2.5, DENSITY, VISCOSITY)
    assert across - along == pytest.approx(1.1 * 0.025 * 3203.125)


def test_leg_of_a_saildrive() -> None:
    """Source: hoerner, faired bodies: 0.04 m2 at 0.15 are 0.006 m2, at 5 kn 20.3 N.

    0.5 x 1025 x 2.57222^2 = 3390.9 Pa x 0.006; to the last digit of 20.345.
    """
    assert blunt_drag(0.04, 0.15, 5.0 * 1852.0 / 3600.0, DENSITY) == pytest.approx(20.345, abs=1e-3)


def test_parts_add() -> None:
    gear = SternGear(*SHAFT, frontal_area=0.008, drag_coefficient=0.6)
    parts = shaft_drag(*SHAFT, 2.5, DENSITY, VISCOSITY) + blunt_drag(0.008, 0.6, 2.5, DENSITY)
    assert stern_gear_drag(gear, 2.5, DENSITY, VISCOSITY) == pytest.approx(parts)


@pytest.mark.parametrize(
    ("key", "low", "high"),
    [("propeller.stern_gear_area", 0.03, 0.05), ("propeller.stern_gear_drag", 0.10, 0.20)],
)
def test_default_leg_is_that_of_the_handbook(key: str, low: float, high: float) -> None:
    """Source: practice, leg of a saildrive: 0.03 to 0.05 m2 from ahead at 0.1 to 0.2."""
    row = find_default(key, ["saildrive"])
    assert row is not None
    assert (row.low, row.high) == (low, high)


def test_blunt_parts_drag_at_most_as_a_cylinder() -> None:
    """Source: hoerner, chapter 3: about 1.1 square to the flow."""
    row = find_default("propeller.stern_gear_drag", ["open shaft"])
    assert row is not None
    assert row.high == 1.1
