"""How do hull and screw change each other's water?"""

from __future__ import annotations

from generator.arrays import Numbers


def advance_speed(speed: Numbers, wake_fraction: Numbers) -> Numbers:
    """Speed of the water into the screw behind the hull.

    VA = V (1 - w)

    Args:
        speed: V of the boat through the water [m/s]
        wake_fraction: w [-]

    Returns:
        VA [m/s]

    Valid: w 0.02 to 0.10 behind a fin keel, 0.15 to 0.28 in the aperture of a long keel
    Source: holtrop1982, definition of the wake fraction; practice, values for yachts
    """
    return speed * (1.0 - wake_fraction)


def required_thrust(resistance: Numbers, thrust_deduction: Numbers) -> Numbers:
    """Thrust of the screw that holds a resistance, since its suction adds drag on the hull.

    T = R / (1 - t)

    Args:
        resistance: R of the boat without screw [N]
        thrust_deduction: t [-]

    Returns:
        T [N]

    Valid: t 0.05 to 0.12 behind a fin keel, 0.12 to 0.22 in the aperture of a long keel
    Source: holtrop1982, definition of the thrust deduction; practice, values for yachts
    """
    return resistance / (1.0 - thrust_deduction)


def hull_efficiency(wake_fraction: Numbers, thrust_deduction: Numbers) -> Numbers:
    """Power to tow the hull over the power that the screw's thrust carries.

    ηH = (1 - t) / (1 - w)

    Args:
        wake_fraction: w [-]
        thrust_deduction: t [-]

    Returns:
        ηH [-]

    Valid: as advance_speed and required_thrust
    Source: holtrop1982, definition of the hull efficiency
    """
    return (1.0 - thrust_deduction) / (1.0 - wake_fraction)


def power_behind_hull(open_water_power: Numbers, rotative_efficiency: Numbers) -> Numbers:
    """Power at the screw in the uneven flow behind the hull.

    PD = PD0 / ηR

    Args:
        open_water_power: PD0 at the same thrust and advance in open water [W]
        rotative_efficiency: ηR, relative rotative efficiency [-]

    Returns:
        PD [W]; torque follows the same rule

    Valid: ηR 0.98 to 1.02
    Source: holtrop1982, definition of the relative rotative efficiency; practice, range
    """
    return open_water_power / rotative_efficiency
