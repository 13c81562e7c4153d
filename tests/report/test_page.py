"""The one door through which results reach the page."""

from __future__ import annotations

from generator.report.page import Page, bare_text
from generator.report.parts import reasons

CASE = {"units": "metric", "currency": "GBP"}


def _page(**more: object) -> Page:
    return Page({"case": CASE, **more})


def test_text_escapes_words_and_shows_numbers() -> None:
    page = _page(a={"b_kn": 4.8})
    assert page.text("<b> at {a.b_kn|speed}") == (
        '&lt;b&gt; at <data data-key="a.b_kn" data-form="speed" value="4.8">4.8\u00a0kn</data>'
    )


def test_text_leaves_a_place_of_no_known_form_as_it_was_typed() -> None:
    assert _page().text("{a.b|nonsense} {not a place}") == "{a.b|nonsense} {not a place}"


def test_words_of_the_owner_are_escaped() -> None:
    page = _page(boat={"name": "<script>alert(1)</script>"})
    assert "<script>" not in page.words("boat.name")
    assert "<script>" not in page.text("{boat.name|given}")


def test_words_of_the_owner_are_not_read_as_places() -> None:
    page = _page(boat={"name": "{case.currency|given}"})
    assert "GBP" not in page.text("{boat.name|given}")


def test_value_below_nothing_is_absent() -> None:
    page = _page(options=[{"bank": None}])
    assert page.value("options.0.bank.mass_kg") is None
    assert page.value("options.7.bank") is None
    assert page.value("options.x") is None


def test_absent_number_is_a_dash_with_its_reason_once() -> None:
    page = _page(a={"x_kn": None, "x_kn_why": "not run", "trim_mm": None, "trim_why": "no place"})
    assert ">–</data>" in page.show("a.x_kn", "speed")
    (note,) = reasons(page, ["a.x_kn", "a.x_kn", "a.trim_mm"])
    assert note == "– not run; no place."


def test_span_prints_the_unit_once() -> None:
    page = _page(a={"low_kw": 2.0, "high_kw": 3.0})
    assert page.span("a.low_kw", "a.high_kw", "power").striptags() == "2.0 to 3.0 kW"


def test_charts_have_no_joiner_that_their_typeface_lacks() -> None:
    page = _page(a={"b_money": -400.0})
    assert page.plain("a.b_money", "money") == "−£400"


def test_an_option_is_called_by_its_kind_where_it_is_the_only_one() -> None:
    motor = {"kind": "battery", "name": "Motor A, 10 kW"}
    other = {"kind": "battery", "name": "Motor B, 15 kW"}
    diesel = {"kind": "keep", "name": "Keep the diesel"}
    one, two = _page(options=[diesel, motor]), _page(options=[diesel, motor, other])
    assert one.called("options.1") == "the motor"
    assert one.called("options.0", start=True) == "The present diesel"
    assert bare_text(two.text(two.called("options.2") + " runs")) == "Motor B runs"
    twin = _page(options=[motor, motor | {"name": "Motor A, 13 kW"}])
    assert bare_text(twin.text(twin.called("options.1"))) == "Motor A, 13 kW"
