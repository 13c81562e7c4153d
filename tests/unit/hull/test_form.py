"""A hull form worked by hand: 8.0 x 2.5 m, 3.0 m3, Cp 0.5, Cwp 0.7."""

from __future__ import annotations

from dataclasses import fields, replace

import numpy as np
import pytest

from generator.physics.hull.form import (
    HullForm,
    beam_draught,
    block_coefficient,
    canoe_wetted_area,
    immersed_deeper,
    length_beam,
    length_displacement,
    make_form,
    waterplane_coefficient,
)


def form(draught: float | None = None, midship: float = 0.75) -> HullForm:
    return make_form(
        waterline_length=8.0,
        waterline_beam=2.5,
        canoe_draught=draught,
        canoe_volume=3.0,
        prismatic_coefficient=0.5,
        midship_coefficient=midship,
        waterplane_coefficient=0.7,
        lcb=-0.03,
        lcf=-0.05,
    )


def test_make_form_finds_the_draught() -> None:
    # 3.0 / (0.5 x 8.0 x 2.5 x 0.75) = 3.0 / 7.5 = 0.4
    assert form().canoe_draught == pytest.approx(0.4)
    assert form().midship_coefficient == 0.75


def test_make_form_finds_the_midship_coefficient_when_the_draught_is_known() -> None:
    # 3.0 / (0.5 x 8.0 x 2.5 x 0.5) = 0.6, whatever coefficient came with it
    known = form(draught=0.5, midship=0.9)
    assert known.midship_coefficient == pytest.approx(0.6)
    assert known.canoe_draught == 0.5


def test_make_form_finds_the_waterplane() -> None:
    # 0.7 x 8.0 x 2.5 = 14.0
    assert form().waterplane_area == pytest.approx(14.0)
    assert waterplane_coefficient(form()) == pytest.approx(0.7)


def test_ratios() -> None:
    assert length_displacement(replace(form(), canoe_volume=8.0)) == pytest.approx(4.0)  # 8 / 2
    assert length_beam(form()) == pytest.approx(3.2)
    assert beam_draught(form()) == pytest.approx(6.25)
    assert block_coefficient(form()) == pytest.approx(0.375)  # 0.5 x 0.75


def test_canoe_wetted_area() -> None:
    # B/Tc 10 makes 1.97 + 1.71 = 3.68; Cm 0.65 makes 1; (4 x 9)^0.5 = 6; together 22.08
    assert canoe_wetted_area(9.0, 3.0, 0.3, 0.65, 4.0) == pytest.approx(22.08)
    # Cm 8 x 0.65 halves it, by the third root
    assert canoe_wetted_area(9.0, 3.0, 0.3, 5.2, 4.0) == pytest.approx(11.04)


def test_immersed_deeper_adds_volume_over_waterplane() -> None:
    # 1.4 / 14.0 = 0.1 deeper; 4.4 / (0.5 x 8.0 x 2.5 x 0.5) = 0.88
    deeper = immersed_deeper(form(), 1.4)
    assert deeper.canoe_draught == pytest.approx(0.5)
    assert deeper.canoe_volume == pytest.approx(4.4)
    assert deeper.midship_coefficient == pytest.approx(0.88)
    assert deeper.waterline_length == 8.0
    assert deeper.canoe_wetted_area == pytest.approx(canoe_wetted_area(8.0, 2.5, 0.5, 0.88, 4.4))


def test_immersed_deeper_by_nothing_changes_nothing() -> None:
    same = immersed_deeper(form(), 0.0)
    for field in fields(HullForm):
        assert getattr(same, field.name) == pytest.approx(getattr(form(), field.name))


def test_immersed_deeper_takes_draws() -> None:
    draws = np.array([[-0.1], [0.0], [0.1]])
    assert immersed_deeper(form(), draws).canoe_wetted_area.shape == (3, 1)  # type: ignore[union-attr]
