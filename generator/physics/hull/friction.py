"""What does the water's rubbing along the hull cost?"""

from __future__ import annotations

import numpy as np

from generator.arrays import Numbers
from generator.physics.hull.form import HullForm

LEAST_REYNOLDS = 1e5  # the line runs away to infinity at Reynolds number 100; no boat is so slow
HULL_LENGTH_SHARE = 0.7  # of the waterline, for the hull's Reynolds number: convention of gko1993


def friction_coefficient(reynolds: Numbers) -> Numbers:
    """Friction coefficient of a smooth turbulent surface.

    CF = 0.075 / (log10 Rn - 2)^2

    Args:
        reynolds: Rn = speed times length over viscosity [-]

    Returns:
        CF [-]

    Valid: Rn from 1e5, held below
    Source: ittc57, correlation line
    """
    Rn = np.maximum(reynolds, LEAST_REYNOLDS)
    return 0.075 / (np.log10(Rn) - 2.0) ** 2


def friction(
    speed: Numbers,
    length: Numbers,
    wetted_area: Numbers,
    density: Numbers,
    viscosity: Numbers,
) -> Numbers:
    """Frictional resistance of a smooth surface.

    RF = 1/2 ρ v^2 S CF(v l / ν)

    Args:
        speed: v [m/s]
        length: l, on which the Reynolds number stands [m]
        wetted_area: S [m2]
        density: ρ [kg/m3]
        viscosity: ν [m2/s]

    Returns:
        RF [N]

    Valid: Reynolds number from 1e5; smooth and fully turbulent
    Source: ittc57, correlation line
    """
    CF = friction_coefficient(speed * length / viscosity)
    return 0.5 * density * speed**2 * wetted_area * CF


def hull_friction(form: HullForm, speed: Numbers, density: Numbers, viscosity: Numbers) -> Numbers:
    """Frictional resistance of the smooth canoe body.

    RF = 1/2 ρ v^2 Sc CF(0.7 L v / ν), form factor 0, no allowance

    Args:
        form: the canoe body
        speed: v [m/s]
        density: ρ [kg/m3]
        viscosity: ν [m2/s]

    Returns:
        RF [N]

    Valid: with the series' residuary resistance only, which holds whatever form drag exists
    Source: gko1993, convention of the series; ittc57, correlation line
    """
    length = HULL_LENGTH_SHARE * form.waterline_length
    return friction(speed, length, form.canoe_wetted_area, density, viscosity)
