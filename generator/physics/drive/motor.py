"""How much of the electricity does motor with controller turn into heat?"""

from __future__ import annotations

from functools import cache

import numpy as np

from generator.arrays import Array, Numbers
from generator.tables.load import read_table


def motor_losses(
    shaft_power: Numbers, motor_speed: Numbers, rated_power: Numbers, rated_speed: Numbers
) -> Array:
    """Heat of motor and controller together.

    loss = Pr (0.004 + 0.012 n + 0.014 n² + 0.055 T²), n = ω / ωr, T = (P / Pr) / n

    The loss, not the efficiency, is what may be read between points: it stays above zero when
    the motor turns without load. At standstill T is taken as 0.

    Args:
        shaft_power: P at the motor shaft, 0 or more [W]
        motor_speed: ω [rad/s]
        rated_power: Pr, continuous [W]
        rated_speed: ωr, at rated power [rad/s]

    Returns:
        loss [W]

    Valid: 2 to 100 % of rated power on the propeller curve P ~ n³. Between two published
        curves up to 20 % of rated power, within 2 points of both from 60 %; at 40 % it is 2.4
        points below the better one. Standby and shaft seal are not in it.
    Source: practice, loss model drawn between the curves of fastsim
    """
    turns = np.asarray(motor_speed) / rated_speed
    load = np.asarray(shaft_power) / rated_power
    turning = turns > 0.0
    if turning.all():
        torque = load / turns
    else:
        torque = np.where(turning, load, 0.0) / np.where(turning, turns, 1.0)
    share: Numbers = 0.0
    for c, a, b in _terms():
        share = share + c * _power(turns, a) * _power(torque, b)
    return np.asarray(rated_power * share)


def _power(base: Array, exponent: int) -> Numbers:
    """A whole power; the one of nought costs nothing."""
    return base**exponent if exponent else 1.0


@cache
def _terms() -> list[tuple[float, int, int]]:
    """Coefficient and the powers of speed and torque, term by term."""
    table = read_table("drive/motor_loss")
    rows = table.matrix("coefficient", "speed_power", "torque_power").tolist()
    return [(c, int(a), int(b)) for c, a, b in rows]


def electrical_power(shaft_power: Numbers, losses: Numbers) -> Numbers:
    """Power that the controller takes from its cables.

    Pel = P + loss

    Args:
        shaft_power: P at the motor shaft [W]
        losses: of motor and controller, and standing losses where counted [W]

    Returns:
        Pel [W]

    Valid: motoring, P 0 or more
    Source: practice, energy balance of the drive
    """
    return shaft_power + losses


def efficiency(shaft_power: Numbers, losses: Numbers) -> Array:
    """Share of the electricity that reaches the motor shaft.

    η = P / (P + loss)

    Args:
        shaft_power: P at the motor shaft [W]
        losses: of motor and controller [W]

    Returns:
        η [-]; 0 where nothing is taken

    Valid: motoring, P 0 or more
    Source: practice, energy balance of the drive
    """
    taken = np.asarray(electrical_power(shaft_power, losses))
    return np.where(taken > 0.0, shaft_power, 0.0) / np.where(taken > 0.0, taken, 1.0)


def bounded_losses(losses: Numbers, shaft_power: Numbers, rated_power: Numbers) -> Array:
    """Losses at part load, kept between the best and the worst published efficiency curve.

    P (1/best - 1) <= loss <= P (1/worst - 1) at P/Pr from 0.02 to 0.20; below 0.02 the worst
    curve's loss at 0.02 is the upper end, for standing losses do not vanish with the load

    Args:
        losses: of motor and controller with the controller's standby [W]
        shaft_power: P at the motor shaft [W]
        rated_power: Pr, continuous [W]

    Returns:
        losses [W]; as they were above 20 % of rated power

    Valid: 0 to 100 % of rated power; the curves are of road vehicles
    Source: fastsim, baseline curves of a large and of a small drive
    """
    load = np.asarray(shaft_power) / rated_power
    low, high = published_losses(load)
    held = np.clip(np.asarray(losses), rated_power * low, rated_power * high)
    return np.asarray(np.where(load > _curves()[0][-1], losses, held))


def published_losses(load: Array) -> tuple[Array, Array]:
    """Loss over rated power by the best and by the worst published efficiency curve.

    p (1/eta - 1), eta read by straight lines between the points

    Args:
        load: p, output over rated power [-]

    Returns:
        by the best and by the worst curve [-]

    Valid: p 0.02 to 0.20; below, the worst curve's loss at 0.02; above, its last efficiency
    Source: fastsim, baseline curves of a large and of a small drive
    """
    places, best, worst = _curves()
    low = load * (1.0 / np.interp(load, places, best) - 1.0)
    held = np.maximum(load, places[0])
    high = held * (1.0 / np.interp(held, places, worst) - 1.0)
    return np.asarray(low), np.asarray(high)


@cache
def _curves() -> tuple[Array, Array, Array]:
    table = read_table("drive/efficiency_curves")
    return table.column("power_share"), table.column("best"), table.column("worst")
