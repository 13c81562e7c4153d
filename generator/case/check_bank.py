"""Do the blocks of a bank make its voltage and its charge, from cells that exist?"""

from __future__ import annotations

from collections.abc import Iterator

from generator.case.leaf import Given
from generator.case.plant_keys import BankKeys
from generator.case.said import Place
from generator.tables.cell_labels import cell_counts, cell_voltage, count_by_end, fit
from generator.units.grammar import from_si

Fault = tuple[Place, str, str]  # place, problem, what was expected
ROUNDED = 0.03  # labels round: 13 cells of 3.65 V are sold as 48 V
OTHER_NAME = 0.07  # a label of another trade: sixteen cells of 3.2 V are sold as 48 V
BLOCK_SLACK = 0.02
ENERGY_SLACK = 0.05  # kilowatt-hours are told in round numbers
END_SLACK = 0.05  # an end of charge above that of the usual cell


def bank_faults(bank: BankKeys, place: Place) -> Iterator[Fault]:
    """Everything about voltage, charge and blocks that cannot hold together."""
    yield from _missing(bank, place)
    blocks = bank.blocks
    if blocks.mixed:
        hope = "expected false: strings of different age, maker or charge share badly and trip"
        yield (*place, "blocks", "mixed"), "is true", hope
    yield from _product(bank.nominal_voltage, blocks.voltage, blocks.series, place, "voltage")
    yield from _product(bank.charge, blocks.charge, blocks.parallel, place, "charge")
    yield from _energy(bank, place)
    yield from _cells(bank, place)
    yield from _end(bank, place)


def bank_doubts(bank: BankKeys, place: Place) -> Iterator[Fault]:
    """A label that two numbers of cells are sold under, and nothing that tells which."""
    volts = nominal_of(bank)
    if volts is None or not bank.chemistry or known_count(bank, volts) is not None:
        return
    counts = cell_counts(bank.chemistry, volts)
    if len(counts) > 1:
        spot, label = _label(bank)
        full = cell_voltage(bank.chemistry, "charge")
        ends = " or ".join(f"{n} cells, which end their charge at {n * full:.1f} V" for n in counts)
        problem = f"is {label.shown if label else ''}: {ends}; {counts[0]} are taken"
        hope = "expected cells or end_of_charge as well, from the maker's sheet"
        yield (*place, *spot), problem, hope


def nominal_of(bank: BankKeys) -> float | None:
    """Voltage on the label of the whole bank, or of its blocks in series [V]."""
    if bank.nominal_voltage:
        return bank.nominal_voltage.value
    block = bank.blocks.voltage
    return None if block is None else block.value * (bank.blocks.series or 1)


def known_count(bank: BankKeys, label: float | None) -> int | None:
    """Cells in series as the maker tells them, by their number or by the end of charge."""
    if bank.cells is not None:
        return bank.cells
    if bank.end_of_charge is None or label is None or not bank.chemistry:
        return None
    return count_by_end(bank.chemistry, label, bank.end_of_charge.value)


def _label(bank: BankKeys) -> tuple[Place, Given | None]:
    """Where the voltage of the label stands: that of the whole, else that of one block."""
    if bank.nominal_voltage:
        return ("nominal_voltage",), bank.nominal_voltage
    return ("blocks", "voltage"), bank.blocks.voltage


def _missing(bank: BankKeys, place: Place) -> Iterator[Fault]:
    """Voltage and charge of the whole, or of its blocks with their number."""
    said = bank.blocks.model_fields_set
    for name, block in (("nominal_voltage", "voltage"), ("charge", "charge")):
        if name in bank.model_fields_set or block in said:
            continue
        if name == "charge" and "energy" in bank.model_fields_set:
            continue
        hope = f"expected the {block} of the whole bank, or of one block in blocks.{block}"
        yield (*place, name), "is missing", hope
    for name in ("series", "parallel"):
        if said and name not in said:
            yield (*place, "blocks", name), "is missing", "expected a number of blocks"


def _product(
    whole: Given | None, block: Given | None, count: int | None, place: Place, name: str
) -> Iterator[Fault]:
    """Blocks that do not add up to what is said of the whole."""
    if whole and block and count:
        ratio = whole.value / (block.value * count)
        if abs(ratio - 1.0) > BLOCK_SLACK:
            problem = f"is {block.shown}; {count} of them do not make {whole.shown}"
            yield (*place, "blocks", name), problem, "expected blocks that make the whole bank"


def _energy(bank: BankKeys, place: Place) -> Iterator[Fault]:
    """Kilowatt-hours that are not those of the ampere-hours said beside them."""
    charge, block = bank.charge, bank.blocks.charge
    volts, known = nominal_of(bank), charge or block
    if bank.energy is None or known is None or volts is None or not bank.chemistry:
        return
    whole = known.value * (1 if charge else bank.blocks.parallel or 1)
    counts = (bank.cells,) if bank.cells else cell_counts(bank.chemistry, volts)
    each = [volts, *(n * cell_voltage(bank.chemistry) for n in counts)]
    if all(abs(bank.energy.value / (whole * one) - 1.0) > ENERGY_SLACK for one in each):
        made = float(from_si(whole * volts, "kWh"))
        problem = f"is {bank.energy.shown}, and its charge makes {made:.3g} kWh at {volts:.4g} V"
        yield (*place, "energy"), problem, "expected one of the two, or two that agree"


def _cells(bank: BankKeys, place: Place) -> Iterator[Fault]:
    """A voltage that no whole number of cells of the chemistry makes, or not those said."""
    volts, (spot, said) = nominal_of(bank), _label(bank)
    if volts is None or not said or not bank.chemistry:
        return
    known = known_count(bank, volts)
    if bank.cells is not None and fit(bank.chemistry, volts, bank.cells) > OTHER_NAME:
        cells = bank.cells * cell_voltage(bank.chemistry)
        problem = f"is {bank.cells}, which make {cells:.4g} V of {bank.chemistry}"
        yield (*place, "cells"), problem, f"expected as many as make {volts:.4g} V"
    elif known is not None and fit(bank.chemistry, volts, known) <= OTHER_NAME:
        return
    cell = cell_voltage(bank.chemistry)
    count = max(round(said.value / cell), 1)
    if bank.cells is None and fit(bank.chemistry, said.value, count) > ROUNDED:
        below = int(said.value / cell)
        near = " or ".join(f"{n * cell:.4g} V ({n} cells)" for n in (below, below + 1) if n)
        problem = f"is {said.shown}, not a number of {bank.chemistry} cells"
        yield (*place, *spot), problem, f"expected {near}"


def _end(bank: BankKeys, place: Place) -> Iterator[Fault]:
    """An end of charge that so many cells never need, or do not bear."""
    end, volts = bank.end_of_charge, nominal_of(bank)
    count = known_count(bank, volts)
    if end is None or count is None or not bank.chemistry:
        return
    low, high = (count * cell_voltage(bank.chemistry, name) for name in ("nominal", "charge"))
    if not low < end.value <= high * (1.0 + END_SLACK):
        hope = f"expected {low:.4g} to {high:.4g} V of {count} {bank.chemistry} cells"
        yield (*place, "end_of_charge"), f"is {end.shown}", hope
