"""What the page says of the criteria: values with their unit, numbers that keep to their name."""

from __future__ import annotations

import re
from typing import Any

import pytest

from generator.report.page import Page
from generator.report.render import Pages
from generator.report.sections import (
    appendix,
    criteria,
    docking,
    headwind,
    losses,
    stream,
)
from tests.report.conftest import studied
from tests.report.html_numbers import read

KEY = re.compile(r"options\.(\d+)\.verdict\.criteria\.(\d+)\.(value|pessimistic)$")
# How the text of a value must end, by the number of the criterion; the others are ratios.
ENDS: dict[int, str | tuple[str, ...]] = {
    2: "%", 4: "kn", 6: "kn", 8: "kW/t", 9: "kn", 10: "kn", 11: "h", 13: "%", 15: "°C",
    16: "%", 17: "%", 18: ("yes", "no"), 19: ("yes", "no"), 20: ("yes", "no"),
    21: ("yes", "no"), 22: "V", 23: "%", 24: "lengths", 25: "years", 26: "%", 27: ("yes", "no"),
}  # fmt: skip


def test_a_value_of_a_criterion_has_its_unit(results: dict[str, Any], pages: Pages) -> None:
    seen = set()
    for key, _, text in read(pages.html_screen).keyed:
        found = KEY.match(key)
        if not found or text == "–":
            continue
        option, row, _ = found.groups()
        number = results["options"][int(option)]["verdict"]["criteria"][int(row)]["id"]
        seen.add(number)
        if number in ENDS:
            assert text.endswith(ENDS[number]), (key, text)
        else:
            assert re.fullmatch(r"[0-9.,]+", text), (key, text)
    assert len(seen) >= 20


def test_no_line_ends_after_the_number_of_a_criterion(results: dict[str, Any]) -> None:
    page = Page(results)
    tables = [
        table for part in (criteria.every(page), *criteria.parts(page)) for table in part.tables
    ]
    heads = [row.head.striptags() for table in tables for row in table.rows]
    assert len(heads) >= 28
    # striptags would make one space of a no-break one, so the markup is looked at.
    for table in tables:
        for row in table.rows:
            assert re.search(r">\d+</data>\u00a0<span", str(row.head)), row.head


def test_no_column_is_empty_in_every_row(pages: Pages) -> None:
    for table in re.findall(r"<table>.*?</table>", pages.html_screen, re.DOTALL):
        rows = [
            [re.sub(r"<[^>]*>", "", cell).strip() for cell in re.findall(r"<td.*?</td>", row, re.S)]
            for row in re.findall(r"<tr.*?</tr>", table, re.DOTALL)
        ]
        columns = list(zip(*(row for row in rows if row), strict=False))
        assert all(set(column) != {"–"} for column in columns), table[:300]


@pytest.mark.parametrize("name", ["ketch_34_two_motors", "sloop_30_weekend"])
def test_inputs_stand_by_their_place_in_the_case(name: str) -> None:
    paths = [row["path"] for row in studied(name)["inputs"]]
    parts = [re.split(r"[.\[]", path)[0] for path in paths]
    assert [part for place, part in enumerate(parts) if part not in parts[:place]] == [
        part for place, part in enumerate(parts) if place == 0 or parts[place - 1] != part
    ]
    legs = [path.partition(".")[0] for path in paths if path.startswith("legs[")]
    assert legs == sorted(legs)
    options = [path.partition(".")[0] for path in paths if path.startswith("options[")]
    assert options == sorted(options)


def test_a_default_that_the_case_overrules_is_not_listed() -> None:
    results = studied("sloop_30_weekend")
    given = {row["path"] for row in results["inputs"]}
    taken = {row["path"] for row in results["assumptions"]}
    assert "boat.windage.freeboard" in given
    assert "boat.keel.wetted_area" in given
    assert not taken & {
        "boat.windage.freeboard_share", "boat.keel.wetted_area_share", "house.inverter_standing",
    }  # fmt: skip
    assert results["input_count"]["defaults"] == len(results["assumptions"])


def test_inputs_are_named_in_words(results: dict[str, Any]) -> None:
    page = Page(results)
    for part in appendix.inputs(page)[:2]:
        for row in part.tables[0].rows:
            said = re.findall(r'data-form="path">([^<]*)<', str(row.head))
            assert len(said) == 1
            assert not re.search(r"[\[\]_.]", said[0]), said


def test_ratings_are_named_by_the_trade(results: dict[str, Any]) -> None:
    page = Page(results)
    parts = (headwind.part(page), docking.part(page), stream.part(page), *losses.parts(page))
    said = [*(text for part in parts for text in part.text)]
    said += [text for part in parts for each in part.figures for text in (each.finding, each.note)]
    for option in results["options"]:
        said += [row["words"] for row in option["verdict"]["criteria"]]
    for text in map(str, said):
        for word in ("for good", "as slowly as pays", "waiting halves"):
            assert word not in text
