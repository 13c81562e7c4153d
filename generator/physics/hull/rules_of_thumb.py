"""What power would the rules of thumb of the trade install for a speed?"""

from __future__ import annotations

from generator.arrays import Numbers

FOOT = 0.3048  # m
POUND = 0.45359237  # kg
HORSEPOWER = 745.6999  # W, of 550 foot-pounds a second
KNOT = 1852.0 / 3600.0
GERR = 10.665  # SL = 10.665 / (lb/SHP)^(1/3)
KEITH = 1.18  # C of V = sqrt(LWL) C (1000 HP / lb)^(1/3), typical
WYMAN_BASE, WYMAN_SLOPE = 0.8, 0.17  # C = 0.8 + 0.17 SL


def speed_length_ratio(speed: Numbers, waterline_length: Numbers) -> Numbers:
    """Speed in knots over the root of the waterline in feet.

    SL = V / LWL^(1/2)

    Args:
        speed: V [m/s]
        waterline_length: LWL [m]

    Returns:
        SL [kn/ft^0.5]

    Valid: any speed
    Source: gerr, formula 2-1
    """
    return (speed / KNOT) / (waterline_length / FOOT) ** 0.5


def gerr_power(speed: Numbers, waterline_length: Numbers, displacement: Numbers) -> Numbers:
    """Installed power by Gerr's rule for displacement boats: a ceiling for computed power.

    SL = 10.665 / (lb / SHP)^(1/3)

    Args:
        speed: V [m/s]
        waterline_length: LWL [m]
        displacement: mass [kg]

    Returns:
        shaft power that the rule installs [W]

    Valid: SL 0.9 to 1.5; installed power for service, 1.5 to 3 times the calm need
    Source: gerr, formula 2-1
    """
    ratio = speed_length_ratio(speed, waterline_length) / GERR
    return ratio**3 * (displacement / POUND) * HORSEPOWER


def keith_power(speed: Numbers, waterline_length: Numbers, displacement: Numbers) -> Numbers:
    """Installed power by the rule in Skene's.

    V = LWL^(1/2) C (1000 HP / lb)^(1/3), C = 1.18

    Args:
        speed: V [m/s]
        waterline_length: LWL [m]
        displacement: mass [kg]

    Returns:
        power that the rule installs [W]

    Valid: C 1.1 to 1.5 by type; SL 0.9 to 1.5
    Source: keith_skene, page 105
    """
    ratio = speed_length_ratio(speed, waterline_length) / KEITH
    return ratio**3 * (displacement / POUND) / 1000.0 * HORSEPOWER


def wyman_power(speed: Numbers, waterline_length: Numbers, displacement: Numbers) -> Numbers:
    """Installed power by Wyman's rule, whose coefficient grows with speed.

    V = LWL^(1/2) C (1000 HP / lb)^(1/3), C = 0.8 + 0.17 SL

    Args:
        speed: V [m/s]
        waterline_length: LWL [m]
        displacement: mass [kg]

    Returns:
        power that the rule installs [W]

    Valid: SL 0.9 to 1.5
    Source: wyman1998, coefficient of Keith's law
    """
    sl = speed_length_ratio(speed, waterline_length)
    ratio = sl / (WYMAN_BASE + WYMAN_SLOPE * sl)
    return ratio**3 * (displacement / POUND) / 1000.0 * HORSEPOWER
