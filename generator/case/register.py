"""Which number is taken when the case does not give it, and how far is that to be trusted?"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Any

from generator.errors import TableError
from generator.tables.load import read_table
from generator.units.grammar import from_si, to_si


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
    size: str = ""  # of the thing that it was grown to, as said

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


@dataclass(frozen=True)
class Growth:
    """How a default grows: with a measure [SI], by an exponent, from the size it is told at."""

    measure: str
    at: float
    unit: str
    exponent: float


@lru_cache(maxsize=1)
def growths() -> dict[str, Growth]:
    """The defaults that are no constants, by key."""
    table = read_table("rules/default_sizes")
    columns = [table.text(name) for name in ("key", "measure", "at", "unit", "exponent")]
    return {
        key: Growth(measure, float(to_si(float(at), unit)), unit, float(exponent))
        for key, measure, at, unit, exponent in zip(*columns, strict=True)
    }


def sized(row: Default, sizes: Mapping[str, float]) -> Default:
    """The default of a boat or motor of these sizes [SI, by measure]; as it is without them."""
    growth = growths().get(row.key)
    size = 0.0 if growth is None else sizes.get(growth.measure, 0.0)
    if growth is None or size <= 0.0:
        return row
    by = (size / growth.at) ** growth.exponent
    changed: dict[str, Any] = {
        **{name: getattr(row, name) * by for name in ("value", "low", "high")},
        **{name: _grown(getattr(row, name), by) for name in ("shown", "shown_low", "shown_high")},
    }
    size_shown = f"{float(from_si(size, growth.unit)):.3g} {growth.unit}"
    return replace(row, **changed, size=size_shown)


def _grown(shown: str, by: float) -> str:
    """The spelling of a number that has grown, to two figures."""
    number, *unit = shown.split(" ", 1)
    return " ".join((f"{float(f'{float(number) * by:.2g}'):g}", *unit))


def usual_value(key: str, circumstances: Iterable[str]) -> float:
    """The value of a key that has a row for all, whatever the owner says [SI]."""
    row = find_default(key, circumstances)
    if row is None:
        raise TableError(f"register: no row for {key}")
    return row.value


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
