"""What may be said of a field of a result, once, for all that come after?

A `record` is a frozen dataclass whose numbers are declared at the field: what kind of number it
is, what it is called, and at which end a careful skipper looks at it. Key and unit in the results,
the data dictionary, the form on a page and the heads of columns follow by rule.
"""

from __future__ import annotations

import dataclasses
from dataclasses import dataclass, field
from functools import cache
from typing import Any, TypeVar, dataclass_transform, get_args, get_type_hints

from generator.units.kinds import KINDS, STORES

T = TypeVar("T")


@dataclass(frozen=True)
class Number:
    """All that is said of a number, once."""

    kind: str
    label: str  # a noun, complete alone; capital and unit are added by rule
    cautious: str  # "low" or "high": the end to plan with; "" where only the middle is told
    most_lacking: float  # the number is absent where more than this share of draws has no value
    expected: bool  # its middle is the best estimate, so that printed lines add to printed sums


def number(
    kind: str,
    label: str,
    cautious: str = "",
    most_lacking: float = 0.5,
    default: Any = dataclasses.MISSING,
    expected: bool = False,
) -> Any:
    """A field that holds a number. One function for all kinds: a field called `time` would hide it.

    Text that goes by a kind of no list, or an end that is none, is a mistake of ours.
    """
    if (kind not in KINDS and kind not in STORES) or cautious not in ("", "low", "high"):
        raise AssertionError(f"{label}: no kind {kind}, or no end {cautious}")
    said = Number(kind, label, cautious, most_lacking, expected)
    return field(default=default, metadata={"number": said})


def working(default: Any = dataclasses.MISSING) -> Any:
    """A field for later analyses alone: not in the results, so never on a page."""
    return field(default=default, metadata={"working": True})


# Of a plain dataclass mypy takes `= number(...)` for a default and misses forgotten arguments.
@dataclass_transform(frozen_default=True, field_specifiers=(number, working, field))
def record(cls: type[T]) -> type[T]:
    """A frozen dataclass; fields that are not declared as above are plain facts."""
    return dataclass(frozen=True)(cls)


@cache
def numbers_of(kind: Any) -> dict[str, Number]:
    """The declared numbers of a record, in order."""
    found = {part.name: part.metadata.get("number") for part in dataclasses.fields(kind)}
    return {name: said for name, said in found.items() if said is not None}


@cache
def facts_of(kind: Any) -> tuple[str, ...]:
    """The fields of a record that are neither numbers nor working, in order."""
    return tuple(
        part.name
        for part in dataclasses.fields(kind)
        if not part.metadata and part.name != "absent"
    )


@cache
def records_of(kind: Any) -> dict[str, tuple[Any, ...]]:
    """The records inside a record, by field: X, X | None, X | Y and tuple[X, ...] alike."""
    hints = get_type_hints(kind)
    found = {name: tuple(_records_in(hints[name])) for name in facts_of(kind)}
    return {name: inner for name, inner in found.items() if inner}


def _records_in(hint: Any) -> list[Any]:
    """The record classes of a type hint."""
    if dataclasses.is_dataclass(hint):
        return [hint]
    return [each for part in get_args(hint) for each in _records_in(part)]


def kind_of(said: Number, kept_in: str) -> str:
    """A stored number is energy in a bank and fuel in a tank, as the record's ``kept_in`` says."""
    return STORES[said.kind][kept_in] if said.kind in STORES else said.kind


def key_of(name: str, kind: str, end: str = "") -> str:
    """`need`, energy, low -> `need_low_kwh`."""
    return "_".join(part for part in (name, end, KINDS[kind].suffix) if part)
