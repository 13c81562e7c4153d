"""Friction worked by hand."""

from __future__ import annotations

import numpy as np
import pytest

from generator.physics.hull.appendages import appendage_friction, thickness_factor
from generator.physics.hull.form import make_form
from generator.physics.hull.friction import friction, friction_coefficient, hull_friction


def test_friction_coefficient_at_a_round_number() -> None:
    # log10 1e7 - 2 = 5, 0.075 / 25 = 0.003
    assert friction_coefficient(1e7) == pytest.approx(0.003)


def test_friction_coefficient_is_held_below_its_range() -> None:
    assert friction_coefficient(0.0) == friction_coefficient(1e5)


def test_friction() -> None:
    # Rn = 2 x 5 / 1e-6 = 1e7; 1/2 x 1000 x 4 x 10 x 0.003 = 60
    assert friction(2.0, 5.0, 10.0, 1000.0, 1e-6) == pytest.approx(60.0)


def test_friction_at_rest_is_nothing() -> None:
    assert friction(0.0, 5.0, 10.0, 1000.0, 1e-6) == 0.0


def test_hull_friction_stands_on_seven_tenths_of_the_waterline() -> None:
    form = make_form(
        waterline_length=10.0,
        waterline_beam=3.0,
        canoe_draught=None,
        canoe_volume=6.0,
        prismatic_coefficient=0.55,
        midship_coefficient=0.7,
        waterplane_coefficient=0.68,
        lcb=-0.03,
        lcf=-0.05,
    )
    # Rn = 1.0 x 7.0 / 7e-7 = 1e7; 1/2 x 1000 x 1 x Sc x 0.003 = 1.5 Sc
    found = hull_friction(form, 1.0, 1000.0, 7e-7)
    assert found == pytest.approx(1.5 * form.canoe_wetted_area)


def test_thickness_factor() -> None:
    # 1 + 2 x 0.1 + 60 x 0.0001 = 1.206
    assert thickness_factor(0.1) == pytest.approx(1.206)
    assert thickness_factor(0.0) == 1.0


def test_appendage_friction() -> None:
    # Rn = 2 x 0.5 / 1e-7 = 1e7; 1/2 x 1000 x 4 x 2 x 0.003 = 12; x 1.206
    assert appendage_friction(2.0, 2.0, 0.5, 0.1, 1000.0, 1e-7) == pytest.approx(14.472)


def test_friction_takes_draws_and_speeds() -> None:
    areas = np.array([[10.0], [20.0]])
    assert np.shape(friction(np.linspace(0, 3, 4), 5.0, areas, 1000.0, 1e-6)) == (2, 4)
