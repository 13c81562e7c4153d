"""What goes out, what comes in, and how does she float and stand afterwards?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import ClassVar

from generator.analyses.weight.floating import Change, Floating, afloat, changed, loaded
from generator.analyses.weight.mass_ledger import (
    Ledger,
    at_fill,
    bank_mass,
    filled_up,
    given_mass,
    ledger,
)
from generator.arrays import Numbers
from generator.case.case import Case
from generator.case.option import LedgerItem, Option
from generator.case.usage import OPEN_WATERS
from generator.physics.hull.stability import GRAVITY
from generator.records import number, record


@dataclass(frozen=True)
class Condition:
    """One condition of loading, before and after. ``fill`` of the old tank."""

    name: str
    fill: Numbers | None
    change: Change


@record
class Restraint:
    """What holds one battery box: ahead and sideways, and upwards where she may turn over."""

    name: str
    mass: Numbers = number("mass", "mass of the box")
    sideways: Numbers = number("force", "force ahead and sideways")
    upwards: Numbers | None = number("force", "force upwards")
    absent: ClassVar[Mapping[str, str]] = {"upwards": "sheltered_waters"}


@dataclass(frozen=True)
class Weight:
    """Ledgers of one option and what they do. kg, m, rad; trim positive by the bow."""

    ledger: Ledger
    removed_mass: Numbers
    added_mass: Numbers
    light_displacement: Numbers
    cruising_displacement: Numbers
    change: Change  # as she was weighed
    conditions: tuple[Condition, ...]
    trim_why: str  # empty where every mass has a place
    plate_left: Numbers | None  # of the plate's load, after the net change and the cruising load
    restraints: tuple[Restraint, ...]
    bank_mass: Numbers | None  # with tray and fastenings

    @property
    def removed(self) -> tuple[LedgerItem, ...]:
        """What leaves."""
        return self.ledger.removed

    @property
    def added(self) -> tuple[LedgerItem, ...]:
        """What comes aboard."""
        return self.ledger.added

    @property
    def net(self) -> Numbers:
        """Mass added less mass removed [kg]."""
        return self.added_mass - self.removed_mass

    @property
    def absolute(self) -> Numbers:
        """Mass added and mass removed together [kg]."""
        return self.added_mass + self.removed_mass

    @property
    def displacement(self) -> Numbers:
        """As weighed, after the change [kg]."""
        return self.change.after.displacement

    @property
    def sinkage(self) -> Numbers:
        """Parallel, deeper positive [m]."""
        return self.change.sinkage

    @property
    def placed(self) -> bool:
        """Whether every mass has a place along the boat."""
        return not self.trim_why

    @property
    def trim(self) -> Numbers | None:
        """By the bow positive [rad]; None while a mass has no place."""
        return self.change.trim if self.placed else None

    @property
    def centre_shift(self) -> Numbers | None:
        """Of the centre of gravity along the boat, over waterline length; forward positive."""
        if not self.placed:
            return None
        return self.change.gravity_shift[0] / self.change.before.waterline_length


def weigh(case: Case, option: Option) -> Weight:
    """Add up the ledgers of an option and float her in every condition of loading."""
    found = ledger(case, option)
    given, mass = case.boat.floatation, case.boat.hull.displacement
    light = _given(given.light_displacement, given.light_share * mass)
    cruising = _given(given.cruising_displacement, given.cruising_share * mass)
    change = changed(afloat(case), found)
    removed, added = _total(found.removed), _total(found.added)
    unplaced = ", ".join(found.unplaced)
    left = None
    if given.plate_load is not None:
        left = given.plate_load - (cruising - light) - (added - removed)
    return Weight(
        ledger=found,
        removed_mass=removed,
        added_mass=added,
        light_displacement=light,
        cruising_displacement=cruising,
        change=change,
        conditions=_conditions(case, found, light, cruising),
        trim_why=f"no position given for: {unplaced}" if unplaced else "",
        plate_left=left,
        restraints=_restraints(case, found),
        bank_mass=_bank_mass(case, option, found),
    )


def _bank_mass(case: Case, option: Option, found: Ledger) -> Numbers | None:
    """As the ledger has it, on which trim and fastenings are reckoned; else by its energy."""
    if option.bank is None:
        return None
    own = given_mass(found.added, "battery")
    return bank_mass(option.bank, case.masses) if own is None else own


def _given(value: Numbers | None, default: Numbers) -> Numbers:
    return default if value is None else value


def _total(items: tuple[LedgerItem, ...]) -> Numbers:
    total: Numbers = 0.0
    for item in items:
        total = total + item.mass
    return total


def _conditions(
    case: Case, found: Ledger, light: Numbers, cruising: Numbers
) -> tuple[Condition, ...]:
    """Tank full, half and empty as she sails; light and cruising with the tank to match."""
    if not found.items:
        return ()
    today = afloat(case)
    rows: list[tuple[str, float, Floating]] = [
        ("light, tank empty", 0.0, loaded(today, light)),
        ("cruising, tank full", 1.0, loaded(today, cruising)),
    ]
    fills = (("full", 1.0), ("half full", 0.5), ("empty", 0.0)) if found.fuel else ()
    tanks = [
        (f"as she sails, tank {word}", fill, changed(today, filled_up(found, fill)).after)
        for word, fill in fills
    ]
    return tuple(
        Condition(name, fill if fills else None, changed(before, at_fill(found, fill)))
        for name, fill, before in (*tanks, *rows)
    )


def _restraints(case: Case, found: Ledger) -> tuple[Restraint, ...]:
    """A box is held against its own weight, times an allowance, whichever way that points."""
    at_sea = case.waters.exposure in OPEN_WATERS
    allowance = case.masses.shock_allowance * GRAVITY
    return tuple(
        Restraint(item.name, item.mass, force, force if at_sea else None)
        for item in found.added
        if item.part == "battery"
        for force in (item.mass * allowance,)
    )
