"""Where does the battery's power go on its way to the water, at three speeds?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.motion.demand import Weather
from generator.analyses.motion.power import at_points
from generator.analyses.percentiles import scalar, side_by_side, spread
from generator.analyses.store.bank_state import draws_current
from generator.analyses.store.outfit import Outfit
from generator.arrays import Array
from generator.physics.drive.motor import bounded_losses, motor_losses

SLOWER_THAN_CRUISE = 1.0 * 1852.0 / 3600.0
STEPS = (
    "bank", "cables", "standby", "motor", "gear", "seal", "bearings", "propeller", "towing",
)  # fmt: skip


@dataclass(frozen=True)
class Losses:
    """What each step takes, W per draw and speed, in the order of STEPS; towing is the use."""

    speed: Array  # m/s, columns
    taken: Array  # W, inside the bank
    steps: dict[str, Array]


def losses(outfit: Outfit) -> Losses | None:
    """Follow the power in a calm at a knot below cruise, at cruise, and at the top for good."""
    case, option, found = outfit.case, outfit.option, outfit.power
    scale, held, motor = outfit.scale, outfit.store, option.motor
    if motor is None or held.new is None:
        return None
    cruise = float(np.asarray(case.planning.cruise_speed).flat[0])
    top = max(scalar(spread(found.top.continuous).low), cruise)
    speed = side_by_side(max(cruise - SLOWER_THAN_CRUISE, SLOWER_THAN_CRUISE), cruise, top)
    curve = at_points(case, option, found, scale, speed, Weather(0.0, 1.0))
    demand, output = curve.demand, curve.output
    factors = case.factors
    heat = motor_losses(output.power, output.turns, motor.continuous_power, motor.rated_speed)
    heat = bounded_losses(
        heat * factors.motor_loss + motor.electronics_standby, output.power, motor.continuous_power
    ) - np.asarray(motor.electronics_standby)
    at_motor = output.power + heat + motor.electronics_standby
    delivered = (
        demand.shaft_power * option.propeller.rotative_efficiency
        * option.propeller.shaft_efficiency
    )  # fmt: skip
    current = draws_current(held.new, output.drain)
    in_bank = np.square(current) * held.new.resistance_half
    towing = demand.resistance * speed
    steps = {
        "bank": in_bank,
        "cables": output.drain - at_motor,
        "standby": np.asarray(motor.electronics_standby),
        "motor": heat,
        "gear": demand.shaft_power * (1.0 / np.asarray(motor.gear_efficiency) - 1.0),
        "seal": np.asarray(motor.seal_and_bearings),
        "bearings": demand.shaft_power - delivered,
        "propeller": delivered - towing,
        "towing": towing,
    }
    shape = np.atleast_2d(output.drain).shape
    whole = {name: np.broadcast_to(np.atleast_2d(steps[name]), shape) for name in STEPS}
    return Losses(speed[0], np.broadcast_to(output.drain + in_bank, shape), whole)
