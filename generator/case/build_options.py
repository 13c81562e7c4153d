"""How do the keys of one option become what could drive her, charge her bank and wire it?"""

from __future__ import annotations

from dataclasses import replace

from generator.case.check_bank import ROUNDED, known_count
from generator.case.circumstances import motor_sizes, motor_words, propeller_words
from generator.case.diesel import Diesel, Propeller
from generator.case.fill import Desk
from generator.case.inherit import own_engine, own_propeller
from generator.case.leaf import Given
from generator.case.option import Bank, Blocks, LedgerItem, Motor, Option
from generator.case.plant_keys import BankKeys
from generator.case.prices import CostItem, part_by_name
from generator.case.said import Keys, line_of
from generator.case.schema import CaseKeys, CostItemKeys, LedgerItemKeys, OptionKeys
from generator.case.supply import Charger, Genset, PanelGroup, Supply, WindGenerator
from generator.case.wiring import (
    CIRCUITS,
    CircuitKeys,
    CircuitPlan,
    Compartment,
    CompartmentKeys,
    Wiring,
)
from generator.tables.cell_labels import cell_voltage, fit

HOUR = 3600.0


def build_option(keys: CaseKeys, root: Keys, desk: Desk, number: int) -> Option:
    """One option with its own plant, ledgers and costs."""
    option, path = keys.options[number], f"options[{number}]"
    screw = own_propeller(keys, option)
    words = (*propeller_words(keys, screw), screw.installation or "")
    removed = enumerate(option.removed)
    added = enumerate(option.added)
    return Option(
        id=option.id or "",
        name=option.name or "",
        kind=option.kind or "",
        note=option.note or "",
        motor=_motor(option, desk, path),
        bank=_bank(option, desk, path),
        installation=build_wiring(option, root, desk, number),
        compartment=build_compartment(option.compartment),
        diesel=_diesel(keys, option, desk, path, words),
        propeller=desk.fill(Propeller, screw, f"{path}.propeller", "propeller", words),
        kept=tuple(part for part in option.kept if part),
        removed=tuple(_item(item, keys, root, desk, (number, "removed", n)) for n, item in removed),
        added=tuple(_item(item, keys, root, desk, (number, "added", n)) for n, item in added),
        supply=build_supply(option, root, desk, number),
        costs=tuple(_cost(cost, root, desk, (number, n)) for n, cost in enumerate(option.costs)),
        line=line_of(root, ("options", number)),
    )


def _motor(option: OptionKeys, desk: Desk, path: str) -> Motor | None:
    if option.kind != "battery":
        return None
    motor = option.motor
    return desk.fill(
        Motor, motor, f"{path}.motor", "options.motor", motor_words(motor), motor_sizes(motor)
    )


def _bank(option: OptionKeys, desk: Desk, path: str) -> Bank | None:
    if option.kind != "battery":
        return None
    bank, place, key = option.bank, f"{path}.bank", "options.bank"
    blocks = bank.blocks
    series, parallel = blocks.series or 1, blocks.parallel or 1
    voltage = bank.nominal_voltage or _together(blocks.voltage, series, "in series")
    voltage = _by_cells(bank, voltage)
    charge = bank.charge or _together(blocks.charge, parallel, "side by side")
    charge = charge or _by_energy(bank.energy, voltage)
    limit = desk.number(
        blocks.discharge_limit, f"{place}.blocks.discharge_limit", f"{key}.blocks.discharge_limit"
    )
    return desk.fill(
        Bank,
        bank,
        place,
        key,
        (bank.chemistry or "",),
        nominal_voltage=desk.number(voltage, f"{place}.nominal_voltage", f"{key}.nominal_voltage"),
        charge=desk.number(charge, f"{place}.charge", f"{key}.charge"),
        blocks=Blocks(series, parallel, limit),
        split=bool(bank.split),
    )


def _by_cells(bank: BankKeys, label: Given | None) -> Given | None:
    """The voltage of the cells that the maker names, where the label is only near it."""
    count = known_count(bank, label.value if label else None)
    if label is None or count is None or fit(bank.chemistry or "", label.value, count) <= ROUNDED:
        return label
    volts = count * cell_voltage(bank.chemistry or "")
    return _as(label, volts, "V", f"{volts:.4g} V ({count} cells sold as {label.shown})")


def _by_energy(energy: Given | None, voltage: Given | None) -> Given | None:
    """The charge that an energy makes at the nominal voltage, with its doubt."""
    if energy is None or voltage is None:
        return None
    own = _as(energy, energy.value / voltage.value, "Ah", f"{energy.shown} at {voltage.shown}")
    low, high = (end / voltage.value for end in (energy.low, energy.high))
    shown = [f"{end / HOUR:.4g} Ah" for end in (low, high)]
    if low == high:
        return own
    return replace(own, low=low, high=high, shown_low=shown[0], shown_high=shown[1])


def _as(given: Given, value: float, unit: str, shown: str) -> Given:
    """The same answer of the owner, told as another number without a doubt."""
    return replace(
        given, value=value, low=value, high=value, unit=unit, shown=shown, shown_low=shown,
        shown_high=shown,
    )  # fmt: skip


def _together(block: Given | None, count: int, how: str) -> Given | None:
    """What equal blocks make together, with the owner's spelling of one."""
    if block is None:
        return None
    return replace(
        block,
        value=block.value * count,
        low=block.low * count,
        high=block.high * count,
        shown=f"{count} x {block.shown} {how}",
        shown_low=f"{count} x {block.shown_low}",
        shown_high=f"{count} x {block.shown_high}",
    )


def _diesel(
    keys: CaseKeys, option: OptionKeys, desk: Desk, path: str, words: tuple[str, ...]
) -> Diesel | None:
    if option.kind == "battery":
        return None
    return desk.fill(Diesel, own_engine(keys, option), f"{path}.diesel", "engine", words)


def _item(
    item: LedgerItemKeys, keys: CaseKeys, root: Keys, desk: Desk, spot: tuple[int, str, int]
) -> LedgerItem:
    """One mass; on the centre line at the waterline unless it or its space says otherwise."""
    number, ledger, row = spot
    path, key = f"options[{number}].{ledger}[{row}]", f"options.{ledger}"
    space = next((s for s in keys.boat.spaces if s.name == item.space and item.space), None)
    x, y, z = (getattr(item, axis) or getattr(space, axis, None) for axis in ("x", "y", "z"))
    return desk.fill(
        LedgerItem,
        item,
        path,
        key,
        x=desk.number(x, f"{path}.x", f"{key}.x"),
        y=desk.number(y, f"{path}.y", f"{key}.y") or 0.0,
        z=desk.number(z, f"{path}.z", f"{key}.z") or 0.0,
        part=item.part or "",
        space=item.space or "",
        source=item.source or "estimate",
        line=line_of(root, ("options", number, ledger, row)),
    )


def _cost(cost: CostItemKeys, root: Keys, desk: Desk, spot: tuple[int, int]) -> CostItem:
    """One payment; what is not quoted is an estimate."""
    number, row = spot
    return desk.fill(
        CostItem,
        cost,
        f"options[{number}].costs[{row}]",
        "options.costs",
        source=cost.source or "estimate",
        part=cost.part or part_by_name(cost.name or ""),
        vat=cost.vat or "included",
        doubted=bool(cost.amount and cost.amount.plus_minus),
        line=line_of(root, ("options", number, "costs", row)),
    )


KEY = "options.supply"


def build_supply(option: OptionKeys, root: Keys, desk: Desk, number: int) -> Supply | None:
    """The sources of a battery option; what the case does not name is not there."""
    if option.kind != "battery":
        return None
    keys, path = option.supply, f"options[{number}].supply"
    said = keys.model_fields_set
    return Supply(
        charger=desk.fill(Charger, keys.charger, f"{path}.charger", f"{KEY}.charger"),
        panels=tuple(
            _panels(option, root, desk, (number, place)) for place in range(len(keys.panels))
        ),
        genset=desk.fill(Genset, keys.genset, f"{path}.genset", f"{KEY}.genset")
        if "genset" in said
        else None,
        wind=desk.fill(WindGenerator, keys.wind, f"{path}.wind", f"{KEY}.wind")
        if "wind" in said
        else None,
        regeneration=bool(keys.regeneration),
    )


def _panels(option: OptionKeys, root: Keys, desk: Desk, spot: tuple[int, int]) -> PanelGroup:
    number, place = spot
    keys = option.supply.panels[place]
    return desk.fill(
        PanelGroup,
        keys,
        f"options[{number}].supply.panels[{place}]",
        f"{KEY}.panels",
        mounting=keys.mounting or "free",
        line=line_of(root, ("options", number, "supply", "panels", place)),
    )


ON_REQUEST = ("inverter", "sun")  # only where the case names them, or has panels


def build_wiring(option: OptionKeys, root: Keys, desk: Desk, number: int) -> Wiring | None:
    """The installation of a battery option; circuits that are not named take their defaults."""
    if option.kind != "battery":
        return None
    path, key = f"options[{number}].installation", "options.installation"
    said = {item.name or "": item for item in option.installation.circuits}
    asked = {*said, "sun"} if option.supply.panels else set(said)
    names = [name for name in CIRCUITS if name in asked or name not in ON_REQUEST]
    desk.names.update({f"{path}.circuits[{n}]": name for n, name in enumerate(names)})
    circuits = tuple(
        desk.fill(
            CircuitPlan,
            said.get(name, CircuitKeys()),
            f"{path}.circuits[{place}]",
            f"{key}.circuits",
            (name,),
            name=name,
        )
        for place, name in enumerate(names)
    )
    line = line_of(root, ("options", number, "installation"))
    return desk.fill(
        Wiring,
        option.installation,
        path,
        key,
        circuits=circuits,
        said=bool(option.installation.model_fields_set),
        line=line,
    )


def build_compartment(keys: CompartmentKeys) -> Compartment:
    """What was seen of the place where the bank stands."""
    return Compartment(
        dry=keys.dry,
        above_bilge=keys.above_bilge,
        ventable=keys.ventable,
        not_a_berth=keys.not_a_berth,
        escape_clear=keys.escape_clear,
        works=keys.works or "",
    )
