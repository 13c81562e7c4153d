"""How do single days scatter about the mean of their month?"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from generator.arrays import Array, Numbers

Months = NDArray[np.int_]

PERSISTENCE = 0.29  # graham1988: correlation of a day with the one before
SHARES = np.array([0.05, 0.10, 0.25, 0.50, 0.75, 0.90, 0.95])
ENDS = np.array([0.0, *SHARES, 1.0])
NORMAL = np.array([-1.6449, -1.2816, -0.6745, 0.0, 0.6745, 1.2816, 1.6449])  # deviates of SHARES
CLEAREST = 0.80  # of the light above the air: no day on the level has more


def spread_by_clearness(clearness: Numbers) -> Array:
    """Scatter of the days of a month where no cell is near.

    cv = 0.86 - 1.09 Kt, held between 0.06 and 0.65

    Args:
        clearness: Kt, the month's light over that above the air [-]

    Returns:
        cv, standard deviation of a day over the mean [-]

    Valid: Kt 0.2 to 0.75; scatter of the fit 0.08
    Source: merra2, fit on all cells of pfenninger2016
    """
    return np.asarray(np.clip(0.86 - 1.09 * np.asarray(clearness), 0.06, 0.65))


def normal_quantiles(spread: Array) -> Array:
    """Days that scatter like a normal law that is cut off at darkness.

    q = max(1 + cv z, 0.1)

    Args:
        spread: cv of twelve months, (12,) [-]

    Returns:
        q, (7, 12), at shares 5, 10, 25, 50, 75, 90 and 95 % [-]

    Valid: where no measured quantiles are near
    Source: practice, normal law
    """
    return np.asarray(np.maximum(1.0 + np.outer(NORMAL, spread), 0.1))


def with_ends(quantiles: Array) -> Array:
    """Quantiles with a darkest and a brightest day.

    q0 = 0.6 q05; q1 = q95 + 0.5 (q95 - q90)

    Args:
        quantiles: (7, months), of SHARES [-]

    Returns:
        (9, months) [-]

    Valid: ratios to the mean of the month
    Source: practice, ends beyond the 5 and 95 % quantiles
    """
    top = quantiles[-1] + 0.5 * (quantiles[-1] - quantiles[-2])
    return np.vstack([0.6 * quantiles[0], quantiles, top])


def deviates(days: int, years: int, persistence: float, seed: int) -> Array:
    """Normal deviates of which each day keeps a share of the one before.

    z(t) = φ z(t-1) + (1 - φ²)^1/2 e(t)

    Args:
        days: of a year [-]
        years: side by side [-]
        persistence: φ [-]
        seed: of the random numbers [-]

    Returns:
        z, (days, years) [-]

    Valid: any φ below 1; the same seed gives the same years
    Source: graham1988, first-order model
    """
    fresh = np.random.default_rng(seed).standard_normal((days, years))
    fresh[1:] *= np.sqrt(1.0 - persistence**2)
    for day in range(1, days):
        fresh[day] += persistence * fresh[day - 1]
    return fresh


def day_ratios(quantiles: Array, month_of_day: Months, deviate: Array) -> Array:
    """What single days have over the mean of their month.

    r = q(Φ(z)) on straight lines between the quantiles of the month

    Args:
        quantiles: with both ends, (9, 12) [-]
        month_of_day: 0 to 11, (days,) [-]
        deviate: z, (days, years) [-]

    Returns:
        r, (days, years), not yet brought to a mean of 1 [-]

    Valid: z of a standard normal law
    Source: practice, inverse of the distribution of the days
    """
    from scipy.special import ndtr  # slow to import, so only when a year is asked for

    shares = ndtr(deviate)
    ratios = np.empty_like(deviate)
    for month in range(12):
        days = month_of_day == month
        ratios[days] = np.interp(shares[days], ENDS, quantiles[:, month])
    return ratios


def to_monthly_means(days: Array, means: Array, highest: Array, month_of_day: Months) -> Array:
    """Days of many years brought to the mean that each month has over all of them.

    H = H (mean / mean of H), three times, days above a cap cut off before each

    Args:
        days: H, (days, years) [J/m2]
        means: of the months, (12,) [J/m2]
        highest: cap of a day, (days,) [J/m2]
        month_of_day: 0 to 11, (days,) [-]

    Returns:
        H, (days, years) [J/m2]

    Valid: means below the cap; the last step may leave a day a little above it
    Source: practice, rescaling to a monthly mean
    """
    scaled = days
    for _ in range(3):
        scaled = np.minimum(scaled, highest[:, np.newaxis])
        found = np.array([scaled[month_of_day == month].mean() for month in range(12)])
        raise_by = np.divide(means, found, out=np.zeros(12), where=found > 0.0)
        scaled = scaled * raise_by[month_of_day, np.newaxis]
    return np.asarray(scaled)
