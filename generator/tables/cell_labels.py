"""Which numbers of cells in series may a bank of one label have?"""

from __future__ import annotations

from functools import cache
from math import inf

from generator.tables.load import read_table

SAME = 0.005  # share by which a label may be off and still be that label
REACHED = 0.99  # of an end of charge that so many cells must come up to


def cell_voltage(chemistry: str, name: str = "nominal") -> float:
    """Of one cell [V]: nominal, charge or lowest."""
    table = read_table("energy/cells")
    return float(table.column(name)[table.row_of("chemistry", chemistry)])


@cache
def cell_counts(chemistry: str, label: float) -> tuple[int, ...]:
    """The usual number first; a second one where the label [V] fits two."""
    for volts, fewer, usual in _double_labels(chemistry):
        if abs(label / volts - 1.0) <= SAME:
            return usual, fewer
    return (max(round(label / cell_voltage(chemistry)), 1),)


def count_by_end(chemistry: str, label: float, end: float) -> int:
    """The fewest of those cells that a maker's end of charge [V] does not harm."""
    counts, full = cell_counts(chemistry, label), cell_voltage(chemistry, "charge")
    return min((n for n in counts if n * full >= REACHED * end), default=max(counts))


def fit(chemistry: str, label: float, count: int) -> float:
    """How far a label [V] is from the nominal voltage of so many cells, as a share."""
    return abs(label / (count * cell_voltage(chemistry)) - 1.0) if count else inf


@cache
def _double_labels(chemistry: str) -> tuple[tuple[float, int, int], ...]:
    table = read_table("energy/cell_labels")
    rows = zip(
        table.text("chemistry"), table.column("label"), table.column("fewer"),
        table.column("usual"), strict=True,
    )  # fmt: skip
    return tuple(
        (float(v), int(few), int(usual)) for kind, v, few, usual in rows if kind == chemistry
    )
