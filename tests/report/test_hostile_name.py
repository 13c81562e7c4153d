"""What an owner calls boat, options and legs comes out letter by letter, wherever it is told."""

from __future__ import annotations

import html
import io
import json
import re
from functools import lru_cache
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import pikepdf
import pytest

from generator.case.open import read_case
from generator.draws import make_draws
from generator.report.csv_tables import csv_tables
from generator.report.packs import packs
from generator.report.pdf import make_pdf
from generator.report.render import Pages, make_pack, make_pages
from generator.report.results_file import build, to_json
from generator.study import run
from tests.report.conftest import CASES, KETCH

NAME = "<b>{{ 7*7 }}</b> {bank.x|energy} $\\frac <i>$"
CUT = re.compile(re.escape("<b>{{ 7*7 }}</b> ") + r"(?!\{bank\.x\|energy\})")
CALLED = {
    "  name: Wandelaar": f"  name: '{NAME}'",
    "name: Home through the lock against the last of the ebb": f"name: 'Home {NAME}'",
    "name: Motor A, 10 kW": f"name: 'Motor A {NAME}'",
}


@lru_cache(maxsize=1)
def results() -> dict[str, Any]:
    text = (CASES / f"{KETCH}.yaml").read_text(encoding="utf-8")
    for old, new in CALLED.items():
        assert old in text, old
        text = text.replace(old, new)
    with TemporaryDirectory() as folder:
        path = Path(folder) / f"{KETCH}.yaml"
        path.write_text(text, encoding="utf-8")
        case = read_case(path)
    return build(case, run(case, make_draws(case, 20)))


@lru_cache(maxsize=1)
def pages() -> Pages:
    return make_pages(results())


def shown(page: str) -> str:
    """What a reader sees: without elements, and without style."""
    page = re.sub(r"<style>.*?</style>", "", page, flags=re.DOTALL)
    return html.unescape(re.sub(r"<[^>]*>", "", page))


def test_json_holds_it_as_typed() -> None:
    text = to_json(results())
    tree = json.loads(text)
    assert tree["boat"]["name"] == NAME
    assert not CUT.search(text)
    assert sum(NAME in said for said in strings(tree["options"])) > 10


def strings(node: Any) -> list[str]:
    if isinstance(node, dict):
        return [text for value in node.values() for text in strings(value)]
    if isinstance(node, list):
        return [text for value in node for text in strings(value)]
    return [node] if isinstance(node, str) else []


def test_page_and_paper_show_it_as_typed() -> None:
    for page in (pages().html_screen, pages().html_print):
        assert "<b>{{" not in page
        seen = shown(page)
        assert seen.count(NAME) > 20
        assert not CUT.search(seen)
    assert f"<title>{html.escape(NAME)}:" in pages().html_screen.replace("&#34;", '"')


@pytest.mark.parametrize("pack", ["yard", "insurer"])
def test_pack_shows_it_as_typed(pack: str) -> None:
    page = make_pack(results(), packs()[pack])
    assert NAME in shown(page.html_screen)
    assert not CUT.search(shown(page.html_screen))


def test_tables_hold_it_as_typed() -> None:
    tables = csv_tables(results())
    assert any(NAME in text for text in tables.values())
    assert not any(CUT.search(text) for text in tables.values())


def test_charts_write_it_as_typed() -> None:
    charts = {name: shown(svg) for name, svg in pages().charts.items()}
    assert any(NAME in text for text in charts.values())
    assert not any(CUT.search(text) for text in charts.values())


def test_title_of_the_pdf_is_it_as_typed() -> None:
    front = pages().html_print.partition("<main>")[0] + "</body></html>"
    with pikepdf.open(io.BytesIO(make_pdf(front, pages().charts).bytes)) as paper:
        assert str(paper.docinfo["/Title"]).startswith(f"{NAME}:")
