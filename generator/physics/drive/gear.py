"""How fast must the motor turn, and how much does the gear keep for itself?"""

from __future__ import annotations

from generator.arrays import Numbers


def motor_speed(propeller_speed: Numbers, gear_ratio: Numbers) -> Numbers:
    """Turning speed of motor or engine for that of the screw.

    ωm = i ωp

    Args:
        propeller_speed: ωp [rad/s]
        gear_ratio: i, motor turns per turn of the screw [-]

    Returns:
        ωm [rad/s]

    Valid: no slipping belt or clutch
    Source: practice, kinematics of a gear
    """
    return propeller_speed * gear_ratio


def input_power(output_power: Numbers, efficiency: Numbers) -> Numbers:
    """Power that goes into a gear, bearing or stern gland for the power that comes out.

    Pin = Pout / η

    Args:
        output_power: Pout, 0 or more [W]
        efficiency: η [-]

    Returns:
        Pin [W]

    Valid: single stage or belt 0.96 to 0.98, reverse gearbox 0.95 to 0.97, saildrive 0.93 to
        0.96, bearings and gland 0.98 to 0.99; losses that do not grow with load come on top
    Source: practice, efficiency of small marine gears
    """
    return output_power / efficiency


def output_power(power: Numbers, efficiency: Numbers) -> Numbers:
    """Power that comes out of a gear, bearing or stern gland.

    Pout = Pin η

    Args:
        power: Pin, 0 or more [W]
        efficiency: η [-]

    Returns:
        Pout [W]

    Valid: as input_power
    Source: practice, efficiency of small marine gears
    """
    return power * efficiency
