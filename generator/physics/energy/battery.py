"""What does a battery hold, how hard is it worked, and how much of it comes out?"""

from __future__ import annotations

import numpy as np

from generator.arrays import Array, Numbers
from generator.tables.load import read_table


def nominal_energy(voltage: Numbers, charge: Numbers) -> Numbers:
    """Energy that is written on a bank.

    E = U Q

    Args:
        voltage: U, nominal [V]
        charge: Q, nominal [C]

    Returns:
        E [J]

    Valid: nominal voltage as the mean over the discharge
    Source: practice, nominal energy
    """
    return voltage * charge


def usable_energy(nominal: Numbers, usable_share: Numbers, capacity_share: Numbers) -> Numbers:
    """Energy between full and the floor that the bank is not drawn below.

    Eu = E s a

    Args:
        nominal: E [J]
        usable_share: s, depth of discharge that is planned for [-]
        capacity_share: a, what age (and cold) have left of the nominal capacity [-]

    Returns:
        Eu [J]

    Valid: s 0.8 to 0.9 for lithium, 0.5 to 0.8 for lead; a 0 to 1
    Source: practice, usable depth of discharge
    """
    return nominal * usable_share * capacity_share


def current(power: Numbers, voltage: Numbers) -> Numbers:
    """Current that a power draws from the bank.

    I = P / U

    Args:
        power: P at the terminals [W]
        voltage: U [V]

    Returns:
        I [A]

    Valid: nominal voltage; sag raises the current by a few per cent
    Source: practice, power of a direct current
    """
    return power / voltage


def rate(current: Numbers, charge: Numbers) -> Numbers:
    """Current over capacity, the C rate.

    r = I / Q

    Args:
        current: I [A]
        charge: Q, nominal [C]

    Returns:
        r [1/s]; times 3600 it is in C

    Valid: everywhere
    Source: practice, definition of the C rate
    """
    return current / charge


def peukert_time(
    rated_time: Numbers, capacity: Numbers, current: Numbers, exponent: Numbers
) -> Array:
    """Time to empty at a constant current, rated form.

    t = H (C / (I H))^k, and t = C / I below the rated current: capacity never exceeds C

    The other form in print, t = Cp / I^k, needs Cp as measured at 1 A; a rated capacity put
    into it gives a wrong time.

    Args:
        rated_time: H, discharge time that C is rated over [s]
        capacity: C [C]
        current: I, 0 or more [A]
        exponent: k [-]

    Returns:
        t [s]; infinite without current

    Valid: constant current, about 25 degC, k 1.0 to 1.6; lead. For lithium k = 1 and the
        resistance apart
    Source: peukert, rated form; peukert_page, exponents
    """
    with np.errstate(divide="ignore"):
        slowness = np.divide(capacity, np.asarray(current) * rated_time)
    return np.asarray(rated_time * slowness * np.minimum(slowness, 1.0) ** (exponent - 1.0))


def peukert_capacity(
    rated_time: Numbers, capacity: Numbers, current: Numbers, exponent: Numbers
) -> Array:
    """Charge that comes out at a constant current.

    C(I) = I t = C (C / (I H))^(k - 1), at most C

    Args:
        rated_time: H, discharge time that C is rated over [s]
        capacity: C [C]
        current: I, 0 or more [A]
        exponent: k [-]

    Returns:
        C(I) [C]

    Valid: as peukert_time
    Source: peukert, rated form
    """
    with np.errstate(divide="ignore"):
        slowness = np.divide(capacity, np.asarray(current) * rated_time)
    return np.asarray(capacity * np.minimum(slowness, 1.0) ** (exponent - 1.0))


def peukert_exponent(chemistry: str) -> float:
    """Peukert exponent of a chemistry, middle of the published range.

    k of t = H (C / (I H))^k

    Args:
        chemistry: LFP, NMC, AGM or flooded

    Returns:
        k [-]; 1 for lithium, whose resistance is counted apart

    Valid: new battery, about 25 degC
    Source: peukert_page, exponents by chemistry
    """
    return _of_chemistry("exponent", chemistry)


def rated_discharge_time(chemistry: str) -> float:
    """Discharge time that the capacity on the label is rated over.

    H of t = H (C / (I H))^k

    Args:
        chemistry: LFP, NMC, AGM or flooded

    Returns:
        H [s]

    Valid: batteries as sold for boats
    Source: practice, 20 h for lead and 5 h for lithium
    """
    return _of_chemistry("rated_time", chemistry)


def _of_chemistry(column: str, chemistry: str) -> float:
    """One number of the chemistry's row."""
    table = read_table("energy/peukert")
    return float(table.column(column)[table.row_of("chemistry", chemistry)])
