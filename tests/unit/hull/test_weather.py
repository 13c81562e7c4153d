"""Wind and waves worked by hand."""

from __future__ import annotations

import numpy as np
import pytest

from generator.physics.hull.waves import added_resistance, fetch_sea, height_limit
from generator.physics.hull.windage import drag_area, wind_force


def test_drag_area_adds_its_parts() -> None:
    # hull 1.13 x 3 x 1 = 3.39; mast 1.13 x 10 x 0.15 = 1.695; furled sail 1.13 x 10 x 0.1 = 1.13;
    # wires 1.1 x 10 x 0.05 = 0.55; sprayhood 1.2 x 2 = 2.4; together 9.165
    assert drag_area(3.0, 1.0, 10.0, 0.15, 0.05, 0.1, 2.0) == pytest.approx(9.165)


def test_wind_force() -> None:
    # 1/2 x 1.225 x 4 x (8 + 2)^2 = 245
    assert wind_force(4.0, 8.0, 2.0) == pytest.approx(245.0)


def test_wind_force_pushes_from_astern() -> None:
    # -12 + 2 = -10: the same force, forwards
    assert wind_force(4.0, -12.0, 2.0) == pytest.approx(-245.0)


def test_fetch_sea_by_hand() -> None:
    # U = 9.81, F = 981000: F* = 981000 x 9.81 / 9.81^2 = 1e5; H* 0.0016 x 316.228 would be
    # 0.506, so 0.243 holds: H = 0.243 x 9.81; T* = 0.286 x 46.4159 would be 13.3, so 8.13 holds
    height, period = fetch_sea(9.81, 981000.0)
    assert height == pytest.approx(0.243 * 9.81)
    assert period == pytest.approx(8.13)
    # F = 9810: F* = 1000; H* = 0.0016 x 31.6228 = 0.0505964; T* = 2.86
    height, period = fetch_sea(9.81, 9810.0)
    assert height == pytest.approx(0.0505964 * 9.81, rel=1e-5)
    assert period == pytest.approx(2.86)


def test_fetch_sea_is_flat_without_wind_or_water() -> None:
    assert fetch_sea(0.0, 1e4) == (0.0, 0.0)
    assert fetch_sea(10.0, 0.0) == (0.0, 0.0)


def test_fetch_sea_takes_draws_and_winds() -> None:
    height, period = fetch_sea(np.array([5.0, 10.0]), np.array([[1e3], [1e4], [1e5]]))
    assert np.shape(height) == np.shape(period) == (3, 2)


def test_added_resistance() -> None:
    # 1000 x 9.81 / 16 x 0.25 x 4 x (4/1)^0.5 = 1226.25
    assert added_resistance(0.5, 4.0, 1.0, 1000.0) == pytest.approx(1226.25)


def test_height_limit() -> None:
    assert height_limit(16.0) == pytest.approx(0.9)  # 2.25 x 0.4
