"""What does an option's plant draw from its store for a shaft demand, and what stops it?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.bank_state import BankState, Condition, bank_state
from generator.analyses.demand import Demand
from generator.analyses.engine_space import warm_share
from generator.arrays import Array, Flags, Numbers
from generator.case.case import Case
from generator.case.diesel import Diesel
from generator.case.factors import Factors
from generator.case.option import Bank, Motor, Option
from generator.physics.drive.diesel_engine import fuel_rate
from generator.physics.drive.gear import input_power, motor_speed
from generator.physics.drive.motor import electrical_power, motor_losses
from generator.physics.energy.battery import nominal_energy

OVERSPEED = 1.05  # share of rated speed that a plant may turn at: common practice, no source
LIMITS = ("power", "torque", "turns")


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
    new: BankState | None = None
    midlife: BankState | None = None
    aged: BankState | None = None


def plant_output(option: Option, demand: Demand, factors: Factors) -> Output:
    """Run the option's motor or diesel at the demand."""
    if option.motor is not None:
        return _electric(option.motor, demand, factors)
    if option.diesel is not None:
        return _diesel(option.diesel, demand)
    message = f"option {option.id} has neither motor nor diesel"
    raise AssertionError(message)


def _electric(motor: Motor, demand: Demand, factors: Factors) -> Output:
    turns = motor_speed(demand.shaft_speed, motor.gear_ratio)
    power = input_power(demand.shaft_power, motor.gear_efficiency) + motor.seal_and_bearings
    drain = battery_power(motor, power, turns, factors)
    warm = motor.continuous_power * warm_share(motor, factors)
    share = _shares(power, turns, warm, motor.rated_speed)
    peak = _shares(power, turns, motor.peak_power, motor.rated_speed)
    return _output(turns, power, drain, share, peak)


def battery_power(motor: Motor, power: Numbers, turns: Numbers, factors: Factors) -> Numbers:
    """Power at the battery terminals [W] for a power [W] and turns [rad/s] of the motor."""
    losses = motor_losses(power, turns, motor.continuous_power, motor.rated_speed)
    electric = electrical_power(power, losses * factors.motor_loss)
    return (electric + motor.electronics_standby) / motor.cable_efficiency


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


def store(case: Case, option: Option, ages: tuple[Condition, Condition, Condition] | None) -> Store:
    """How much the option carries; of a bank as new, in midlife and at the horizon."""
    if option.bank is not None and option.motor is not None and ages is not None:
        return _bank_store(option.bank, option.motor, case.factors, ages)
    if option.diesel is not None:
        usable = option.diesel.tank * option.diesel.usable_tank_share
        return Store(option.diesel.tank, usable, usable)
    message = f"option {option.id} has neither bank nor tank"
    raise AssertionError(message)


def _bank_store(
    bank: Bank, motor: Motor, factors: Factors, ages: tuple[Condition, Condition, Condition]
) -> Store:
    peak, controller = peak_drain(motor, factors), controller_cut_off(bank, motor)
    new, midlife, aged = (bank_state(bank, age, peak, controller) for age in ages)
    return Store(
        nominal=nominal_energy(bank.nominal_voltage, bank.charge),
        usable=new.usable,
        usable_aged=aged.usable,
        new=new,
        midlife=midlife,
        aged=aged,
    )


def peak_drain(motor: Motor, factors: Factors) -> Numbers:
    """Power at the battery terminals that the peak rating asks for [W]."""
    return battery_power(motor, motor.peak_power, motor.rated_speed, factors)


def controller_cut_off(bank: Bank, motor: Motor) -> Numbers:
    """Voltage at which the controller cuts off [V]."""
    if motor.lowest_voltage is not None:
        return motor.lowest_voltage
    return bank.nominal_voltage * motor.cut_off_share


def house_drain(case: Case, option: Option) -> Numbers:
    """House load on the propulsion bank while motoring [W]; none on a separate bank."""
    if option.bank is None or case.house.separate_bank:
        return 0.0
    return case.house.under_way


def within(load: Array, feasible: Flags) -> Flags:
    """Where the plant can do it and the formulas hold."""
    return np.asarray(feasible & (load <= 1.0))
