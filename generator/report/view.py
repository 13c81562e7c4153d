"""What may a template see of a record, and what is a number there?

A view reads the record back from the results: what is not in results.json cannot be printed.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Any

from markupsafe import Markup

from generator.records import Number, facts_of, key_of, kind_of, numbers_of, records_of
from generator.report.numbers import ABSENT, JOINER, Display, shown, unit_of
from generator.verbatim import as_typed


@dataclass(frozen=True, eq=False)
class Quantity:
    """A number and its declaration; it can be neither compared nor used as a condition."""

    key: str
    said: Number
    kind: str
    node: Mapping[str, Any]
    display: Display
    flags: tuple[str, ...] = ()
    end: str = ""

    @property
    def name(self) -> str:
        """The field that it is declared at."""
        return self.key.rpartition(".")[2]

    @property
    def full_key(self) -> str:
        """Where it stands in the results."""
        return f"{self.key.rpartition('.')[0]}.{key_of(self.name, self.kind, self.end)}"

    @property
    def value(self) -> float | None:
        """As it is stored; none where there is none."""
        found: float | None = self.node[key_of(self.name, self.kind, self.end)]
        return found

    @property
    def why(self) -> str:
        """Why there is none."""
        return as_typed(self.node[f"{self.name}_why"] or "")

    @property
    def there(self) -> bool:
        """The one condition that a template may ask of a number."""
        return self.value is not None

    @property
    def form(self) -> str:
        """The look of it, with its flags."""
        return ":".join(part for part in (self.kind, ",".join(self.flags)) if part)

    def __bool__(self) -> bool:
        """Refused: zero is a value, and a number is no fact."""
        raise TypeError(f"{self.key}: ask for a named fact, or for .there")

    @property
    def text(self) -> str:
        """In its own unit. A sentence that lost its number is a fault, never a dash."""
        self._must_be_there()
        return shown(self.value, self.form, self.display).replace(JOINER, "")

    def _must_be_there(self) -> None:
        if self.value is None:
            raise ValueError(f"{self.full_key} has no value: ask for .there and tell why")

    @property
    def element(self) -> Markup:
        """On a page: an element that names its key and its form."""
        self._must_be_there()
        text = shown(self.value, self.form, self.display)
        return Markup('<data data-key="{}" data-form="{}" value="{}">{}</data>').format(
            self.full_key, self.form, self.value, text
        )

    @property
    def cell(self) -> Markup:
        """In a table: without its unit, a dash where there is none."""
        return with_flag(self, "bare").full

    @property
    def full(self) -> Markup:
        """In a table: with its unit, a dash where there is none."""
        if self.value is not None:
            return self.element
        empty = Markup('<data data-key="{}" data-form="{}" value="" class="absent">{}</data>')
        return empty.format(self.full_key, self.form, ABSENT)


class Fact(str):
    """A word of the results that knows where it stands there."""

    __slots__ = ("key",)
    key: str

    @property
    def element(self) -> Markup:
        """On a page: an element that names its key."""
        return Markup('<span data-key="{}" data-form="given">{}</span>').format(self.key, str(self))


def fact(text: str, key: str) -> Fact:
    """A word of the results, as it was typed."""
    made = Fact(as_typed(text))
    made.key = key
    return made


@dataclass(frozen=True, eq=False)
class View:
    """A record read back from the results."""

    # Underscored, because a record may well have a field called node or key.
    _node: Mapping[str, Any]
    _record: Any
    _key: str
    _display: Display

    def __getattr__(self, name: str) -> Any:
        """A number as a quantity, records as views, facts as they are; else AttributeError."""
        said = numbers_of(self._record).get(name)
        if said is not None:
            kind = kind_of(said, self._node.get("kept_in", "bank"))
            return Quantity(f"{self._key}.{name}", said, kind, self._node, self._display)
        if name not in self._node:
            raise AttributeError(f"{self._record.__name__} has no {name}")
        value, key = self._node[name], f"{self._key}.{name}"
        inner = records_of(self._record).get(name)
        if isinstance(value, list):
            return [self._item(each, inner, f"{key}.{place}") for place, each in enumerate(value)]
        return self._item(value, inner, key)

    def _item(self, value: Any, inner: tuple[Any, ...] | None, key: str) -> Any:
        """What a field, or one entry of its list, holds."""
        if isinstance(value, str):
            return fact(value, key)
        if inner is None or value is None:
            return value
        return View(value, _class_of(inner, value), key, self._display)


def _class_of(inner: tuple[Any, ...], node: Mapping[str, Any]) -> Any:
    """Of the records that may stand here the one whose fields the node has; of two, the larger."""
    names = {each: [*facts_of(each), *(f"{n}_why" for n in numbers_of(each))] for each in inner}
    fits = [each for each, own in names.items() if all(name in node for name in own)]
    return max(fits, key=lambda each: len(names[each]))


def with_flag(it: Quantity, flag: str) -> Quantity:
    """The number in another dress."""
    return replace(it, flags=(*it.flags, flag))


def cautious(it: Quantity) -> Quantity:
    """The number at the end that a careful skipper plans with."""
    return replace(it, end=it.said.cautious)


def label_of(view: View, name: str) -> str:
    """What a number of a record is called, with a capital."""
    label = numbers_of(view._record)[name].label
    return f"{label[0].upper()}{label[1:]}"


def unit_in(view: View, name: str) -> str:
    """The unit in which a number of a record is shown."""
    said = numbers_of(view._record)[name]
    return unit_of(kind_of(said, view._node.get("kept_in", "bank")), view._display)


def whys(numbers: Iterable[Quantity]) -> list[str]:
    """Why the dashes of a table are dashes; each reason once."""
    return list(dict.fromkeys(it.why for it in numbers if not it.there))
