"""At what turns does a screw give the thrust that the boat needs, and what power is that?"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import prod

import numpy as np

from generator.arrays import Array, Flags, Numbers
from generator.physics.drive.propeller import (
    THRUST,
    TORQUE,
    Cubic,
    cubic,
    cubic_in_advance,
    pulls_until,
)

TURN = 2.0 * np.pi  # rad
STEPS = 5  # of Newton; from the chord of KT four reach the last digit for the whole series
CONVERGED = 1e-9  # residual of the balance, as a share of its two sides at J = 0 and J = J0
BLOCK = 1 << 14  # numbers worked on at once: what a processor holds near, twice as fast
NEVER_FLAT = 1e-300  # keeps 0 / 0 out of a screw that is tied up


@dataclass(frozen=True)
class OperatingPoint:
    """Where thrust of screw and boat balance; NaN where ``feasible`` is false."""

    advance: Array  # J [-]
    revolutions: Array  # rad/s of the screw
    torque: Array  # N m in open water
    delivered_power: Array  # W in open water
    open_water_efficiency: Array  # [-]; 0 when tied up, and when no thrust is asked for
    feasible: Flags


@dataclass(frozen=True)
class Bollard:
    """The screw at full grip with the boat tied up."""

    thrust: Array  # N
    revolutions: Array  # rad/s
    torque: Array  # N m


def operating_point(
    thrust: Numbers,
    advance_speed: Numbers,
    diameter: Numbers,
    pitch_ratio: Numbers,
    area_ratio: Numbers,
    blades: Numbers,
    density: Numbers,
    thrust_scale: Numbers = 1.0,
    torque_scale: Numbers = 1.0,
) -> OperatingPoint:
    """Turns, torque and power at which a B-series screw gives a thrust at an advance speed.

    s KT(J) VA² = T / (ρ D²) J²;  n² (s KT + J²) = T / (ρ D⁴) + VA² / D²
    Q = q KQ ρ n² D⁵;  PD = 2 π n Q;  η0 = T VA / PD

    The second form of n holds at VA = 0 (tied up) and at T = 0 (coasting) alike. Relative
    rotative efficiency is left out: divide ``torque_scale`` by it, or the power.

    Args:
        thrust: T [N], 0 or more
        advance_speed: VA, water speed into the screw [m/s], 0 or more
        diameter: D [m]
        pitch_ratio: P/D [-]
        area_ratio: AE/A0 [-]
        blades: Z [-]
        density: ρ of the water [kg/m3]
        thrust_scale: s on KT, 0.94 for two blades [-]
        torque_scale: q on KQ [-]

    Returns:
        OperatingPoint; not feasible where thrust or speed is negative or no number, or where
        the screw has no pull at all

    Valid: as thrust_coefficient, ahead only
    Source: oosterveld1975, table of coefficients; kuiper1992, section 9.3
    """
    pull = cubic_in_advance(THRUST, pitch_ratio, area_ratio, blades)
    grip = cubic_in_advance(TORQUE, pitch_ratio, area_ratio, blades)
    disc = np.square(diameter)
    wheel = torque_scale * density * disc * disc * diameter
    given = (thrust, advance_speed, 1.0 / disc, 1.0 / (density * disc * disc), thrust_scale, wheel)
    terms = np.broadcast_arrays(*given, pulls_until(pitch_ratio, area_ratio, blades), *pull, *grip)
    rows = [np.atleast_1d(term) for term in terms]
    results = np.empty((6, *rows[0].shape))
    for block in _blocks(rows[0].shape):
        t, v, d2, d4, s, w, free, *cubics = (row[block] for row in rows)
        balance = _Balance(t, v, d2, d4, s, w, free, _cubic(cubics[:4]), _cubic(cubics[4:]))
        results[:, block] = _solve(balance)
    advance, turns, torque, power, efficiency, solved = results.reshape(6, *terms[0].shape)
    return OperatingPoint(advance, turns, torque, power, efficiency, np.asarray(solved > 0.0))


def bollard(
    power: Numbers,
    diameter: Numbers,
    pitch_ratio: Numbers,
    area_ratio: Numbers,
    blades: Numbers,
    density: Numbers,
    thrust_scale: Numbers = 1.0,
    torque_scale: Numbers = 1.0,
) -> Bollard:
    """Pull, turns and torque of a screw that takes a power with the boat tied up.

    PD = 2 π ρ n³ D⁵ q KQ(0);  T = s KT(0) ρ n² D⁴

    Args:
        power: PD at the screw [W]
        diameter: D [m]
        pitch_ratio: P/D [-]
        area_ratio: AE/A0 [-]
        blades: Z [-]
        density: ρ of the water [kg/m3]
        thrust_scale: s on KT [-]
        torque_scale: q on KQ [-]

    Returns:
        Bollard; whether the motor can turn so fast, or hold that torque, is for the caller

    Valid: as thrust_coefficient; the hull's own suction of a few per cent is not taken off
    Source: oosterveld1975, table of coefficients
    """
    pull, grip = (
        cubic_in_advance(which, pitch_ratio, area_ratio, blades)[0] for which in (THRUST, TORQUE)
    )
    wheel = TURN * density * diameter**5 * torque_scale * grip
    turns = np.cbrt(np.asarray(power) / wheel)
    force = thrust_scale * pull * density * diameter**4 * turns**2
    return Bollard(np.asarray(force), np.asarray(TURN * turns), np.asarray(wheel * turns**2 / TURN))


@dataclass(frozen=True)
class _Balance:
    """What one block of draws and speeds needs, all of one shape."""

    thrust: Array
    speed: Array
    per_disc: Array  # 1 / D²
    per_pull: Array  # 1 / (ρ D⁴)
    thrust_scale: Array
    wheel: Array  # q ρ D⁵
    free: Array  # J where the screw no longer pulls
    pull: Cubic
    grip: Cubic


def _blocks(shape: tuple[int, ...]) -> Iterator[slice]:
    """Runs of rows that hold about ``BLOCK`` numbers."""
    rows = max(1, BLOCK * shape[0] // max(1, prod(shape)))
    for first in range(0, shape[0], rows):
        yield slice(first, first + rows)


def _cubic(terms: list[Array]) -> Cubic:
    """Four terms as the cubic that they are."""
    c0, c1, c2, c3 = terms
    return c0, c1, c2, c3


def _solve(of: _Balance) -> tuple[Numbers, ...]:
    """The five results and 1 where they hold, NaN and 0 where there is no answer."""
    with np.errstate(invalid="ignore", divide="ignore", over="ignore"):
        speed2 = of.speed * of.speed * of.per_disc
        pull2 = of.thrust * of.per_pull
        advance, balanced = _balance(of, speed2, pull2)
        turns2 = (pull2 + speed2) / (of.thrust_scale * cubic(of.pull, advance) + advance * advance)
        torque = of.wheel * cubic(of.grip, advance) * turns2
        turns = TURN * np.sqrt(turns2)
        power = turns * torque
        useful = of.thrust * of.speed
        efficiency = np.where(useful > 0.0, useful / power, 0.0)
    feasible = balanced & (of.thrust >= 0.0) & (of.speed >= 0.0) & (torque >= 0.0)
    values = (advance, turns, torque, power, efficiency)
    return *(np.where(feasible, value, np.nan) for value in values), feasible


def _balance(of: _Balance, speed2: Array, pull2: Array) -> tuple[Array, Flags]:
    """J in [0, free] with s KT(J) VA² = T / (ρ D²) J², and whether it was found.

    Newton starts from the root of the chord of KT from KT(0) to KT(free): that quadratic is
    exact at both ends, tied up and coasting.
    """
    speed_side = of.thrust_scale * speed2
    whole = speed_side + pull2
    at_rest = whole == 0.0  # no thrust asked for and no way on: the free end of the chord
    a = np.where(at_rest, 1.0, speed_side / whole)
    b = np.where(at_rest, 0.0, pull2 / whole)
    c0, c1, c2, c3 = of.pull
    start = a * c0
    slope = start / of.free
    advance = 2.0 * start / (slope + np.sqrt(slope * slope + 4.0 * b * start))
    advance[start == 0.0] = 0.0  # zero over zero when tied up
    terms = (start, a * c1, a * c2 - b, a * c3)
    _newton(terms, advance)
    np.minimum(advance, of.free, out=advance)
    rest = np.abs(cubic(terms, advance))
    return advance, np.asarray(rest <= CONVERGED * (start + b * of.free * of.free))


def _newton(coefficients: tuple[Array, Array, Array, Array], root: Array) -> None:
    """Moves ``root`` to the zero of a cubic that falls through it, in place."""
    c0, c1, c2, c3 = coefficients
    twice, thrice = 2.0 * c2, 3.0 * c3
    for _ in range(STEPS):
        value = ((c3 * root + c2) * root + c1) * root + c0
        slope = (thrice * root + twice) * root + c1
        root -= value / (slope - NEVER_FLAT)
        np.maximum(root, 0.0, out=root)
