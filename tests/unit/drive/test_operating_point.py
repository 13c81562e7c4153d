"""Where the screw's thrust meets the boat's, at the ends too."""

from __future__ import annotations

import numpy as np
import pytest

from generator.physics.drive.operating_point import bollard, operating_point
from generator.physics.drive.propeller import (
    THRUST,
    cubic_in_advance,
    thrust_coefficient,
    torque_coefficient,
    zero_of_cubic,
)

DENSITY, DIAMETER, PITCH, AREA, BLADES = 1000.0, 0.4, 0.7, 0.5, 3
SCREW = (DIAMETER, PITCH, AREA, BLADES, DENSITY)


def test_operating_point_gives_back_the_thrust_that_made_it() -> None:
    # At 10 turns a second and J = 0.5: VA = 2 m/s, T = KT ρ n² D⁴ = KT 2560 N, and so on.
    thrust = thrust_coefficient(0.5, PITCH, AREA, BLADES) * 1000 * 100 * 0.4**4
    torque = torque_coefficient(0.5, PITCH, AREA, BLADES) * 1000 * 100 * 0.4**5
    point = operating_point(thrust, 2.0, *SCREW)
    assert float(point.advance) == pytest.approx(0.5, rel=1e-12)
    assert float(point.revolutions) == pytest.approx(2 * np.pi * 10, rel=1e-12)
    assert float(point.torque) == pytest.approx(torque, rel=1e-12)
    assert float(point.delivered_power) == pytest.approx(2 * np.pi * 10 * torque, rel=1e-12)
    assert bool(point.feasible)


def test_operating_point_without_thrust_runs_at_the_free_end() -> None:
    point = operating_point(0.0, 2.0, *SCREW)
    free = float(zero_of_cubic(cubic_in_advance(THRUST, PITCH, AREA, BLADES)))
    assert float(point.advance) == pytest.approx(free, rel=1e-12)
    assert float(point.revolutions) == pytest.approx(2 * np.pi * 2.0 / (free * 0.4), rel=1e-9)
    assert float(point.open_water_efficiency) == 0.0
    assert float(point.delivered_power) > 0.0  # the blades' friction


def test_operating_point_tied_up_is_the_bollard() -> None:
    point = operating_point(300.0, 0.0, *SCREW)
    # n² = T / (ρ D⁴ KT(0))
    turns = np.sqrt(300.0 / (1000 * 0.4**4 * thrust_coefficient(0.0, PITCH, AREA, BLADES)))
    assert float(point.advance) == 0.0
    assert float(point.revolutions) == pytest.approx(2 * np.pi * turns, rel=1e-12)
    pull = bollard(float(point.delivered_power), *SCREW)
    assert float(pull.thrust) == pytest.approx(300.0, rel=1e-12)
    assert float(pull.revolutions) == pytest.approx(float(point.revolutions), rel=1e-12)
    assert float(pull.torque) == pytest.approx(float(point.torque), rel=1e-12)


def test_operating_point_goes_smoothly_into_the_bollard() -> None:
    crawl = operating_point(300.0, 1e-8, *SCREW)
    tied = operating_point(300.0, 0.0, *SCREW)
    assert float(crawl.revolutions) == pytest.approx(float(tied.revolutions), rel=1e-6)
    assert bool(crawl.feasible)


def test_operating_point_at_rest_needs_nothing() -> None:
    point = operating_point(0.0, 0.0, *SCREW)
    assert (float(point.revolutions), float(point.delivered_power)) == (0.0, 0.0)
    assert bool(point.feasible)


@pytest.mark.parametrize(
    ("thrust", "speed"), [(-1.0, 2.0), (100.0, -0.1), (np.nan, 2.0), (100.0, np.nan), (np.inf, 1.0)]
)
def test_operating_point_flags_what_cannot_be(thrust: float, speed: float) -> None:
    point = operating_point(thrust, speed, *SCREW)
    assert not bool(point.feasible)
    assert np.isnan(point.delivered_power)


def test_operating_point_flags_one_cell_and_keeps_the_rest() -> None:
    point = operating_point(np.array([[100.0], [np.nan]]), np.array([1.0, 2.0]), *SCREW)
    np.testing.assert_array_equal(point.feasible, [[True, True], [False, False]])
    assert np.isfinite(point.delivered_power[0]).all()


def test_operating_point_of_many_draws_equals_single_ones() -> None:
    # 400 draws by 60 speeds are more than one block of the solver.
    draw, speed = np.linspace(0.8, 1.2, 400)[:, None], np.linspace(0.1, 3.5, 60)
    pitch = 0.6 + 0.3 * draw
    thrust = 40.0 * draw * speed**2.2
    many = operating_point(thrust, speed, DIAMETER, pitch, AREA, BLADES, DENSITY, 0.94, 1.02)
    assert many.advance.shape == many.feasible.shape == (400, 60)
    for row, column in ((0, 0), (123, 45), (399, 59)):
        one = operating_point(
            float(thrust[row, column]),
            float(speed[column]),
            DIAMETER,
            float(pitch[row, 0]),
            AREA,
            BLADES,
            DENSITY,
            0.94,
            1.02,
        )
        power = many.delivered_power[row, column]
        assert power == pytest.approx(float(one.delivered_power), rel=1e-12)


def test_operating_point_with_scales_turns_faster_and_takes_more() -> None:
    plain = operating_point(300.0, 2.0, *SCREW)
    weak = operating_point(300.0, 2.0, *SCREW, thrust_scale=0.94)
    rough = operating_point(300.0, 2.0, *SCREW, torque_scale=1.05)
    assert float(weak.revolutions) > float(plain.revolutions)
    assert float(weak.delivered_power) > float(plain.delivered_power)
    assert float(rough.torque) == pytest.approx(1.05 * float(plain.torque), rel=1e-12)
