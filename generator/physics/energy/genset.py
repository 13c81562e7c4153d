"""What does a charging machine burn?"""

from __future__ import annotations

import numpy as np

from generator.arrays import Array, Numbers

LITRE_PER_KILOWATT_HOUR = 1e-3 / 3.6e6  # m3/J
PER_WORK = 0.246 * LITRE_PER_KILOWATT_HOUR
PER_RATED = 0.08145 * LITRE_PER_KILOWATT_HOUR


def genset_fuel(power: Numbers, rated: Numbers) -> Array:
    """Fuel of a diesel genset, a straight line in power.

    F = 0.246 P + 0.08145 Prated, F in l/h, P in kW

    Args:
        power: P at its terminals [W]
        rated: Prated [W]

    Returns:
        F [m3/s]; 0 where it stands

    Valid: sets of 3 to 50 kW; small marine sets burn up to a fifth more
    Source: skarstein1989, fuel line
    """
    running = np.asarray(power) > 0.0
    line = PER_WORK * np.asarray(power) + PER_RATED * np.asarray(rated)
    return np.asarray(np.where(running, line, 0.0))
