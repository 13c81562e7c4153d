"""Do the numbers of a case file that can each be make a boat together?

Each proportion is one number of the file over what others make of it; its ranges stand in one
table. Outside the usual one it is doubted, outside the possible one refused.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

from generator.case.check import Finding, si
from generator.case.circumstances import boat_words
from generator.case.leaf import Given
from generator.case.limits import SLACK, Range, per_euro, spelled_range
from generator.case.plant_keys import BankKeys, PropellerKeys
from generator.case.plausible_masses import DENSITY_HIGH, bank_energy
from generator.case.register import find_default
from generator.case.said import Place
from generator.case.schema import CaseKeys, OptionKeys
from generator.errors import TableError
from generator.tables.load import read_table

_SEA_WATER = 1025.0  # kg/m3; only for what is displaced, roughly
_SECONDS = 3600.0  # of the hours of an engine and of a C rate


@dataclass(frozen=True)
class Proportion:
    """One number of the file over what it is held against; the row of the table it goes by."""

    place: Place
    given: Given | None
    whole: float  # SI, so that the ratio is in the unit of the row; NaN where it is not known
    row: str
    when: str = ""


@dataclass(frozen=True)
class Row:
    """One row of the table."""

    possible: Range
    usual: Range
    unit: str
    meaning: str


@cache
def all_proportions() -> dict[tuple[str, str], Row]:
    """All rows by key and by what they hold for."""
    table = read_table("rules/proportions")
    ends = [
        table.column(name) for name in ("possible_low", "usual_low", "usual_high", "possible_high")
    ]
    rows: dict[tuple[str, str], Row] = {}
    for place, row in enumerate(zip(table.text("key"), table.text("when"), strict=True)):
        lowest, low, high, highest = (float(end[place]) for end in ends)
        if row in rows or not lowest <= low < high <= highest:
            raise TableError(f"rules/proportions: {row[0]} with when '{row[1]}'")
        unit = table.text("unit")[place].replace("-", "")
        rows[row] = Row((lowest, highest), (low, high), unit, table.text("meaning")[place])
    return rows


def find_misproportions(case: CaseKeys) -> Iterator[Finding]:
    """Numbers that cannot be beside the others."""
    yield from (found for found, impossible in _judged(case) if impossible)


def find_odd_proportions(case: CaseKeys) -> Iterator[Finding]:
    """Numbers that are seldom met beside the others."""
    yield from (found for found, impossible in _judged(case) if not impossible)


def _judged(case: CaseKeys) -> Iterator[tuple[Finding, bool]]:
    """Every proportion out of its range, and whether it is one that cannot be."""
    if not case.boat.hull.model_fields_set:
        return  # refused already; nothing that reads units is loaded for it
    rows = all_proportions()
    for one in (*_hull(case), *_keel(case), *_above(case), *_afloat(case), *_plant(case)):
        row = rows.get((one.row, one.when)) or rows.get((one.row, ""))
        if one.given is None or one.given.value <= 0.0 or row is None:
            continue
        ratio = one.given.value / one.whole
        for limits, impossible in ((row.possible, True), (row.usual, False)):
            low, high = limits
            if ratio < low * (1.0 - SLACK) or ratio > high * (1.0 + SLACK):
                yield _finding(one, row, limits), impossible
                break


def _finding(one: Proportion, row: Row, limits: Range) -> Finding:
    """What is said of a proportion: its number, and what the key might be in its own unit."""
    assert one.given is not None
    ratio = f"{one.given.value / one.whole:.3g} {row.unit}".rstrip()
    low, high = (limit * one.whole for limit in limits)
    hope = f"expected {spelled_range(low, high, one.given.unit)}"
    return Finding(one.place, f"is {one.given.shown}: {row.meaning} is {ratio}", hope)


def _hull(case: CaseKeys) -> Iterator[Proportion]:
    """Main dimensions over one another."""
    hull, keel = case.boat.hull, case.boat.hull.keel_type or ""
    waterline, overall = si(hull.waterline_length), si(hull.length_overall)

    def of_hull(name: str, whole: float, row: str = "") -> Proportion:
        row = row or f"boat.hull.{name}"
        return Proportion(("boat", "hull", name), getattr(hull, name), whole, row, keel)

    yield of_hull("waterline_length", overall)
    yield of_hull("beam", overall)
    yield of_hull("draught", overall)
    yield of_hull("displacement", waterline**3)
    box = _canoe_volume(case) / (_share(case, "prismatic_coefficient") * _plan(case))
    yield of_hull("canoe_draught", box)
    if hull.canoe_draught is None:
        body = box / _share(case, "midship_coefficient")
        yield of_hull("draught", body, "boat.hull.draught of the canoe body")


def _share(case: CaseKeys, name: str) -> float:
    """A coefficient of the hull: the owner's, else that of the register."""
    given: Given | None = getattr(case.boat.hull, name)
    if given:
        return given.value
    row = find_default(f"boat.hull.{name}", boat_words(case.boat))
    return row.value if row else float("nan")


def _plan(case: CaseKeys) -> float:
    """Waterline times waterline beam [m2]."""
    hull = case.boat.hull
    share = _share(case, "waterline_beam_share")
    beam = si(hull.waterline_beam) if hull.waterline_beam else share * si(hull.beam)
    return si(hull.waterline_length) * beam


def _canoe_volume(case: CaseKeys) -> float:
    """What the hull without its keel displaces [m3]."""
    return si(case.boat.hull.displacement) / _SEA_WATER * _share(case, "canoe_share")


def _keel(case: CaseKeys) -> Iterator[Proportion]:
    """Keel and rudder over the hull that carries them."""
    hull, kind = case.boat.hull, case.boat.hull.keel_type or ""
    waterline, plane = si(hull.waterline_length), 2.0 * si(hull.waterline_length) * si(hull.draught)
    for part, wholes in (
        ("keel", {"wetted_area": plane, "chord": waterline}),
        ("rudder", {"wetted_area": plane, "chord": waterline}),
    ):
        for name, whole in wholes.items():
            given = getattr(getattr(case.boat, part), name)
            yield Proportion(("boat", part, name), given, whole, f"boat.{part}.{name}", kind)
    volume = si(hull.displacement) / _SEA_WATER
    place = ("boat", "keel", "volume")
    yield Proportion(place, case.boat.keel.volume, volume, "boat.keel.volume", kind)


def _above(case: CaseKeys) -> Iterator[Proportion]:
    """Freeboard and rig over the hull, and her worth over her mass."""
    windage, overall = case.boat.windage, si(case.boat.hull.length_overall)
    for name, whole in (
        ("freeboard", overall),
        ("mast_height", overall),
        ("mast_diameter", si(windage.mast_height)),
    ):
        row = f"boat.windage.{name}"
        yield Proportion(("boat", "windage", name), getattr(windage, name), whole, row)
    worth = case.boat.worth
    whole = si(case.boat.hull.displacement) * (per_euro(worth) if worth else 1.0)
    yield Proportion(("boat", "worth"), worth, whole, "boat.worth")


def _afloat(case: CaseKeys) -> Iterator[Proportion]:
    """What is known of how she floats, over her dimensions."""
    hull, known = case.boat.hull, case.boat.floatation
    for name, whole in (
        ("freeboard_aft", si(hull.length_overall)),
        ("waterplane_area", _plan(case)),
        ("transverse_radius", si(hull.beam) ** 2),
        ("longitudinal_radius", si(hull.waterline_length) ** 2),
        ("metacentric_height", si(hull.beam)),
        ("roll_period", si(hull.beam)),
        ("plate_load", si(hull.displacement)),
    ):
        row = f"boat.floatation.{name}"
        yield Proportion(("boat", "floatation", name), getattr(known, name), whole, row)


def _plant(case: CaseKeys) -> Iterator[Proportion]:
    """What drives her over what carries it."""
    engine, draught = case.engine, si(case.boat.hull.draught)
    mass = si(case.boat.hull.displacement)
    yield Proportion(("engine", "tank"), engine.tank, mass / DENSITY_HIGH, "engine.tank")
    year = case.study.date[:4] if case.study.date else ""
    if engine.year and year.isdigit():
        age = max(int(year) - engine.year, 1) * _SECONDS
        yield Proportion(("engine", "hours"), engine.hours, age, "engine.hours")
    screws: list[tuple[Place, PropellerKeys]] = [((), case.propeller)]
    screws += [(("options", number), one.propeller) for number, one in enumerate(case.options)]
    for place, screw in screws:
        spot = (*place, "propeller", "diameter")
        yield Proportion(spot, screw.diameter, draught, "propeller.diameter")
    for number, option in enumerate(case.options):
        if option.kind == "battery":
            yield from _electric(case, option, ("options", number))


def _electric(case: CaseKeys, option: OptionKeys, place: Place) -> Iterator[Proportion]:
    """Motor, bank and panels of an option."""
    motor, bank = option.motor, option.bank
    for name in ("peak_power", "mass"):
        whole = si(motor.continuous_power)
        row = f"options.motor.{name}"
        yield Proportion((*place, "motor", name), getattr(motor, name), whole, row)
    name = "discharge_limit"
    whole, row = _charge(bank) / _SECONDS, f"options.bank.{name}"
    yield Proportion((*place, "bank", name), bank.discharge_limit, whole, row)
    whole, row = si(bank.blocks.charge) / _SECONDS, f"options.bank.blocks.{name}"
    yield Proportion((*place, "bank", "blocks", name), bank.blocks.discharge_limit, whole, row)
    usual = find_default("options.bank.specific_energy", (bank.chemistry or "",))
    if usual:
        whole = bank_energy(bank) / usual.value
        yield Proportion((*place, "bank", "mass"), bank.mass, whole, "options.bank.mass")
    deck = si(case.boat.hull.length_overall) * si(case.boat.hull.beam)
    for number, panel in enumerate(option.supply.panels):
        spot = (*place, "supply", "panels", number, "power")
        yield Proportion(spot, panel.power, deck, "options.supply.panels.power")


def _charge(bank: BankKeys) -> float:
    """Of the whole bank [A s], as said or by its blocks."""
    if bank.charge:
        return bank.charge.value
    return si(bank.blocks.charge) * (bank.blocks.parallel or 1)
