"""Water between the rows of its table, and the cautions about ranges."""

from __future__ import annotations

import numpy as np
import pytest

from generator.physics.validity import outside
from generator.physics.water import density, kinematic_viscosity


@pytest.mark.parametrize(
    ("kind", "rho", "nu"), [("fresh", 999.10, 1.1386e-6), ("salt", 1026.02, 1.1892e-6)]
)
def test_water_of_fifteen_degrees(kind: str, rho: float, nu: float) -> None:
    assert density(kind, 15.0) == pytest.approx(rho)
    assert kinematic_viscosity(kind, 15.0) == pytest.approx(nu)


def test_density_between_rows() -> None:
    # (1026.02 + 1024.81) / 2 = 1025.415
    assert density("salt", 17.5) == pytest.approx(1025.415)


def test_viscosity_between_rows_is_the_geometric_mean() -> None:
    # (1.1892 x 1.0508)^0.5 = 1.117861
    assert kinematic_viscosity("salt", 17.5) == pytest.approx(1.117861e-6, rel=1e-6)


def test_water_is_held_at_the_ends() -> None:
    assert density("fresh", 99.0) == density("fresh", 30.0)
    assert kinematic_viscosity("salt", -2.0) == kinematic_viscosity("salt", 0.0)


def test_water_takes_draws() -> None:
    drawn = np.array([[5.0], [15.0]])
    assert np.shape(density("salt", drawn)) == (2, 1)
    assert np.shape(kinematic_viscosity("salt", drawn)) == (2, 1)


def test_outside_says_nothing_inside() -> None:
    assert outside("beam", np.array([1.0, 2.0]), 1.0, 2.0, "gko1993") is None


def test_outside_counts_the_draws() -> None:
    found = outside("beam", np.array([0.9, 1.5, 1.6, 2.1]), 1.0, 2.0, "gko1993")
    assert found is not None
    assert found.share_outside == 0.5
