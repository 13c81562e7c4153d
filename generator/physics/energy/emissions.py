"""How much carbon dioxide do fuel and electricity stand for, and when is a making repaid?"""

from __future__ import annotations

import numpy as np

from generator.arrays import Array, Numbers


def fuel_carbon(volume: Numbers, burnt: Numbers, upstream: Numbers) -> Array:
    """Carbon dioxide of fuel, from the well to the exhaust.

    m = V (b + u)

    Args:
        volume: V, of fuel [m3]
        burnt: b, out of the exhaust [kg/m3]
        upstream: u, from the well to the tank [kg/m3]

    Returns:
        m, carbon dioxide and its equal in other gases [kg]

    Valid: diesel and its blends, with the factors of that fuel
    Source: uk_factors, fuels
    """
    return np.asarray(volume * (np.asarray(burnt) + upstream))


def electricity_carbon(
    energy: Numbers, intensity: Numbers, network_loss: Numbers, charging_efficiency: Numbers
) -> Array:
    """Carbon dioxide of electricity that leaves the battery.

    m = E g / ((1 - l) eta)

    Args:
        energy: E, at the battery's terminals [J]
        intensity: g, of what is generated [kg/J]
        network_loss: l, between power station and berth [-]
        charging_efficiency: eta, from the wall to the battery and back out of it [-]

    Returns:
        m, carbon dioxide and its equal in other gases [kg]

    Valid: yearly mean mix of a country
    Source: owid_energy, carbon intensity of electricity
    """
    taken = np.asarray(energy) / charging_efficiency
    return np.asarray(taken * intensity / (1.0 - np.asarray(network_loss)))


def carbon_payback(made: Numbers, saved: Numbers) -> Array:
    """Years until the carbon of a making is saved in use.

    n = M / S

    Args:
        made: M, carbon dioxide of making, above that of the other way [kg]
        saved: S, carbon dioxide saved each year [kg per year]

    Returns:
        n [year]; 0 where nothing more was made, infinite where nothing is saved

    Valid: the same use every year
    Source: project, carbon made over carbon saved
    """
    m, s = np.broadcast_arrays(np.asarray(made, dtype=np.float64), saved)
    years = np.where(s > 0.0, m, np.inf) / np.where(s > 0.0, s, 1.0)
    return np.asarray(np.where(m <= 0.0, np.where(s >= 0.0, 0.0, np.inf), years))
