"""Where does the battery's power go on its way to the water, at three speeds?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import Any

import numpy as np

from generator.analyses.motion.demand import Weather
from generator.analyses.motion.power import at_points
from generator.analyses.percentiles import best, scalar, side_by_side, spread
from generator.analyses.store.bank_state import draws_current
from generator.analyses.store.outfit import Outfit
from generator.arrays import Array, Numbers
from generator.physics.drive.motor import bounded_losses, motor_losses
from generator.records import number, record

SLOWER_THAN_CRUISE = 1.0 * 1852.0 / 3600.0


@record
class Losses:
    """What each step takes at some speeds, W by the best estimate, so that they add up."""

    ALONG = "speed"
    speed: Array = number("speed", "speed through the water")
    taken: Array = number("power", "power taken inside the bank", expected=True)
    useful: Array = number("share", "share that tows the hull", expected=True)
    bank: Array = number("watts", "lost in the bank", expected=True)
    cables: Array = number("watts", "lost in cables and controller", expected=True)
    standby: Array = number("watts", "taken by the electronics standing by", expected=True)
    motor: Array = number("watts", "lost in the motor", expected=True)
    gear: Array = number("watts", "lost in the gear", expected=True)
    seal: Array = number("watts", "lost in seal and standing bearings", expected=True)
    bearings: Array = number("watts", "lost in the shaft's bearings", expected=True)
    propeller: Array = number("watts", "lost at the propeller", expected=True)
    towing: Array = number("watts", "power that tows the hull", expected=True)
    absent: Mapping[str, str] = field(default_factory=dict)


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
        "taken": output.drain + in_bank,
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
    return _best(speed[0], steps)


def _best(speed: Array, steps: Mapping[str, Numbers]) -> Losses:
    """The best estimate at the speeds where it takes anything that is a number."""
    first = {name: np.broadcast_to(best(each), speed.shape) for name, each in steps.items()}
    there = np.isfinite(first["taken"])
    told: dict[str, Any] = {name: each[there] for name, each in first.items()}
    return Losses(speed=speed[there], useful=told["towing"] / told["taken"], **told)
