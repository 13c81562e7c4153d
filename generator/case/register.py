"""Which number is taken when the case does not give it, and how far is that to be trusted?"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

from generator.errors import TableError
from generator.tables.load import read_table
from generator.units.grammar import to_si


@dataclass(frozen=True)
class Default:
    """One row of the register; value and range in SI, and as the register spells them."""

    key: str
    when: str
    value: float
    low: float
    high: float
    unit: str
    shape: str
    shown: str
    shown_low: str
    shown_high: str
    source: str
    mark: str
    meaning: str

    @property
    def draw_key(self) -> str:
        """What all fields filled from this row share."""
        return f"{self.key}@{self.when}"


@lru_cache(maxsize=1)
def read_register() -> dict[str, tuple[Default, ...]]:
    """All rows by key."""
    table = read_table("register")
    columns = ("key", "when", "value", "low", "high", "unit", "shape", "source", "mark", "meaning")
    rows: dict[str, tuple[Default, ...]] = {}
    for cells in zip(*(table.text(name) for name in columns), strict=True):
        row = _default(cells)
        if any(row.when == other.when for other in rows.get(row.key, ())):
            raise TableError(f"register: {row.key} with when '{row.when}' stands twice")
        rows[row.key] = (*rows.get(row.key, ()), row)
    return rows


def find_default(key: str, circumstances: Iterable[str]) -> Default | None:
    """The row of a key that fits: the first circumstance with a row, else the row for all."""
    rows = {row.when: row for row in read_register().get(key, ())}
    for when in (*circumstances, ""):
        if when in rows:
            return rows[when]
    return None


def _default(cells: tuple[str, ...]) -> Default:
    """One row with its numbers in SI."""
    key, when, value, low, high, unit, shape, source, mark, meaning = cells
    spelled = unit.replace("-", "")  # a number without unit
    si = [float(to_si(float(number), spelled)) for number in (value, low, high)]
    if not si[1] <= si[0] <= si[2]:
        raise TableError(f"register: {key} has its value outside its range")
    return Default(
        key=key,
        when=when,
        value=si[0],
        low=si[1],
        high=si[2],
        unit=spelled,
        shape=shape,
        shown=f"{value} {spelled}".rstrip(),
        shown_low=f"{low} {spelled}".rstrip(),
        shown_high=f"{high} {spelled}".rstrip(),
        source=source,
        mark=mark,
        meaning=meaning,
    )
