"""How much blade does a screw need so that it does not cavitate?"""

from __future__ import annotations

from generator.arrays import Numbers
from generator.physics.water import GRAVITY

AIR_PRESSURE = 101_325.0  # Pa, standard atmosphere
VAPOUR_PRESSURE = 1_700.0  # Pa, water of 15 degC


def needed_area_ratio(
    thrust: Numbers,
    diameter: Numbers,
    blades: Numbers,
    depth: Numbers,
    density: Numbers,
    allowance: Numbers = 0.2,
) -> Numbers:
    """Least expanded blade area that carries a thrust without harmful cavitation (Keller).

    AE/A0 = (1.3 + 0.3 Z) T / ((p0 + ρ g h - pv) D²) + k

    Args:
        thrust: T [N]
        diameter: D [m]
        blades: Z [-]
        depth: h of the shaft below the surface [m]
        density: ρ of the water [kg/m3]
        allowance: k, 0.2 for a single screw, 0 to 0.1 behind an open stern [-]

    Returns:
        AE/A0 [-]

    Valid: single screws of merchant form; for auxiliaries a check, not a design
    Source: keller1966, criterion for blade area
    """
    pressure = AIR_PRESSURE - VAPOUR_PRESSURE + density * GRAVITY * depth
    return (1.3 + 0.3 * blades) * thrust / (pressure * diameter**2) + allowance
