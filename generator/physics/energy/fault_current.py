"""Which current does a bank drive into a short circuit?"""

from __future__ import annotations

from generator.arrays import Numbers


def string_resistance(
    cells: int, resistance_charge: Numbers, charge: Numbers, share: Numbers, links: Numbers
) -> Numbers:
    """Resistance of one string in the first instant of a short circuit.

    R = N k a / Q + Rl

    Args:
        cells: N, in series [-]
        resistance_charge: k, resistance of a cell under steady load times its charge [ohm A s]
        charge: Q of the string [C]
        share: a, resistance in the first instant over that under steady load [-]
        links: Rl, the string's own busbars and joints [ohm]

    Returns:
        R [ohm]

    Valid: full and warm cells; the low end of a, since less resistance is the worse case here
    Source: practice, resistance at 1 kHz over that after ten seconds
    """
    return cells * resistance_charge * share / charge + links


def fault_current(
    open_voltage: Numbers, string: Numbers, strings: int, trunk: Numbers = 0.0
) -> Numbers:
    """Current of a dead short behind strings side by side.

    I = Uoc / (Rs / n + Rt)

    Args:
        open_voltage: Uoc of the full bank [V]
        string: Rs of one string [ohm]
        strings: n, side by side [-]
        trunk: Rt, what is common to all of them up to the fault [ohm]

    Returns:
        I [A]

    Valid: first instant, equal strings; management systems are not counted on to interrupt it.
        Strings side by side add their currents, blocks in series do not
    Source: practice, Ohm's law with the inner resistance
    """
    return open_voltage / (string / strings + trunk)
