"""Do the pages on weight hold the ledger, the conditions, the placing and the yard's list?"""

from __future__ import annotations

import copy
import csv
import io
import re
from typing import Any

import pytest
from markupsafe import Markup

from generator.report.csv_tables import csv_tables
from generator.report.page import Page, bare_text
from generator.report.sections import aboard, appendix, weight
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


def body(page: Page, place: int) -> str:
    return bare_text(aboard.parts(page)[place].body).replace("\u00a0", " ")


def rows_of(table: str) -> list[list[str]]:
    """The texts of the cells of each row, its head first."""
    rows = re.findall(r"<tr\b.*?</tr>", table.partition("<tbody>")[2], re.DOTALL)
    cells = (re.findall(r"<t[hd]\b.*?</t[hd]>", row, re.DOTALL) for row in rows)
    return [[bare_text(Markup(cell)) for cell in row] for row in cells]


def test_profile_says_where_the_limits_lie(sloop: Page) -> None:
    (figure,) = aboard.parts(sloop)[0].figures
    assert "38" in figure.note.striptags()  # 0.5 per cent of 7.60 m
    assert figure.draw().svg.count("stroke-dasharray") >= 3
    (same,) = weight.part(sloop).figures
    assert (same.finding, same.note) == (figure.finding, figure.note)


def test_the_section_names_the_heaviest_masses_and_where_the_others_are(sloop: Page) -> None:
    text = str(aboard.parts(sloop)[0].body)
    table = text[text.index('id="ledger-table"') :]
    shown = rows_of(table)
    assert len(shown) == aboard.MOST
    assert "weight_ledger.csv" in table.partition("</caption>")[0]
    lines = [
        sloop.value(row) for key in sloop.options for row in sloop.keys(f"{key}.weight.ledger")
    ]
    least = min(float(cell) for row in shown for cell in row[2:] if cell != "none")
    names = {row[0] for row in shown}
    assert {line["name"] for line in lines if abs(line["mass_kg"]) > least + 1.0} <= names


def test_one_thing_at_one_name_is_one_row(sloop: Page) -> None:
    rows = aboard._rows(aboard.moved_by(sloop))
    (engine,) = [row for row in rows if row.name == "Engine and gearbox"]
    assert None not in engine.masses


def test_the_table_of_spaces_shares_out_all_blocks(sloop: Page) -> None:
    part = aboard.parts(sloop)[1]
    assert "2 blocks of the motor (108 kg each) fit: 2 in “Shelf" in body(sloop, 1)
    assert sum(int(row[2]) for row in rows_of(str(part.closing))) == 2


def test_a_case_without_spaces_says_what_to_measure(results: dict[str, Any]) -> None:
    assert "No battery space was measured" in body(Page(results), 1)


def test_floating_says_on_what_it_rests(sloop: Page, results: dict[str, Any]) -> None:
    timed, assumed = body(sloop, 0), body(Page(results), 0)
    assert "timed roll of 2.5" in timed
    assert "assumes that her centre of gravity is at the waterline" in assumed


def test_where_no_mass_moves_she_floats_as_today(results: dict[str, Any]) -> None:
    still = copy.deepcopy(results)
    for option in still["options"]:
        option["weight"]["ledger"] = []
    assert "floats as she does today" in body(Page(still), 0)


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
