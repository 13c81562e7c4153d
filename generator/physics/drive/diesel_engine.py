"""How much fuel does a small diesel burn for a power, and what power does its fuel betray?"""

from __future__ import annotations

import numpy as np

from generator.arrays import Array, Numbers

LITRE_PER_KILOWATT_HOUR = 1e-3 / 3.6e6  # m3/J
# fuel_line: F [l/h] = 0.27 P + 0.034 Prated, both in kW.
FUEL_PER_WORK = 0.27 * LITRE_PER_KILOWATT_HOUR
FUEL_PER_RATED_POWER = 0.034 * LITRE_PER_KILOWATT_HOUR
# fuel_line: 227 (1 + 0.125 / load) g/kWh.
BEST_CONSUMPTION = 0.227 / 3.6e6  # kg/J
IDLE_SHARE = 0.125


def fuel_rate(power: Numbers, rated_power: Numbers) -> Numbers:
    """Fuel of a small naturally aspirated marine diesel, a straight line in power.

    F = 0.27 P + 0.034 Prated, with F in l/h and P in kW

    Args:
        power: P at the flywheel, alternator and gear losses included [W]
        rated_power: Prated [W]

    Returns:
        F [m3/s]

    Valid: 10 to 100 % of rated power, engines of about 5 to 50 kW; +-12 % above 40 % load,
        +-30 % below 25 %
    Source: fuel_line, straight line in power; trial_accuracy, spread
    """
    return FUEL_PER_WORK * power + FUEL_PER_RATED_POWER * rated_power


def power_from_fuel(fuel_rate: Numbers, rated_power: Numbers) -> Array:
    """Power at the flywheel read from metered fuel.

    P = (F - 0.034 Prated) / 0.27, with F in l/h and P in kW

    Args:
        fuel_rate: F, supply less return [m3/s]
        rated_power: Prated [W]

    Returns:
        P [W]; 0 where the fuel is less than the line needs to idle

    Valid: as fuel_rate; gear loss and alternator are still to be taken off
    Source: fuel_line, straight line in power
    """
    above_idle = np.asarray(fuel_rate) - FUEL_PER_RATED_POWER * rated_power
    return np.maximum(above_idle, 0.0) / FUEL_PER_WORK


def specific_consumption(load: Numbers) -> Numbers:
    """Fuel mass for the work of a small naturally aspirated marine diesel.

    b = 227 (1 + 0.125 / load) g/kWh

    Args:
        load: P / Prated, above 0 [-]

    Returns:
        b [kg/J]

    Valid: load 0.10 to 1.0 on a propeller curve
    Source: fuel_line, specific consumption on a propeller curve
    """
    return BEST_CONSUMPTION * (1.0 + IDLE_SHARE / load)


def propeller_law_power(full_power: Numbers, speed_ratio: Numbers, exponent: Numbers) -> Numbers:
    """Power at part throttle from the power at full throttle, same boat and screw.

    P(n) = Pfull (n / nfull)^k

    Args:
        full_power: Pfull at the turns that full throttle reaches [W]
        speed_ratio: n / nfull [-]
        exponent: k [-]

    Returns:
        P [W]

    Valid: k 2.7 to 3.0, displacement hulls in deep water; +-15 % above half the turns, +-25 %
        below
    Source: trial_practice, propeller law; trial_accuracy, spread
    """
    return full_power * speed_ratio**exponent
