"""How does a record become a piece of results.json, and what do its keys mean?

By one rule: a number is `field_suffix`, its cautious and its bright end `field_low_suffix` and
`field_high_suffix`, and `field_why` says why there is none. Facts keep the name of their field.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import numpy as np

from generator.analyses.percentiles import best, spread
from generator.arrays import Array
from generator.records import Number, facts_of, key_of, kind_of, numbers_of, records_of
from generator.report.numbers import Display
from generator.report.template import reason
from generator.report.template import said as words_of
from generator.report.view import View
from generator.units.kinds import KINDS, STORES
from generator.verbatim import guarded

EXPECTED = ", best estimate"
ENDS = {"": "", "low": ", tenth percentile of the draws", "high": ", ninetieth percentile"}


@dataclass(frozen=True)
class Telling:
    """How the words of a record are said: in which units, and for tests with marks."""

    display: Display
    marked: bool = False


def tree(item: Any, key: str, telling: Telling) -> Any:
    """Plain types. Which keys there are depends on the declarations, never on the numbers.

    A record whose words stand in the templates has them said in ``words``, and its further
    sentences in ``words_`` and their name. A table along something is a list of rows, each with
    its own of the facts that are tuples.
    """
    if isinstance(item, tuple):
        return [tree(each, f"{key}.{place}", telling) for place, each in enumerate(item)]
    if isinstance(item, float | np.ndarray):
        raise TypeError("a number without a declaration: give it one, or mark it as working")
    if isinstance(item, str):
        return guarded(item)
    if not dataclasses.is_dataclass(item):
        return item
    kind: Any = type(item)
    facts = _facts(item, key, telling)
    columns = dict(
        cell for name, said in numbers_of(kind).items() for cell in _columns(item, name, said)
    )
    rows = [dict(zip(columns, cells, strict=True)) for cells in zip(*columns.values(), strict=True)]
    if hasattr(kind, "ALONG"):
        return [_of_row(facts, place) | row for place, row in enumerate(rows)]
    node = facts | (rows[0] if rows else {})
    return node | _words(View(node, kind, key, telling.display), kind, telling.marked)


def _of_row(facts: dict[str, Any], place: int) -> dict[str, Any]:
    """The facts of one row of a table; one that is not told row by row is that of all."""
    return {name: told[place] if isinstance(told, list) else told for name, told in facts.items()}


def _facts(item: Any, key: str, telling: Telling) -> dict[str, Any]:
    """The facts of a record, and why one is not there; a table that is not there has no rows."""
    kind: Any = type(item)
    tables = {name for name, inner in records_of(kind).items() if hasattr(inner[0], "ALONG")}
    absent = getattr(item, "absent", {})
    facts: dict[str, Any] = {}
    for name in facts_of(kind):
        value = getattr(item, name)
        if value is None and name in tables:
            value = ()
        facts[name] = tree(value, f"{key}.{name}", telling)
        if name in absent:
            facts[f"{name}_why"] = reason(absent[name]) if value is None else None
    return facts


def _words(view: View, kind: Any, marked: bool) -> dict[str, str]:
    """What the templates say of a record."""
    if not hasattr(kind, "SAID_BY"):
        return {}
    parts, file = ("", *getattr(kind, "SAYS_ALSO", ())), getattr(kind, "SAID_IN", "criteria")
    return {f"words_{part}".strip("_"): words_of(view, part, file, marked) for part in parts}


def ends_of(said: Number, values: Any) -> tuple[Array, Array, Array]:
    """Low, middle and high of each column; nan where there is no number."""
    given = np.nan if values is None else values
    found = spread(given, said.cautious or "high", said.most_lacking)
    told = found.middle
    if said.expected:
        told = np.where(np.isnan(found.middle), np.nan, best(given))
    low, middle, high = (
        np.where(np.isfinite(end), end, np.nan) for end in (found.low, told, found.high)
    )
    return low, middle, high


def _columns(item: Any, name: str, said: Number) -> Iterator[tuple[str, list[Any]]]:
    """Middle, the two ends where there is a cautious one, and the reason where none is there."""
    kind = kind_of(said, getattr(item, "kept_in", "bank"))
    low, middle, high = ends_of(said, getattr(item, name))
    for end, column in (("", middle), ("low", low), ("high", high)):
        if said.cautious or not end:
            scaled = column * KINDS[kind].per_si
            yield key_of(name, kind, end), [_plain(value) for value in scaled]
    careful = {"low": low, "high": high}.get(said.cautious, middle)
    there = np.isfinite(middle) & np.isfinite(careful)
    yield (
        f"{name}_why",
        [None if whole else reason(_why(item, name, place)) for place, whole in enumerate(there)],
    )


def _why(item: Any, name: str, place: int) -> str:
    """The word of a reason, that of the row where each has its own.

    A KeyError here is a null that nobody gave a reason for.
    """
    word = item.absent[name]
    return str(word if isinstance(word, str) else word[place])


def _plain(value: float) -> float | None:
    return float(value) if np.isfinite(value) else None


def dictionary(kind: Any, before: str) -> Iterator[tuple[str, str, str]]:
    """Key, unit and meaning of every number: from the classes alone, without a result."""
    for name, said in numbers_of(kind).items():
        for one in STORES[said.kind].values() if said.kind in STORES else (said.kind,):
            for end, meaning in ENDS.items() if said.cautious else (("", ""),):
                key = f"{before}.{key_of(name, one, end)}"
                middle = EXPECTED if said.expected and not end else ""
                yield key, KINDS[one].metric.unit, f"{said.label}{meaning}{middle}"
    for name, inner in records_of(kind).items():
        for each in inner:
            star = ".*" if _is_list(kind, name) or hasattr(each, "ALONG") else ""
            yield from dictionary(each, f"{before}.{name}{star}")


def _is_list(kind: Any, name: str) -> bool:
    part = next(part for part in dataclasses.fields(kind) if part.name == name)
    return str(part.type).startswith("tuple")
