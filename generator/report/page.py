"""Where does a printed number come from? Every one is shown here, with its key in the results."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from markupsafe import Markup, escape

from generator.report.numbers import (
    ABSENT,
    JOINER,
    WORDS,
    Display,
    axis_value,
    shown,
    tied,
    unit_of,
)
from generator.report.old_keys import new_key
from generator.report.view import View
from generator.units.kinds import KINDS
from generator.verbatim import as_typed

Results = dict[str, Any]
CALLED = {"battery": "the motor", "keep": "the present diesel", "new diesel": "the new diesel"}
SAME_SPEED = 0.02  # kn; the speeds of the curves stand on a grid
PLACEHOLDER = re.compile(r"\{([a-z0-9_.]+)\|([a-z_:,]+)\}")


@dataclass(frozen=True)
class Page:
    """The results dictionary with the one door through which its values reach the page."""

    results: Results

    @cached_property
    def display(self) -> Display:
        """How this report shows numbers."""
        case = self.results["case"]
        return Display(case["units"], case["currency"])

    def value(self, key: str) -> Any:
        """The value at a dotted key; absent when any step of the way is absent."""
        found: Any = self.results
        for step in new_key(key).split("."):
            found = _below(found, step)
        return found

    def name(self, option: str) -> str:
        """What an option is called, as its owner typed it."""
        return as_typed(str(self.value(option)["name"]))

    def view(self, key: str, record: Any) -> View | None:
        """What a template may see of the record at a key; none where there is none."""
        node = self.value(key)
        return None if node is None else View(node, record, key, self.display)

    def views(self, key: str, record: Any) -> list[View]:
        """The records of a list."""
        return [View(self.value(row), record, row, self.display) for row in self.keys(key)]

    def show(self, key: str, form: str) -> Markup:
        """A number of the results as an element that names its key and its form."""
        key = new_key(key)
        value = self.value(key)
        text = shown(value, form, self.display)
        if isinstance(value, str):
            return self.words(key)
        mark = Markup(' class="absent"') if value is None else ""
        raw = "" if value is None else value
        return Markup('<data data-key="{}" data-form="{}" value="{}"{}>{}</data>').format(
            key, form, raw, mark, text
        )

    def words(self, key: str, form: str = "given") -> Markup:
        """A text of the results as it stands, or a name of the case up to its comma."""
        text = as_typed(shown(self.value(key), "plain" if form == "given" else form, self.display))
        return Markup('<span data-key="{}" data-form="{}">{}</span>').format(
            new_key(key), form, text
        )

    def span(self, low: str, high: str, form: str) -> Markup:
        """Two ends of a range, the unit once."""
        bare = form if "bare" in form else f"{form}{',' if ':' in form else ':'}bare"
        return self.show(low, bare) + Markup(" to\u00a0") + self.show(high, form)

    def plain(self, key: str, form: str) -> str:
        """The same text without its element, for charts and other plain places."""
        return as_typed(shown(self.value(key), form, self.display).replace(JOINER, ""))

    def text(self, sentence: str) -> Markup:
        """A sentence with {key|form} places: escaped text with shown numbers."""
        parts = PLACEHOLDER.split(sentence)
        pieces = [escape(tied(parts[0]))]
        for key, form, after in zip(parts[1::3], parts[2::3], parts[3::3], strict=True):
            pieces += [self.placed(key, form), escape(tied(after))]
        return Markup(as_typed(Markup("").join(pieces)))

    def placed(self, key: str, form: str) -> Markup:
        """What stands in a {key|form} place; a place of no known form stays as it was typed."""
        if form in ("given", "text"):
            return self.words(key)
        if form in WORDS:
            return self.words(key, form)
        known = form.split(":")[0] in KINDS
        return self.show(key, form) if known else escape(f"{{{key}|{form}}}")

    def at(self, row: str | None, name: str, form: str) -> Markup:
        """A number of a row that may be missing; then a dash."""
        return self.show(f"{row}.{name}", form) if row else Markup(ABSENT)

    def sentence(self, key: str) -> Markup:
        """A text of the results that may hold places of its own; absent is empty."""
        said = self.value(key)
        if not said:
            return Markup("")
        shown = Markup('<span data-key="{}" data-form="sentence">{}</span>')
        return shown.format(new_key(key), self.text(str(said)))

    def whole_sentence(self, key: str) -> Markup:
        """A clause of the results with a capital and a full stop."""
        said = str(self.value(key))
        text = f"{said[0].upper()}{said[1:]}{'' if said.endswith('.') else '.'}"
        shown = Markup('<span data-key="{}" data-form="clause">{}</span>')
        return shown.format(new_key(key), self.text(text))

    def unit(self, form: str) -> str:
        """The unit of a form, for heads and axes."""
        return unit_of(form, self.display)

    def axis(self, values: Iterable[float], form: str) -> list[float]:
        """Stored values in shown units, for the axes of a chart."""
        return [axis_value(value, form, self.display) for value in values]

    def keys(self, key: str) -> list[str]:
        """The keys of the rows of a list, or none when it is absent."""
        return [f"{key}.{row}" for row in range(len(self.value(key) or ()))]

    def find(self, key: str, **wanted: Any) -> str | None:
        """The key of the first row of a list whose entries are the wanted ones."""
        for row, entry in enumerate(self.value(key) or ()):
            if all(entry.get(name) == value for name, value in wanted.items()):
                return f"{key}.{row}"
        return None

    def at_speed(self, key: str, speed: float) -> str | None:
        """The key of the row of a list along speed that stands at a speed [kn]."""
        for row, entry in enumerate(self.value(key) or ()):
            if abs(entry["speed_kn"] - speed) < SAME_SPEED:
                return f"{key}.{row}"
        return None

    def why(self, key: str) -> str | None:
        """Why a value is absent, when the results say so."""
        stem = key.rsplit("_", 1)[0]
        named = (key, stem, stem.removesuffix("_low").removesuffix("_high"))
        reason = next(filter(None, (self.value(f"{name}_why") for name in named)), None)
        return as_typed(str(reason)) if reason else None

    @cached_property
    def options(self) -> list[str]:
        """Keys of all options in the order of the case."""
        return self.keys("options")

    @cached_property
    def motors(self) -> list[str]:
        """Keys of the options that run from a battery."""
        return [key for key in self.options if self.value(key)["kind"] == "battery"]

    def called(self, option: str, start: bool = False) -> str:
        """What a sentence calls an option: its kind where it is the only one, else its short name.

        ``start``: the sentence begins with it.
        """
        kind = self.value(f"{option}.kind")
        alone = sum(self.value(f"{key}.kind") == kind for key in self.keys("options")) == 1
        if not alone or kind not in CALLED:
            short = [str(name).partition(",")[0] for name in self.column("options", "name")]
            own = self.name(option).partition(",")[0]
            return f"{{{option}.name|{'short' if short.count(own) == 1 else 'given'}}}"
        return CALLED[kind].capitalize() if start else CALLED[kind]

    @cached_property
    def must_make(self) -> str | None:
        """Key of the worst leg that has neither refuge nor sail, as the first motor finds it."""
        worst = self.value(f"{self.motors[0]}.worst_leg") if self.motors else None
        return self.find("legs", must_make=True) if worst is None else f"legs.{worst}"

    def column(self, key: str, name: str) -> list[Any]:
        """One entry of every row of a list."""
        return [row.get(name) for row in self.value(key) or ()]


class MotorPage(Page):
    """The same for a reader whom only the battery options concern."""

    @cached_property
    def options(self) -> list[str]:
        """Keys of the options that run from a battery."""
        return [key for key in self.keys("options") if self.value(key)["kind"] == "battery"]


def _below(found: Any, step: str) -> Any:
    """One step down a key; absent when there is nothing of that name."""
    if isinstance(found, list):
        return found[int(step)] if step.isdigit() and int(step) < len(found) else None
    return found.get(step) if isinstance(found, dict) else None


def bare_text(markup: Markup) -> str:
    """The words of a piece of page without its elements."""
    return markup.striptags()


def joined(parts: Iterable[Markup], between: str = " ") -> Markup:
    """Pieces of page set one after the other."""
    return Markup(escape(between)).join(parts)
