"""Residuary resistance: by hand at a node, its clamps, its ends and its cautions."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from generator.physics.hull.form import HullForm, make_form
from generator.physics.hull.residuary import (
    cautions,
    froude_number,
    gko1993_share,
    residuary_resistance,
)
from generator.physics.water import GRAVITY


def form(volume: float = 5.0, cp: float = 0.56, lcb: float = -0.03) -> HullForm:
    return make_form(
        waterline_length=9.0,
        waterline_beam=2.9,
        canoe_draught=0.52,
        canoe_volume=volume,
        prismatic_coefficient=cp,
        midship_coefficient=0.7,
        waterplane_coefficient=0.69,
        lcb=lcb,
        lcf=-0.0375,
    )


def share(hull: HullForm, froude: float) -> float:
    return float(gko1993_share(hull, np.asarray(froude)))


def test_froude_number() -> None:
    # 9.81 x 9.0 = 88.29, its root 9.3963; 4.69815 over it is a half
    assert froude_number(4.69815, 9.0) == pytest.approx(0.5, rel=1e-5)


def test_gko1993_share_at_a_node_by_hand() -> None:
    # L 4.5, V 1: LV 4.5; B/Tc 4; Cp 0.55; LCB -2 %; row of Fn 0.300, term by term:
    #   45.83759 - 184.7646 x 0.55 + 0.357031 x -2 + 0.338343 x 4 + 3.871658 x 4.5
    #   + 132.2568 x 0.3025 + 10.86054 x 2.475 + 0.066809 x 4 - 1.719215 x 20.25
    #   + 0.095977 x 91.125
    # = 45.83759 - 101.62053 - 0.714062 + 1.353372 + 17.422461 + 40.007682 + 26.8798365
    #   + 0.267236 - 34.81410375 + 8.745904125 = 3.365385875
    hull = make_form(
        waterline_length=4.5,
        waterline_beam=1.4,
        canoe_draught=0.35,
        canoe_volume=1.0,
        prismatic_coefficient=0.55,
        midship_coefficient=0.7,
        waterplane_coefficient=0.69,
        lcb=-0.02,
        lcf=-0.0375,
    )
    assert 1000.0 * share(hull, 0.3) == pytest.approx(3.365385875, rel=1e-9)


def test_residuary_resistance_is_a_share_of_weight() -> None:
    speed = 0.3 * np.sqrt(GRAVITY * 9.0)
    found = residuary_resistance(form(), speed, 1000.0)
    assert found == pytest.approx(share(form(), 0.3) * 1000.0 * GRAVITY * 5.0)


def test_gko1993_share_falls_with_the_fourth_power_below_its_first_row() -> None:
    assert share(form(), 0.0) == 0.0
    assert share(form(), 0.0625) == pytest.approx(share(form(), 0.125) / 16.0)


@pytest.mark.parametrize(("froude", "known"), [(0.45, True), (0.451, False)])
def test_gko1993_share_ends_early_for_heavy_hulls(froude: float, known: bool) -> None:
    heavy = form(volume=7.0)  # 9.0 / 1.913 = 4.70
    assert np.isfinite(share(heavy, froude)) == known


@pytest.mark.parametrize(("froude", "known"), [(0.451, True), (0.60, True), (0.601, False)])
def test_gko1993_share_ends_later_for_light_hulls(froude: float, known: bool) -> None:
    light = form(volume=5.0)  # 9.0 / 1.710 = 5.26
    assert np.isfinite(share(light, froude)) == known


def test_gko1993_share_has_no_jump_where_the_high_rows_begin() -> None:
    assert share(form(), 0.45 + 1e-9) == pytest.approx(share(form(), 0.45), rel=1e-6)


def test_high_rows_leave_the_curve_below_them_alone() -> None:
    slow = np.linspace(0.05, 0.45, 30)
    with_fast = gko1993_share(form(), np.append(slow, 0.55))[:-1]
    assert with_fast == pytest.approx(gko1993_share(form(), slow), rel=1e-12)


def test_heavy_hulls_pay_for_their_true_displacement() -> None:
    # Both are heavier than the series: the same share of weight, B/Tc alike
    one, two = form(volume=10.0), form(volume=12.0)
    assert share(one, 0.35) == pytest.approx(share(two, 0.35))
    speed = 0.35 * np.sqrt(GRAVITY * 9.0)
    ratio = residuary_resistance(two, speed, 1025.0) / residuary_resistance(one, speed, 1025.0)
    assert ratio == pytest.approx(1.2)


def test_form_is_held_inside_the_series() -> None:
    assert share(form(cp=0.65), 0.35) == share(form(cp=0.60), 0.35)
    assert share(form(lcb=-0.09), 0.35) == share(form(lcb=-0.06), 0.35)
    assert share(form(lcb=0.02), 0.35) == share(form(lcb=0.0), 0.35)


def test_draws_and_speeds_make_a_table() -> None:
    cp = np.array([[0.53], [0.55], [0.58]])
    drawn = replace(
        form(), prismatic_coefficient=cp, waterline_length=np.array([[9.0], [9.1], [9.2]])
    )
    speeds = np.linspace(0.0, 5.5, 9)
    table = np.asarray(residuary_resistance(drawn, speeds, 1025.0))
    assert table.shape == (3, 9)
    for draw, length in enumerate((9.0, 9.1, 9.2)):
        alone = replace(form(), prismatic_coefficient=float(cp[draw, 0]), waterline_length=length)
        row = np.asarray(residuary_resistance(alone, speeds, 1025.0))
        assert table[draw] == pytest.approx(row, nan_ok=True)


def test_cautions_are_none_for_a_hull_of_the_series() -> None:
    assert cautions(form()) == ()


def test_cautions_name_what_lies_outside() -> None:
    found = cautions(replace(form(), prismatic_coefficient=np.array([[0.50], [0.55]])))
    (only,) = found
    assert only.quantity == "prismatic coefficient"
    assert (only.low, only.high, only.share_outside) == (0.52, 0.60, 0.5)
    assert only.source == "gko1993"


def test_cautions_of_a_heavy_hull_say_how_far_to_trust_it() -> None:
    heavy = replace(form(), canoe_volume=10.0)
    done = [caution.message for caution in cautions(heavy) if "length" in caution.quantity]
    assert "end_times_displacement" in done
