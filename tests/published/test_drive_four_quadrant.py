"""The four-quadrant screw against the B-series and its own printed points."""

from __future__ import annotations

import numpy as np
import pytest

from generator.physics.drive.propeller import thrust_coefficient, torque_coefficient
from generator.physics.drive.regeneration import (
    advance_angle,
    four_quadrant,
    turbine_coefficients,
)


@pytest.mark.parametrize("advance", [0.1, 0.3, 0.5, 0.7, 0.9])
def test_first_quadrant_is_that_of_the_series(advance: float) -> None:
    """Source: lammeren1969 against oosterveld1975, B4-70 with P/D 1.0.

    Tolerance 0.014 in KT and 0.0015 in KQ: two evaluations of one tank's models, of which the
    Fourier series was drawn through readings by 2 degrees.
    """
    angle = advance_angle(advance)
    thrust, torque = four_quadrant(angle)
    scale = np.pi / 8.0 * (advance**2 + (0.7 * np.pi) ** 2)
    assert thrust * scale == pytest.approx(thrust_coefficient(advance, 1.0, 0.70, 4), abs=0.014)
    assert torque * scale == pytest.approx(torque_coefficient(advance, 1.0, 0.70, 4), abs=0.0015)


def test_locked_screw_drags_with_0_77_on_its_disc() -> None:
    """Source: lammeren1969, beta 90 degrees: CD 0.77 on the disc, 1.10 on expanded area."""
    thrust, _ = four_quadrant(np.pi / 2.0)
    assert -float(thrust) == pytest.approx(0.77, abs=0.005)
    assert -float(thrust) / 0.70 == pytest.approx(1.10, abs=0.005)


@pytest.mark.parametrize(
    ("advance", "power", "drag"),
    [
        (1.1693, 0.066, 0.163),
        (1.2697, 0.134, 0.243),
        (1.3742, 0.180, 0.310),
        (1.4833, 0.210, 0.369),
        (1.7181, 0.240, 0.471),
        (2.1237, 0.250, 0.588),
        (2.6208, 0.244, 0.679),
        (3.8090, 0.201, 0.809),
    ],
)
def test_turbine_coefficients_by_the_printed_curve(
    advance: float, power: float, drag: float
) -> None:
    """Source: lammeren1969, curve worked from the Fourier series, to three digits."""
    found_power, found_drag = turbine_coefficients(advance)
    assert float(found_power) == pytest.approx(power, abs=0.0006)
    assert float(found_drag) == pytest.approx(drag, abs=0.0006)


def test_turbine_of_0_43_m_at_6_kn_by_hand() -> None:
    """Source: lammeren1969, D 0.43 m at 6 kn, J 1.37: 395 W at the shaft and 220 N of drag.

    Tolerance 1 per cent: the print took its water and its J to three digits.
    """
    speed, disc = 6 * 1852 / 3600, np.pi / 4 * 0.43**2
    power, drag = turbine_coefficients(1.3742)
    dynamic = 0.5 * 1025.0 * speed**2 * disc
    assert float(power) * dynamic * speed == pytest.approx(395.0, rel=0.01)
    assert float(drag) * dynamic == pytest.approx(220.0, rel=0.01)


def test_torque_changes_sign_where_the_screw_turns_freely() -> None:
    """Source: lammeren1969, torque zero at J 1.103 with CD 0.096; a twentieth of a step."""
    advance = np.linspace(1.08, 1.13, 501)
    power, drag = turbine_coefficients(advance)
    free = int(np.argmin(np.abs(power)))
    assert advance[free] == pytest.approx(1.103, abs=0.002)
    assert drag[free] == pytest.approx(0.096, abs=0.003)
