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
from generator.report.sections import criteria
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


def test_the_section_on_what_would_change_the_advice_begins_with_it(page: Page) -> None:
    parts = criteria.parts(page)
    assert [each.name for each in parts].index("staircase-part") == 0
    part = parts[0]
    assert "the smallest that is suitable is" in bare_text(part.figures[0].finding)
    assert "tenth of that battery" in bare_text(part.figures[0].note)


def test_a_study_that_was_not_asked_for_it_shows_none() -> None:
    bare = {**led(), "options": [{**each, "map": None} for each in led()["options"]]}
    names = [part.name for part in criteria.parts(Page(bare))]
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
