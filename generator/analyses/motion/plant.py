"""What does an option's plant draw from its store for a shaft demand, and what stops it?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.motion.demand import Demand
from generator.analyses.motion.engine_space import warm_share
from generator.analyses.percentiles import best, scalar
from generator.analyses.store.bank_state import (
    BankState,
    Condition,
    bank_state,
    cut_off,
    draws_current,
    half_current,
)
from generator.analyses.store.limits import beside_motor, limits
from generator.arrays import Array, Flags, Numbers
from generator.case.case import Case
from generator.case.diesel import Diesel
from generator.case.factors import Factors
from generator.case.option import Bank, Motor, Option
from generator.case.usage import Leg
from generator.physics.drive.diesel_engine import fuel_rate
from generator.physics.drive.gear import input_power, motor_speed
from generator.physics.drive.motor import bounded_losses, electrical_power, motor_losses
from generator.physics.energy.battery import nominal_energy
from generator.tables.method import method

OVERSPEED = method("motor.overspeed")
LEAST_MADE_GOOD = method("passage.least_against_sea")
LIMITS = ("power", "torque", "turns", "battery current", "battery voltage")


@dataclass(frozen=True)
class Output:
    """What the plant does for a demand.

    ``drain`` is W at the battery terminals, or m3/s of fuel. ``load`` and ``peak_load`` are
    the highest of power, torque and turns over what the plant may give for good, and for a
    short time; above 1 it cannot. ``binding`` is the place of that highest share in LIMITS.
    The continuous limits are those of the motor in its warm space; ``motor_load`` leaves the
    battery out.
    """

    turns: Array
    power: Array  # at the motor or flywheel
    drain: Array
    load: Array
    peak_load: Array
    motor_load: Array
    binding: Array


@dataclass(frozen=True)
class Store:
    """What the plant lives on: J in the bank, m3 in the tank."""

    nominal: Numbers
    usable: Numbers
    usable_aged: Numbers
    asked: Array | None = None  # W at the terminals, by which the floor of the bank is set
    new: BankState | None = None
    aged: BankState | None = None
    last: BankState | None = None


def plant_output(
    option: Option, demand: Demand, factors: Factors, aged: BankState | None = None
) -> Output:
    """Run the option's motor or diesel at the demand; a bank that is given limits it as well."""
    if option.motor is not None:
        bank = None if aged is None else option.bank
        return _electric(option.motor, bank, aged, demand, factors)
    if option.diesel is not None:
        return _diesel(option.diesel, demand)
    message = f"option {option.id} has neither motor nor diesel"
    raise AssertionError(message)


def _electric(
    motor: Motor, bank: Bank | None, aged: BankState | None, demand: Demand, factors: Factors
) -> Output:
    turns = motor_speed(demand.shaft_speed, motor.gear_ratio)
    power = input_power(demand.shaft_power, motor.gear_efficiency) + motor.seal_and_bearings
    drain = battery_power(motor, power, turns, factors)
    share = _shares(power, turns, warm_power(motor, factors), motor.rated_speed)
    peak = _shares(power, turns, motor.peak_power, motor.rated_speed)
    by_motor = share.max(axis=0)
    if bank is not None and aged is not None:
        battery = battery_shares(motor, bank, aged, turns, drain)
        share, peak = (
            np.stack(np.broadcast_arrays(*mechanical, *battery)) for mechanical in (share, peak)
        )
    return _output(turns, power, drain, share, peak, by_motor)


def warm_power(motor: Motor, factors: Factors) -> Numbers:
    """Continuous power that the plate's rating leaves in the motor's own warm air [W]."""
    return motor.continuous_power * warm_share(motor, factors)


def battery_shares(
    motor: Motor, bank: Bank, aged: BankState, turns: Numbers, drain: Numbers
) -> tuple[Numbers, Numbers]:
    """Current over what the motor is set to, and turns over those that its sagging voltage allows.

    The bank is old, cold and half full. Beyond the most that it can give at all both go on in
    proportion to the power, so that a search for the limit finds its way back.
    """
    inner = aged.open_half / (2.0 * aged.resistance_half)
    beyond = np.maximum(drain / (0.5 * aged.open_half * inner), 1.0)
    drawn = draws_current(aged, drain / beyond) * beyond
    voltage = (aged.open_half - aged.resistance_half * drawn / beyond) / beyond
    most = OVERSPEED * motor.rated_speed * voltage / bank.nominal_voltage
    return drawn / aged.limits.motor, turns / most


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
    return _output(turns, power, drain, share, share, share.max(axis=0))


def _shares(power: Numbers, turns: Numbers, rated_power: Numbers, rated_speed: Numbers) -> Array:
    """Power, torque and turns over their limits; torque is flat below rated turns."""
    slow = np.maximum(np.asarray(turns), 1e-6)
    of_power = np.asarray(power / rated_power)
    of_torque = np.asarray(of_power * rated_speed / slow)
    of_turns = np.broadcast_to(turns / rated_speed / OVERSPEED, of_power.shape)
    return np.stack(np.broadcast_arrays(of_power, of_torque, of_turns))


def _output(
    turns: Numbers, power: Numbers, drain: Numbers, share: Array, peak: Array, by_motor: Array
) -> Output:
    return Output(
        turns=np.asarray(turns),
        power=np.asarray(power),
        drain=np.asarray(drain),
        load=share.max(axis=0),
        peak_load=peak.max(axis=0),
        motor_load=by_motor,
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


def ceiling(option: Option, factors: Factors, peak: bool) -> Ceiling:
    """The limits of motor or diesel, for good or at peak, seen from the shaft."""
    motor, diesel = option.motor, option.diesel
    if motor is not None:
        power = motor.peak_power if peak else warm_power(motor, factors)
        return _ceiling(power, motor, motor.seal_and_bearings)
    assert diesel is not None
    return _ceiling(diesel.rated_power, diesel, diesel.alternator_power)


def peak_lasts(option: Option, time: Numbers) -> bool:
    """Whether the peak rating may be used for a time [s]."""
    if option.motor is None:
        return True
    return scalar(best(option.motor.peak_time)) >= scalar(best(time))


def _ceiling(power: Numbers, plant: Motor | Diesel, standing: Numbers) -> Ceiling:
    most = OVERSPEED * plant.rated_speed / plant.gear_ratio / (2.0 * np.pi)
    torque = power / plant.rated_speed * plant.gear_ratio
    return Ceiling(power, torque, most, standing, plant.gear_efficiency)


def store(case: Case, option: Option, ages: tuple[Condition, Condition, Condition] | None) -> Store:
    """How much the option carries; of a bank as new, at the age of the word and last."""
    if option.bank is not None and option.motor is not None and ages is not None:
        return _bank_store(case, option, option.bank, option.motor, ages)
    if option.diesel is not None:
        usable = option.diesel.tank * option.diesel.usable_tank_share
        return Store(option.diesel.tank, usable, usable)
    message = f"option {option.id} has neither bank nor tank"
    raise AssertionError(message)


def _bank_store(
    case: Case,
    option: Option,
    bank: Bank,
    motor: Motor,
    ages: tuple[Condition, Condition, Condition],
) -> Store:
    peak, controller = peak_drain(motor, case.factors), controller_cut_off(bank, motor)
    warm = battery_power(motor, warm_power(motor, case.factors), motor.rated_speed, case.factors)
    # lacking: a bank that does not give continuous power may take all that its limit allows
    steady = np.nan_to_num(half_current(bank, ages[1], warm), nan=np.inf)
    beside = beside_motor(case, option, cut_off(bank, controller))
    limited = limits(bank, beside, steady)
    new, aged, last = (bank_state(bank, age, peak, controller, limited) for age in ages)
    return Store(
        nominal=nominal_energy(bank.nominal_voltage, bank.charge),
        usable=new.usable,
        usable_aged=aged.usable,
        new=new,
        aged=aged,
        last=last,
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


def passage_time(leg: Leg) -> Array:
    """Time of a leg over the ground in a calm, against its mean stream [s]."""
    made_good = np.maximum(np.asarray(leg.speed - leg.stream), LEAST_MADE_GOOD)
    return np.asarray(leg.distance / made_good)


def within(load: Array, feasible: Flags) -> Flags:
    """Where the plant can do it and the formulas hold."""
    return np.asarray(feasible & (load <= 1.0))
