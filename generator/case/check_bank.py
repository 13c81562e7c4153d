"""Do the blocks of a bank make its voltage and its charge, from cells that exist?"""

from __future__ import annotations

from collections.abc import Iterator

from generator.case.leaf import Given
from generator.case.plant_keys import BankKeys
from generator.case.said import Place
from generator.tables.load import read_table

Fault = tuple[Place, str, str]  # place, problem, what was expected
CELL_SLACK = 0.03  # labels round: 13 cells of 3.65 V are sold as 48 V
BLOCK_SLACK = 0.02


def bank_faults(bank: BankKeys, place: Place) -> Iterator[Fault]:
    """Everything about voltage, charge and blocks that cannot hold together."""
    yield from _missing(bank, place)
    blocks = bank.blocks
    if blocks.mixed:
        hope = "expected false: strings of different age, maker or charge share badly and trip"
        yield (*place, "blocks", "mixed"), "is true", hope
    yield from _product(bank.nominal_voltage, blocks.voltage, blocks.series, place, "voltage")
    yield from _product(bank.charge, blocks.charge, blocks.parallel, place, "charge")
    yield from _cells(bank, place)


def _missing(bank: BankKeys, place: Place) -> Iterator[Fault]:
    """Voltage and charge of the whole, or of its blocks with their number."""
    said = bank.blocks.model_fields_set
    for name, block in (("nominal_voltage", "voltage"), ("charge", "charge")):
        if name in bank.model_fields_set or block in said:
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


def _cells(bank: BankKeys, place: Place) -> Iterator[Fault]:
    """A voltage that no whole number of cells of the chemistry makes."""
    key, said = ("nominal_voltage", bank.nominal_voltage)
    if not said:
        key, said = "blocks.voltage", bank.blocks.voltage
    if not said or not bank.chemistry:
        return
    table = read_table("energy/cells")
    cell = float(table.column("nominal")[table.row_of("chemistry", bank.chemistry)])
    count = max(round(said.value / cell), 1)
    if abs(said.value / (count * cell) - 1.0) > CELL_SLACK:
        below = int(said.value / cell)
        near = " or ".join(f"{n * cell:.4g} V ({n} cells)" for n in (below, below + 1) if n)
        spot: Place = (*place, *key.split("."))
        yield spot, f"is {said.shown}, not a number of {bank.chemistry} cells", f"expected {near}"
