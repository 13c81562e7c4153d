"""What does an option's plant draw from its store for a shaft demand, and what stops it?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.demand import Demand
from generator.arrays import Array, Flags, Numbers
from generator.case.case import Case
from generator.case.diesel import Diesel
from generator.case.factors import Factors
from generator.case.option import Bank, Motor, Option
from generator.physics.drive.diesel_engine import fuel_rate
from generator.physics.drive.gear import input_power, motor_speed
from generator.physics.drive.motor import bounded_losses, electrical_power, motor_losses
from generator.physics.energy.battery import nominal_energy

OVERSPEED = 1.05  # share of rated speed that a plant may turn at: common practice, no source
LIMITS = ("power", "torque", "turns", "battery current", "battery voltage")
PER_HOUR = 3600.0  # a current of 1 C empties the nominal charge in so many seconds
MANAGED = ("LFP", "NMC")  # a management system cuts these off; lead only sags


@dataclass(frozen=True)
class Output:
    """What the plant does for a demand.

    ``drain`` is W at the battery terminals, or m3/s of fuel. ``load`` and ``peak_load`` are
    the highest of power, torque and turns over what the plant may give for good, and for a
    short time; above 1 it cannot. ``binding`` is the place of that highest share in LIMITS.
    """

    turns: Array
    power: Array  # at the motor or flywheel
    drain: Array
    load: Array
    peak_load: Array
    binding: Array


@dataclass(frozen=True)
class Store:
    """What the plant lives on: J in the bank, m3 in the tank."""

    nominal: Numbers
    usable: Numbers
    usable_aged: Numbers


def plant_output(option: Option, demand: Demand, factors: Factors) -> Output:
    """Run the option's motor or diesel at the demand."""
    if option.motor is not None:
        return _electric(option.motor, option.bank, demand, factors)
    if option.diesel is not None:
        return _diesel(option.diesel, demand)
    message = f"option {option.id} has neither motor nor diesel"
    raise AssertionError(message)


def _electric(motor: Motor, bank: Bank | None, demand: Demand, factors: Factors) -> Output:
    turns = motor_speed(demand.shaft_speed, motor.gear_ratio)
    power = input_power(demand.shaft_power, motor.gear_efficiency) + motor.seal_and_bearings
    drain = battery_power(motor, power, turns, factors)
    share = _shares(power, turns, motor.continuous_power, motor.rated_speed)
    peak = _shares(power, turns, motor.peak_power, motor.rated_speed)
    if bank is not None:
        battery = np.stack(np.broadcast_arrays(*battery_shares(motor, bank, turns, drain)))
        share, peak = np.concatenate([share, battery]), np.concatenate([peak, battery])
    return _output(turns, power, drain, share, peak)


def battery_shares(
    motor: Motor, bank: Bank, turns: Numbers, drain: Numbers
) -> tuple[Numbers, Numbers]:
    """Current over what the bank gives, and turns over those that its sagging voltage allows."""
    drawn = drain / bank.nominal_voltage
    sagged = 1.0 - bank.voltage_sag * drawn / bank.charge * PER_HOUR
    most = OVERSPEED * motor.rated_speed * np.maximum(sagged, 1e-6)
    return drawn / current_limit(bank), turns / most


def current_limit(bank: Bank) -> Numbers:
    """Current at which the bank is cut off [A]; lead without a stated limit has none."""
    if bank.discharge_limit is None and bank.chemistry not in MANAGED:
        return np.inf
    return discharge_limit(bank)


def battery_power(motor: Motor, power: Numbers, turns: Numbers, factors: Factors) -> Numbers:
    """Power at the battery terminals [W] for a power [W] and turns [rad/s] of the motor."""
    losses = motor_losses(power, turns, motor.continuous_power, motor.rated_speed)
    standing = losses * factors.motor_loss + motor.electronics_standby
    held = bounded_losses(standing, power, motor.continuous_power)
    return electrical_power(power, held) / motor.cable_efficiency


def _diesel(diesel: Diesel, demand: Demand) -> Output:
    turns = motor_speed(demand.shaft_speed, diesel.gear_ratio)
    power = input_power(demand.shaft_power, diesel.gear_efficiency) + diesel.alternator_power
    drain = fuel_rate(power, diesel.rated_power) * diesel.fuel_scale
    share = _shares(power, turns, diesel.rated_power, diesel.rated_speed)
    return _output(turns, power, drain, share, share)


def _shares(power: Numbers, turns: Numbers, rated_power: Numbers, rated_speed: Numbers) -> Array:
    """Power, torque and turns over their limits; torque is flat below rated turns."""
    slow = np.maximum(np.asarray(turns), 1e-6)
    of_power = np.asarray(power / rated_power)
    of_torque = np.asarray(of_power * rated_speed / slow)
    of_turns = np.broadcast_to(turns / rated_speed / OVERSPEED, of_power.shape)
    return np.stack(np.broadcast_arrays(of_power, of_torque, of_turns))


def _output(turns: Numbers, power: Numbers, drain: Numbers, share: Array, peak: Array) -> Output:
    return Output(
        turns=np.asarray(turns),
        power=np.asarray(power),
        drain=np.asarray(drain),
        load=share.max(axis=0),
        peak_load=peak.max(axis=0),
        binding=share.argmax(axis=0).astype(np.float64),
    )


@dataclass(frozen=True)
class Ceiling:
    """What the plant lets the screw take: power [W], torque [N m] and turns [1/s] at the screw.

    ``standing`` [W] is what turning the plant costs; ``share`` [-] is what the gear passes on.
    """

    power: Numbers
    torque: Numbers
    turns: Numbers
    standing: Numbers
    share: Numbers


def ceiling(option: Option, peak: bool) -> Ceiling:
    """The limits of motor or diesel, for good or at peak, seen from the shaft."""
    motor, diesel = option.motor, option.diesel
    if motor is not None:
        power = motor.peak_power if peak else motor.continuous_power
        return _ceiling(power, motor, motor.seal_and_bearings)
    assert diesel is not None
    return _ceiling(diesel.rated_power, diesel, diesel.alternator_power)


def _ceiling(power: Numbers, plant: Motor | Diesel, standing: Numbers) -> Ceiling:
    most = OVERSPEED * plant.rated_speed / plant.gear_ratio / (2.0 * np.pi)
    torque = power / plant.rated_speed * plant.gear_ratio
    return Ceiling(power, torque, most, standing, plant.gear_efficiency)


def store(option: Option) -> Store:
    """How much the option carries."""
    if option.bank is not None:
        return _bank_store(option.bank)
    if option.diesel is not None:
        usable = option.diesel.tank * option.diesel.usable_tank_share
        return Store(option.diesel.tank, usable, usable)
    message = f"option {option.id} has neither bank nor tank"
    raise AssertionError(message)


def _bank_store(bank: Bank) -> Store:
    nominal = nominal_energy(bank.nominal_voltage, bank.charge)
    return Store(
        nominal=nominal,
        usable=nominal * bank.usable_share,
        usable_aged=nominal * bank.usable_share * bank.aged_share,
    )


def house_drain(case: Case, option: Option) -> Numbers:
    """House load on the propulsion bank while motoring [W]; none on a separate bank."""
    if option.bank is None or case.house.separate_bank:
        return 0.0
    return case.house.under_way


def discharge_limit(bank: Bank) -> Numbers:
    """Continuous current the bank may give [A]: of its management system, or by C rate."""
    if bank.discharge_limit is not None:
        return bank.discharge_limit
    return bank.charge * bank.continuous_rate


def within(load: Array, feasible: Flags) -> Flags:
    """Where the plant can do it and the formulas hold."""
    return np.asarray(feasible & (load <= 1.0))
