"""Which number does the study take the same for every boat?"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from generator.errors import TableError
from generator.tables.load import read_table
from generator.units.grammar import to_si


@dataclass(frozen=True)
class MethodNumber:
    """One row of the table; ``value`` in SI, ``shown`` as the table spells it."""

    key: str
    value: float
    shown: str
    source: str
    mark: str
    meaning: str


@cache
def method_numbers() -> dict[str, MethodNumber]:
    """All numbers of the method by key."""
    table = read_table("rules/method")
    names = ("key", "value", "unit", "source", "mark", "meaning")
    rows = [_row(*cells) for cells in zip(*(table.text(name) for name in names), strict=True)]
    return {row.key: row for row in rows}


def method(key: str) -> float:
    """One number of the method in SI (years stay years)."""
    if key not in method_numbers():
        raise TableError(f"rules/method: no '{key}'")
    return method_numbers()[key].value


def _row(key: str, value: str, unit: str, source: str, mark: str, meaning: str) -> MethodNumber:
    spelled = unit.replace("-", "")  # a number without unit
    shown = f"{value} {spelled}".rstrip()
    return MethodNumber(key, float(to_si(float(value), spelled)), shown, source, mark, meaning)
