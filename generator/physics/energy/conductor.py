"""What may a copper conductor carry, what does it lose, and how warm does it get?"""

from __future__ import annotations

from functools import cache

import numpy as np

from generator.arrays import Array, Numbers
from generator.tables.load import read_table

COPPER = 1.7241e-8  # ohm m at 20 degC, the international annealed copper standard
COPPER_WARMING = 0.00393  # 1/K at 20 degC, the same standard
COPPER_HEAT = 3.45e6  # J/(m3 K), IEC 60949
COPPER_BEARS, COPPER_ZERO = 226.0, 234.5  # A s^0.5/mm2 and K, iec60364 part 5-54 annex A
TABLE_AIR = 30.0  # degC, the air of the table of allowable currents
CIRCULAR_MIL = 5.067075e-10  # m2
FOOT = 0.3048  # m
BOAT_FORM_COPPER = 10.75  # ohm circular mil per foot, of the American boat form
METRIC_FORM_COPPER = 0.0164  # ohm mm2 per m, of the metric boat form


def copper_resistivity(temperature: Numbers) -> Numbers:
    """Resistivity of copper that has warmed.

    rho = 1.7241e-8 (1 + 0.00393 (T - 20))

    Args:
        temperature: T of the conductor [degC]

    Returns:
        rho [ohm m]

    Valid: annealed copper of 100 % IACS, -20 to 150 degC
    Source: iacs, resistivity and its coefficient at 20 degC
    """
    return COPPER * (1.0 + COPPER_WARMING * (temperature - 20.0))


def gauge_diameter(number: Numbers) -> Numbers:
    """Diameter of a round wire of the American gauge.

    d = 0.127 mm * 92^((36 - n) / 39); 1/0, 2/0, 3/0, 4/0 are n = 0, -1, -2, -3

    Args:
        number: n, gauge [-]

    Returns:
        d [m]

    Valid: solid round wire; boat cable may have up to a tenth less copper
    Source: awg_geometry, ratio of gauges 36 and 4/0
    """
    return 0.127e-3 * 92.0 ** ((36.0 - number) / 39.0)


@cache
def table_ampacity(gauge: str, temperature_class: int) -> float:
    """Allowable current of one conductor in free air of 30 degC.

    The cell of a table.

    Args:
        gauge: a row of the table such as AWG 2/0 [-]
        temperature_class: of the insulation: 60, 75, 80, 90, 105, 125 or 200 [degC]

    Returns:
        current [A]

    Valid: stranded copper, not bundled, 30 degC
    Source: cfr33_183, section 183.425, Table 5
    """
    table = read_table("energy/ampacity")
    return float(table.column(f"c{temperature_class}")[table.row_of("awg", gauge)])


def warm_air_factor(temperature_class: Numbers, air: Numbers) -> Array:
    """Allowable current in warmer air over that at 30 degC.

    f = ((Tc - Ta) / (Tc - 30))^1/2, at most 1; 0 where the air is as warm as the insulation bears

    Args:
        temperature_class: Tc, what the insulation bears for good [degC]
        air: Ta around the conductor [degC]

    Returns:
        f [-]

    Valid: 30 degC to Tc; a conductor that sheds its heat in proportion to its rise. It gives the
        factors of Table 5 at 50 degC within 0.006 from 60 to 125 degC; at 200 degC it says 0.94
        where the table has 1.00
    Source: practice, current with the root of the permitted rise
    """
    rise = np.maximum(temperature_class - np.asarray(air), 0.0)
    return np.asarray(np.sqrt(np.minimum(rise / (np.asarray(temperature_class) - TABLE_AIR), 1.0)))


@cache
def bundle_factor(conductors: int) -> float:
    """Allowable current of conductors laid together over that of one alone.

    The row of a table of the highest count that is not above it.

    Args:
        conductors: that carry current in one bundle [-]

    Returns:
        factor [-]

    Valid: conductors of 50 V and above in one duct or bundle; a pair counts as alone
    Source: cfr33_183, section 183.435 with note 2 to Table 5
    """
    table = read_table("energy/bundling")
    place = np.searchsorted(table.column("conductors"), conductors, side="right") - 1
    return float(table.column("factor")[max(int(place), 0)])


def volt_drop(current: Numbers, loop: Numbers, area: Numbers, resistivity: Numbers) -> Numbers:
    """Voltage lost on the way out and back.

    U = rho L I / S

    Args:
        current: I [A]
        loop: L, out and back [m]
        area: S of the conductor [m2]
        resistivity: rho at its temperature [ohm m]

    Returns:
        U [V]

    Valid: direct current; joints and devices come on top
    Source: practice, Ohm's law
    """
    return resistivity * loop * current / area


def boat_form_area(current: Numbers, loop: Numbers, drop: Numbers) -> Numbers:
    """Conductor by the American boat form, for a permitted drop.

    CM = 10.75 I L / E, L in feet out and back, CM in circular mils

    Args:
        current: I [A]
        loop: L, out and back [m]
        drop: E, permitted [V]

    Returns:
        area [m2]

    Valid: copper of 29 degC; warmer cable needs up to a sixth more
    Source: abyc_e11, conductor size by permitted drop
    """
    return BOAT_FORM_COPPER * current * (loop / FOOT) / drop * CIRCULAR_MIL


def metric_form_area(current: Numbers, loop: Numbers, drop: Numbers) -> Numbers:
    """Conductor by the metric boat form, for a permitted drop.

    S = 0.0164 I L / E, L in m out and back, S in mm2

    Args:
        current: I [A]
        loop: L, out and back [m]
        drop: E, permitted [V]

    Returns:
        area [m2]

    Valid: its constant lies below that of copper at 20 degC, so it asks for too little
    Source: iso10133, annex on conductor size, from memory
    """
    return METRIC_FORM_COPPER * 1e-6 * current * loop / drop


def steady_temperature(
    current: Numbers, allowable: Numbers, temperature_class: Numbers, air: Numbers
) -> Numbers:
    """Where a conductor's temperature settles.

    T = Ta + (Tc - Ta) (I / Ia)²

    Args:
        current: I, for good [A]
        allowable: Ia, in the same air and bundle [A]
        temperature_class: Tc, what the insulation bears for good [degC]
        air: Ta [degC]

    Returns:
        T [degC]

    Valid: I up to about 1.2 Ia: resistance is held at that of Tc
    Source: practice, rise with the square of the current
    """
    return air + (temperature_class - air) * np.square(current / np.asarray(allowable))


def warming_time(
    area: Numbers, allowable: Numbers, temperature_class: Numbers, air: Numbers
) -> Numbers:
    """Time constant with which a conductor warms; its insulation's own heat is left out.

    tau = c S² (Tc - Ta) / (rho(Tc) Ia²)

    Args:
        area: S of the conductor [m2]
        allowable: Ia, in that air and bundle [A]
        temperature_class: Tc, what the insulation bears for good [degC]
        air: Ta [degC]

    Returns:
        tau [s]

    Valid: bare heat of the copper, so the true conductor warms more slowly
    Source: iec60949, heat of copper; practice, heat balance at the allowable current
    """
    loss = copper_resistivity(temperature_class) * np.square(allowable)
    return COPPER_HEAT * np.square(area) * (temperature_class - air) / loss


def overload_temperature(
    before: Numbers, settled: Numbers, time: Numbers, time_constant: Numbers
) -> Numbers:
    """Temperature at the end of a short load.

    T = T1 - (T1 - T0) exp(-t / tau)

    Args:
        before: T0, when the load begins [degC]
        settled: T1, where that load would settle [degC]
        time: t, for which it lasts [s]
        time_constant: tau [s]

    Returns:
        T [degC]

    Valid: one time constant; loads of seconds to an hour
    Source: practice, first-order warming
    """
    return settled - (settled - before) * np.exp(-np.asarray(time) / time_constant)


def short_circuit_area(current: Numbers, time: Numbers, constant: Numbers) -> Numbers:
    """Least conductor that a short circuit does not spoil before its fuse has opened.

    S = I t^1/2 / k

    Args:
        current: I, of the short circuit [A]
        time: t, until it is broken [s]
        constant: k of the insulation [A s^0.5/mm2]

    Returns:
        S [m2]

    Valid: up to 5 s, no heat lost
    Source: iec60364, part 5-54, adiabatic form
    """
    return current * np.sqrt(time) / constant * 1e-6


def insulation_constant(start: Numbers, end: Numbers) -> Numbers:
    """What a copper conductor bears between two temperatures of its insulation.

    k = 226 (ln(1 + (T2 - T1) / (234.5 + T1)))^1/2

    Args:
        start: T1, when the short circuit begins [degC]
        end: T2, highest that the insulation bears for seconds [degC]

    Returns:
        k [A s^0.5/mm2]

    Valid: copper, up to 5 s
    Source: iec60364, part 5-54, annex A
    """
    return COPPER_BEARS * np.sqrt(np.log(1.0 + (end - start) / (COPPER_ZERO + start)))


@cache
def fault_constant(temperature_class: float) -> float:
    """What a copper conductor bears from its temperature class on.

    k of the class and of the end temperature in the row of a table.

    Args:
        temperature_class: of the insulation: 60, 75, 80, 90, 105, 125 or 200 [degC]

    Returns:
        k [A s^0.5/mm2]

    Valid: up to 5 s; thermoplastic insulation up to 105 degC, which is the worse case
    Source: iec60364, part 5-54, annex A; practice, kind of insulation of each class
    """
    table = read_table("energy/insulation_end")
    row = int(np.argmin(np.abs(table.column("class") - temperature_class)))
    return float(insulation_constant(temperature_class, table.column("end")[row]))
