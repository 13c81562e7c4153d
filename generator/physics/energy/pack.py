"""How far does a bank sag under load, what can it give, and how do its strings share?"""

from __future__ import annotations

import numpy as np

from generator.arrays import Array, Numbers


def pack_resistance(
    cells: int, resistance_charge: Numbers, charge: Numbers, factor: Numbers, links: Numbers
) -> Numbers:
    """Resistance of cells in series, with all that joins them.

    R = N k f / Q + Rl; cells of one kind have the same product k of resistance and charge

    Args:
        cells: N, in series [-]
        resistance_charge: k, resistance of a cell times its charge [ohm A s]
        charge: Q of the bank, all strings together [C]
        factor: f, for temperature, state of charge and age [-]
        links: Rl, busbars, main fuse and contactor [ohm]

    Returns:
        R [ohm]

    Valid: strings of equal length and age; currents of 10 s and longer
    Source: practice, resistance times capacity of one kind of cell
    """
    return cells * resistance_charge * factor / charge + links


def sag_current(open_voltage: Numbers, resistance: Numbers, power: Numbers) -> Array:
    """Current that a power draws from a bank that sags; none where it cannot be had.

    I = (Uoc - (Uoc² - 4 R P)^1/2) / (2 R)

    Args:
        open_voltage: Uoc, at rest [V]
        resistance: R, above 0 [ohm]
        power: P at the terminals [W]

    Returns:
        I [A]; nan where there is no root: the bank cannot give that power

    Valid: steady power, one resistance for all currents
    Source: practice, power of a source with inner resistance
    """
    root = np.asarray(np.square(open_voltage) - 4.0 * resistance * np.asarray(power))
    inside = np.where(root >= 0.0, root, np.nan)
    return np.asarray((open_voltage - np.sqrt(inside)) / (2.0 * np.asarray(resistance)))


def terminal_voltage(open_voltage: Numbers, resistance: Numbers, current: Numbers) -> Numbers:
    """Voltage of a bank under load.

    U = Uoc - R I

    Args:
        open_voltage: Uoc, at rest [V]
        resistance: R [ohm]
        current: I, discharge positive [A]

    Returns:
        U [V]

    Valid: steady current
    Source: practice, voltage of a source with inner resistance
    """
    return open_voltage - resistance * current


def most_power(open_voltage: Numbers, resistance: Numbers, lowest: Numbers) -> Array:
    """Highest power that a bank gives without its voltage falling below a cut-off.

    P = U (Uoc - U) / R, U the larger of cut-off and Uoc / 2; 0 where Uoc is below the cut-off

    Args:
        open_voltage: Uoc, at rest [V]
        resistance: R [ohm]
        lowest: cut-off of management system or controller [V]

    Returns:
        P at the terminals [W]

    Valid: steady power
    Source: practice, power of a source with inner resistance
    """
    voltage = np.maximum(lowest, np.asarray(open_voltage) / 2.0)
    spare = np.maximum(np.asarray(open_voltage) - voltage, 0.0)
    return np.asarray(voltage * spare / resistance)


def lowest_state(states: Array, power_at: Array, power: Numbers) -> Array:
    """State of charge below which a power can no longer be held.

    s* between the last row with P(s) < P and the next, on a straight line

    Args:
        states: s, rising from 0 to 1, (m,) [-]
        power_at: P(s), what the bank holds at each, (n, m) [W]
        power: P that is asked for, (n, 1) or a number [W]

    Returns:
        s*, (n, 1) [-]; 1 where even a full bank does not hold it, 0 where an empty one does

    Valid: power that rises with the state of charge, or nearly so
    Source: practice, floor of usable charge by sag
    """
    table = np.atleast_2d(power_at)
    asked = np.broadcast_to(np.atleast_2d(np.asarray(power, dtype=np.float64)), table.shape)
    short = table < asked
    last = np.where(short.any(axis=1), table.shape[1] - 1 - np.argmax(short[:, ::-1], axis=1), -1)
    place = np.clip(last, 0, table.shape[1] - 2)[:, np.newaxis]
    low, high = (np.take_along_axis(table, place + step, axis=1) for step in (0, 1))
    wanted = asked[:, :1]
    rise = np.where(high > low, high - low, 1.0)
    share = np.clip((wanted - low) / rise, 0.0, 1.0)
    found = states[place] + share * (states[place + 1] - states[place])
    never, always = last == table.shape[1] - 1, last < 0
    return np.where(never[:, np.newaxis], 1.0, np.where(always[:, np.newaxis], 0.0, found))


def string_currents(current: Numbers, resistances: Array) -> Array:
    """How strings in parallel share a current.

    I_i = I (1 / R_i) / sum(1 / R)

    Args:
        current: I of all strings [A]
        resistances: R_i of each string with its own cables, (k,) [ohm]

    Returns:
        I_i, (k,) [A]

    Valid: strings of equal open-circuit voltage
    Source: practice, currents in parallel branches
    """
    conductance = 1.0 / np.asarray(resistances, dtype=np.float64)
    return np.asarray(current * conductance / conductance.sum())
