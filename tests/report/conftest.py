"""One real study for all tests of the pages: the demo that compares two motors."""

from __future__ import annotations

import copy
from functools import lru_cache
from pathlib import Path
from typing import Any

import pytest

from generator.case.open import read_case
from generator.draws import make_draws
from generator.report.pdf import PdfResult, make_pdf
from generator.report.render import Pages, make_pages
from generator.report.results_file import build
from generator.search import smallest
from generator.sensitivity import tornadoes
from generator.study import run

CASES = Path(__file__).parents[2] / "cases"
FEW = 60  # draws: the pages have the same parts as with two thousand


@lru_cache(maxsize=4)
def studied(name: str) -> dict[str, Any]:
    case = read_case(CASES / f"{name}.yaml")
    study = run(case, make_draws(case, FEW))
    return build(case, study, tornadoes(case, study), smallest(case, study))


@pytest.fixture(scope="session")
def results() -> dict[str, Any]:
    return copy.deepcopy(studied("ketch_34_two_motors"))


@pytest.fixture(scope="session")
def pages(results: dict[str, Any]) -> Pages:
    return make_pages(results)


@pytest.fixture(scope="session")
def pdf(pages: Pages) -> PdfResult:
    return make_pdf(pages.html_print, pages.charts)
