"""Which masses of a case file can hardly be?"""

from __future__ import annotations

from collections.abc import Iterator

from generator.case.check import Finding, si
from generator.case.plant_keys import BankKeys
from generator.case.register import find_default
from generator.case.said import Place
from generator.case.schema import CaseKeys, LedgerItemKeys, OptionKeys
from generator.tables.method import method
from generator.units.grammar import from_si

DENSITY_HIGH = 845.0  # kg/m3, the most that EN 590 allows of diesel fuel
BEYOND = 1.3  # of the register's highest energy for its mass: more than any block as sold
LIGHT_DRIVE = 0.8  # of the least that a drive with its bed weighs


def find_mass_doubts(case: CaseKeys, option: OptionKeys, place: Place) -> Iterator[Finding]:
    """Fuel that its tank does not hold, a bank and a drive that are too light to be whole."""
    tank = si(case.engine.tank) * DENSITY_HIGH
    fuel = _mass(option.removed, "fuel")
    if case.engine.tank and fuel > tank:
        problem = f"has {fuel:.0f} kg of fuel leave, more than the tank holds"
        yield Finding((*place, "removed"), problem, f"expected at most {tank:.0f} kg")
    yield from _bank(option, place)
    drive = _mass(option.added, "motor")
    least = method("masses.least_drive")  # here: at the head it would load what reads units
    if option.motor.continuous_power and 0.0 < drive < LIGHT_DRIVE * least:
        problem = f"has {drive:.0f} kg of motor come"
        hope = f"expected about {least:.0f} kg or more: motor, controller, bed and coupling"
        yield Finding((*place, "added"), problem, hope)


def _bank(option: OptionKeys, place: Place) -> Iterator[Finding]:
    bank, added = option.bank, _mass(option.added, "battery")
    row = find_default("options.bank.specific_energy", (bank.chemistry or "",))
    energy = bank_energy(bank)
    for spot, mass in (((*place, "bank", "mass"), si(bank.mass)), ((*place, "added"), added)):
        if row is not None and mass > 0.0 and energy > BEYOND * row.high * mass:
            shown = f"{float(from_si(energy, 'kWh')):.3g} kWh"
            problem = f"makes {mass:.0f} kg of battery hold {shown}"
            hope = f"expected about {energy / row.value:.0f} kg for {bank.chemistry}"
            yield Finding(spot, problem, hope)


def bank_energy(bank: BankKeys) -> float:
    """Nominal [J], by the whole bank or by its blocks; 0 where neither says it."""
    blocks = bank.blocks
    if bank.energy:
        return bank.energy.value
    if bank.charge:
        return si(bank.nominal_voltage) * si(bank.charge)
    return (blocks.series or 1) * (blocks.parallel or 1) * si(blocks.voltage) * si(blocks.charge)


def _mass(items: tuple[LedgerItemKeys, ...], part: str) -> float:
    """Of all items of a part, as given [kg]."""
    return sum(si(item.mass) for item in items if item.part == part)
