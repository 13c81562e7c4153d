"""What is left of the price of a thing that wears out with its years?"""

from __future__ import annotations

import numpy as np

from generator.arrays import Array, Numbers


def worth_by_age(price: Numbers, age: Numbers, life: Numbers) -> Array:
    """Worth of a thing that loses the same part of its price each year of its life.

    W = P (1 - a / L), 0 beyond its life

    Args:
        price: P, when it was bought [currency]
        age: a, since then [year]
        life: L [year]

    Returns:
        W [currency]

    Valid: life above 0; things that are worth nothing when their life is over
    Source: practice, straight line
    """
    left = 1.0 - np.asarray(age) / np.asarray(life)
    return np.asarray(np.asarray(price) * np.clip(left, 0.0, 1.0))
