"""Is one value of the case file what its key asks for?"""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date
from typing import Any

from pydantic import GetCoreSchemaHandler
from pydantic_core import PydanticCustomError, core_schema

from generator.case.nearest import nearest
from generator.case.read import Hole
from generator.case.said import Said
from generator.units.families import KINDS
from generator.units.grammar import (
    Quantity,
    Refusal,
    expectation,
    from_si,
    read_half_width,
    read_quantity,
)

ORIGINS = ("weighed", "measured", "builder", "estimate")
LONGEST_TEXT = 400


@dataclass(frozen=True)
class Spot:
    """A fault inside one value: at the value itself, at its ``from`` or its ``plus_minus``."""

    part: str
    problem: str
    expected: str


@dataclass(frozen=True)
class Given:
    """A number that the owner gave: SI, as it was spelled, its origin and its range."""

    kind: str
    value: float
    low: float
    high: float
    unit: str  # as spelled
    shown: str
    shown_low: str
    shown_high: str
    provenance: str
    plus_minus: str
    line: int
    column: int


@dataclass(frozen=True)
class Leaf:
    """What one key asks for; told to pydantic as an annotation."""

    def __get_pydantic_core_schema__(
        self, source: Any, handler: GetCoreSchemaHandler
    ) -> core_schema.CoreSchema:
        return core_schema.no_info_plain_validator_function(self.take)

    def take(self, data: object) -> object:
        """The value behind a text; every fault in it at once."""
        if isinstance(data, Hole):
            return None
        if not isinstance(data, Said):
            shape = "a list" if isinstance(data, list) else "a section"
            raise _refused([Spot("", f"is {shape}", self._expected())])
        spots = self._origin(data)
        found = self._read(data, spots)
        if spots:
            raise _refused(spots)
        return found

    def wanted(self) -> str:
        """The end of a message about a missing key."""
        return self._expected()

    def _expected(self) -> str:
        """The end of a message: what would be right."""
        raise NotImplementedError

    def _read(self, said: Said, spots: list[Spot]) -> object:
        """The value; what is wrong goes to the spots."""
        raise NotImplementedError

    def _origin(self, said: Said) -> list[Spot]:
        """Faults of ``from`` and of a doubt where none can be."""
        spots = []
        if said.origin and not said.beside and said.origin.text not in ORIGINS:
            hope = nearest(said.origin.text, ORIGINS) or f"expected one of: {', '.join(ORIGINS)}"
            spots.append(Spot("from", f"`{_short(said.origin.text)}` is no origin", hope))
        if said.doubt and not isinstance(self, Amount):
            spots.append(
                Spot("plus_minus", "stands at a value that is no quantity", "expected none")
            )
        return spots


@dataclass(frozen=True)
class Amount(Leaf):
    """A number with a unit of one kind, within limits in SI."""

    kind: str
    low: float | None = 0.0
    high: float | None = None
    above: bool = True  # the lower limit itself is not allowed
    whole: bool = False

    def _expected(self) -> str:
        return expectation(self.kind)

    def _read(self, said: Said, spots: list[Spot]) -> Given | None:
        quantity = read_quantity(said.text, self.kind)
        if isinstance(quantity, Refusal):
            spots.append(Spot("", quantity.problem, quantity.expected))
            return None
        spots.extend(self._limits(said.text, quantity))
        half = read_half_width(said.doubt.text, quantity) if said.doubt else 0.0
        if isinstance(half, Refusal):
            spots.append(Spot("plus_minus", half.problem, half.expected))
            return None
        if said.doubt and self.low == 0.0 and self.above and half >= quantity.value > 0.0:
            spots.append(Spot("plus_minus", "is as large as the value", "expected a smaller doubt"))
        return _given(said, quantity, half)

    def _limits(self, text: str, quantity: Quantity) -> list[Spot]:
        """Below, at or above what can be."""
        value = quantity.value
        if self.low is not None and (value < self.low or (self.above and value == self.low)):
            sign = "above" if self.above else "not below"
            return [Spot("", f"is `{text}`", f"expected {self._limit(self.low, sign, quantity)}")]
        if self.high is not None and value > self.high:
            hope = self._limit(self.high, "not above", quantity)
            return [Spot("", f"is `{text}`", f"expected {hope}")]
        if self.whole and value != int(value):
            return [Spot("", f"is `{text}`", "expected a whole number")]
        return []

    def _limit(self, limit: float, words: str, quantity: Quantity) -> str:
        return f"{KINDS[self.kind].noun} {words} {_spell(limit, quantity.unit)}"


@dataclass(frozen=True)
class Word(Leaf):
    """One word of a closed list; others may be refused with a reason of their own."""

    words: tuple[str, ...]
    otherwise: str = ""

    def _expected(self) -> str:
        several = len(self.words) > 1
        return f"expected {'one of: ' if several else ''}{', '.join(self.words)}"

    def _read(self, said: Said, spots: list[Spot]) -> str:
        if said.text not in self.words:
            hope = self.otherwise or nearest(said.text, self.words) or self._expected()
            spots.append(Spot("", f"is `{_short(said.text)}`", hope))
        return said.text


@dataclass(frozen=True)
class Text(Leaf):
    """Free words, blanks and line ends made single blanks."""

    longest: int = LONGEST_TEXT

    def _expected(self) -> str:
        return "expected a text"

    def _read(self, said: Said, spots: list[Spot]) -> str:
        text = " ".join(said.text.split())
        if not text:
            spots.append(Spot("", "is empty", "expected a text, or leave the key out"))
        if len(text) > self.longest:
            hope = f"expected at most {self.longest}"
            spots.append(Spot("", f"has {len(text)} characters", hope))
        return text


@dataclass(frozen=True)
class Pattern(Leaf):
    """A text of a fixed form."""

    form: str
    hope: str

    def _expected(self) -> str:
        return f"expected {self.hope}"

    def _read(self, said: Said, spots: list[Spot]) -> str:
        if not re.fullmatch(self.form, said.text):
            spots.append(Spot("", f"is `{_short(said.text)}`", self._expected()))
        return said.text


@dataclass(frozen=True)
class Day(Leaf):
    """A day of the calendar."""

    def _expected(self) -> str:
        return "expected a date such as `2026-05-17`"

    def _read(self, said: Said, spots: list[Spot]) -> str:
        try:
            day = date.fromisoformat(said.text).isoformat()
        except ValueError:
            day = ""
        if day != said.text:
            spots.append(Spot("", f"is `{_short(said.text)}`", self._expected()))
        return said.text


@dataclass(frozen=True)
class Whole(Leaf):
    """A whole number without a unit: a year, a count."""

    low: int
    high: int

    def _expected(self) -> str:
        return f"expected a whole number from {self.low} to {self.high}"

    def _read(self, said: Said, spots: list[Spot]) -> int:
        number = int(said.text) if re.fullmatch(r"[0-9]{1,6}", said.text) else -1
        if not self.low <= number <= self.high:
            spots.append(Spot("", f"is `{_short(said.text)}`", self._expected()))
        return number


@dataclass(frozen=True)
class Flag(Leaf):
    """True or false, in these words only."""

    def _expected(self) -> str:
        return "expected `true` or `false`"

    def _read(self, said: Said, spots: list[Spot]) -> bool:
        if said.text not in ("true", "false"):
            spots.append(Spot("", f"is `{_short(said.text)}`", self._expected()))
        return said.text == "true"


@dataclass(frozen=True)
class Beside(Leaf):
    """A doubt or an origin of a list item, judged where its amount is read."""

    def _expected(self) -> str:
        return "expected one value"

    def _read(self, said: Said, spots: list[Spot]) -> str:
        return said.text


def _given(said: Said, quantity: Quantity, half: float) -> Given:
    """The number with the range that its doubt spans."""
    low, high = quantity.value - half, quantity.value + half
    shown = " ".join(said.text.split())
    doubt = " ".join(said.doubt.text.split()) if said.doubt else ""
    return Given(
        kind=quantity.kind,
        value=quantity.value,
        low=low,
        high=high,
        unit=quantity.unit,
        shown=shown,
        shown_low=_spell(low, quantity.unit) if half else shown,
        shown_high=_spell(high, quantity.unit) if half else shown,
        provenance=said.origin.text if said.origin else "",
        plus_minus=doubt,
        line=said.line,
        column=said.column,
    )


def _spell(value: float, unit: str) -> str:
    """An SI number in the owner's unit."""
    return f"{float(from_si(value, unit)):.6g} {unit}".rstrip()


def _short(text: str) -> str:
    return text if len(text) <= 64 else f"{text[:60]} ..."


def _refused(spots: list[Spot]) -> PydanticCustomError:
    return PydanticCustomError("refused", "refused", {"spots": spots})
