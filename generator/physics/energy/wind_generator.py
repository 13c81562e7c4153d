"""What does a wind generator give?"""

from __future__ import annotations

import numpy as np

from generator.arrays import Array, Numbers

AIR_DENSITY = 1.225  # kg/m3, standard atmosphere


def wind_power(
    wind: Numbers, diameter: Numbers, efficiency: Numbers, cut_in: Numbers, rated: Numbers
) -> Array:
    """Power of a wind generator into the bank.

    P = 1/2 ρ π D² / 4 e V³, 0 below the cut-in, held at the rated power

    Args:
        wind: V at the rotor [m/s]
        diameter: D of the rotor [m]
        efficiency: e, of the wind's power through the rotor [-]
        cut_in: wind below which it stands [m/s]
        rated: power at which it is held [W]

    Returns:
        P [W]

    Valid: small machines; the mean of a wind that varies is more than the power of its mean
    Source: practice, power of a rotor
    """
    speed = np.asarray(wind)
    flux = 0.5 * AIR_DENSITY * 0.25 * np.pi * np.asarray(diameter) ** 2 * speed**3
    return np.asarray(np.where(speed < cut_in, 0.0, np.minimum(flux * efficiency, rated)))
