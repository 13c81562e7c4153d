"""Legs, berth and size on the page: what a reader decides by, and no more rows than that."""

from __future__ import annotations

import copy
from typing import Any

import pytest
from jinja2 import UndefinedError

from generator.report.figures.range_bars import range_bars
from generator.report.page import Page
from generator.report.render import Pages
from generator.report.sections import trips
from tests.report.conftest import studied

CHARTS = ("range-bars", "energy-walk", "season-balance")


def test_the_charts_of_use_are_there(pages: Pages) -> None:
    assert set(CHARTS) <= set(pages.charts)


def test_a_leg_that_does_not_fit_says_how_it_would(results: dict[str, Any], pages: Pages) -> None:
    rows = [row for option in results["options"] for row in option["use"]["failing"]]
    assert rows
    for place, option in enumerate(results["options"]):
        for number, row in enumerate(option["use"]["failing"]):
            if option["kind"] == "battery" and row["cheapest"] != "power":
                assert f'data-key="options.{place}.use.failing.{number}.words"' in pages.html_screen


def test_the_walk_of_the_results_adds_up(results: dict[str, Any]) -> None:
    walks = [option["use"] for option in results["options"] if option["use"]["walk"]]
    assert walks
    for use in walks:
        left = use["walk_nominal_kwh"] - sum(row["energy_kwh"] for row in use["walk"])
        assert abs(left - use["walk_left_kwh"]) < 1e-6


def test_a_long_list_of_legs_is_cut_and_its_table_named(results: dict[str, Any]) -> None:
    many = copy.deepcopy(results)
    many["legs"] = many["legs"] * 20
    for option in many["options"]:
        option["legs"] = option["legs"] * 20
    page = Page(many)
    part = trips.parts(page)[1]
    assert part is not None
    table = part.closing.partition('id="legs-table"')[2].partition("</table>")[0]
    assert table.count('<tr class="group">') == trips.MOST_TRIPS
    assert table.count('scope="row"') == trips.MOST_TRIPS * (1 + len(page.motors))
    assert "tables/legs.csv" in table.partition("</caption>")[0]
    groups = table.split("<tbody>")[1:]
    made = ['class="fail"' not in group for group in groups]
    assert made == sorted(made)
    assert False in made


def words_of(page: Page, place: int) -> str:
    """The text of one part of the section, every blank an ordinary one."""
    part = trips.parts(page)[place]
    assert part is not None
    return " ".join((part.body + part.closing).striptags().replace("\u00a0", " ").split())


def test_trips_of_a_year_are_counted_in_both_weathers() -> None:
    tree = copy.deepcopy(studied("sloop_30_weekend"))
    page = Page(tree)
    assert len(page.motors) == 1
    own = page.value(f"{page.motors[0]}.use.coverage")
    assert own["trips"] == pytest.approx(own["legs_share"] * own["passages"])
    own |= {"ordinary": "all", "bad_day": "all"}
    assert "all of your 46 yearly trips" in words_of(page, 1)
    assert "The same is true on a bad day" in words_of(page, 1)
    assert "trip-counts" not in str(trips.parts(page)[1])
    own |= {"bad_day": "some", "trips_bad_day": 12.0}
    assert "makes the difference" in words_of(page, 1)
    assert "trip-counts" in str(trips.parts(page)[1])
    own |= {"ordinary": "some", "bad_day": "none", "trips": 31.0, "trips_low": 26.0}
    said = words_of(page, 1)
    assert "makes 31 of your 46 yearly trips at your usual speed (cautious figure 26)" in said
    assert "On a bad day it makes none of them" in said


def test_the_bad_day_says_what_is_lacking() -> None:
    tree = copy.deepcopy(studied("sloop_30_weekend"))
    page = Page(tree)
    row = page.value(page.find(f"{page.motors[0]}.verdict.criteria", id=1) or "")
    leg = row["facts"]["leg"]
    assert leg["name"] in words_of(page, 2)
    assert "The reserve stays untouched in" in words_of(page, 2)
    row["facts"] |= {"outcome": "at_times", "impossible_share": 0.43, "result": "no"}
    leg["stopped_by"] = "power"
    said = words_of(page, 2)
    assert "In 43% of cases the trip is not possible, because continuous power is too small" in said
    row["facts"] |= {"outcome": "never", "in_no_case": True}
    leg["stopped_by"] = "stream"
    assert "not possible in any case, because the stream is too strong" in words_of(page, 2)
    leg["stopped_by"] = "unheard of"
    with pytest.raises(UndefinedError):
        words_of(page, 2)


def test_only_seas_with_a_range_have_bars_and_the_others_a_sentence() -> None:
    tree = copy.deepcopy(studied("sloop_30_weekend"))
    assert "20\u00a0kn of wind" in range_bars(Page(tree), "range-bars").svg
    for option in tree["options"]:
        for row in option["range_at_cruise"]:
            if row["sea"] in ("wind_20", "wind_25"):
                row |= {"range_nm": None, "range_why": "above continuous rating"}
    page = Page(tree)
    assert "Against 20 kn of wind or more the motor cannot keep up 3.5 kn" in words_of(page, 0)
    drawn = range_bars(page, "range-bars").svg
    assert "20\u00a0kn of wind" not in drawn
    assert "15\u00a0kn of wind" in drawn
