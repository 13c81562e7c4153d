"""The rules of thumb of the trade against their printed tables."""

from __future__ import annotations

import pytest

from generator.physics.hull.beaufort import beaufort_force, open_sea_height
from generator.physics.hull.rules_of_thumb import (
    FOOT,
    HORSEPOWER,
    KNOT,
    POUND,
    gerr_power,
    keith_power,
    speed_length_ratio,
    wyman_power,
)

TONNE = 1000.0


@pytest.mark.parametrize(
    ("ratio", "pounds_per_horse", "gerr", "wyman", "keith"),
    [
        (0.9, 1664, 0.99, 1.38, 0.73),
        (1.0, 1213, 1.36, 1.80, 1.00),
        (1.1, 911, 1.80, 2.28, 1.33),
        (1.2, 702, 2.34, 2.81, 1.73),
        (1.34, 504, 3.26, 3.64, 2.41),
        (1.5, 359, 4.57, 4.73, 3.38),
    ],
)
def test_power_for_a_tonne_by_the_three_rules(
    ratio: float, pounds_per_horse: float, gerr: float, wyman: float, keith: float
) -> None:
    """Source: gerr, formula 2-1; wyman1998; keith_skene, page 105; to the digits printed."""
    length = 25.0 * FOOT
    speed = ratio * 5.0 * KNOT
    assert speed_length_ratio(speed, length) == pytest.approx(ratio)
    power = gerr_power(speed, length, TONNE)
    assert TONNE / POUND / (power / HORSEPOWER) == pytest.approx(pounds_per_horse, abs=0.6)
    assert power / 1e3 == pytest.approx(gerr, abs=0.0055)
    assert wyman_power(speed, length, TONNE) / 1e3 == pytest.approx(wyman, abs=0.0055)
    assert keith_power(speed, length, TONNE) / 1e3 == pytest.approx(keith, abs=0.0055)


@pytest.mark.parametrize(
    ("knots", "gerr", "wyman", "keith"), [(6.0, 9.8, 12.3, 7.2), (7.0, 15.5, 17.8, 11.4)]
)
def test_power_of_boat_a(knots: float, gerr: float, wyman: float, keith: float) -> None:
    """Source: gerr, wyman1998 and keith_skene for 9.0 m and 5.22 m3 of sea water, to a digit."""
    boat = (knots * KNOT, 9.0, 5.22 * 1025.0)
    assert gerr_power(*boat) / 1e3 == pytest.approx(gerr, abs=0.055)
    assert wyman_power(*boat) / 1e3 == pytest.approx(wyman, abs=0.055)
    assert keith_power(*boat) / 1e3 == pytest.approx(keith, abs=0.055)


@pytest.mark.parametrize(
    ("knots", "force", "height"),
    [
        (0, 0, 0.0),
        (3, 1, 0.1),
        (10, 3, 0.6),
        (20, 5, 2.0),
        (25, 6, 3.0),
        (34, 8, 5.5),
        (70, 12, 14),
    ],
)
def test_beaufort_force_and_its_open_sea(knots: float, force: float, height: float) -> None:
    """Source: wmo_beaufort, limits in knots and probable mean wave height, exact."""
    assert beaufort_force(knots * KNOT) == force
    assert open_sea_height(knots * KNOT) == height
