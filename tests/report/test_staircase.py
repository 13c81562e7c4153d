"""Does the map of motor against battery stand in section, chart and table, cell by cell?"""

from __future__ import annotations

import csv
import io
import re
from pathlib import Path
from typing import Any

import pytest

from generator.answer.answer import answer
from generator.case.open import read_case
from generator.draws import make_draws
from generator.report.csv_tables import csv_tables
from generator.report.figures.staircase import staircase
from generator.report.page import Page, bare_text
from generator.report.results_file import build
from generator.report.sections import conditions
from generator.study import run
from tests.once import once

SLOOP = Path(__file__).parents[2] / "cases" / "sloop_30_weekend.yaml"
DRAWS = 60


@once
def led() -> dict[str, Any]:
    case = read_case(SLOOP)
    study = run(case, make_draws(case, DRAWS))
    return build(case, study, led=answer(case, study))


@pytest.fixture
def page() -> Page:
    return Page(led())


def test_one_option_has_the_map_and_the_others_none(page: Page) -> None:
    maps = [page.value(option).get("map") for option in page.options]
    assert [bool(each) for each in maps] == [False, False, True]


def test_the_section_on_what_would_change_the_advice_has_it(page: Page) -> None:
    part = next(each for each in conditions.parts(page) if each.name == "staircase-part")
    found = next(page.value(f"{motor}.map") for motor in page.motors)
    title = bare_text(part.figures[0].finding).replace("\u00a0", " ")
    least = found["smallest"][0]
    assert least["there"]
    assert f"{least['motor_kw']:.1f} kW" in title
    assert f"{least['bank_kwh']:.1f} kWh" in title
    note = bare_text(part.figures[0].note).replace("\u00a0", " ")
    assert "tenth of the battery" in note
    for cell in found["cells"]:
        if cell["binding"]:
            assert f"{cell['binding']} {cell['row']}" in note
    slower = [each for each in found["smallest"] if not each["own_speed"] and each["there"]]
    assert len(slower) > 2
    assert note.count("slower") == sum(each["word"] == "Suitable" for each in slower)


def test_a_study_that_was_not_asked_for_it_shows_none() -> None:
    bare = {**led(), "options": [{**each, "map": None} for each in led()["options"]]}
    names = [part.name for part in conditions.parts(Page(bare))]
    assert "staircase-part" not in names


def test_every_number_in_a_cell_is_the_row_that_binds_it(page: Page) -> None:
    motor = page.motors[0]
    svg = staircase(page, motor).svg
    said = re.findall(r'data-key="([^"]+binding)" data-form="count"[^>]*>([^<]+)<', svg)
    cells = page.keys(f"{motor}.map.cells")
    bound = {f"{key}.binding" for key in cells if page.value(key)["binding"]}
    assert {key for key, _ in said} == bound
    assert all(str(page.value(key)) == text for key, text in said)
    assert len(cells) > len(bound) > 0


def test_the_spreadsheet_has_a_row_for_every_cell(page: Page) -> None:
    tables = csv_tables(led())
    rows = list(csv.DictReader(io.StringIO(tables["map_cells"])))
    assert len(rows) == len(page.keys(f"{page.motors[0]}.map.cells"))
    assert {"motor_kw", "bank_kwh", "slower_kn", "word", "binding"} <= set(rows[0])
    assert len(list(csv.DictReader(io.StringIO(tables["map_smallest"])))) == 6
