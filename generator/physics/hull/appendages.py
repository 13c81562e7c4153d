"""What does the friction of keel, rudder and skeg cost?"""

from __future__ import annotations

from generator.arrays import Numbers
from generator.physics.hull.friction import friction


def thickness_factor(thickness_ratio: Numbers) -> Numbers:
    """Drag of a foil over the friction of a flat plate of its wetted area.

    1 + 2 t/c + 60 (t/c)^4

    Args:
        thickness_ratio: t/c [-]

    Returns:
        the factor [-]

    Valid: foils without lift, greatest thickness near 30 per cent of the chord, t/c to 0.25
    Source: hoerner, chapter 6, drag of streamline sections
    """
    return 1.0 + 2.0 * thickness_ratio + 60.0 * thickness_ratio**4


def appendage_friction(
    speed: Numbers,
    wetted_area: Numbers,
    chord: Numbers,
    thickness_ratio: Numbers,
    density: Numbers,
    viscosity: Numbers,
) -> Numbers:
    """Resistance of a keel, rudder or skeg by its own friction.

    R = (1 + 2 t/c + 60 (t/c)^4) 1/2 ρ v^2 S CF(v c / ν)

    Args:
        speed: v [m/s]
        wetted_area: S, both sides [m2]
        chord: c, mean [m]
        thickness_ratio: t/c [-]
        density: ρ [kg/m3]
        viscosity: ν [m2/s]

    Returns:
        R [N]

    Valid: no lift; smooth and turbulent
    Source: hoerner, chapter 6, drag of streamline sections; ittc57, correlation line
    """
    factor = thickness_factor(thickness_ratio)
    return factor * friction(speed, chord, wetted_area, density, viscosity)
