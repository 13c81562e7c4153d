"""How worn is an engine, and how soon will it want an overhaul?"""

from __future__ import annotations

import numpy as np

from generator.arrays import Array, Numbers


def wear(hours: Numbers, age: Numbers, life: Numbers, calendar_life: Numbers) -> Array:
    """Share of an engine's life that is used, by running or by years, whichever is more.

    x = max(h / L, a / C)

    Args:
        hours: h, run so far [s]
        age: a, since it was new or last overhauled [year]
        life: L, running until an overhaul [s]
        calendar_life: C, years until an overhaul [year]

    Returns:
        x [-]

    Valid: engines that are run and serviced as their maker asks
    Source: practice, the nearer of two limits
    """
    return np.maximum(np.asarray(hours) / life, np.asarray(age) / calendar_life)


def overhaul_chance(before: Numbers, after: Numbers, shape: Numbers) -> Array:
    """Chance of an overhaul while wear grows, for an engine that has come so far without.

    P = 1 - exp(x0^k - x1^k)

    Args:
        before: x0, wear now [-]
        after: x1, wear then [-]
        shape: k, above 1 where the risk grows with wear [-]

    Returns:
        P [-]

    Valid: x1 at least x0; a life of 1 then holds 63 per cent of all engines
    Source: weibull1951, distribution function
    """
    k = np.asarray(shape)
    return np.asarray(-np.expm1(np.asarray(before) ** k - np.asarray(after) ** k))


def wear_at_even_chance(before: Numbers, shape: Numbers) -> Array:
    """Wear at which an overhaul has become as likely as not.

    x1 = (x0^k + ln 2)^(1 / k)

    Args:
        before: x0, wear now [-]
        shape: k [-]

    Returns:
        x1 [-]

    Valid: as overhaul_chance
    Source: weibull1951, distribution function
    """
    k = np.asarray(shape)
    return np.asarray((np.asarray(before) ** k + np.log(2.0)) ** (1.0 / k))
