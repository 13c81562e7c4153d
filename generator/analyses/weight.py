"""What goes out, what comes in, and how does she float afterwards?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.hull import hull_form
from generator.arrays import Numbers
from generator.case.boat import DATUMS, Boat, Waters
from generator.case.case import Case
from generator.case.diesel import Diesel
from generator.case.factors import Masses
from generator.case.option import Bank, LedgerItem, Motor, Option
from generator.physics.energy.battery import nominal_energy
from generator.physics.hull.hydrostatics import (
    longitudinal_metacentric_radius,
    mass_per_immersion,
    moment_to_trim,
)
from generator.physics.hull.trim import sinkage, trim_angle
from generator.physics.water import density


@dataclass(frozen=True)
class Weight:
    """Ledgers of one option and what they do. kg, m, rad; trim positive by the bow."""

    removed: tuple[LedgerItem, ...]
    added: tuple[LedgerItem, ...]
    removed_mass: Numbers
    added_mass: Numbers
    displacement: Numbers
    sinkage: Numbers
    trim: Numbers | None
    trim_why: str
    centre_shift: Numbers | None  # of the centre of gravity, over waterline length
    bank_mass: Numbers | None  # with tray and fastenings

    @property
    def net(self) -> Numbers:
        """Mass added less mass removed [kg]."""
        return self.added_mass - self.removed_mass


def weigh(case: Case, option: Option) -> Weight:
    """Add up the ledgers of an option; what they leave out comes from the register."""
    removed = option.removed or _default_removed(option, case.engine, case.masses)
    added = option.added or _default_added(option, case.masses)
    out, into = _total(removed), _total(added)
    form = hull_form(case.boat, density(case.waters.kind, case.waters.temperature))
    water = density(case.waters.kind, case.waters.temperature)
    immersion = mass_per_immersion(form.waterplane_area, water)
    angle, why, shift = _trim(case.boat, case.waters, removed, added, into - out)
    return Weight(
        removed=removed,
        added=added,
        removed_mass=out,
        added_mass=into,
        displacement=case.boat.hull.displacement + into - out,
        sinkage=sinkage(into - out, immersion),
        trim=angle,
        trim_why=why,
        centre_shift=shift,
        bank_mass=None if option.bank is None else bank_mass(option.bank, case.masses),
    )


def _total(items: tuple[LedgerItem, ...]) -> Numbers:
    total: Numbers = 0.0
    for item in items:
        total = total + item.mass
    return total


def _trim(
    boat: Boat,
    waters: Waters,
    removed: tuple[LedgerItem, ...],
    added: tuple[LedgerItem, ...],
    net: Numbers,
) -> tuple[Numbers | None, str, Numbers | None]:
    unplaced = [item.name for item in (*removed, *added) if item.x is None]
    if unplaced:
        return None, f"no position given for: {', '.join(unplaced)}", None
    water = density(waters.kind, waters.temperature)
    form = hull_form(boat, water)
    centre = form.waterline_length * (0.5 + form.lcf - DATUMS[boat.datum])  # from the datum
    moment: Numbers = 0.0
    for sign, items in ((1.0, added), (-1.0, removed)):
        for item in items:
            arm = 0.0 if item.x is None else item.x - centre
            moment = moment + sign * item.mass * arm
    radius = longitudinal_metacentric_radius(
        form.waterplane_area,
        form.waterline_length,
        form.waterline_beam,
        boat.hull.displacement / np.asarray(water),
    )
    angle = trim_angle(moment, moment_to_trim(boat.hull.displacement, radius))
    shift = moment / (boat.hull.displacement + np.asarray(net)) / form.waterline_length
    return angle, "", shift


def _item(name: str, mass: Numbers) -> LedgerItem:
    return LedgerItem(name, mass, None, 0.0, 0.0, "register", 0)


def _diesel_mass(engine: Diesel, masses: Masses) -> Numbers:
    return masses.diesel_fixed + masses.diesel_per_kilowatt * engine.rated_power


def _default_removed(option: Option, engine: Diesel, masses: Masses) -> tuple[LedgerItem, ...]:
    if option.kind == "keep":
        return ()
    items = [_item("Old engine and gearbox", _diesel_mass(engine, masses))]
    if option.kind == "battery":
        items.append(_item("Exhaust, water-lock, strainer, mounts", masses.diesel_fittings))
    return tuple(items)


def _default_added(option: Option, masses: Masses) -> tuple[LedgerItem, ...]:
    if option.kind == "new diesel" and option.diesel is not None:
        return (_item("New engine and gearbox", _diesel_mass(option.diesel, masses)),)
    items: list[LedgerItem] = []
    if option.motor is not None:
        items.append(_item("Motor, controller and bed", motor_mass(option.motor, masses)))
    if option.bank is not None:
        items.append(_item("Battery with tray and fastenings", bank_mass(option.bank, masses)))
        items.append(_item("Cables, fuses, isolators, charger", masses.cabling))
    return tuple(items)


def motor_mass(motor: Motor, masses: Masses) -> Numbers:
    """Mass of motor and controller [kg], given or by the register."""
    if motor.mass is not None:
        return motor.mass
    return masses.motor_per_kilowatt * motor.continuous_power


def bank_mass(bank: Bank, masses: Masses) -> Numbers:
    """Mass of the bank [kg], given or by its energy; with tray and fastenings."""
    own = bank.mass
    if own is None:
        own = nominal_energy(bank.nominal_voltage, bank.charge) / bank.specific_energy
    return own * (1.0 + masses.battery_fastening)
