"""Which masses go out and come in, and what did the owner's list leave out?"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from generator.arrays import Numbers
from generator.case.case import Case
from generator.case.factors import Masses
from generator.case.option import Bank, LedgerItem, Motor, Option
from generator.case.prices import sources_without
from generator.physics.energy.battery import nominal_energy
from generator.tables.method import method

FUEL_DENSITY = method("masses.fuel_density")
LEAST_DRIVE = method("masses.least_drive")
NOT_ESTIMATED = ("old cables", "fluids")  # parts for which there is no aggregate figure


@dataclass(frozen=True)
class Ledger:
    """Both sides, completed; ``filled`` names what came from the register."""

    removed: tuple[LedgerItem, ...]
    added: tuple[LedgerItem, ...]
    filled: tuple[str, ...]
    not_counted: tuple[str, ...]  # parts that nobody gave and that no figure stands for
    full_tank: Numbers | None  # kg of fuel in the tank that leaves, when full; None if it stays

    @property
    def items(self) -> tuple[tuple[float, LedgerItem], ...]:
        """Every item with its sign: aboard positive, ashore negative."""
        out = tuple((-1.0, item) for item in self.removed)
        return out + tuple((1.0, item) for item in self.added)

    @property
    def fuel(self) -> LedgerItem | None:
        """The fuel that leaves with the tank."""
        return next((item for item in self.removed if item.part == "fuel"), None)

    @property
    def unplaced(self) -> tuple[str, ...]:
        """Names of items without a place along the boat."""
        return tuple(item.name for _, item in self.items if item.x is None)


def ledger(case: Case, option: Option) -> Ledger:
    """The owner's ledgers; parts that they leave out come from the register and say so.

    A ledger that names no parts is taken as complete, an empty one as left out whole.
    """
    aggregates = _expected(case, option)
    sides = (option.removed, option.added)
    named = any(item.part for side in sides for item in side)
    removed, added = (
        _completed(items, wanted, option, named)
        for items, wanted in zip(sides, aggregates, strict=True)
    )
    items = (*removed, *added)
    filled = tuple(item.name for item in items if item.source == "register")
    parts = {item.part for item in items}
    lacking = [part for part in NOT_ESTIMATED if option.bank and part not in parts]
    if option.bank and option.supply is not None:
        lines = [f"{item.name} {item.part}" for item in added]
        lacking += sources_without(option.supply.extra, lines)
    leaves = any(item.part == "fuel" for item in removed)
    tank = case.engine.tank * FUEL_DENSITY if leaves else None
    return Ledger(removed, added, filled, tuple(lacking), tank)


def at_fill(found: Ledger, fill: Numbers) -> Ledger:
    """The same ledger with the tank that leaves filled to a share of its volume."""
    if found.fuel is None or found.full_tank is None:
        return found
    rest = tuple(item for item in found.removed if item.part != "fuel")
    return replace(found, removed=(replace(found.fuel, mass=fill * found.full_tank), *rest))


def filled_up(found: Ledger, fill: Numbers) -> Ledger:
    """What brings the tank from how she was weighed to a share of its volume."""
    if found.fuel is None or found.full_tank is None:
        return replace(found, removed=(), added=())
    fuel = replace(found.fuel, mass=fill * found.full_tank)
    weighed = tuple(item for item in found.removed if item.part == "fuel")
    return replace(found, removed=weighed, added=(fuel,))


Items = tuple[LedgerItem, ...]


def _completed(items: Items, wanted: Items, option: Option, named: bool) -> Items:
    """The items, then what is wanted and neither among them nor kept."""
    if items and not named:
        return items
    there = {item.part for item in items} | set(option.kept)
    more = tuple(item for item in wanted if item.part not in there)
    if not items:
        return more
    placed = [item for item in items if item.x is not None]
    if not placed:
        return (*items, *more)
    by = max(placed, key=lambda item: float(np.asarray(item.mass).flat[0]))
    return (*items, *(replace(item, x=by.x, y=by.y, z=by.z) for item in more))


def _item(name: str, part: str, mass: Numbers) -> LedgerItem:
    return LedgerItem(name, mass, None, 0.0, 0.0, part, "", "register", 0)


def _expected(case: Case, option: Option) -> tuple[Items, Items]:
    """What leaves and what comes by the kind of the option, with the register's masses."""
    if option.kind == "keep":
        return (), ()
    masses, engine = case.masses, case.engine
    old = _item(
        "Old engine and gearbox",
        "engine",
        masses.diesel_fixed + masses.diesel_per_kilowatt * engine.rated_power,
    )
    if option.kind == "new diesel":
        return (old,), _new_engine(option, masses)
    starter = _item("Starter battery", "starter battery", masses.starter_battery)
    if option.supply is not None and option.supply.genset is not None:
        return (old, starter), _new_drive(option, masses)  # it burns from the tank that is aboard
    tank = engine.tank * FUEL_DENSITY
    removed = (
        old,
        _item("Exhaust, water-lock, strainer, mounts", "exhaust", masses.diesel_fittings),
        _item("Fuel as weighed", "fuel", case.boat.floatation.tank_fill * tank),
        _item("Fuel tank", "tank", masses.tank_share * tank),
        starter,
    )
    return removed, _new_drive(option, masses)


def _new_engine(option: Option, masses: Masses) -> Items:
    if option.diesel is None:
        return ()
    mass = masses.diesel_fixed + masses.diesel_per_kilowatt * option.diesel.rated_power
    return (_item("New engine and gearbox", "engine", mass),)


def _new_drive(option: Option, masses: Masses) -> Items:
    items: list[LedgerItem] = []
    if option.motor is not None:
        mass = motor_mass(option.motor, masses)
        items.append(_item("Motor, controller and bed", "motor", mass))
    if option.bank is not None:
        mass = bank_mass(option.bank, masses)
        items.append(_item("Battery with tray and fastenings", "battery", mass))
        items.append(_item("Cables, fuses, isolators, charger", "cables", masses.cabling))
    return tuple(items)


def given_mass(items: Items, part: str) -> Numbers | None:
    """Mass of all items of a part [kg]; None where no item is one."""
    found = [item.mass for item in items if item.part == part]
    return sum(found[1:], found[0]) if found else None


def motor_mass(motor: Motor, masses: Masses) -> Numbers:
    """Mass of motor and controller [kg], given or by the register; a bed weighs without power."""
    if motor.mass is not None:
        return motor.mass
    return np.maximum(masses.motor_per_kilowatt * motor.continuous_power, LEAST_DRIVE)


def bank_mass(bank: Bank, masses: Masses) -> Numbers:
    """Mass of the bank [kg], given or by its energy; with tray and fastenings."""
    own = bank.mass
    if own is None:
        own = nominal_energy(bank.nominal_voltage, bank.charge) / bank.specific_energy
    return own * (1.0 + masses.battery_fastening)
