"""What thrust and torque does a screw give in open water?"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

import numpy as np

from generator.arrays import Array, Numbers
from generator.remembered import remembered
from generator.tables.load import read_table

THRUST = "thrust"
TORQUE = "torque"
TABLES = {THRUST: "drive/bseries_kt", TORQUE: "drive/bseries_kq"}
POWERS = ("advance_power", "pitch_power", "area_power", "blades_power")

NEWTON_STEPS = 5  # from half a grid step off: reaches the last digit for the whole series
FLAT = 1e-9

Cubic = tuple[Numbers, Numbers, Numbers, Numbers]


def thrust_coefficient(
    advance: Numbers, pitch_ratio: Numbers, area_ratio: Numbers, blades: Numbers
) -> Numbers:
    """Thrust coefficient of a B-series screw in open water.

    KT = T / (ρ n² D⁴) = sum of C J^s (P/D)^t (AE/A0)^u Z^v over 39 terms

    Args:
        advance: J = VA / (n D) [-]
        pitch_ratio: P/D [-]
        area_ratio: AE/A0, expanded blade area over disc [-]
        blades: Z [-]

    Returns:
        KT [-], below zero where the screw brakes

    Valid: Z 2 to 7, AE/A0 0.30 to 1.05, P/D 0.5 to 1.4, J from 0 to where KT is 0, Reynolds
        number 2e6 (yachts lie at 1e6 to 2e6; no correction is made). For two blades the
        charts lie below the polynomial: multiply by 0.94.
    Source: oosterveld1975, table of coefficients; kuiper1992, charts
    """
    return cubic(cubic_in_advance(THRUST, pitch_ratio, area_ratio, blades), advance)


def torque_coefficient(
    advance: Numbers, pitch_ratio: Numbers, area_ratio: Numbers, blades: Numbers
) -> Numbers:
    """Torque coefficient of a B-series screw in open water.

    KQ = Q / (ρ n² D⁵) = sum of C J^s (P/D)^t (AE/A0)^u Z^v over 47 terms

    Args:
        advance: J = VA / (n D) [-]
        pitch_ratio: P/D [-]
        area_ratio: AE/A0, expanded blade area over disc [-]
        blades: Z [-]

    Returns:
        KQ [-]

    Valid: as thrust_coefficient; two blades need no factor
    Source: oosterveld1975, table of coefficients
    """
    return cubic(cubic_in_advance(TORQUE, pitch_ratio, area_ratio, blades), advance)


@remembered
def cubic_in_advance(
    which: str, pitch_ratio: Numbers, area_ratio: Numbers, blades: Numbers
) -> Cubic:
    """Coefficients of the cubic in J that the series is for one given screw.

    K(J) = c0 + c1 J + c2 J² + c3 J³ with c_s = sum of C (P/D)^t (AE/A0)^u Z^v

    Args:
        which: "thrust" for KT, "torque" for KQ
        pitch_ratio: P/D [-]
        area_ratio: AE/A0 [-]
        blades: Z [-]

    Returns:
        c0, c1, c2, c3 [-]

    Valid: as thrust_coefficient
    Source: oosterveld1975, table of coefficients
    """
    pitch = _powers(pitch_ratio, 6)
    coefficients: list[Numbers] = [0.0, 0.0, 0.0, 0.0]
    # By pitch power first: area and blades are mostly single numbers, pitch mostly a draw.
    for (s, t), value in _by_pitch(which, area_ratio, blades).items():
        coefficients[s] = coefficients[s] + value * pitch[t]
    return coefficients[0], coefficients[1], coefficients[2], coefficients[3]


def _by_pitch(
    which: str, area_ratio: Numbers, blades: Numbers
) -> Mapping[tuple[int, int], Numbers]:
    """The series' sums of C (AE/A0)^u Z^v, by the powers s of J and t of P/D."""
    area, number = _powers(area_ratio, 2), _powers(blades, 2)
    sums: dict[tuple[int, int], Numbers] = {}
    for coefficient, (s, t, u, v) in _terms(which):
        sums[s, t] = sums.get((s, t), 0.0) + coefficient * area[u] * number[v]
    return sums


def cubic(coefficients: Cubic, advance: Numbers) -> Numbers:
    """The cubic's value.

    K(J) = c0 + c1 J + c2 J² + c3 J³

    Args:
        coefficients: c0, c1, c2, c3 [-]
        advance: J [-]

    Returns:
        K [-]

    Valid: everywhere
    Source: oosterveld1975, form of the polynomial
    """
    c0, c1, c2, c3 = coefficients
    return ((c3 * advance + c2) * advance + c1) * advance + c0


def zero_of_cubic(coefficients: Cubic) -> Array:
    """First advance coefficient at which the cubic falls through zero.

    K(J0) = 0, K > 0 for 0 <= J < J0

    Args:
        coefficients: c0, c1, c2, c3 of KT [-]

    Returns:
        J0 [-], NaN where K is not above zero at J = 0 or has no zero below J = 3

    Valid: screws of the series, J0 about 0.5 to 1.6
    Source: oosterveld1975, form of the polynomial
    """
    c0, c1, c2, c3 = (np.asarray(c, dtype=np.float64)[..., None] for c in coefficients)
    grid = np.linspace(0.0, 3.0, 61)
    falls = np.asarray(cubic((c0, c1, c2, c3), grid)) <= 0.0
    first = np.argmax(falls, axis=-1)
    found = (first > 0) & falls.any(axis=-1)
    low, high = grid[np.maximum(first - 1, 0)], grid[first]
    zero = 0.5 * (low + high)
    for _ in range(NEWTON_STEPS):
        change = cubic(coefficients, zero) / _slope(coefficients, zero)
        zero = np.minimum(np.maximum(zero - change, low), high)
    return np.where(found, zero, np.nan)


@remembered
def pulls_until(pitch_ratio: Numbers, area_ratio: Numbers, blades: Numbers) -> Array:
    """Advance coefficient at which one given screw no longer pulls.

    KT(J0) = 0, KT > 0 for 0 <= J < J0

    Args:
        pitch_ratio: P/D [-]
        area_ratio: AE/A0 [-]
        blades: Z [-]

    Returns:
        J0 [-], NaN as zero_of_cubic

    Valid: as thrust_coefficient
    Source: oosterveld1975, table of coefficients
    """
    return zero_of_cubic(cubic_in_advance(THRUST, pitch_ratio, area_ratio, blades))


def _slope(coefficients: Cubic, advance: Numbers) -> Numbers:
    """dK/dJ; never quite zero, so that a flat curve stays in its bracket instead of failing."""
    _, c1, c2, c3 = coefficients
    slope = (3.0 * c3 * advance + 2.0 * c2) * advance + c1
    return np.where(np.abs(slope) < FLAT, -FLAT, slope)


def _powers(base: Numbers, highest: int) -> list[Numbers]:
    """The base to the powers 0, 1, ... highest."""
    powers: list[Numbers] = [1.0]
    for _ in range(highest):
        powers.append(powers[-1] * base)
    return powers


@cache
def _terms(which: str) -> list[tuple[float, list[int]]]:
    """Each term of the series: its coefficient and its four exponents, as whole numbers."""
    table = read_table(TABLES[which])
    exponents = table.matrix(*POWERS).astype(int).tolist()
    return list(zip(table.column("coefficient").tolist(), exponents, strict=True))
