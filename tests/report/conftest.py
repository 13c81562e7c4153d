"""One rendering of the sample for all tests of the pages."""

from __future__ import annotations

from typing import Any

import pytest

from generator.report.pdf import PdfResult, make_pdf
from generator.report.render import Pages, make_pages
from tests.report.sample_results import sample


@pytest.fixture(scope="session")
def results() -> dict[str, Any]:
    return sample()


@pytest.fixture(scope="session")
def pages(results: dict[str, Any]) -> Pages:
    return make_pages(results)


@pytest.fixture(scope="session")
def pdf(pages: Pages) -> PdfResult:
    return make_pdf(pages.html_print, pages.charts)
