"""How does a quantity in words become an SI number, and how does it come back for the page?"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from functools import cache, lru_cache
from typing import TYPE_CHECKING

from generator.arrays import Numbers
from generator.units.families import DEFINITIONS, DISPLAY, HINTS, KINDS, PAGE_UNITS, Kind

if TYPE_CHECKING:
    from pint import UnitRegistry

LONGEST = 64
_NUMBER = r"[+-]?(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][+-]?[0-9]{1,3})?"
_QUANTITY = re.compile(rf"({_NUMBER})[ ]*(.*)")
_FEET_INCHES = re.compile(
    r"([+-]?)([0-9]+)[ ]*(?:ft|feet|')[ ]*([0-9]+(?:\.[0-9]*)?)[ ]*(?:in|inch|inches|\")"
)
_DOUBT = re.compile(r"(.*[^ ])[ ]*(?:±|\+/?-)[ ]*(.+)")
_GROUPED_COMMA = re.compile(r"([+-]?[0-9]{1,3}(?:,[0-9]{3})+(?:\.[0-9]+)?)(?![0-9,])(.*)")
_COMMA = re.compile(r"([+-]?[0-9]+),([0-9]+)(?![0-9,.])(.*)")
_GROUPED = re.compile(r"([+-]?[0-9]{1,3}(?:([ '’_.])[0-9]{3})(?:\2[0-9]{3})*)(?![0-9])(.*)")
_RANGE = re.compile(rf"({_NUMBER})[^0-9]*?[ ]*(?:-|–|to|\.\.)[ ]*({_NUMBER})[ ]*([^0-9]*)")
_CURRENCY_FIRST = re.compile(rf"([A-Z]{{3}}|[£€$])[ ]*({_NUMBER})")
_SYMBOLS = {"£": "GBP", "€": "EUR", "$": "USD"}


@dataclass(frozen=True)
class Quantity:
    """A number that was read: in SI, and as it was spelled."""

    kind: str
    value: float  # SI
    number: float  # as spelled
    unit: str  # as spelled, one of the closed list


@dataclass(frozen=True)
class Refusal:
    """Why a text is no quantity of its kind, and what would be."""

    problem: str
    expected: str


def read_quantity(text: str, kind: str) -> Quantity | Refusal:
    """The quantity that a text spells, by a closed grammar: one number, one unit of its kind."""
    words = re.sub(r"[ \t\u00a0\u202f]+", " ", text[: LONGEST + 1]).strip()
    if len(text) > LONGEST:
        return Refusal(f"is longer than {LONGEST} characters", expectation(kind))
    feet = _FEET_INCHES.fullmatch(words)
    if feet and kind == "length":
        return _feet_and_inches(feet, words)
    match = _QUANTITY.fullmatch(words)
    if not match or match[2] not in KINDS[kind].units:
        return _diagnose(words, kind)
    return _quantity(float(match[1]), match[2], kind, words)


def read_half_width(text: str, centre: Quantity) -> float | Refusal:
    """Half the width of a doubt, in SI: per cent of the value, or an amount in a unit."""
    share = read_quantity(text, "fraction")
    relative = isinstance(share, Quantity) and share.unit != ""
    doubt = share if relative else read_quantity(text, centre.kind)
    if isinstance(doubt, Refusal):
        return Refusal(
            doubt.problem, f"expected per cent such as `5 %`, or {_such_as(centre.kind)}"
        )
    if doubt.number < 0:
        return Refusal(
            f"`{text}` is negative", "expected half the width of the doubt, such as `5 %`"
        )
    if relative:
        return abs(centre.value) * doubt.value
    if currency_of(doubt) != currency_of(centre):
        return Refusal(f"`{text}` is in another currency", "expected that of the value")
    return doubt.number * scale_and_offset(doubt.unit)[0]  # a difference has no offset


def expectation(kind: str) -> str:
    """What the grammar wants for a kind, with an example and the closed list."""
    units = [unit or "no unit" for unit in KINDS[kind].shown]
    several = len(units) > 1
    return f"expected {_such_as(kind)}" + (f" (units: {', '.join(units)})" if several else "")


def si_unit(unit: str) -> str:
    """The label of the SI unit that a spelled unit is converted to."""
    kind = _kind_of(unit)
    if not kind.money:
        return kind.si
    return unit.split("/", maxsplit=1)[0] + kind.si


def currency_of(quantity: Quantity) -> str:
    """The currency of a price or of a price rate, else nothing."""
    return quantity.unit.split("/", maxsplit=1)[0] if KINDS[quantity.kind].money else ""


def to_si(number: Numbers, unit: str) -> Numbers:
    """A number in a spelled unit, in SI."""
    scale, offset = scale_and_offset(unit)
    return number * scale + offset


def from_si(value: Numbers, unit: str) -> Numbers:
    """An SI number in a spelled unit."""
    scale, offset = scale_and_offset(unit)
    return (value - offset) / scale


def display_unit(quantity: str, system: str) -> str:
    """The unit in which a page shows a quantity, ``metric`` or ``imperial``."""
    metric, imperial = DISPLAY[quantity]
    return imperial if system == "imperial" else metric


def to_display(value: Numbers, quantity: str, system: str) -> Numbers:
    """An SI number in the unit in which a page shows it."""
    return from_si(value, display_unit(quantity, system))


@cache
def scale_and_offset(unit: str) -> tuple[float, float]:
    """SI = number x scale + offset; only names of our own list reach pint."""
    name, si_name = _names(unit)
    registry = _registry()
    offset = float(registry.Quantity(0.0, name).to(si_name).magnitude)
    if offset == 0.0:
        return float(registry.Quantity(1.0, name).to(si_name).magnitude), 0.0
    far = 1e6  # from afar, so that taking the offset away costs no digits
    return (float(registry.Quantity(far, name).to(si_name).magnitude) - offset) / far, offset


@lru_cache(maxsize=1)
def _registry() -> UnitRegistry[float]:
    """Our own short list of definitions: the full one of pint takes fifteen times longer."""
    from pint import UnitRegistry

    return UnitRegistry(DEFINITIONS)


def _names(unit: str) -> tuple[str, str]:
    """Pint's names of a spelled unit and of its SI unit."""
    if unit in PAGE_UNITS:
        return PAGE_UNITS[unit]
    kind = _kind_of(unit)
    return kind.units[unit], kind.si_name


@cache
def _kind_of(unit: str) -> Kind:
    """The first kind that knows the unit; a spelling has one meaning in all kinds."""
    return next(kind for kind in KINDS.values() if unit in kind.units)


def _quantity(number: float, unit: str, kind: str, words: str) -> Quantity | Refusal:
    """A matched number and unit in SI, refused where the number overflows."""
    value = number * scale_and_offset(unit)[0] + scale_and_offset(unit)[1]
    if not math.isfinite(value):
        return Refusal(f"`{words}` is too large a number", expectation(kind))
    return Quantity(kind, value, number, unit)


def _feet_and_inches(match: re.Match[str], words: str) -> Quantity | Refusal:
    """`31 ft 6 in` as a sum; the sign belongs to the whole."""
    inches = float(match[3])
    if inches >= 12:
        return Refusal(
            f"`{words}` has twelve inches or more", "expected less than 12 in after feet"
        )
    feet = (int(match[2]) + inches / 12) * (-1 if match[1] == "-" else 1)
    return Quantity("length", feet * scale_and_offset("ft")[0], feet, "ft")


def _such_as(kind: str) -> str:
    return f"{KINDS[kind].noun} such as `{KINDS[kind].example}`"


def _diagnose(words: str, kind: str) -> Refusal:
    """Why the grammar does not fit, with the right spelling where one can be told."""
    for look in (_doubt, _grouping, _currency_first, _range):
        refusal = look(words)
        if refusal:
            return refusal
    match = _QUANTITY.fullmatch(words)
    if not words:
        return Refusal("is empty", expectation(kind))
    if not match:
        return Refusal(f"`{words}` does not start with a number", expectation(kind))
    return _wrong_unit(words, match[2].strip(), kind)


def _doubt(words: str) -> Refusal | None:
    match = _DOUBT.fullmatch(words)
    if not match:
        return None
    number, doubt = _QUANTITY.fullmatch(match[1]), _QUANTITY.fullmatch(match[2])
    bare = number and doubt and not number[2] and doubt[2] != "%"
    value = f"{match[1]} {doubt[2]}" if bare and doubt else match[1]
    spelling = f"{{value: {value}, plus_minus: {match[2]}}}"
    return Refusal(f"`{words}` carries its doubt in the number", f"expected `{spelling}`")


def _grouping(words: str) -> Refusal | None:
    """Decimal commas, and thousands set apart by comma, blank, apostrophe or point."""
    grouped = _GROUPED_COMMA.fullmatch(words)
    if grouped:
        whole, point = grouped[1].replace(",", ""), grouped[1].replace(",", ".")
        either = f" or `{point}{grouped[2]}`" if point.count(".") == 1 else ""
        return Refusal(f"`{words}` has a comma", f"expected `{whole}{grouped[2]}`{either}")
    comma = _COMMA.fullmatch(words)
    if comma:
        right = f"{comma[1]}.{comma[2]}{comma[3]}"
        return Refusal(f"`{words}` has a decimal comma", f"expected `{right}`")
    apart = _GROUPED.fullmatch(words)
    if apart and (apart[2] != "." or apart[1].count(".") > 1):
        right = re.sub(r"[ '’_.]", "", apart[1]) + apart[3]
        return Refusal(f"`{words}` sets thousands apart", f"expected `{right}`")
    return None


def _currency_first(words: str) -> Refusal | None:
    match = _CURRENCY_FIRST.match(words)
    if not match or (match[1] not in _SYMBOLS and match[1] not in KINDS["money"].units):
        return None
    right = f"{match[2]} {_SYMBOLS.get(match[1], match[1])}{words[match.end() :]}"
    return Refusal(f"`{words}` has its currency in front", f"expected `{right}`")


def _range(words: str) -> Refusal | None:
    match = _RANGE.fullmatch(words)
    if not match:
        return None
    low, high = sorted((abs(float(match[1])), abs(float(match[2]))))
    middle, half, unit = f"{(low + high) / 2:g}", f"{(high - low) / 2:g}", match[3].strip()
    spelling = f"{{value: {middle} {unit}, plus_minus: {half} {unit}}}".replace(" }", "}")
    return Refusal(f"`{words}` is a range", f"expected its middle and half: `{spelling}`")


def _wrong_unit(words: str, unit: str, kind: str) -> Refusal:
    """A number stands in front, but what follows is no unit of this kind."""
    if not unit:
        return Refusal(f"`{words}` has no unit", expectation(kind))
    if (unit, kind) in HINTS or (unit, "") in HINTS:
        hint = HINTS.get((unit, kind)) or HINTS[unit, ""]
        return Refusal(f"`{words}`: `{unit}` is not clear", f"expected {hint}")
    if re.search(r"[0-9*/^()+,;:=]", unit) and not re.fullmatch(r"[^0-9]+[23]?", unit):
        return Refusal(f"`{words}` is more than one number with one unit", expectation(kind))
    for other in KINDS.values():
        if unit in other.units:
            return Refusal(f"`{words}` is {other.noun}", expectation(kind))
    for spelling in KINDS[kind].units:
        if spelling.lower() == unit.lower():
            return Refusal(f"`{words}`: unknown unit `{unit}`", f"did you mean `{spelling}`?")
    return Refusal(f"`{words}`: unknown unit `{unit}`", expectation(kind))
