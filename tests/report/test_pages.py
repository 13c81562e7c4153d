"""Do the pages hold what the results say, and nothing else?"""

from __future__ import annotations

import copy
import re
from typing import Any

import pytest

from generator.report.numbers import WORDS, Display, shown
from generator.report.page import Page
from generator.report.render import Pages, make_pages
from generator.units.kinds import KINDS
from tests.report.html_numbers import read

Results = dict[str, Any]
# Their unit is that of the criterion, not of the key; test_criteria_page.py looks at them.
CRITERION = re.compile(
    r"verdict\.criteria\.\d+\.(value|pessimistic)$|tornado\..*(best|limit_go|at_low|at_high)$"
)


def resolve(results: Results, key: str) -> Any:
    """The value at a key; a step that is not there is a fault of the page."""
    found: Any = results
    for step in key.split("."):
        if found is None:
            return None
        found = found[int(step)] if isinstance(found, list) else found.get(step)
    return found


def check_numbers(results: Results, html: str) -> int:
    """Compare every keyed text with its value in the results; how many there were."""
    case = results["case"]
    display = Display(case["units"], case["currency"])
    numbers = read(html)
    for key, form, text in numbers.keyed:
        value = resolve(results, key)
        if form == "sentence":
            assert " ".join(text.split()) == Page(results).text(value).striptags()
            continue
        if form == "clause":  # as a sentence of its own: a capital, and one full stop
            said = Page(results).text(value).striptags()
            assert " ".join(text.split()) == f"{said[0].upper()}{said[1:].removesuffix('.')}."
            continue
        expected = shown(value, "plain" if form == "given" else form, display)
        assert text == expected, (key, form)
    assert numbers.loose == []
    return len(numbers.keyed)


def test_every_number_is_that_of_its_key(results: Results, pages: Pages) -> None:
    assert check_numbers(results, pages.html_screen) > 800


@pytest.mark.usefixtures("sketched")
def test_every_number_is_that_of_its_key_in_imperial_units(results: Results) -> None:
    imperial = copy.deepcopy(results)
    imperial["case"]["units"] = "imperial"
    html = make_pages(imperial).html_screen
    assert check_numbers(imperial, html) > 800
    assert "\u00a0lb<" in html
    assert "\u00a0kg<" not in html


def test_every_form_stands_on_a_key_of_its_unit(pages: Pages) -> None:
    for key, form, _ in read(pages.html_screen).keyed:
        name = form.split(":")[0]
        if name in ("given", "sentence", "clause", *WORDS) or CRITERION.search(key):
            continue
        kind = KINDS[name]
        suffixes = kind.also or (kind.suffix,)
        assert key.rsplit(".", 1)[1].endswith((kind.suffix, *suffixes)), (key, form)


def test_no_dash_where_the_results_have_a_value(results: Results, pages: Pages) -> None:
    for key, _, text in read(pages.html_screen).keyed:
        if text == "–":
            assert resolve(results, key) is None


def test_no_key_is_misspelt(results: Results, pages: Pages) -> None:
    for key, _, _ in read(pages.html_screen).keyed:
        found: Any = results
        for step in key.split("."):
            if found is None:
                break
            assert (int(step) < len(found)) if isinstance(found, list) else (step in found), key
            found = found[int(step)] if isinstance(found, list) else found[step]


def test_no_place_is_left_unfilled(pages: Pages) -> None:
    text = re.sub(r"<style>.*?</style>", "", pages.html_screen, flags=re.DOTALL)
    assert not re.search(r"\{[a-z0-9_.]+\|", text)
    assert "None" not in text
    assert "nan" not in re.findall(r"\bnan\b", text)


def test_links_lead_somewhere_and_names_are_used_once(pages: Pages) -> None:
    for html in (pages.html_screen, pages.html_print):
        numbers = read(html)
        assert len(numbers.ids) == len(set(numbers.ids))
        local = {link[1:] for link in numbers.links if link.startswith("#")}
        assert local <= set(numbers.ids)
        assert not [link for link in numbers.links if not link.startswith("#")]


def test_screen_copy_runs_nothing_and_asks_for_nothing(pages: Pages) -> None:
    html = pages.html_screen
    assert "default-src 'none'" in html
    for banned in ("<script", "javascript:", "@import", "<iframe", "<link", " onload=", "<object"):
        assert banned not in html
    assert not re.search(r"(?:src|href)=\"(?!#)", html)
    assert not re.findall(r"url\((?!#|data:)", html)


def test_print_copy_takes_all_from_memory(pages: Pages) -> None:
    sources = set(re.findall(r'src="([^"]*)"', pages.html_print))
    assert sources == {f"chart:{name}" for name in pages.charts}
    assert set(re.findall(r"url\((\w+):", pages.html_print)) <= {"font", "mark"}


def test_tables_have_headers_with_a_scope(pages: Pages) -> None:
    heads = re.findall(r"<th\b[^>]*>", pages.html_screen)
    assert len(heads) > 100
    assert all('scope="col"' in head or 'scope="row"' in head for head in heads)
    front = pages.html_screen.partition("<main>")[0].count("<table>")  # its head stands above it
    assert front == 1
    assert pages.html_screen.count("<table>") - front == pages.html_screen.count("<caption")


def test_charts_carry_a_title_on_screen_and_alt_text_on_paper(pages: Pages) -> None:
    for name in pages.charts:
        assert f'<title id="{name}-title">' in pages.html_screen
        (alt,) = re.findall(rf'<img src="chart:{name}" alt="([^"]*)"', pages.html_print)
        assert len(alt) > 40
        assert re.search(r"\d", alt)


def test_chart_titles_state_a_number(pages: Pages) -> None:
    titles = re.findall(r"<figcaption[^>]*>(.*?)</figcaption>", pages.html_screen, re.DOTALL)
    assert len(titles) >= 6
    # as a value of its own, or in a sentence whose numbers tests/report/test_words.py looks at
    states = re.compile(r'<data |data-form="sentence">[^<]*\d')
    assert all(states.search(title) for title in titles)


@pytest.mark.usefixtures("sketched")
def test_the_same_results_give_the_same_bytes(results: Results) -> None:
    """Of page and paper; of drawn charts too, and in another process, in test_pdf.py."""
    assert make_pages(copy.deepcopy(results)) == make_pages(copy.deepcopy(results))


@pytest.mark.usefixtures("sketched")
def test_draft_marks_each_page_until_it_is_signed(results: Results, pages: Pages) -> None:
    unsigned = copy.deepcopy(results)
    unsigned["case"] |= {"draft": True, "draft_why": "no reference given"}
    marked = make_pages(unsigned)
    assert "mark:draft" in marked.html_print
    assert ' class="draft"' in marked.html_screen
    assert "mark:draft" not in pages.html_print
    assert ' class="draft"' not in pages.html_screen


def _without_trial(results: Results) -> None:
    results["trial"] = None
    results["evidence"] |= {"grade": "hull guess", "level": 0, "used_rows": 0, "given_rows": 0}
    results["evidence"] |= {"posterior_share": None, "posterior_why": "no trial"}


def _without_must_make_leg(results: Results) -> None:
    for leg in results["legs"]:
        leg["must_make"] = False
    for option in results["options"]:
        option |= {"worst_leg": None, "worst_leg_ratio": None}
        for leg in option["legs"]:
            leg["must_make"] = False


def _one_motor(results: Results) -> None:
    del results["options"][3]
    kept = [item for item in results["cautions"] if "options.3" not in str(item)]
    assert len(kept) > 0
    results["cautions"] = kept
    results["comparison"]["differences"] = []


def _no_motor(results: Results) -> None:
    del results["options"][2:]
    results["cautions"] = []
    results["comparison"]["differences"] = []


def _nothing_holds_in_wind(results: Results) -> None:
    for option in results["options"][2:]:
        option["range"] = [row for row in option["range"] if row["sea"] == "calm"]
        for row in option["range_at_cruise"]:
            if row["sea"] != "calm":
                names = ("range_nm", "range_low_nm", "range_high_nm", "whole_bank_nm", "reserve_nm")
                row |= dict.fromkeys(names) | {"range_nm_why": "above continuous rating"}


def _bare_case(results: Results) -> None:
    results["case"] |= {"reference": None, "prepared_by": None, "client": "", "valid_until": None}
    results["study"] |= {"priorities": [], "reasons": []}
    results["house"]["services"] = []
    results["warnings"], results["range_warnings"] = [], []
    results["engine"] |= {"year": None, "hours_h": None, "litres_per_hour_cruise_l": None}
    for option in results["options"]:
        option["weight"] |= {
            "trim_mm": None,
            "trim_angle_deg": None,
            "trim_why": "an item has no place",
        }


CASES = (
    _without_trial, _without_must_make_leg, _one_motor, _no_motor, _nothing_holds_in_wind,
    _bare_case,
)  # fmt: skip


@pytest.mark.usefixtures("sketched")
@pytest.mark.parametrize("change", CASES, ids=lambda change: change.__name__.strip("_"))
def test_pages_stand_when_something_is_absent(results: Results, change: Any) -> None:
    changed = copy.deepcopy(results)
    change(changed)
    pages = make_pages(changed)
    check_numbers(changed, pages.html_screen)
    assert "None" not in re.sub(r"<style>.*?</style>", "", pages.html_screen, flags=re.DOTALL)


@pytest.mark.usefixtures("sketched")
def test_hostile_words_stay_words(results: Results) -> None:
    """In drawn charts too in test_hostile_name.py."""
    hostile = copy.deepcopy(results)
    hostile["boat"]["name"] = '"><script>alert(1)</script>'
    hostile["options"][2]["name"] = "{case.sha256|given} $\\frac <i>"
    pages = make_pages(hostile)
    for text in (pages.html_screen, pages.html_print, *pages.charts.values()):
        assert "<script" not in text
        assert "<i>" not in text
    check_numbers(hostile, pages.html_screen)
