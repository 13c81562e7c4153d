"""Depth Froude number and blockage by hand."""

from __future__ import annotations

import pytest

from generator.physics.hull.confined import blockage, depth_froude_number
from tests.recorded.test_reference_boat_a import boat_a

KNOT = 1852 / 3600


def test_canal_at_4_kn_in_1_8_m_is_0_49() -> None:
    """2.0578 / (9.81 x 1.8)^(1/2) = 2.0578 / 4.2021 = 0.4897."""
    assert depth_froude_number(4 * KNOT, 1.8) == pytest.approx(0.4897, abs=1e-4)


def test_blockage_of_a_canal() -> None:
    """Two parts.

    Cm = 5.0/(0.56 x 9 x 2.9 x 0.52) = 0.65786; section 0.65786 x 2.9 x 0.52 = 0.99206,
    keel (1.8 - 0.52) x 0.05 x 2.9 = 0.1856; (0.99206 + 0.1856)/(12 x 2.0) = 0.04907.
    """
    assert blockage(boat_a(), 1.8, 12.0, 2.0) == pytest.approx(0.04907, abs=2e-5)
