"""How is a table of published numbers read, and is its header complete?"""

from __future__ import annotations

import csv
import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from types import MappingProxyType

import numpy as np

from generator.arrays import Array
from generator.errors import TableError

FOLDER = Path(__file__).parent
HEADER = ("title", "source", "valid", "confidence")
NAME = re.compile(r"[A-Za-z][A-Za-z0-9_]*")


@dataclass(frozen=True)
class Table:
    """One table: its header, its columns as numbers where they are numbers, all as text."""

    name: str
    title: str
    source: str  # key of the bibliography first, then table and page
    valid: str
    confidence: str
    names: tuple[str, ...]
    units: tuple[str, ...]
    columns: Mapping[str, Array]  # numeric columns only; an empty cell is NaN
    texts: Mapping[str, tuple[str, ...]]

    def column(self, name: str) -> Array:
        """A numeric column."""
        if name not in self.columns:
            raise TableError(f"{self.name}: no numeric column '{name}'")
        return self.columns[name]

    def text(self, name: str) -> tuple[str, ...]:
        """Any column as it is written."""
        if name not in self.texts:
            raise TableError(f"{self.name}: no column '{name}'")
        return self.texts[name]

    def matrix(self, *names: str) -> Array:
        """Numeric columns side by side: rows as in the file, columns as asked for."""
        return np.column_stack([self.column(name) for name in names])

    def row_of(self, name: str, wanted: str) -> int:
        """The row whose text in the column is the wanted one."""
        cells = self.text(name)
        if wanted not in cells:
            raise TableError(f"{self.name}: no '{wanted}' in column '{name}': {', '.join(cells)}")
        return cells.index(wanted)


@cache
def read_table(name: str) -> Table:
    """The table of that name below ``generator/tables``, without its ending."""
    return read_file(FOLDER / f"{name}.csv", name)


def read_file(path: Path, name: str) -> Table:
    """A table from any file; ``name`` is what messages call it."""
    try:
        text = path.read_text(encoding="utf-8")
    except FileNotFoundError:
        raise TableError(f"{name}: there is no such table") from None
    return parse_table(text, name)


def parse_table(text: str, name: str) -> Table:
    """A table from its text, refused when header, names, units or cells are missing."""
    lines = text.splitlines()
    header = _header(lines, name)
    body = [line for line in lines if line.strip() and not line.startswith("#")]
    rows = [[cell.strip() for cell in row] for row in csv.reader(body)]
    names, units = _names_and_units(rows, name)
    cells = rows[2:]
    for number, row in enumerate(cells, start=1):
        if len(row) != len(names):
            raise TableError(f"{name}: row {number} has {len(row)} cells, not {len(names)}")
    texts = {key: tuple(row[place] for row in cells) for place, key in enumerate(names)}
    numbers = {key: _numbers(column) for key, column in texts.items()}
    columns = {key: values for key, values in numbers.items() if values is not None}
    return Table(
        name,
        *header,
        names,
        units,
        columns=MappingProxyType(columns),
        texts=MappingProxyType(texts),
    )


def _header(lines: list[str], name: str) -> tuple[str, str, str, str]:
    """The four header lines in their order."""
    found = []
    for place, key in enumerate(HEADER):
        start = f"# {key}:"
        line = lines[place] if place < len(lines) else ""
        if not line.startswith(start) or not line[len(start) :].strip():
            raise TableError(f"{name}: line {place + 1} should be '{start} ...'")
        found.append(line[len(start) :].strip())
    return found[0], found[1], found[2], found[3]


def _names_and_units(rows: list[list[str]], name: str) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The row of names and the row of units, told from numbers."""
    if not rows or not all(NAME.fullmatch(cell) for cell in rows[0]):
        raise TableError(f"{name}: the row of names is missing")
    if len(set(rows[0])) != len(rows[0]):
        raise TableError(f"{name}: a column name stands twice")
    if len(rows) < 2 or not all(rows[1]) or any(_number(cell) is not None for cell in rows[1]):
        raise TableError(f"{name}: the row of units is missing")
    if len(rows[1]) != len(rows[0]):
        raise TableError(f"{name}: {len(rows[1])} units for {len(rows[0])} names")
    return tuple(rows[0]), tuple(rows[1])


def _number(cell: str) -> float | None:
    """The cell as a number, or nothing."""
    try:
        return float(cell)
    except ValueError:
        return None


def _numbers(cells: tuple[str, ...]) -> Array | None:
    """A column as numbers, or nothing where a filled cell is no number."""
    values = [_number(cell) if cell else float("nan") for cell in cells]
    if None in values or not any(cells):
        return None
    array = np.array(values, dtype=np.float64)
    array.setflags(write=False)  # the cache hands the same array to everyone
    return array
