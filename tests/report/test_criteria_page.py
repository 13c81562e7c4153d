"""What the page says of the criteria: values with their unit, numbers that keep to their name."""

from __future__ import annotations

import re
from typing import Any

import pytest

from generator.report.page import Page, bare_text
from generator.report.render import Pages
from generator.report.sections import (
    appendix,
    cautions,
    conditions,
    criteria,
    technical,
    technical_store,
    wind,
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
    every = criteria.every(page)
    assert every is not None
    html = "".join(part.body + part.closing for part in (every, *conditions.parts(page)))
    heads = re.findall(r'<th scope="row">(.*?)</th>', html, re.DOTALL)
    assert len(heads) >= 28 + 8
    for head in heads:
        assert re.search(r">\d+</data>(?:\u00a0|&nbsp;)<span", head), head


CHIPS = {"conditional": "Pass with conditions", "no": "Fail", "told": "For information"}


@pytest.mark.parametrize("name", ["ketch_34_two_motors", "sloop_30_weekend", "every_key"])
def test_a_finding_stands_in_one_class_with_what_would_settle_it(name: str) -> None:
    """Every row that does not simply pass, of every motor, once and with the words of both."""
    page = Page(studied(name))
    tables = {
        part.name: " ".join(bare_text(part.body).split())
        for part in conditions.parts(page)
        if part.name.startswith("findings-")
    }
    for motor in page.motors:
        for key in page.keys(f"{motor}.verdict.criteria"):
            row = page.value(key)
            said, mend = (
                " ".join(bare_text(page.sentence(f"{key}.{name}")).split())
                for name in ("words", "words_mend")
            )
            head = f"{row['id']} {row['name']}"  # two rows may say the same of one wind
            within = [table for table, text in tables.items() if said in text and head in text]
            if not conditions.class_of(row):
                assert row["result"] in ("go", "not applicable", "not assessed") or (
                    row["facts"]["outcome"] == "reached"
                )
                continue
            assert len(within) == 1, (row["name"], within)
            assert CHIPS[row["result"]] in tables[within[0]]
            if row["result"] == "no" and row["role"] == "decide":
                assert within == ["findings-must-part"]
            if row["result"] == "told":
                assert within == ["findings-tell-part"]
            elif mend:
                assert f"To settle: {mend}" in tables[within[0]]


def test_what_passes_for_all_is_in_no_class(results: dict[str, Any]) -> None:
    page = Page(results)
    html = "".join(str(part.body) for part in conditions.parts(page))
    for number in range(1, 29):
        keys = [page.find(f"{motor}.verdict.criteria", id=number) for motor in page.motors]
        rows = [page.value(key) for key in keys if key]
        if all(row["result"] == "go" for row in rows):
            assert not any(page.words(f"{key}.name") in html for key in keys if key), number


def test_a_limit_has_two_lines_at_most() -> None:
    """As wide as the column is with two motors: about 54 letters."""
    for row in studied("ketch_34_two_motors")["criteria"]:
        assert len(row["limit"]) <= 106, row["name"]


def test_cautions_say_whose_figures_they_are(results: dict[str, Any]) -> None:
    page = Page(results)
    (part,) = cautions.parts(page)
    sizes = {motor: page.value(f"{motor}.bank.nominal_kwh") for motor in page.motors}
    largest = max(sizes, key=lambda motor: sizes[motor])
    assert cautions.whose(page) == largest
    assert page.words(f"{largest}.name") in part.body
    assert "the largest battery" in part.body
    (alone,) = cautions.parts(Page(studied("sloop_30_weekend")))
    assert "the largest battery" not in alone.body
    for key in page.keys("cautions"):
        assert page.sentence(f"{key}.words") in part.closing
        assert page.sentence(f"{key}.confirm") in part.closing


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
    made = (*wind.parts(page), technical.stream(page), technical_store.losses(page))
    parts = [part for part in made if part is not None]
    said = [text for part in parts for text in (*part.text, part.body, part.closing)]
    said += [text for part in parts for each in part.figures for text in (each.finding, each.note)]
    for option in results["options"]:
        said += [row["words"] for row in option["verdict"]["criteria"]]
    for text in map(str, said):
        for word in ("for good", "as slowly as pays", "waiting halves"):
            assert word not in text
