"""Legs, berth and size on the page: what a reader decides by, and no more rows than that."""

from __future__ import annotations

import copy
from typing import Any

from generator.report.page import Page
from generator.report.render import Pages
from generator.report.sections import legs

CHARTS = ("legs-range", "energy-walk", "season-balance")


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
    part = legs.part(page)
    body = part.closing.partition("<tbody>")[2]
    assert body.count("<tr") == legs.MOST_ROWS * len(page.motors)
    assert "tables/legs.csv" in part.closing.partition("</caption>")[0]
    fits = [row.leg.fits for row in legs._rows(page, page.motors[0])]
    assert fits == sorted(fits)
