"""How does a number look on the page: its rounding, thousands, unit and sign?

A *form* names what a number is ("speed", "mass"); flags after a colon change its dress:
``bare`` leaves the unit out, ``signed`` writes a plus, ``size`` leaves the sign out, ``whole``
leaves the decimals of a whole number out: of what was stated so ("20 kn", "10 kW", "12 V"). What is
known to no better than a tenth is shown with two or three figures.
Stored values have the unit that their key's suffix says; a form knows how to show it.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from generator.units.kinds import KINDS, Look

NO_BREAK = "\u00a0"
MINUS = "\u2212"
JOINER = "\u2060"  # no line ends between a sign and the currency's
ABSENT = "\u2013"
INDEX = re.compile(r"\[(\d+)\]")
PLACED = re.compile(r"^.*?:\d+: warning: (?P<path>[\w.\[\]]+): (?P<words>.*)$", re.DOTALL)
WHOLE = 1e-6  # of the shown unit; stored values have nine figures
NAMED_APART = re.compile(r"^(?:options|legs)\[\d+\]\.")


@dataclass(frozen=True)
class Display:
    """How this report shows numbers: metric or imperial, and in which currency."""

    units: str
    currency: str


SYMBOLS: Mapping[str, str] = {
    "GBP": "£", "EUR": "€", "USD": "$", "AUD": "A$", "NZD": "NZ$", "CAD": "C$",
}  # fmt: skip


UNITS = sorted({look.unit for kind in KINDS.values() for look in (kind.metric, kind.imperial)})
UNTIED = re.compile(rf"(?<=\d) (?=(?:{'|'.join(re.escape(unit) for unit in UNITS if unit)})(?!\w))")


def tied(text: str) -> str:
    """The text with no line end between a number and the unit that follows it."""
    return UNTIED.sub(NO_BREAK, text)


def look_of(name: str, display: Display) -> Look:
    """The look of a form in this report's units."""
    kind = KINDS[name]
    return kind.imperial if display.units == "imperial" else kind.metric


def unit_of(spec: str, display: Display) -> str:
    """The unit as it stands in the head of a column."""
    name = spec.split(":")[0]
    return currency_sign(display) if KINDS[name].of_money else look_of(name, display).unit


def currency_sign(display: Display) -> str:
    """The sign of the currency, or its code where the sign would mislead."""
    return SYMBOLS.get(display.currency, display.currency + NO_BREAK)


def shown(value: Any, spec: str, display: Display) -> str:
    """The text of a stored value: a dash when absent, a given text as it stands.

    A name of the case is short up to its comma; a flag is yes from one upwards.
    """
    if value is None:
        return ABSENT
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, str):
        return WORDS.get(spec, str)(value)
    name, _, flags = spec.partition(":")
    if name == "flag":
        return "yes" if value >= 1 else "no"
    return _dressed(float(value), name, tuple(flags.split(",")), display)


def axis_value(value: float, name: str, display: Display) -> float:
    """The stored value in the shown unit, unrounded: for the axes of a chart."""
    look = look_of(name, display)
    return value * look.scale + look.offset


def _short(name: str) -> str:
    return name.partition(",")[0]


def _path(path: str) -> str:
    """A path of the case in words; the option or the leg that it begins with is named apart."""
    *groups, last = [
        INDEX.sub(lambda found: f" {int(found[1]) + 1}", step).replace("_", " ")
        for step in NAMED_APART.sub("", path).split(".")
    ]
    return f"{', '.join(groups)}: {last}" if groups else last


def _warning(said: str) -> str:
    """A warning on an input without the place in the file; the input is named in words."""
    found = PLACED.match(said)
    if found is None:
        return said
    path = _path(found["path"])
    return f"{path[0].upper()}{path[1:]}: {found['words']}"


WORDS: Mapping[str, Callable[[str], str]] = {"short": _short, "path": _path, "warning": _warning}


def _dressed(value: float, name: str, flags: tuple[str, ...], display: Display) -> str:
    look = look_of(name, display)
    digits, way = _digits(axis_value(value, name, display), look, "whole" in flags)
    sign = MINUS if way < 0 else "+" if "signed" in flags and way > 0 else ""
    sign = "" if "size" in flags else sign
    if "bare" in flags:
        return sign + digits
    if KINDS[name].of_money:
        return sign + (JOINER if sign else "") + currency_sign(display) + digits
    gap = "" if look.unit in ("", "°", "%") else NO_BREAK
    return f"{sign}{digits}{gap}{look.unit}"


def _digits(number: float, look: Look, whole: bool) -> tuple[str, int]:
    """Digits without sign, and the sign of what is left after rounding."""
    size = abs(number)
    decimals = next(places for limit, places in look.steps if size < limit)
    if whole and abs(size - round(size)) < WHOLE:
        decimals = min(decimals, 0)
    rounded = round(size, decimals)
    comma = "," if look.thousands else ""
    way = 0 if rounded == 0 else -1 if number < 0 else 1
    return format(rounded, f"{comma}.{max(decimals, 0)}f"), way
