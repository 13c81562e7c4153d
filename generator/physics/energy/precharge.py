"""How are the capacitors of a controller filled before its contactor closes?"""

from __future__ import annotations

import numpy as np

from generator.arrays import Numbers


def first_current(voltage: Numbers, resistance: Numbers) -> Numbers:
    """Current in the instant in which pre-charge begins.

    I = U / R

    Args:
        voltage: U of the bank [V]
        resistance: R of the resistor [ohm]

    Returns:
        I [A]

    Valid: empty capacitors
    Source: practice, Ohm's law
    """
    return voltage / resistance


def charge_time(resistance: Numbers, capacitance: Numbers, difference: Numbers) -> Numbers:
    """Time until only a share of the voltage is left across the open contactor.

    t = R C ln(1 / d)

    Args:
        resistance: R of the resistor [ohm]
        capacitance: C of the controller's input [F]
        difference: d, share of the bank's voltage that is left [-]

    Returns:
        t [s]

    Valid: nothing else drawn meanwhile; five time constants leave 0.7 %
    Source: practice, charging of a capacitor
    """
    return resistance * capacitance * np.log(1.0 / np.asarray(difference))


def resistor_energy(voltage: Numbers, capacitance: Numbers) -> Numbers:
    """Heat that the resistor takes up each time.

    E = C U² / 2

    Args:
        voltage: U of the bank [V]
        capacitance: C of the controller's input [F]

    Returns:
        E [J]

    Valid: whatever the resistance, once the capacitor is full
    Source: practice, charging of a capacitor
    """
    return capacitance * np.square(voltage) / 2.0
