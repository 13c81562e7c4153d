"""What do shaft, bracket and anodes, or the leg of a saildrive, drag through the water?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.arrays import Numbers
from generator.physics.hull.friction import friction

# Cylinders across a flow below the critical Reynolds number of their diameter: hoerner, chapter 3.
ACROSS = 1.1  # 0.6 above a Reynolds number of the diameter of 5e5, which no auxiliary's shaft meets


@dataclass(frozen=True)
class SternGear:
    """What stands in the water between hull and screw: m, m, rad, m2, [-]."""

    shaft_run: Numbers  # length of shaft in open water
    shaft_diameter: Numbers
    shaft_slope: Numbers  # to the flow
    frontal_area: Numbers  # of bracket, boss and anodes, or of the leg
    drag_coefficient: Numbers  # on the frontal area


def shaft_drag(
    run: Numbers,
    diameter: Numbers,
    slope: Numbers,
    speed: Numbers,
    density: Numbers,
    viscosity: Numbers,
) -> Numbers:
    """Drag of a bare round shaft that slopes to the flow.

    R = 1/2 ρ v^2 l d (1.1 sin(ε)^3 + π CF(v l / ν))

    Args:
        run: l, length in open water [m]
        diameter: d [m]
        slope: ε, between shaft and flow [rad]
        speed: v [m/s]
        density: ρ [kg/m3]
        viscosity: ν [m2/s]

    Returns:
        R [N]

    Valid: v d / ν below 5e5, which no shaft of an auxiliary reaches; above it 0.6 for 1.1; the
        turning of the shaft left out
    Source: hoerner, chapter 3, cylinders inclined to the flow; ittc57, correlation line
    """
    across = 0.5 * density * speed**2 * run * diameter * ACROSS * np.sin(slope) ** 3
    return across + friction(speed, run, np.pi * run * diameter, density, viscosity)


def blunt_drag(
    frontal_area: Numbers, coefficient: Numbers, speed: Numbers, density: Numbers
) -> Numbers:
    """Drag of a body by its area seen from ahead.

    R = 1/2 ρ v^2 CD A

    Args:
        frontal_area: A [m2]
        coefficient: CD [-]
        speed: v [m/s]
        density: ρ [kg/m3]

    Returns:
        R [N]

    Valid: as the coefficient: about 1.1 square to the flow, 0.1 to 0.2 for the leg of a saildrive
    Source: hoerner, definition of the drag coefficient on the frontal area
    """
    return 0.5 * density * speed**2 * coefficient * frontal_area


def stern_gear_drag(
    gear: SternGear, speed: Numbers, density: Numbers, viscosity: Numbers
) -> Numbers:
    """Drag of all that stands between hull and screw; the screw's own hub is in its series.

    R = R(shaft) + R(bracket, boss and anodes, or leg)

    Args:
        gear: l, d, ε, A, CD
        speed: v of the boat [m/s]
        density: ρ [kg/m3]
        viscosity: ν [m2/s]

    Returns:
        R [N]

    Valid: as the parts; in the undisturbed stream, without the wake of hull and keel
    Source: hoerner, sum of parts without interference
    """
    shaft = shaft_drag(
        gear.shaft_run, gear.shaft_diameter, gear.shaft_slope, speed, density, viscosity
    )
    return shaft + blunt_drag(gear.frontal_area, gear.drag_coefficient, speed, density)
