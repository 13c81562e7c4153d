"""What does a screw that the water turns give, and what drag does it cost?"""

from __future__ import annotations

import numpy as np

from generator.arrays import Array, Numbers
from generator.tables.load import read_table

HARMONICS = ("thrust_cosine", "thrust_sine", "torque_cosine", "torque_sine")


def four_quadrant(angle: Numbers) -> tuple[Array, Array]:
    """Thrust and torque numbers of the B4-70, P/D 1.0 screw at any advance angle.

    CT* = sum of A_k cos kβ + B_k sin kβ, CQ* likewise; β = atan2(VA, 0.7 π n D)
    T = CT* 1/2 ρ (VA² + (0.7 π n D)²) π D²/4;  Q = CQ* 1/2 ρ (VA² + (0.7 π n D)²) π D³/4

    Args:
        angle: β [rad]

    Returns:
        CT* [-] and CQ* [-]

    Valid: one screw, B4-70 with P/D 1.0; others by scaling only
    Source: lammeren1969, Fourier series
    """
    table = read_table("drive/b470_four_quadrant")
    harmonic = table.column("harmonic")
    beta = np.asarray(angle, dtype=np.float64)[..., np.newaxis] * harmonic
    cosine, sine = np.cos(beta), np.sin(beta)
    a_t, b_t, a_q, b_q = (table.column(name) for name in HARMONICS)
    return cosine @ a_t + sine @ b_t, cosine @ a_q + sine @ b_q


def advance_angle(advance: Numbers) -> Array:
    """Angle at which the water meets the blades at 0.7 of the radius.

    β = atan2(J, 0.7 π)

    Args:
        advance: J = VA / (n D) [-]

    Returns:
        β [rad]

    Valid: turning ahead; a locked screw is 90 degrees
    Source: lammeren1969, definition
    """
    return np.arctan2(np.asarray(advance, dtype=np.float64), 0.7 * np.pi)


def turbine_coefficients(advance: Numbers) -> tuple[Array, Array]:
    """Power taken from the water and drag of the screw turned by it, on the disc.

    CP = -2 π n Q / (1/2 ρ V³ A0);  CD = -T / (1/2 ρ V² A0);  both from CT*, CQ* at β(J)

    Args:
        advance: J, from where the torque changes sign, 1.10, upwards [-]

    Returns:
        CP [-], below zero where the screw must be driven, and CD [-]

    Valid: J 1.1 to 60, B4-70 with P/D 1.0; smaller blade area gives 0.6 to 0.8 of CP
    Source: lammeren1969, Fourier series
    """
    angle = advance_angle(advance)
    thrust, torque = four_quadrant(angle)
    square = 1.0 / np.sin(angle) ** 2  # (VA² + (0.7 π n D)²) / VA²
    return -2.0 * np.pi / np.asarray(advance) * torque * square, -thrust * square
