"""Does shallow or narrow water slow her beyond what a deep-water curve says?"""

from __future__ import annotations

import numpy as np

from generator.arrays import Numbers
from generator.physics.hull.form import HullForm
from generator.physics.water import GRAVITY

KEEL_THICKNESS = 0.05  # of the waterline beam: small against the canoe body


def depth_froude_number(speed: Numbers, depth: Numbers) -> Numbers:
    """Speed over that of the fastest wave that the depth carries.

    Fnh = v / (g h)^(1/2)

    Args:
        speed: v through the water [m/s]
        depth: h from the surface to the bottom [m]

    Returns:
        Fnh [-]

    Valid: any depth; resistance is that of deep water below about 0.5
    Source: practice, definition
    """
    return speed / np.sqrt(GRAVITY * depth)


def blockage(form: HullForm, draught: Numbers, width: Numbers, depth: Numbers) -> Numbers:
    """Share of a channel's section that the boat fills.

    m = (Cm B Tc + (T - Tc) 0.05 B) / (w h)

    Args:
        form: the canoe body: Cm, B, Tc
        draught: T with keel [m]
        width: w of the channel at the surface [m]
        depth: h [m]

    Returns:
        m [-]

    Valid: monohulls; the keel is taken as a twentieth of the beam thick
    Source: practice, definition
    """
    canoe = form.midship_coefficient * form.waterline_beam * form.canoe_draught
    keel = (draught - form.canoe_draught) * KEEL_THICKNESS * form.waterline_beam
    return (canoe + keel) / (width * depth)
