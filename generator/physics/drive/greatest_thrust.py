"""How hard can a screw pull at a speed before what turns it reaches a limit?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.arrays import Array, Numbers
from generator.physics.drive.propeller import (
    THRUST,
    TORQUE,
    Cubic,
    cubic_in_advance,
    pulls_until,
)

TURN = 2.0 * np.pi  # rad
STEPS = 5  # of Newton; from the start below they reach the sixth digit
LIFT = 0.7  # turns gained with a = VA / D at one torque, about; start of Newton only
LEAST_TURNS = 1e-6  # 1/s, in place of a screw at rest


@dataclass(frozen=True)
class Wheel:
    """A screw in its water: the series multiplied out by density and diameter.

    T = p0 n² + p1 n a + p2 a² + p3 a³ / n and Q likewise with g, a = VA / D, n in 1/s.
    """

    diameter: Numbers
    pull: Cubic  # N s²
    grip: Cubic  # N m s²
    free: Array  # J at which the screw no longer pulls [-]


def wheel(
    diameter: Numbers,
    pitch_ratio: Numbers,
    area_ratio: Numbers,
    blades: Numbers,
    density: Numbers,
    thrust_scale: Numbers = 1.0,
    torque_scale: Numbers = 1.0,
) -> Wheel:
    """A B-series screw made ready for many speeds.

    p_s = s ρ D⁴ c_s of KT;  g_s = q ρ D⁵ c_s of KQ

    Args:
        diameter: D [m]
        pitch_ratio: P/D [-]
        area_ratio: AE/A0 [-]
        blades: Z [-]
        density: ρ of the water [kg/m3]
        thrust_scale: s on KT [-]
        torque_scale: q on KQ [-]

    Returns:
        Wheel

    Valid: as thrust_coefficient
    Source: oosterveld1975, table of coefficients
    """
    thrust = cubic_in_advance(THRUST, pitch_ratio, area_ratio, blades)
    torque = cubic_in_advance(TORQUE, pitch_ratio, area_ratio, blades)
    disc = thrust_scale * density * diameter**4
    arm = torque_scale * density * diameter**5
    pull = (disc * thrust[0], disc * thrust[1], disc * thrust[2], disc * thrust[3])
    grip = (arm * torque[0], arm * torque[1], arm * torque[2], arm * torque[3])
    return Wheel(diameter, pull, grip, pulls_until(pitch_ratio, area_ratio, blades))


def thrust_at(screw: Wheel, advance_speed: Numbers, turns: Numbers) -> Array:
    """Thrust of the screw at given turns.

    T = p0 n² + p1 n a + p2 a² + p3 a³ / n, a = VA / D

    Args:
        screw: the wheel
        advance_speed: VA [m/s]
        turns: n, above 0 [1/s]

    Returns:
        T [N]; 0 where the screw is overtaken by the water

    Valid: as thrust_coefficient
    Source: oosterveld1975, form of the polynomial
    """
    a = advance_speed / screw.diameter
    p0, p1, p2, p3 = screw.pull
    force = (p0 * turns + p1 * a) * turns + (p2 + p3 * a / turns) * a * a
    return np.where(a < screw.free * turns, np.maximum(force, 0.0), 0.0)


def power_at(screw: Wheel, advance_speed: Numbers, turns: Numbers) -> Numbers:
    """Power that the screw takes at given turns.

    PD = 2 π (g0 n³ + g1 n² a + g2 n a² + g3 a³), a = VA / D

    Args:
        screw: the wheel
        advance_speed: VA [m/s]
        turns: n [1/s]

    Returns:
        PD [W]

    Valid: as torque_coefficient
    Source: oosterveld1975, form of the polynomial
    """
    a = advance_speed / screw.diameter
    g0, g1, g2, g3 = screw.grip
    return TURN * (((g0 * turns + g1 * a) * turns + g2 * a * a) * turns + g3 * a**3)


def turns_at_power_line(
    screw: Wheel, advance_speed: Numbers, constant: Numbers, slope: Numbers, most: Numbers
) -> Array:
    """Greatest turns at which the screw takes no more than a straight line in turns allows.

    PD(n) = L0 + L1 n;  a power limit is L0, a torque limit L1 = 2 π Q

    Newton starts from the turns tied up, raised for the way on her; PD is convex in n, so that
    it comes down on the answer from above.

    Args:
        screw: the wheel
        advance_speed: VA [m/s]
        constant: L0 [W]
        slope: L1 [J]
        most: turns that are not to be passed [1/s]

    Returns:
        n [1/s]; ``most`` where the line allows more than that

    Valid: as torque_coefficient, n above VA / (D J0)
    Source: oosterveld1975, form of the polynomial
    """
    a = advance_speed / screw.diameter
    g0, g1, g2, g3 = (TURN * g for g in screw.grip)
    c1, c2 = g1 * a, g2 * a * a - slope
    c3 = g3 * a * a * a - constant
    tied_up = np.cbrt(np.maximum(constant, 0.0) / g0) + np.sqrt(np.maximum(slope, 0.0) / g0)
    turns = np.minimum(tied_up + LIFT * a, most) + 0.0 * c3
    for _ in range(STEPS):
        value = ((g0 * turns + c1) * turns + c2) * turns + c3
        steep = (3.0 * g0 * turns + 2.0 * c1) * turns + c2
        turns = turns - value / np.where(steep > 0.0, steep, np.inf)
        turns = np.minimum(np.maximum(turns, LEAST_TURNS), most)
    return turns
