"""How does a number look on the page: its rounding, thousands, unit and sign?

A *form* names what a number is ("speed", "mass"); flags after a colon change its dress:
``bare`` leaves the unit out, ``signed`` writes a plus, ``size`` leaves the sign out. What is known
to no better than a tenth is shown with two or three figures.
Stored values have the unit that their key's suffix says; a form knows how to show it.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

NO_BREAK = "\u00a0"
MINUS = "\u2212"
JOINER = "\u2060"  # no line ends between a sign and the currency's
ABSENT = "\u2013"
INDEX = re.compile(r"\[(\d+)\]")
NAMED_APART = re.compile(r"^(?:options|legs)\[\d+\]\.")


@dataclass(frozen=True)
class Look:
    """One display of a form: shown = stored x scale + offset, decimals by size of the shown."""

    unit: str
    steps: tuple[tuple[float, int], ...]
    scale: float = 1.0
    offset: float = 0.0
    thousands: bool = True


@dataclass(frozen=True)
class Form:
    """What a number is: the key suffixes it may stand on, its metric and its imperial look."""

    suffixes: tuple[str, ...]
    metric: Look
    imperial: Look


@dataclass(frozen=True)
class Display:
    """How this report shows numbers: metric or imperial, and in which currency."""

    units: str
    currency: str


def _rounding(*steps: float) -> tuple[tuple[float, int], ...]:
    """Pairs of limit and decimals from a flat list; the last decimals hold for all above."""
    limits = (*steps[1::2], math.inf)
    return tuple((limit, int(decimals)) for limit, decimals in zip(limits, steps[::2], strict=True))


def _same(suffixes: str, unit: str, *steps: float, thousands: bool = True) -> Form:
    look = Look(unit, _rounding(*steps), thousands=thousands)
    return Form(tuple(suffixes.split()), look, look)


def _both(suffixes: str, metric: Look, imperial: Look) -> Form:
    return Form(tuple(suffixes.split()), metric, imperial)


FOOT, POUND, INCH, GALLON, POUND_FORCE = 0.3048, 0.45359237, 25.4, 3.785411784, 4.4482216152605

FORMS: Mapping[str, Form] = {
    "speed": _same("kn", "kn", 1),
    "speed_small": _same("kn", "kn", 2),
    "wind": _same("kn", "kn", 0),
    "distance": _same("nm", "nm", 1, 10, 0),
    "power": _same("kw", "kW", 2, 1, 1, 100, 0),
    "watts": _same("w", "W", 0, 1000, -1, 10000, -2),
    "energy": _same("kwh", "kWh", 2, 1, 1, 100, 0),
    "energy_per_mile": _same("kwh per_nm", "kWh/nm", 2),
    "current": _same("a", "A", 0),
    "resistance": _same("mohm", "mΩ", 1, 10, 0),
    "short_circuit": _same("ka", "kA", 1),
    "kiloamperes": _same("ka", "kA", 0),
    "milliamperes": _same("ma", "mA", 2, 1, 0),
    "joules": _same("j", "J", 0),
    "ohms": _same("ohm", "Ω", 0),
    "capacitance": _same("mf", "mF", 1),
    "section": _same("mm2", "mm²", 1, 10, 0),
    "voltage": _same("v", "V", 1, 100, 0),
    "cell_voltage": _same("v", "V", 2),
    "charge": _same("ah", "Ah", 0),
    "rate": _same("c", "C", 2),
    "rpm": _same("rpm", "rpm", -1),
    "air": _same("m3_per_h", "m³/h", 0),
    "hours": _same("h", "h", 1, 10, 0),
    "minutes": _same("min", "min", 0),
    "days": _same("d", "days", 0),
    "seconds": _same("s", "s", 1, 10, 0),
    "percent": _same("pct", "%", 1, 10, 0),
    "angle": _same("deg", "°", 1),
    "ratio": _same("", "", 2, 10, 1),
    "share": _both("share", Look("%", _rounding(0), 100.0), Look("%", _rounding(0), 100.0)),
    "share_small": _both(
        "share", Look("%", _rounding(2, 1, 1), 100.0), Look("%", _rounding(2, 1, 1), 100.0)
    ),
    "count": _same("", "", 0),
    "mean_count": _same("", "", 0, 0.05, 1, 10, 0),
    "flag": _same("", "", 0),
    "lengths": _same("", "lengths", 2),
    "specific_power": _same("kw_per_t", "kW/t", 1),
    "years": _same("years", "years", 0),
    "year": _same("year market line", "", 0, thousands=False),
    "plain": _same("", "", 4, 0.01, 3, 10, 1, 1000, 0),
    "mass": _both("kg", Look("kg", _rounding(0)), Look("lb", _rounding(0), scale=1 / POUND)),
    "mass_about": _both(
        "kg",
        Look("kg", _rounding(0, 100, -1, 1000, -2, 10000, -3)),
        Look("lb", _rounding(0, 100, -1, 1000, -2, 10000, -3), scale=1 / POUND),
    ),
    "length": _both("m", Look("m", _rounding(2)), Look("ft", _rounding(1), scale=1 / FOOT)),
    "height": _both("m", Look("m", _rounding(1)), Look("ft", _rounding(1), scale=1 / FOOT)),
    "length_small": _both("mm", Look("mm", _rounding(0)), Look("in", _rounding(1), scale=1 / INCH)),
    "area": _both("m2", Look("m²", _rounding(1)), Look("ft²", _rounding(0), scale=1 / FOOT**2)),
    "fetch": _both("km", Look("km", _rounding(0)), Look("nm", _rounding(1), scale=1 / 1.852)),
    "force": _both(
        "n",
        Look("N", _rounding(0, 1000, -1, 10000, -2)),
        Look("lbf", _rounding(0, 1000, -1, 10000, -2), scale=1 / POUND_FORCE),
    ),
    "torque": _same("newtonmetre", "N m", 0),
    "fuel": _both(
        "l", Look("L", _rounding(1, 10, 0)), Look("US gal", _rounding(1), scale=1 / GALLON)
    ),
    "fuel_rate": _both(
        "h l", Look("L/h", _rounding(2, 1, 1)), Look("US gal/h", _rounding(2), scale=1 / GALLON)
    ),
    "sunshine": _same("kwh_m2", "kWh/m²", 2, 1, 1, 100, 0),
    "temperature": _both(
        "c", Look("°C", _rounding(0)), Look("°F", _rounding(0), scale=1.8, offset=32.0)
    ),
    "intensity": _same("kwh per_kwh", "g/kWh", 0),
    "price": _same("l kwh per_l per_kwh", "", 2),
    "money": _same("money", "", 0, 1000, -1, 20000, -2),
}

SYMBOLS: Mapping[str, str] = {
    "GBP": "£", "EUR": "€", "USD": "$", "AUD": "A$", "NZD": "NZ$", "CAD": "C$",
}  # fmt: skip


UNITS = sorted({look.unit for form in FORMS.values() for look in (form.metric, form.imperial)})
UNTIED = re.compile(rf"(?<=\d) (?=(?:{'|'.join(re.escape(unit) for unit in UNITS if unit)})(?!\w))")


def tied(text: str) -> str:
    """The text with no line end between a number and the unit that follows it."""
    return UNTIED.sub(NO_BREAK, text)


def look_of(name: str, display: Display) -> Look:
    """The look of a form in this report's units."""
    form = FORMS[name]
    return form.imperial if display.units == "imperial" else form.metric


def unit_of(spec: str, display: Display) -> str:
    """The unit as it stands in the head of a column."""
    name = spec.split(":")[0]
    return currency_sign(display) if name in ("money", "price") else look_of(name, display).unit


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


WORDS: Mapping[str, Callable[[str], str]] = {"short": _short, "path": _path}


def _dressed(value: float, name: str, flags: tuple[str, ...], display: Display) -> str:
    look = look_of(name, display)
    digits, way = _digits(axis_value(value, name, display), look)
    sign = MINUS if way < 0 else "+" if "signed" in flags and way > 0 else ""
    sign = "" if "size" in flags else sign
    if "bare" in flags:
        return sign + digits
    if name in ("money", "price"):
        return sign + (JOINER if sign else "") + currency_sign(display) + digits
    gap = "" if look.unit in ("", "°", "%") else NO_BREAK
    return f"{sign}{digits}{gap}{look.unit}"


def _digits(number: float, look: Look) -> tuple[str, int]:
    """Digits without sign, and the sign of what is left after rounding."""
    size = abs(number)
    decimals = next(places for limit, places in look.steps if size < limit)
    rounded = round(size, decimals)
    comma = "," if look.thousands else ""
    way = 0 if rounded == 0 else -1 if number < 0 else 1
    return format(rounded, f"{comma}.{max(decimals, 0)}f"), way
