"""How warm do engine space, motor and controller get, and how long do they hold a load?"""

from __future__ import annotations

import numpy as np

from generator.arrays import Array, Numbers

AIR_HEAT = 1190.0  # J/(m3 K): density 1.19 kg/m3 times 1005 J/(kg K) of air at 25 degC


def space_rise(heat: Numbers, airflow: Numbers, conductance: Numbers) -> Numbers:
    """Warming of an engine space above the air that enters it.

    dT = P / (ρ cp V + G)

    Args:
        heat: P given off into the space [W]
        airflow: V of air through it [m3/s]
        conductance: G of its bulkheads and of the hull [W/K]

    Returns:
        dT [K]

    Valid: steady state, space well mixed
    Source: practice, heat balance of a vented space
    """
    return heat / (AIR_HEAT * np.asarray(airflow) + conductance)


def derating(space: Numbers, rated_ambient: Numbers, share_per_kelvin: Numbers) -> Array:
    """Share of the continuous rating that is left in a warm space.

    d = 1 - c (T - Tr), 0 to 1

    Args:
        space: T of the air about the motor [degC]
        rated_ambient: Tr, for which the plate holds [degC]
        share_per_kelvin: c, lost per kelvin above it [1/K]

    Returns:
        d [-]; cool air gives no more than the plate

    Valid: up to 40 K above rated ambient
    Source: practice, 1 per cent per kelvin
    """
    return np.clip(1.0 - share_per_kelvin * (np.asarray(space) - rated_ambient), 0.0, 1.0)


def overload_time(time_constant: Numbers, load: Numbers, before: Numbers) -> Array:
    """Time until a body reaches the temperature that it has after long at full load.

    t = τ ln((k² - k0²) / (k² - 1))

    Args:
        time_constant: τ [s]
        load: k, current over the continuous one [-]
        before: k0, the same of a long run just before [-]

    Returns:
        t [s]; infinite for k not above 1, 0 for k0 of 1 or more and k above 1

    Valid: one body, losses with the square of the current
    Source: practice, first-order warming of a machine; iec60034, duty S1 and S2
    """
    k = np.square(np.asarray(load, dtype=np.float64))
    k0 = np.minimum(np.square(np.asarray(before, dtype=np.float64)), 1.0)
    over = k > 1.0
    spare = np.where(over, k - 1.0, 1.0)
    ratio = np.where(over, np.maximum(k - k0, spare), 1.0) / spare
    return np.where(over, time_constant * np.log(ratio), np.inf)


def time_constant(stated_time: Numbers, load: Numbers) -> Array:
    """Time constant behind a stated time at a stated overload, from cold.

    τ = t / ln(k² / (k² - 1))

    Args:
        stated_time: t of the maker's peak rating [s]
        load: k, peak over continuous, above 1 [-]

    Returns:
        τ [s]; infinite where the peak is not above continuous

    Valid: one body, started cold
    Source: practice, first-order warming of a machine
    """
    k = np.square(np.asarray(load, dtype=np.float64))
    over = k > 1.0
    safe = np.where(over, k, 2.0)
    return np.where(over, stated_time / np.log(safe / (safe - 1.0)), np.inf)
