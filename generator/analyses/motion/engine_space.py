"""How warm does the engine space get, and what of the motor's rating does that leave?"""

from __future__ import annotations

import numpy as np

from generator.arrays import Array, Numbers
from generator.case.factors import Factors
from generator.case.option import Motor
from generator.physics.drive.motor import motor_losses
from generator.physics.drive.thermal import derating, space_rise
from generator.remembered import remembered

STEPS = 5  # of a damped fixed point; what is left is below a thousandth of the rating


def heat(motor: Motor, power: Numbers, turns: Numbers, factors: Factors) -> Array:
    """Losses of motor and controller with the standing ones [W]."""
    losses = motor_losses(power, turns, motor.continuous_power, motor.rated_speed)
    return np.asarray(losses * factors.motor_loss + motor.electronics_standby)


def space_temperature(motor: Motor, losses: Numbers) -> Array:
    """Air about the motor after hours of given losses [degC]."""
    rise = space_rise(losses * motor.heat_share, motor.airflow, motor.space_conductance)
    return np.asarray(motor.intake_temperature + rise)


@remembered
def warm_share(motor: Motor, factors: Factors) -> Array:
    """Share of the continuous power on the plate that the motor gives in its own warm air."""
    share = _next(motor, factors, np.ones((1, 1)))
    for _ in range(STEPS):
        share = 0.5 * (share + _next(motor, factors, share))
    return share


def _next(motor: Motor, factors: Factors, share: Array) -> Array:
    """What the air allows that a share of the rating has warmed."""
    losses = heat(motor, motor.continuous_power * share, motor.rated_speed, factors)
    warm = space_temperature(motor, losses)
    return derating(warm, motor.rated_ambient, motor.derating)
