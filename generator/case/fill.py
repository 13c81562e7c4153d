"""Where does each number of the frozen case come from: the owner, or the register?"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, fields, replace
from typing import Any, TypeVar

from generator.case.assumption import Assumption
from generator.case.key_kinds import Group
from generator.case.leaf import Given
from generator.case.register import Default, find_default, sized
from generator.case.streams import stream_name
from generator.errors import TableError
from generator.units.grammar import si_unit

AS_IS = "EUR figure taken as is"
NO_SIZES: Mapping[str, float] = {}
T = TypeVar("T")


@dataclass(frozen=True)
class Desk:
    """Takes numbers in and notes each of them as an assumption."""

    currency: str
    names: dict[str, str] = field(default_factory=dict)  # of list items, by their path
    taken: list[Assumption] = field(default_factory=list)
    streams: dict[tuple[int, int], str] = field(default_factory=dict)  # by place in the file

    def number(
        self,
        given: Given | None,
        path: str,
        key: str,
        words: Iterable[str] = (),
        sizes: Mapping[str, float] = NO_SIZES,
    ) -> float | None:
        """The owner's number, else the register's at the size of the thing, else none."""
        row = find_default(key, words)
        if given:
            self.taken.append(
                _from_owner(given, path, self._stream(given, path), row.meaning if row else "")
            )
            return given.value
        if row:
            row = sized(_in_currency(row, self.currency), sizes)
            self.taken.append(_from_register(row, path))
            return row.value
        return None

    def _stream(self, given: Given, path: str) -> str:
        """The name of its draws; what is said once and taken over elsewhere is drawn once."""
        own = stream_name(path, self.names)
        return self.streams.setdefault((given.line, given.column), own)

    def fill(
        self,
        kind: type[T],
        keys: Group,
        path: str,
        key: str,
        words: Iterable[str] = (),
        sizes: Mapping[str, float] = NO_SIZES,
        **known: Any,
    ) -> T:
        """A dataclass of the case from the keys of its section; ``known`` fields are final.

        ``sizes`` are what defaults grow with, SI by measure.
        """
        values: dict[str, Any] = dict(known)
        for part in fields(kind):  # type: ignore[arg-type]
            name, asked = part.name, str(part.type)
            if name in values:
                continue
            said = getattr(keys, name)
            if not asked.startswith("Numbers"):
                values[name] = said
                continue
            values[name] = self.number(said, f"{path}.{name}", f"{key}.{name}", words, sizes)
            if values[name] is None and "None" not in asked:
                raise TableError(f"register: no row for {key}.{name} with {', '.join(words)}")
        return kind(**values)


def _from_owner(given: Given, path: str, stream: str, meaning: str) -> Assumption:
    """A number of the case file; options that inherit it share its stream of draws."""
    return Assumption(
        path=path,
        draw_key=stream,
        value=given.value,
        low=given.low,
        high=given.high,
        shape="normal" if given.high > given.low else "fixed",
        unit=si_unit(given.unit),
        shown=given.shown,
        shown_low=given.shown_low,
        shown_high=given.shown_high,
        origin="given",
        provenance=given.provenance,
        plus_minus=given.plus_minus,
        source="",
        mark="",
        meaning=meaning,
        line=given.line,
    )


def _from_register(row: Default, path: str) -> Assumption:
    """A number of the register."""
    return Assumption(
        path=path,
        draw_key=row.draw_key,
        value=row.value,
        low=row.low,
        high=row.high,
        shape=row.shape,
        unit=si_unit(row.unit),
        shown=row.shown,
        shown_low=row.shown_low,
        shown_high=row.shown_high,
        origin="default",
        provenance="register",
        plus_minus="",
        source=row.source,
        mark=row.mark,
        meaning=row.meaning,
        line=0,
        size=row.size,
    )


def _in_currency(row: Default, currency: str) -> Default:
    """A price of the register, number for number in the currency of the case."""
    if not row.unit.startswith("EUR") or currency == "EUR":
        return row
    return replace(
        row,
        unit=row.unit.replace("EUR", currency),
        shown=row.shown.replace("EUR", currency),
        shown_low=row.shown_low.replace("EUR", currency),
        shown_high=row.shown_high.replace("EUR", currency),
        meaning=f"{row.meaning} ({AS_IS})",
    )
