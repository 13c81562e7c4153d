"""How thick must a propeller shaft be for a torque?"""

from __future__ import annotations

import numpy as np

from generator.arrays import Numbers
from generator.tables.method import method

SHEAR_YIELD = 120e6  # Pa, annealed stainless shaft steel, 0.58 of a yield of 205 MPa: memory
SAFETY = method("propeller.shaft_safety")


def shaft_diameter(torque: Numbers, shear_stress: Numbers = SHEAR_YIELD / SAFETY) -> Numbers:
    """Diameter of a solid round shaft that carries a torque.

    d = (16 Q / (π τ))^(1/3)

    Args:
        torque: Q [N m]
        shear_stress: τ allowed at the surface [Pa]

    Returns:
        d [m]

    Valid: torsion alone, no keyway edge, no bending; a check of the kept shaft, not a design
    Source: practice, torsion of a round bar
    """
    return np.cbrt(16.0 * np.asarray(torque) / (np.pi * shear_stress))
