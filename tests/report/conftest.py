"""One real study for all tests of the pages: the demo that compares two motors."""

from __future__ import annotations

import copy
from pathlib import Path
from typing import Any

import pytest

from generator.answer.answer import answer
from generator.case.open import read_case
from generator.draws import make_draws
from generator.report.packs import packs
from generator.report.pdf import PdfResult, make_pdf
from generator.report.render import Pages, make_pack, make_pages
from generator.report.results_file import build
from generator.search import smallest
from generator.sensitivity import tornadoes
from generator.study import run
from tests.once import once

CASES = Path(__file__).parents[2] / "cases"
KETCH = "ketch_34_two_motors"
FEW = 60  # draws: the pages have the same parts as with two thousand


@once
def studied(name: str) -> dict[str, Any]:
    case = read_case(CASES / f"{name}.yaml")
    study = run(case, make_draws(case, FEW))
    moved, sizes = tornadoes(case, study), smallest(case, study)
    return build(case, study, moved, sizes, led=answer(case, study))


@once
def pages_of(name: str) -> Pages:
    return make_pages(studied(name))


@once
def pack_of(name: str, pack: str) -> Pages:
    return make_pack(studied(name), packs()[pack])


@once
def pack_pdf_of(name: str, pack: str) -> PdfResult:
    pages = pack_of(name, pack)
    return make_pdf(pages.html_print, pages.charts)


@pytest.fixture(scope="session")
def results() -> dict[str, Any]:
    return copy.deepcopy(studied(KETCH))


@pytest.fixture(scope="session")
def pages() -> Pages:
    return pages_of(KETCH)
