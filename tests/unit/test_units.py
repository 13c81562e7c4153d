"""Spellings of quantities with the value or the message that each must give."""

from __future__ import annotations

import math
import time

import pint
import pytest

from generator.units.families import DEFINITIONS, DISPLAY, HINTS, KINDS, PAGE_UNITS
from generator.units.grammar import (
    Quantity,
    Refusal,
    currency_of,
    display_unit,
    from_si,
    read_half_width,
    read_quantity,
    scale_and_offset,
    si_unit,
    to_display,
    to_si,
)

# text, kind, SI value worked by hand
READ = [
    ("9.5 m", "length", 9.5),
    ("950 cm", "length", 9.5),
    ("9500mm", "length", 9.5),
    ("31 ft 6 in", "length", 378 * 0.0254),  # 31 x 12 + 6 inches
    ("31' 6\"", "length", 378 * 0.0254),
    ("31'6\"", "length", 378 * 0.0254),
    ("-1 ft 6 in", "length", -18 * 0.0254),  # the sign is that of the whole
    ("31.5 ft", "length", 378 * 0.0254),
    ("15 in", "length", 0.381),
    ("+.5 m", "length", 0.5),
    ("5. m", "length", 5.0),
    ("1e3 mm", "length", 1.0),
    ("12 nm", "distance", 22224.0),  # 12 x 1852
    ("12 nmi", "distance", 22224.0),
    ("3 km", "distance", 3000.0),
    ("1 mi", "distance", 1609.344),
    ("3.4 m2", "area", 3.4),
    ("3.4 m²", "area", 3.4),
    ("10 ft2", "area", 0.9290304),
    ("80 l", "volume", 0.080),
    ("10 US gal", "volume", 0.037854117840),
    ("10 imp gal", "volume", 0.0454609),
    ("5.2 t", "mass", 5200.0),
    ("100 lb", "mass", 45.359237),
    ("5.4 kn", "speed", 2.778),  # 5.4 x 1852 / 3600
    ("5.4 kts", "speed", 2.778),
    ("18 km/h", "speed", 5.0),
    ("30 min", "time", 1800.0),
    ("5 d", "time", 432000.0),
    ("45 h", "time", 162000.0),
    ("10 year", "years", 10.0),
    ("7", "years", 7.0),
    ("8 kW", "power", 8000.0),
    ("10 hp", "power", 7456.998716),  # 550 foot-pounds a second
    ("10 PS", "power", 7354.9875),  # 75 kilogram-metres a second
    ("10 cv", "power", 7354.9875),
    ("0.9 kWh", "energy", 3.24e6),
    ("300 Ah", "charge", 1.08e6),
    ("51.2 V", "voltage", 51.2),
    ("16 A", "current", 16.0),
    ("3600 rpm", "rotation", 120 * math.pi),
    ("60 1/min", "rotation", 2 * math.pi),
    ("0.36 C", "c_rate", 1e-4),
    ("15 °C", "temperature", 15.0),
    ("15 degC", "temperature", 15.0),
    ("59 °F", "temperature", 15.0),
    ("-3 %", "fraction", -0.03),
    ("0.85", "fraction", 0.85),
    ("2.14", "ratio", 2.14),
    ("2.14:1", "ratio", 2.14),
    ("1.05", "number", 1.05),
    ("110 Wh/kg", "specific energy", 396000.0),
    ("4.3 kg/kW", "mass per power", 0.0043),
    ("3.6 l/h", "volume rate", 1e-6),
    ("4200 GBP", "money", 4200.0),
    ("-400 EUR", "money", -400.0),
    ("1.40 GBP/l", "money per volume", 1400.0),
    ("0.36 EUR/kWh", "money per energy", 1e-7),
    ("3.785411784 USD/US gal", "money per volume", 1000.0),
    ("5.2\u00a0t", "mass", 5200.0),  # a blank that does not break
]

# text, kind, what the message says is wrong, what it asks for
REFUSED = [
    ("1,5 kW", "power", "decimal comma", "`1.5 kW`"),
    ("5,25", "number", "decimal comma", "`5.25`"),
    ("1,000 kW", "power", "a comma", "`1000 kW` or `1.000 kW`"),
    ("1,234.5 kg", "mass", "a comma", "`1234.5 kg`"),
    ("1 000 kW", "power", "thousands", "`1000 kW`"),
    ("1 234 567 W", "power", "thousands", "`1234567 W`"),
    ("1'000 W", "power", "thousands", "`1000 W`"),
    ("1_000 W", "power", "thousands", "`1000 W`"),
    ("1.000.000 W", "power", "thousands", "`1000000 W`"),
    ("5.2 t ± 5 %", "mass", "doubt", "`{value: 5.2 t, plus_minus: 5 %}`"),
    ("5.2 +- 0.2 t", "mass", "doubt", "`{value: 5.2 t, plus_minus: 0.2 t}`"),
    ("5.2 t +/- 0.2 t", "mass", "doubt", "`{value: 5.2 t, plus_minus: 0.2 t}`"),
    ("5-6 kW", "power", "a range", "`{value: 5.5 kW, plus_minus: 0.5 kW}`"),
    ("5 to 6 kW", "power", "a range", "`{value: 5.5 kW, plus_minus: 0.5 kW}`"),
    ("5 ton", "mass", "not clear", "`t` (1000 kg)"),
    ("20 gal", "volume", "not clear", "`US gal` (3.785 l) or `imp gal` (4.546 l)"),
    ("20 HP", "power", "not clear", "`hp` (745.7 W), or `PS` or `cv` (735.5 W)"),
    ("15 C", "temperature", "not clear", "`°C`"),
    ("300 C", "charge", "not clear", "`Ah`"),
    ("12 M", "distance", "not clear", "`nm`"),
    ("3 nm", "length", "a distance", "a length such as `9.5 m`"),
    ("8 kWh", "power", "an energy", "a power such as `8 kW`"),
    ("8 KW", "power", "unknown unit `KW`", "did you mean `kW`?"),
    ("8 parsec", "length", "unknown unit `parsec`", "mm, cm, m, in, ft"),
    ("8", "power", "no unit", "a power such as `8 kW`"),
    ("", "power", "is empty", "a power such as `8 kW`"),
    ("about 8 kW", "power", "does not start with a number", "`8 kW`"),
    ("nan kW", "power", "does not start with a number", "`8 kW`"),
    ("inf", "number", "does not start with a number", "`1.05`"),
    ("1e400 kW", "power", "too large", "`8 kW`"),
    ("9**9**9**9", "number", "more than one number", "`1.05`"),
    ("2*3 kW", "power", "more than one number", "`8 kW`"),
    ("12 V 5 A", "voltage", "more than one number", "`51.2 V`"),
    ("12:30", "time", "more than one number", "`30 min`"),
    ("0x10 kW", "power", "more than one number", "`8 kW`"),
    ("31 ft 6", "length", "more than one number", "`9.5 m`"),
    ("31 ft 14 in", "length", "twelve inches or more", "less than 12 in"),
    ("3 ft 2 in", "distance", "more than one number", "`12 nm`"),
    ("£4200", "money", "currency in front", "`4200 GBP`"),
    ("GBP 4200.50", "money", "currency in front", "`4200.50 GBP`"),
    ("4200 XXX", "money", "unknown unit `XXX`", "`4200 GBP`"),
    ("0.32/kWh", "money per energy", "unknown unit `/kWh`", "`0.32 EUR/kWh`"),
    ("٣ kW", "power", "does not start with a number", "`8 kW`"),
    ("1" * 65, "number", "longer than 64", "`1.05`"),
    ("(" * 3000, "number", "longer than 64", "`1.05`"),
    ("__import__('os')", "power", "does not start with a number", "`8 kW`"),
]


@pytest.mark.parametrize(("text", "kind", "value"), READ)
def test_read_quantity_gives_si(text: str, kind: str, value: float) -> None:
    quantity = read_quantity(text, kind)
    assert isinstance(quantity, Quantity)
    # nine digits, as many as the conversion factors above are written with
    assert quantity.value == pytest.approx(value, rel=1e-9, abs=1e-12)


@pytest.mark.parametrize(("text", "kind", "problem", "expected"), REFUSED)
def test_read_quantity_refuses_with_the_right_spelling(
    text: str, kind: str, problem: str, expected: str
) -> None:
    refusal = read_quantity(text, kind)
    assert isinstance(refusal, Refusal)
    assert problem in refusal.problem
    assert expected in refusal.expected


@pytest.mark.parametrize("text", ["9**9**9**9", "a" * 100_000, "1" * 10_000, "(" * 3000, "1 " * 32])
def test_read_quantity_answers_hostile_text_at_once(text: str) -> None:
    """A tenth of a second is a thousand times what it takes; the full grammar of pint hangs."""
    start = time.perf_counter()
    assert isinstance(read_quantity(text, "power"), Refusal)
    assert time.perf_counter() - start < 0.1


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_reads_its_own_example(kind: str) -> None:
    assert isinstance(read_quantity(KINDS[kind].example, kind), Quantity)


def test_a_spelling_has_one_meaning_in_all_kinds() -> None:
    meanings: dict[str, set[str]] = {}
    for kind in KINDS.values():
        for spelling, name in kind.units.items():
            meanings.setdefault(spelling, set()).add(name)
    assert {s: m for s, m in meanings.items() if len(m) > 1} == {}


def test_hints_are_for_spellings_that_are_not_read() -> None:
    for spelling, kind in HINTS:
        kinds = [kind] if kind else list(KINDS)
        assert all(spelling not in KINDS[name].units for name in kinds)


def test_own_definitions_agree_with_those_of_pint() -> None:
    """The short list must give what pint's own list gives; 1e-12 allows for rounding."""
    full: pint.UnitRegistry[float] = pint.UnitRegistry()
    aside = ("each", "percent", "revolution", "radian", "US_gallon")  # other names there
    names = [line.split(" = ")[0] for line in DEFINITIONS if "-" not in line.split(" = ")[0]]
    ours: pint.UnitRegistry[float] = pint.UnitRegistry(DEFINITIONS)
    for name in set(names) - set(aside):
        base = "kelvin" if "degree" in name else str(ours.Quantity(1.0, name).to_base_units().units)
        own = ours.Quantity(1.0, name).to(base).magnitude
        assert own == pytest.approx(full.Quantity(1.0, name).to(base).magnitude, rel=1e-12), name
    assert ours.Quantity(1.0, "US_gallon").to("liter").magnitude == pytest.approx(
        full.Quantity(1.0, "gallon").to("liter").magnitude, rel=1e-12
    )
    assert ours.Quantity(1.0, "revolution").to("radian").magnitude == 2 * math.pi


@pytest.mark.parametrize(("text", "kind", "value"), READ)
def test_from_si_returns_to_the_spelling(text: str, kind: str, value: float) -> None:
    quantity = read_quantity(text, kind)
    assert isinstance(quantity, Quantity)
    back = from_si(to_si(quantity.number, quantity.unit), quantity.unit)
    assert back == pytest.approx(quantity.number, rel=1e-12, abs=1e-12)


@pytest.mark.parametrize(
    ("doubt", "centre", "kind", "half"),
    [
        ("5 %", "5.2 t", "mass", 260.0),
        ("200 kg", "5.2 t", "mass", 200.0),
        ("2 °C", "15 °C", "temperature", 2.0),
        ("9 °F", "59 °F", "temperature", 5.0),  # a difference: no offset
        ("10 %", "-3 %", "fraction", 0.003),  # per cent is always of the value
        ("0.01", "0.85", "fraction", 0.01),
        ("0.05 EUR/kWh", "0.36 EUR/kWh", "money per energy", 0.05 / 3.6e6),
    ],
)
def test_read_half_width_is_relative_or_in_a_unit(
    doubt: str, centre: str, kind: str, half: float
) -> None:
    quantity = read_quantity(centre, kind)
    assert isinstance(quantity, Quantity)
    assert read_half_width(doubt, quantity) == pytest.approx(half, rel=1e-9)


@pytest.mark.parametrize(
    ("doubt", "problem"),
    [
        ("5 m", "is a length"),
        ("-5 %", "is negative"),
        ("± 5 %", "does not start"),
        ("little", "does not start"),
    ],
)
def test_read_half_width_refuses(doubt: str, problem: str) -> None:
    quantity = read_quantity("5.2 t", "mass")
    assert isinstance(quantity, Quantity)
    refusal = read_half_width(doubt, quantity)
    assert isinstance(refusal, Refusal)
    assert problem in refusal.problem


def test_read_half_width_refuses_another_currency() -> None:
    quantity = read_quantity("100 GBP", "money")
    assert isinstance(quantity, Quantity)
    assert isinstance(read_half_width("10 EUR", quantity), Refusal)


def test_currency_and_si_label_of_prices() -> None:
    quantity = read_quantity("0.32 EUR/kWh", "money per energy")
    assert isinstance(quantity, Quantity)
    assert currency_of(quantity) == "EUR"
    assert si_unit(quantity.unit) == "EUR/J"
    assert si_unit("GBP") == "GBP"
    assert si_unit("ft") == "m"


@pytest.mark.parametrize("quantity", DISPLAY)
@pytest.mark.parametrize("system", ["metric", "imperial"])
def test_display_units_are_known_and_turn_back(quantity: str, system: str) -> None:
    unit = display_unit(quantity, system)
    assert unit in PAGE_UNITS or any(unit in kind.units for kind in KINDS.values())
    shown = to_display(3.0, quantity, system)
    assert to_si(shown, unit) == pytest.approx(3.0, rel=1e-12)


def test_to_display_by_hand() -> None:
    assert to_display(9.6012, "length", "imperial") == pytest.approx(31.5)
    assert to_display(5200.0, "displacement", "metric") == pytest.approx(5.2)
    assert to_display(1852.0 / 3600.0, "speed", "imperial") == pytest.approx(1.0)
    assert to_display(4.4482216, "force", "imperial") == pytest.approx(1.0, rel=1e-7)
    assert to_display(3600.0 / 1852.0, "energy per distance", "metric") == pytest.approx(1.0)
    assert scale_and_offset("°F")[1] == pytest.approx(-160.0 / 9.0)
