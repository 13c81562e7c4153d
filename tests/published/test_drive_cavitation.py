"""Blade area by Keller's criterion, by hand."""

from __future__ import annotations

import pytest

from generator.physics.drive.cavitation import needed_area_ratio


def test_needed_area_ratio_of_boat_a_at_six_knots() -> None:
    """Source: keller1966, boat A at 6 kn: 0.29 with k 0.2, to its two digits.

    (1.3 + 0.9) 766.6 / ((99.6 + 5.0) kPa x 0.1764 m2) + 0.2 = 1686.5 / 18459 + 0.2 = 0.291.
    """
    found = needed_area_ratio(766.6, 0.42, 3, 0.5, 1025.0)
    assert found == pytest.approx(0.2914, abs=0.0005)
    assert found == pytest.approx(0.29, abs=0.005)


def test_needed_area_ratio_decides_for_a_small_screw_of_ten_kilowatts() -> None:
    """Source: keller1966, 0.30 m and the 1.9 kN that 10 kW pull: more than ordinary blades.

    (1.3 + 0.9) 1900 / (104.6 kPa x 0.09 m2) + 0.2 = 0.644.
    """
    assert needed_area_ratio(1900.0, 0.30, 3, 0.5, 1025.0) == pytest.approx(0.644, abs=0.001)
