"""What does the bank give at one age and temperature: how deep, at which voltage, what loss?"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from generator.analyses.store.limits import Limits
from generator.arrays import Array, Numbers
from generator.case.option import Bank
from generator.physics.energy.battery import (
    nominal_energy,
    peukert_capacity,
    peukert_exponent,
    rated_discharge_time,
)
from generator.physics.energy.cell import (
    capacity_share,
    lowest_voltage,
    open_circuit_voltage,
    resistance_factor,
    series_cells,
)
from generator.physics.energy.pack import (
    lowest_state,
    most_power,
    pack_resistance,
    sag_current,
    terminal_voltage,
)
from generator.tables.cell_labels import count_by_end
from generator.tables.load import read_table

HALF = 0.5  # state of charge that stands for a whole passage


@dataclass(frozen=True)
class Condition:
    """Age and warmth of a bank: years, share of capacity left, growth of resistance, degC."""

    name: str  # new, aged, last
    years: float
    share: Numbers
    growth: Numbers
    temperature: Numbers


@dataclass(frozen=True)
class BankState:
    """A bank in one condition. Shares of full charge, V, ohm, W, J; per draw.

    Peak is that of the motor as it is set: the plate's, or what the bank's limits leave of it.
    """

    condition: Condition
    limits: Limits
    cold_share: Array  # of the charge at 25 degC
    peak_floor: Array  # below it peak power is not held
    sag_floor: Array  # below it the greatest power that is asked of her is not held
    gauge_error: Numbers
    planned_floor: Numbers  # by the planned depth of discharge
    usable: Array  # J of nominal energy
    open_half: Array
    resistance_half: Array
    given_half: Array  # most that the motor is given, half full
    peak_current: Array  # at the lowest charge that holds it; nan where it cannot be had
    peak_voltage: Array
    floor_held: Array  # most that the motor is given at the floor

    @property
    def floor(self) -> Array:
        """The higher of what sag with the gauge's error asks for, and of the planned depth."""
        by_sag = np.minimum(self.sag_floor + np.asarray(self.gauge_error), 1.0)
        return np.asarray(np.maximum(by_sag, np.asarray(self.planned_floor)))

    @property
    def capacity(self) -> Array:
        """What age and cold have left of the nominal charge."""
        return np.asarray(self.cold_share * np.asarray(self.condition.share))


def cells_of(bank: Bank) -> int:
    """Cells in series: by the maker's number, else by label and end of charge."""
    if bank.cells is not None:
        return bank.cells
    label = float(np.asarray(bank.nominal_voltage).flat[0])
    if bank.end_of_charge is not None:
        end = float(np.asarray(bank.end_of_charge).flat[0])
        return count_by_end(bank.chemistry, label, end)
    return series_cells(bank.chemistry, label)


def resistance(bank: Bank, condition: Condition, state: Numbers) -> Array:
    """Resistance of the whole bank at a state of charge [ohm]."""
    factor = resistance_factor(bank.chemistry, condition.temperature, state) * condition.growth
    links = bank.link_resistance
    if bank.resistance is not None:
        own = np.maximum(np.asarray(bank.resistance) - np.asarray(links), 0.0)
        return np.asarray(own * factor + links)
    return np.asarray(
        pack_resistance(cells_of(bank), bank.resistance_charge, bank.charge, factor, links)
    )


def open_voltage(bank: Bank, state: Numbers) -> Array:
    """Voltage of the whole bank at rest [V]."""
    return np.asarray(cells_of(bank) * open_circuit_voltage(bank.chemistry, state))


def cut_off(bank: Bank, controller: Numbers) -> Array:
    """The higher of the cut-offs of management system and controller [V]."""
    return np.asarray(np.maximum(lowest_voltage(bank.chemistry, cells_of(bank)), controller))


def bank_state(
    bank: Bank, condition: Condition, peak_drain: Numbers, controller: Numbers, limited: Limits
) -> BankState:
    """The bank at half charge and at its peak, with the floor of one that is asked for its peak.

    What is asked of her is known when her passages are: `floored` sets the floor by it.
    """
    lowest = np.atleast_2d(cut_off(bank, controller))
    peak_floor = _lowest(bank, condition, peak_drain, lowest, limited)
    planned = 1.0 - np.asarray(bank.usable_share)
    floor = np.maximum(np.minimum(peak_floor + bank.gauge_error, 1.0), planned)
    cold = capacity_share(bank.chemistry, condition.temperature)
    at_floor = open_voltage(bank, floor), resistance(bank, condition, floor)
    half = open_voltage(bank, HALF), resistance(bank, condition, HALF)
    current = sag_current(*at_floor, np.minimum(peak_drain, _let_through(*at_floor, limited)))
    return BankState(
        condition=condition,
        limits=limited,
        cold_share=np.atleast_2d(cold),
        peak_floor=peak_floor,
        sag_floor=peak_floor,
        gauge_error=bank.gauge_error,
        planned_floor=planned,
        usable=_usable(bank, condition, floor),
        open_half=np.atleast_2d(half[0]),
        resistance_half=np.atleast_2d(half[1]),
        given_half=_given(*half, lowest, limited),
        peak_current=np.atleast_2d(current),
        peak_voltage=np.atleast_2d(terminal_voltage(*at_floor, current)),
        floor_held=_given(*at_floor, lowest, limited),
    )


def floored(bank: Bank, state: BankState, asked: Numbers, controller: Numbers) -> BankState:
    """The same bank with its floor by the greatest power that is asked of her [W].

    Never more than a half-full bank gives the motor: what it never gives is no reason to keep
    charge back.
    """
    lowest = np.atleast_2d(cut_off(bank, controller))
    drain = np.minimum(np.atleast_2d(asked), state.given_half)
    held = _lowest(bank, state.condition, drain, lowest, state.limits)
    sag_floor = np.where(state.given_half > 0.0, held, 1.0)  # nothing given, nothing usable
    found = replace(state, sag_floor=sag_floor)
    at_floor = open_voltage(bank, found.floor), resistance(bank, state.condition, found.floor)
    return replace(
        found,
        usable=_usable(bank, state.condition, found.floor),
        floor_held=_given(*at_floor, lowest, state.limits),
    )


def _lowest(
    bank: Bank, condition: Condition, drain: Numbers, lowest: Array, limited: Limits
) -> Array:
    """State of charge below which a power is not held above the cut-offs."""
    states = read_table("energy/open_circuit").column("state")
    tried = open_voltage(bank, states), resistance(bank, condition, states)
    asked = np.minimum(drain, _let_through(*tried, limited))
    return lowest_state(states, most_power(*tried, lowest) - asked, 0.0)


def _usable(bank: Bank, condition: Condition, floor: Array) -> Array:
    """Nominal energy above a floor, as age and cold leave it [J]."""
    nominal = np.asarray(nominal_energy(bank.nominal_voltage, bank.charge))
    cold = capacity_share(bank.chemistry, condition.temperature)
    return np.asarray(nominal * condition.share * cold * (1.0 - floor))


def _let_through(opened: Array, inner: Array, limited: Limits) -> Array:
    """Power at which the motor's current is at its limit [W]; infinite where sag ends it before."""
    reached = limited.motor <= opened / (2.0 * inner)
    power = limited.motor * np.asarray(terminal_voltage(opened, inner, limited.motor))
    return np.where(reached, power, np.inf)


def _given(opened: Array, inner: Array, lowest: Array, limited: Limits) -> Array:
    """The most that the motor is given: within its limit and above both cut-offs [W]."""
    held = np.asarray(most_power(opened, inner, lowest))
    return np.atleast_2d(np.minimum(held, _let_through(opened, inner, limited)))


def draws_current(state: BankState, drain: Numbers) -> Array:
    """Current at half charge for a power at the terminals [A]; nan where there is none."""
    return sag_current(state.open_half, state.resistance_half, drain)


def half_current(bank: Bank, condition: Condition, drain: Numbers) -> Array:
    """The same of a bank in a condition whose limits are not known yet."""
    half = open_voltage(bank, HALF), resistance(bank, condition, HALF)
    return np.atleast_2d(sag_current(*half, drain))


def taken(bank: Bank | None, state: BankState | None, drain: Numbers) -> Array:
    """What the store loses while it gives a power at its terminals [W of nominal energy].

    Sag costs what the voltage lies below nominal (never credited above it), and lead gives the
    less the harder it is drawn. Not a number where the power cannot be had: no root, or more
    than the bank may be asked for. Fuel is taken as it is.
    """
    if bank is None or state is None:
        return np.asarray(drain)
    current = draws_current(state, drain)
    current = np.where(current <= np.asarray(state.limits.bank), current, np.nan)
    voltage = terminal_voltage(state.open_half, state.resistance_half, current)
    nominal = np.asarray(bank.nominal_voltage)
    loss = nominal / np.minimum(np.asarray(voltage), nominal)
    return np.asarray(drain * loss / _lead_share(bank, state, current))


def _lead_share(bank: Bank, state: BankState, current: Array) -> Numbers:
    """Share of its charge that lead gives at a current; 1 for lithium."""
    exponent = peukert_exponent(bank.chemistry)
    if exponent == 1.0:
        return 1.0
    charge = np.asarray(bank.charge) * state.capacity
    hours = rated_discharge_time(bank.chemistry)
    # lacking: the share is that of some charge; what it divides has no value without a current
    drawn = np.where(np.isfinite(current), current, 0.0)
    return np.asarray(peukert_capacity(hours, charge, drawn, exponent) / charge)
