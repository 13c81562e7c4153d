"""Option: what could drive her; kind, motor, bank, propeller, masses, costs."""

from __future__ import annotations

from dataclasses import dataclass

from generator.arrays import Numbers
from generator.case.diesel import Diesel, Propeller
from generator.case.prices import CostItem


@dataclass(frozen=True)
class Motor:
    """Electric motor and controller. W, rad/s, s."""

    continuous_power: Numbers  # S1 at the motor shaft
    peak_power: Numbers
    peak_time: Numbers
    rated_speed: Numbers
    gear_ratio: Numbers  # motor turns per shaft turn
    gear_efficiency: Numbers
    electronics_standby: Numbers  # W: controller, contactor, display
    seal_and_bearings: Numbers  # W: shaft seal, bearings, turning
    cable_efficiency: Numbers  # battery to controller
    mass: Numbers | None  # kg, with controller and bed; else by the register


@dataclass(frozen=True)
class Bank:
    """The propulsion battery. V, C (coulomb = A s), kg."""

    chemistry: str  # LFP, NMC, AGM, flooded
    nominal_voltage: Numbers
    charge: Numbers  # C, nominal capacity at nominal voltage
    usable_share: Numbers
    aged_share: Numbers  # of nominal capacity at the end of the horizon
    discharge_limit: Numbers | None  # A, BMS continuous
    specific_energy: Numbers  # J/kg of the pack
    cruise_rate_limit: Numbers  # 1/s, continuous current over charge (C rate)
    continuous_rate: Numbers  # 1/s, used when discharge_limit is absent
    mass: Numbers | None  # kg, with boxes; else by specific energy
    life: Numbers  # years until it is replaced
    manufacture: Numbers  # kg of carbon dioxide per J of nominal capacity


@dataclass(frozen=True)
class LedgerItem:
    """One mass that goes out or comes in. kg, m; x forward of the datum, z above the waterline."""

    name: str
    mass: Numbers
    x: Numbers | None
    y: Numbers
    z: Numbers
    source: str  # weighed, measured, builder, estimate, register
    line: int


@dataclass(frozen=True)
class Option:
    """One answer to the question of what should drive her."""

    id: str
    name: str
    kind: str  # keep, new diesel, battery
    note: str
    motor: Motor | None
    bank: Bank | None
    diesel: Diesel | None
    propeller: Propeller
    removed: tuple[LedgerItem, ...]
    added: tuple[LedgerItem, ...]
    costs: tuple[CostItem, ...]
    line: int
