"""Do the pages on weight hold the ledger, the conditions, the placing and the yard's list?"""

from __future__ import annotations

import csv
import io
from typing import Any

import pytest

from generator.report.csv_tables import csv_tables
from generator.report.page import Page
from generator.report.sections import appendix, floating, placement, weight
from tests.report.conftest import studied


@pytest.fixture(scope="module")
def sloop() -> Page:
    return Page(studied("sloop_30_weekend"))


def test_every_line_of_the_ledger_is_on_the_page(sloop: Page) -> None:
    ledger = next(table for table in weight.part(sloop).opening if table.name == "ledger")
    lines = [row for key in sloop.motors for row in sloop.keys(f"{key}.weight.ledger")]
    shown = [row.head.striptags() for row in ledger.rows]
    for key in lines:
        assert sloop.value(key)["name"] in shown


def test_the_yard_gets_every_mass_with_its_moments(sloop: Page) -> None:
    table = csv_tables(sloop.results)["weight_ledger"]
    rows = list(csv.DictReader(io.StringIO(table)))
    electric = [row for row in rows if row["option"] == "a"]
    assert len(electric) == 10
    net = sum(float(row["mass_kg"].lstrip("'")) for row in electric)
    assert net == pytest.approx(51.0, abs=3.0)  # of 60 draws, the blocks within 4 per cent
    for row in electric:
        mass = float(row["mass_kg"].lstrip("'"))
        assert float(row["moment_x_kgm"].lstrip("'")) == pytest.approx(mass * float(row["x_m"]))
        assert (row["way"] == "in") == (mass > 0)
        assert row["datum"] == "aft end of the waterline"


def test_five_conditions_for_a_tank_that_leaves_two_for_one_that_stays(sloop: Page) -> None:
    counts = {sloop.value(f"{key}.id"): len(sloop.keys(f"{key}.weight.conditions"))
              for key in sloop.options}  # fmt: skip
    assert counts == {"keep": 0, "new": 2, "a": 5}


def test_profile_says_where_the_limits_lie(sloop: Page) -> None:
    figure = weight.part(sloop).figures[0]
    assert "38" in figure.note.striptags()  # 0.5 per cent of 7.60 m
    assert figure.draw().svg.count("stroke-dasharray") >= 3


def test_the_table_of_spaces_shares_out_all_blocks(sloop: Page) -> None:
    part = placement.part(sloop)
    assert "2 blocks of 108" in part.text[0].striptags().replace("\u00a0", " ")
    assert sum(int(row.cells[1].striptags()) for row in part.tables[0].rows) == 2


def test_a_case_without_spaces_says_what_to_measure(results: dict[str, Any]) -> None:
    assert "names no spaces" in placement.part(Page(results)).text[0].striptags()


def test_floating_says_on_what_it_rests(sloop: Page, results: dict[str, Any]) -> None:
    timed, assumed = (floating.part(page).text[0].striptags() for page in (sloop, Page(results)))
    assert "timed roll of 2.5" in timed
    assert "assumed height of the centre of gravity" in assumed


def test_inputs_left_out_of_the_appendix_stand_in_their_own_table(sloop: Page) -> None:
    listed = appendix.inputs(sloop)[0].tables[0].rows
    paths = [row.head.striptags() for row in listed]
    assert any(path.startswith("Electric; ") for path in paths)
    assert not any("added" in path for path in paths)
    given = [row for row in sloop.value("inputs") if row["path"].startswith("options[2].added[1]")]
    shown = " ".join(
        cell.striptags() for row in weight.part(sloop).opening[1].rows for cell in row.cells
    )
    assert {row["path"].rsplit(".")[-1] for row in given} >= {"mass"}
    assert "215" in shown
    assert "options[2].added[1].mass" in csv_tables(sloop.results)["inputs"]
