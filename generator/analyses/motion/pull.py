"""How hard can an option's screw pull at each speed, and what stops it?"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from generator.analyses.motion.hull import Vessel
from generator.analyses.motion.plant import (
    LIMITS,
    Ceiling,
    battery_power,
    battery_shares,
    ceiling,
)
from generator.analyses.motion.power import Power
from generator.analyses.store.bank_state import BankState
from generator.arrays import Array
from generator.case.factors import Factors
from generator.case.option import Option
from generator.physics.drive.diesel_engine import fuel_rate
from generator.physics.drive.gear import input_power
from generator.physics.drive.greatest_thrust import (
    TURN,
    Wheel,
    power_at,
    thrust_at,
    turns_at_power_line,
    wheel,
)
from generator.physics.drive.interaction import advance_speed

ORDER = np.array([LIMITS.index(name) for name in ("turns", "power", "torque")])
CURRENT, VOLTAGE = LIMITS.index("battery current"), LIMITS.index("battery voltage")
STEEPNESS = 2.5  # shares grow with about this power of the turns: start of the search only
SECANTS = 6  # after which the share is 1 within 1e-6


@dataclass(frozen=True)
class Pull:
    """Greatest thrust over speed, per draw: m/s, N, rad/s, W; ``binding`` is a place in LIMITS."""

    thrust: Array
    shaft_speed: Array
    shaft_power: Array
    binding: Array


def greatest_pull(option: Option, found: Power, factors: Factors, speed: Array, peak: bool) -> Pull:
    """The screw at the first of the limits of power, torque, turns, current and voltage."""
    screw, limits = _wheel(option, found.vessel, factors), ceiling(option, factors, peak)
    water = np.asarray(advance_speed(speed, option.propeller.wake_fraction))
    by_each = _mechanical(option, screw, limits, water)
    turns, binding = by_each.min(axis=0), ORDER[by_each.argmin(axis=0)]
    if found.aged is not None:
        turns, binding = _battery(option, found.aged, screw, factors, water, turns, binding)
    passed = option.propeller.rotative_efficiency * option.propeller.shaft_efficiency
    return Pull(
        thrust=thrust_at(screw, water, turns),
        shaft_speed=TURN * turns,
        shaft_power=np.asarray(power_at(screw, water, turns) / passed),
        binding=binding,
    )


def drain_of(option: Option, pull: Pull, factors: Factors) -> Array:
    """What the greatest pull takes out of bank or tank [W or m3/s]."""
    if option.motor is not None:
        motor = option.motor
        power = input_power(pull.shaft_power, motor.gear_efficiency) + motor.seal_and_bearings
        return np.asarray(battery_power(motor, power, pull.shaft_speed * motor.gear_ratio, factors))
    diesel = option.diesel
    assert diesel is not None
    given = input_power(pull.shaft_power, diesel.gear_efficiency) + diesel.alternator_power
    return np.asarray(fuel_rate(given, diesel.rated_power) * diesel.fuel_scale)


def _wheel(option: Option, hull: Vessel, factors: Factors) -> Wheel:
    propeller = option.propeller
    return wheel(
        propeller.diameter,
        propeller.pitch / propeller.diameter,
        propeller.area_ratio,
        propeller.blades,
        hull.water_density,
        propeller.thrust_scale,
        propeller.torque_scale * factors.propeller_condition,
    )


def _mechanical(option: Option, screw: Wheel, limits: Ceiling, water: Array) -> Array:
    """Turns at the limit of turns, of power and of torque, stacked as in ORDER."""
    passed = limits.share * option.propeller.rotative_efficiency * option.propeller.shaft_efficiency
    lost = limits.standing * passed
    most = limits.turns
    by_power = turns_at_power_line(screw, water, limits.power * passed - lost, 0.0, most)
    slope = TURN * limits.torque * passed
    by_torque = turns_at_power_line(screw, water, -lost, slope, most)
    return np.stack(np.broadcast_arrays(np.asarray(most), by_power, by_torque))


def _battery(
    option: Option,
    aged: BankState,
    screw: Wheel,
    factors: Factors,
    water: Array,
    turns: Array,
    binding: Array,
) -> tuple[Array, Array]:
    """Fewer turns where the battery's current or its sagging voltage would not allow them."""
    motor, bank = option.motor, option.bank
    assert motor is not None
    assert bank is not None
    passed = option.propeller.rotative_efficiency * option.propeller.shaft_efficiency

    def shares(tried: Array) -> tuple[Array, Array]:
        shaft = np.maximum(np.asarray(power_at(screw, water, tried)), 0.0) / passed
        power = input_power(shaft, motor.gear_efficiency) + motor.seal_and_bearings
        spin = TURN * tried * motor.gear_ratio
        drain = battery_power(motor, power, spin, factors)
        drawn, voltage = battery_shares(motor, bank, aged, spin, drain)
        return np.asarray(drawn), np.asarray(voltage)

    drawn, voltage = shares(turns)
    worst = np.maximum(drawn, voltage)
    over = worst > 1.0 + 1e-9
    if not over.any():
        return turns, binding
    by = np.where(drawn >= voltage, CURRENT, VOLTAGE)
    found = _brought_down(lambda tried: np.maximum(*shares(tried)), turns, worst)
    return np.where(over, found, turns), np.where(over, by, binding)


def _brought_down(share: Callable[[Array], Array], start: Array, worst: Array) -> Array:
    """Turns at which ``share`` is 1, by secants in logarithms from a ``start`` where it is more."""
    first, value = np.log(start), np.log(np.maximum(worst, 1e-9))
    second = first - value / STEEPNESS
    for _ in range(SECANTS):
        newer = np.log(np.maximum(share(np.exp(second)), 1e-9))
        steep = (newer - value) / np.where(second != first, second - first, 1.0)
        steep = np.where(np.abs(steep) > 1.0, steep, STEEPNESS)
        first, value, second = second, newer, np.minimum(second - newer / steep, np.log(start))
    return np.exp(second)
