"""Every number of a case file has limits; a doubt and a refusal tell them in the owner's unit."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from pydantic import BaseModel

from generator.case.leaf import Amount
from generator.case.limits import all_limits, limits_key
from generator.case.register import Default, read_register
from generator.case.schema import CaseKeys
from generator.case.validate import _fields, _inner
from generator.tables.load import read_table
from generator.units.families import CURRENCIES, KINDS
from tests.unit.case.faulty import changed, doubts, faults, line_of


def amounts_of(model: type[BaseModel], place: tuple[str, ...] = ()) -> Iterator[tuple[str, Amount]]:
    """Every number that the schema knows, by the key of the table of limits."""
    for key, field in _fields(model).items():
        inner = _inner(field)
        if inner:
            yield from amounts_of(inner, (*place, key))
            continue
        marks: list[Any] = list(field.metadata)
        for argument in getattr(field.annotation, "__args__", ()):
            marks += getattr(argument, "__metadata__", ())
        for mark in marks:
            if isinstance(mark, Amount):
                yield limits_key((*place, key)), mark


NUMBERS = dict(amounts_of(CaseKeys))


def test_every_number_of_the_schema_has_limits_and_nothing_else_has() -> None:
    assert len(NUMBERS) > 200
    assert {key for key, when in all_limits() if not when} == set(NUMBERS)
    assert {key for key, _ in all_limits()} == set(NUMBERS)


def test_limits_are_in_a_unit_of_their_kind() -> None:
    table = read_table("rules/limits")
    for key, unit in zip(table.text("key"), table.text("unit"), strict=True):
        assert unit.replace("-", "") in KINDS[NUMBERS[key].kind].units, key


def rows(key: str) -> tuple[Default, ...]:
    return read_register().get(key, ())


@pytest.mark.parametrize("key", sorted(NUMBERS))
def test_usual_range_is_that_of_the_register_or_stands_beside_it(key: str) -> None:
    """Without one of its own, every default of the key has a range."""
    limits = all_limits()[key, ""]
    found = rows(key)
    if limits.usual is None:
        assert found
        assert all(row.low < row.high for row in found if not row.unit.startswith("EUR"))
        assert not any(row.unit.startswith("EUR") for row in found)


@pytest.mark.parametrize("key", sorted(NUMBERS))
def test_defaults_of_the_register_are_possible_and_usual(key: str) -> None:
    limits = all_limits()[key, ""]
    for row in rows(key):
        ends = [end for end in (row.low, row.value, row.high) if end]
        if NUMBERS[key].kind != "temperature":
            ends = [abs(end) for end in ends]
        low, high = limits.possible
        assert all(low <= end <= high * (1 + 1e-9) for end in ends), row
        if limits.usual:
            assert not row.value or limits.usual[0] <= abs(row.value) <= limits.usual[1], row


def test_every_currency_has_its_rough_worth() -> None:
    assert set(read_table("rules/euro_worth").text("currency")) == set(CURRENCIES)


@pytest.mark.parametrize(
    ("old", "new", "path", "message"),
    [
        ("draught: 1.60 m", "draught: 15 m", "boat.hull.draught",
         "is 15 m, which can hardly be, expected 0.2 to 7 m"),
        ("mass: 150 kg", "mass: 1 g", "options[2].added[0].mass",
         "is 1 g, which can hardly be, expected 0.02 to 60000 kg"),
        ("amount: 9000 EUR", "amount: 900000000 EUR", "options[2].costs[0].amount", "is 900000000"),
        ("distance: 10 nm", "distance: 6000 nm", "legs[0].distance", "expected 0.02 to 3000 nm"),
    ],
)  # fmt: skip
def test_a_number_that_cannot_be_is_a_fault(
    tmp_path: Path, old: str, new: str, path: str, message: str
) -> None:
    text = changed((old, new))
    found = [fault for fault in faults(tmp_path, text) if fault.path == path]
    assert [fault.line for fault in found] == [line_of(text, new)]
    assert message in str(found[0])


@pytest.mark.parametrize(
    ("old", "new", "path", "message"),
    [
        ("tank: 60 l", "tank: 1.9 US gal", "engine.tank",
         "is 1.9 US gal, expected 2.113 to 396.3 US gal"),
        ("foul_stream: 0 kn", "foul_stream: -0.01 kn", "legs[0].foul_stream",
         "is -0.01 kn, expected 0.03 to 5 kn to either side"),
        ("house:", "prices: {diesel: 9 EUR/l}\nhouse:", "prices.diesel",
         "is 9 EUR/l, expected 0.4 to 4 EUR/l"),
        ("rated_speed: 3200 rpm", "rated_speed: 320 rpm", "engine.rated_speed",
         "is 320 rpm, expected 1000 to 4500 rpm"),
    ],
)  # fmt: skip
def test_a_number_that_is_seldom_met_is_a_warning(
    tmp_path: Path, old: str, new: str, path: str, message: str
) -> None:
    found = [doubt for doubt in doubts(tmp_path, changed((old, new))) if doubt.path == path]
    assert len(found) == 1
    assert message in str(found[0])


def test_amounts_are_held_against_limits_in_money_of_the_case(tmp_path: Path) -> None:
    crowns = changed(
        ("currency: EUR", "currency: SEK"), ("9000 EUR", "90000 SEK"), ("8500 EUR", "85000 SEK")
    )
    assert [doubt.path for doubt in doubts(tmp_path, crowns)] == ["prices"]


def test_a_zero_is_none_and_is_not_held_against_limits(tmp_path: Path) -> None:
    text = changed(("times_per_year: 20", "times_per_year: 0"))
    assert doubts(tmp_path, text) == ()
