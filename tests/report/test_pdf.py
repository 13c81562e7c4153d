"""Is the PDF whole, tagged, silent and the same every time?"""

from __future__ import annotations

import builtins
import io
import json
import re
import subprocess
import sys
import zlib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pikepdf
import pytest

from generator.errors import EngineError
from generator.report.page import Page
from generator.report.pdf import make_pdf
from generator.report.render import Made, Pages, make_pages, shipped
from generator.report.sections.front import front
from tests.installed import DEMOS, WHOLE, finished
from tests.report.conftest import KETCH, pack_of, pack_pdf_of, studied


def opened(pdf: bytes) -> str:
    """The file with its packed streams unpacked, as far as they are text."""
    parts = [pdf.decode("latin-1")]
    for packed in re.findall(rb"stream\r?\n(.*?)\r?\nendstream", pdf, re.DOTALL):
        try:
            # a trailing byte may look like the end of a line, so the check sum may be short
            parts.append(zlib.decompressobj().decompress(packed).decode("latin-1"))
        except zlib.error:
            continue
    return "\n".join(parts)


def whole_report() -> Path:
    """The folder of the demo that the installed command wrote whole."""
    return finished()[0] / WHOLE


@pytest.fixture(scope="module")
def pdf() -> bytes:
    return (whole_report() / "report.pdf").read_bytes()


def front_of(name: str) -> bytes:
    """The front page and the contents after it, set with its own charts and without the body."""
    results = studied(name)
    cover = front(Page(results)).figure
    assert cover

    def cover_alone(what: str, make: Callable[[], Made], /) -> Made | None:
        return make() if what == f"the chart {cover.name}" else None

    pages = make_pages(results, cover_alone)
    assert list(pages.charts) == [cover.name]
    page, body, _ = pages.html_print.partition("<main>")
    assert body
    return make_pdf(f"{page}</body></html>", pages.charts).bytes


def test_the_drawing_engine_says_nothing() -> None:
    assert "drawing engine" not in finished()[2]  # that is how the command hands a line on


def test_it_has_a_sensible_number_of_pages(pdf: bytes) -> None:
    assert pdf.startswith(b"%PDF-")
    with pikepdf.open(io.BytesIO(pdf)) as opened_file:
        assert 10 <= len(opened_file.pages) <= 48  # body 12 to 18, appendices 10 to 16: common


@pytest.mark.parametrize("name", [*DEMOS, "every_key"])
def test_front_page_is_one_page_with_its_signature(name: str, pdf: bytes, tmp_path: Path) -> None:
    path = tmp_path / "report.pdf"
    path.write_bytes(pdf if name == WHOLE else front_of(name))
    command = ["pdftotext", "-f", "1", "-l", "1", str(path), "-"]
    text = subprocess.run(command, capture_output=True, text=True, check=True).stdout
    assert "Place and date" in text


def test_it_is_tagged_for_readers_of_other_senses(pdf: bytes) -> None:
    text = opened(pdf)
    assert "/MarkInfo" in text
    assert "pdfuaid" in text
    heads = len(re.findall(r"/S /TH\b", text))
    assert heads > 100
    assert len(re.findall(r"/Scope /(?:Column|Row)", text)) == heads


def test_every_chart_has_an_alternative_text(pdf: bytes, pages: Pages) -> None:
    assert len(re.findall(r"/Alt\b", opened(pdf))) >= len(pages.charts)


def test_headings_are_bookmarks(pdf: bytes) -> None:
    text = opened(pdf)
    assert "/Outlines" in text
    assert "1 Your boat" in text or "Y\x00o\x00u\x00r" in text


def test_the_same_results_give_the_same_pages_in_another_process() -> None:
    """From results.json alone: whatever is on the page and in the figures stands in there."""
    folder = whole_report()
    pages = make_pages(json.loads((folder / "results.json").read_text(encoding="utf-8")))
    assert shipped(pages.html_screen) == (folder / "report.html").read_text(encoding="utf-8")
    drawn = {path.stem: path.read_text(encoding="utf-8") for path in folder.glob("figures/*")}
    assert pages.charts == drawn


def test_the_same_pages_give_the_same_bytes() -> None:
    """Those of a pack: tables, drawings, bookmarks and tags, a sixth of the pages of a report."""
    pages = pack_of(KETCH, "insurer")
    again = make_pdf(pages.html_print, pages.charts)
    assert again.bytes == pack_pdf_of(KETCH, "insurer").bytes


def test_a_line_of_the_drawing_engine_is_handed_on() -> None:
    html = '<html lang="en"><style>p { no-such-thing: 1 }</style><title>t</title><p>x</p></html>'
    (line,) = make_pdf(html, {}).log_lines
    assert "no-such-thing" in line


@pytest.mark.parametrize(
    "tag",
    [
        '<img src="file:///etc/hostname" alt="x">',
        '<img src="http://127.0.0.1/x.png" alt="x">',
        '<link rel="attachment" href="file:///etc/hostname">',
        '<img src="chart:no-such-chart" alt="x">',
    ],
)
def test_nothing_is_fetched_but_from_memory(tag: str) -> None:
    from weasyprint.urls import FatalURLFetchingError

    with pytest.raises(FatalURLFetchingError):
        make_pdf(f'<html lang="en"><title>t</title>{tag}</html>', {})


def test_without_pango_it_says_how_to_get_it(monkeypatch: pytest.MonkeyPatch) -> None:
    real = builtins.__import__

    def missing(name: str, *rest: Any, **more: Any) -> Any:
        if name == "weasyprint":
            raise OSError("cannot load library 'libgobject-2.0-0'")
        return real(name, *rest, **more)

    monkeypatch.delitem(sys.modules, "weasyprint", raising=False)
    monkeypatch.setattr(builtins, "__import__", missing)
    with pytest.raises(EngineError, match="apt-get install libpango") as caught:
        make_pdf("<html></html>", {})
    assert "\n" not in str(caught.value)
