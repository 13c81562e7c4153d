"""How numbers look; expected texts are typed by hand from the stored value."""

from __future__ import annotations

import pytest

from generator.report.numbers import Display, axis_value, shown, tied, unit_of
from generator.units.grammar import from_si, to_si
from generator.units.kinds import KINDS

METRIC, IMPERIAL = Display("metric", "GBP"), Display("imperial", "USD")
NB = "\u00a0"


@pytest.mark.parametrize(
    ("value", "spec", "text"),
    [
        (4.849, "speed", f"4.8{NB}kn"),
        (20.0, "wind", f"20{NB}kn"),
        (9.14, "distance", f"9.1{NB}nm"),
        (10.4, "distance", f"10{NB}nm"),
        (0.456, "power", f"0.46{NB}kW"),
        (12.04, "power", f"12.0{NB}kW"),
        (4300.4, "mass", f"4,300{NB}kg"),
        (-20.2, "mass:signed", f"−20{NB}kg"),
        (15.0, "mass:signed", f"+15{NB}kg"),
        (-15.0, "mass:size", f"15{NB}kg"),
        (-0.3, "mass:signed", f"0{NB}kg"),
        (15.0, "mass:bare", "15"),
        (16549.0, "money", "£16,550"),
        (-400.0, "money", "−\u2060£400"),
        (400.0, "money:signed", "+\u2060£400"),
        (1489.0, "force", f"1,490{NB}N"),
        (943.0, "force", f"943{NB}N"),
        (1012.0, "watts", f"1,010{NB}W"),
        (13.31, "seconds", f"13{NB}s"),
        (9.71, "seconds", f"9.7{NB}s"),
        (40.0, "mean_count", "40"),
        (0.0, "mean_count", "0"),
        (2853.0, "mass_about", f"2,900{NB}kg"),
        (309.0, "mass_about", f"310{NB}kg"),
        (0.0027, "share_small", "0.27%"),
        (1.0, "flag", "yes"),
        (0.0, "flag", "no"),
        ("Motor A, 10 kW", "short", "Motor A"),
        ("options[2].bank.discharge_limit", "path", "bank: discharge limit"),
        ("boat.spaces[0].above_bilge", "path", "boat, spaces 1: above bilge"),
        (123456.0, "money", "£123,500"),
        (3550.0, "rpm", f"3,550{NB}rpm"),
        (1984, "year", "1984"),
        (0.973, "share", "97%"),
        (20.0, "percent", "20%"),
        (15.0, "temperature", f"15{NB}°C"),
        (381.0, "length_small", f"381{NB}mm"),
        (None, "speed", "–"),
        (True, "plain", "yes"),
        ("as typed", "speed", "as typed"),
        (20.0, "speed:whole", f"20{NB}kn"),  # as stated
        (4.8, "speed:whole", f"4.8{NB}kn"),
        (4.98, "speed:whole", f"5.0{NB}kn"),  # not whole, only rounded
        (10.0, "power:whole", f"10{NB}kW"),
        (9.99999999, "power:whole", f"10{NB}kW"),  # ten kilowatts, as nine figures keep them
        (12.0, "voltage:whole,bare", "12"),
        (51.2, "voltage:whole", f"51.2{NB}V"),
        (3552.0, "rpm:whole", f"3,550{NB}rpm"),  # tens stay tens
    ],
)
def test_shown_is_what_a_reader_expects(value: object, spec: str, text: str) -> None:
    assert shown(value, spec, METRIC) == text


@pytest.mark.parametrize(
    ("value", "spec", "text"),
    [
        (4300.0, "mass", f"9,480{NB}lb"),  # 4300 / 0.45359237 = 9479.9
        (9.14, "length", f"30.0{NB}ft"),  # 9.14 / 0.3048 = 29.99
        (381.0, "length_small", f"15.0{NB}in"),
        (55.0, "fuel", f"14.5{NB}US{NB}gal".replace(f"US{NB}", "US ")),  # 55 / 3.785411784
        (15.0, "temperature", f"59{NB}°F"),
        (1000.0, "force", f"225{NB}lbf"),  # 1000 / 4.4482216
        (4.8, "speed", f"4.8{NB}kn"),  # the same at sea everywhere
        (8.0, "power", f"8.0{NB}kW"),  # one unit of power for diesel and motor
        (1200.0, "money", "$1,200"),
    ],
)
def test_imperial_display_is_the_same_quantity(value: float, spec: str, text: str) -> None:
    assert shown(value, spec, IMPERIAL) == text


def test_no_line_ends_between_a_number_and_its_unit() -> None:
    assert tied("at least 5 °C, 85 to 95 % within 20 nm") == (
        f"at least 5{NB}°C, 85 to 95{NB}% within 20{NB}nm"
    )
    assert tied("3 knots for 30 more") == "3 knots for 30 more"


def test_a_currency_without_a_sign_keeps_its_code() -> None:
    assert shown(1200.0, "money", Display("metric", "SEK")) == f"SEK{NB}1,200"
    assert unit_of("money", Display("metric", "EUR")) == "€"


def test_every_form_shows_a_value_in_both_displays() -> None:
    for name in KINDS:
        for display in (METRIC, IMPERIAL):
            assert shown(1.0, name, display)
            assert not shown(1.0, f"{name}:bare", display).endswith(f"{NB}{name}")


@pytest.mark.parametrize(
    ("form", "stored", "imperial"),
    [
        ("mass", "kg", "lb"),
        ("length", "m", "ft"),
        ("length_small", "mm", "in"),
        ("area", "m2", "ft2"),
        ("fuel", "l", "US gal"),
        ("temperature", "°C", "°F"),
        ("force", "N", "lbf"),
    ],
)
def test_units_of_the_page_are_those_of_the_case_file(
    form: str, stored: str, imperial: str
) -> None:
    expected = from_si(to_si(37.0, stored), imperial)
    assert axis_value(37.0, form, IMPERIAL) == pytest.approx(expected, rel=1e-9)
