"""The hull regression at its ends: clamps, refusals, draws."""

from __future__ import annotations

import numpy as np
import pytest

from generator.arrays import Array, Numbers
from generator.physics.hull.form import HullForm, make_form
from generator.physics.hull.regression import (
    cautions,
    regression_share,
    residuary_doubt,
    residuary_of_bare_hull,
)


def form(volume: float | Array = 5.0, length: float | Array = 9.0, lcb: float = -0.03) -> HullForm:
    """A cruising yacht; her draught follows her volume."""
    return make_form(
        waterline_length=length,
        waterline_beam=2.9,
        canoe_draught=None,
        canoe_volume=volume,
        prismatic_coefficient=0.56,
        midship_coefficient=0.70,
        waterplane_coefficient=0.69,
        lcb=lcb,
        lcf=lcb - 0.0075,
    )


def force(hull: HullForm, speed: Numbers) -> Array:
    return np.asarray(residuary_of_bare_hull(hull, speed, 1025.0))


SPEEDS = np.linspace(0.5, 4.2, 38)


def test_inside_the_measured_hulls_nothing_is_said() -> None:
    assert cautions(form()) == ()


def test_heavier_than_measured_is_held_times_the_true_displacement() -> None:
    """LV = 9 / V^(1/3): 10 m3 gives 4.18, 11 m3 4.05; the heaviest model has 4.34."""
    first, second = (force(form(v), SPEEDS) for v in (10.0, 11.0))
    reached = np.isfinite(first)
    # Beyond the end the volume held is the same, so force goes with the displacement alone.
    np.testing.assert_allclose(second[reached] / first[reached], 1.1, rtol=1e-9)
    (found,) = [c for c in cautions(form(10.0)) if c.quantity == "length-displacement ratio"]
    assert found.low == pytest.approx(4.336, abs=0.001)
    assert found.message == "heavy_times_displacement"


def test_doubt_grows_beyond_the_heaviest_model() -> None:
    """0.25 as an 80 % band is 0.195 sd, added in squares."""
    assert np.all(residuary_doubt(form(10.0), SPEEDS) > 0.195)
    assert residuary_doubt(form(10.0), 3.6) > residuary_doubt(form(5.0), 3.6)


def test_doubt_grows_away_from_the_measured_hulls() -> None:
    assert residuary_doubt(form(lcb=-0.15), 3.6) > residuary_doubt(form(), 3.6)


def test_centre_of_buoyancy_is_held_at_the_end_of_its_range() -> None:
    np.testing.assert_allclose(
        regression_share(form(lcb=-0.081), np.array([0.3])),
        regression_share(form(lcb=-0.12), np.array([0.3])),
        rtol=1e-9,
    )


def test_no_answer_above_the_last_froude_number() -> None:
    """LV 5.26 at 5 m3: light, to 0.55; LV 4.73 at 6.9 m3: to 0.45."""
    froude = np.array([0.45, 0.46, 0.55, 0.56])
    light, heavy = (np.isnan(regression_share(form(v), froude)) for v in (5.0, 6.9))
    assert light.tolist() == [False, False, False, True]
    assert heavy.tolist() == [False, True, True, True]


def test_below_the_first_node_the_share_goes_with_the_fourth_power() -> None:
    """(0.10 / 0.20)^4 = 0.0625; at rest nothing."""
    share = regression_share(form(), np.array([0.0, 0.10, 0.20]))
    assert share[0] == 0.0
    assert share[1] / share[2] == pytest.approx(0.0625)


def test_resistance_rises_with_speed() -> None:
    drag = force(form(), SPEEDS)
    assert np.all(np.diff(drag[np.isfinite(drag)]) > 0.0)


def test_draws_give_what_each_gives_alone() -> None:
    lengths, volumes = np.array([[8.8], [9.0], [9.3]]), np.array([[4.6], [5.0], [10.5]])
    drawn = form(volumes, lengths)
    drag, doubt = force(drawn, SPEEDS), residuary_doubt(drawn, SPEEDS)
    assert drag.shape == doubt.shape == (3, len(SPEEDS))
    for row in range(3):
        one = form(float(volumes[row, 0]), float(lengths[row, 0]))
        np.testing.assert_allclose(drag[row], force(one, SPEEDS))
        np.testing.assert_allclose(doubt[row], residuary_doubt(one, SPEEDS))


def test_one_speed_gives_one_number() -> None:
    assert np.shape(force(form(), 3.0)) == ()
    assert np.shape(residuary_doubt(form(), 3.0)) == ()
