"""Do the packs hold what their readers ask, and no price and no private reason?"""

from __future__ import annotations

import copy
import re
from pathlib import Path
from typing import Any

import pytest
from markupsafe import Markup

from generator import cli
from generator.cli import CASE_AT_FAULT, DONE, run_command
from generator.report import write
from generator.report.numbers import Display, shown
from generator.report.packs import packs
from generator.report.page import bare_text
from generator.report.pdf import PdfResult
from generator.report.render import Pages, make_pack
from tests.report.conftest import CASES, FEW, KETCH, pack_of, pack_pdf_of
from tests.report.html_numbers import read
from tests.report.test_pages import check_numbers

NAMES = ["yard", "insurer"]
MONEY = re.compile(r"[€£$]|\bEUR\b|\bprices? of\b|\bfirst cost\b|\bpays? back\b", re.IGNORECASE)


@pytest.fixture(params=NAMES)
def pack(request: pytest.FixtureRequest) -> tuple[str, Pages]:
    return request.param, pack_of(KETCH, request.param)


def told(pages: Pages) -> str:
    """All words of a pack: page, drawings and their alternative texts."""
    body = re.sub(r"<style>.*?</style>", "", pages.html_screen, flags=re.DOTALL)
    alts = " ".join(re.findall(r'alt="([^"]*)"', pages.html_print))
    return " ".join(
        [bare_text(Markup(body)), alts, *map(bare_text, map(Markup, pages.charts.values()))]
    )


def amounts(node: Any, display: Display, key: str = "") -> set[str]:
    """Every sum of money in the results, as it would be printed."""
    if isinstance(node, dict):
        return {text for name, value in node.items() for text in amounts(value, display, name)}
    if isinstance(node, list):
        return {text for value in node for text in amounts(value, display, key)}
    if key.endswith("_money") and isinstance(node, int | float) and abs(node) >= 1000:
        return {shown(node, "money:bare", display)}
    return set()


def test_pack_has_no_price(pack: tuple[str, Pages], results: dict[str, Any]) -> None:
    words = told(pack[1])
    display = Display(results["case"]["units"], results["case"]["currency"])
    printed = amounts(results, display)
    assert len(printed) > 20
    assert not MONEY.search(words)
    assert 'data-form="money' not in pack[1].html_screen
    assert not re.search(r'data-key="[^"]*_money', pack[1].html_screen)


def test_pack_has_no_private_reason(pack: tuple[str, Pages], results: dict[str, Any]) -> None:
    private = [*results["study"]["priorities"], *results["study"]["reasons"]]
    assert len(private) >= 2
    words = told(pack[1])
    assert [reason for reason in private if reason in words] == []


def test_pack_has_no_verdict_and_no_diesel_option(
    pack: tuple[str, Pages], results: dict[str, Any]
) -> None:
    words = told(pack[1])
    for option in results["options"]:
        if option["kind"] != "battery":
            assert option["name"] not in words
        assert option["verdict"]["word"] not in words


def test_every_number_of_a_pack_is_that_of_its_key(
    pack: tuple[str, Pages], results: dict[str, Any]
) -> None:
    assert check_numbers(results, pack[1].html_screen) > 150


def test_links_and_names_of_a_pack_are_whole(pack: tuple[str, Pages]) -> None:
    numbers = read(pack[1].html_screen)
    assert len(numbers.ids) == len(set(numbers.ids))


def test_pack_says_who_confirms_and_claims_nothing(pack: tuple[str, Pages]) -> None:
    words = " ".join(told(pack[1]).split())
    assert "for the installer to confirm" in words
    assert "verif" in words
    assert "current edition" in words
    for claim in re.findall(r"[^.]*\b(?:complies|compliant|conforms|in accordance)\b[^.]*", words):
        raise AssertionError(claim)
    for said in re.findall(r"[^.;]*\bcompliance\b[^.;]*", words):
        assert re.search(r"\b(?:not|no|none)\b", said), said


def test_pack_holds_what_its_reader_asks(pack: tuple[str, Pages]) -> None:
    name, pages = pack
    words = told(pages)
    parts = {
        "yard": ("What changes", "Single-line diagram", "Weight and trim", "Single failures",
                 "Commissioning checks", "Manual points", "Limits of this pack"),
        "insurer": ("What changes", "Certificates to obtain", "verify current edition",
                    "Single-line diagram", "Single failures", "Cautions", "Commissioning checks",
                    "Manual points", "Limits of this pack"),
    }[name]  # fmt: skip
    assert [part for part in parts if part not in words] == []


@pytest.mark.parametrize("name", NAMES)
def test_pack_is_set_without_a_complaint_and_is_short(name: str) -> None:
    done = pack_pdf_of(KETCH, name)
    assert done.log_lines == ()
    assert 4 <= done.pages <= 14  # yard 3 to 6, insurer 2 to 3, with schedules and tests added


def test_pack_stands_without_a_motor(results: dict[str, Any]) -> None:
    bare = copy.deepcopy(results)
    del bare["options"][2:]
    bare["cautions"], bare["certificates"], bare["documents"] = [], [], []
    for pack in packs().values():
        assert "None" not in told(make_pack(bare, pack))


@pytest.mark.parametrize("name", NAMES)
def test_folder_of_a_pack_holds_no_results_and_no_money(
    name: str, results: dict[str, Any], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(write, "make_pdf", lambda html, charts, inside: pack_pdf_of(KETCH, name))
    written = write.write_pack(results, packs()[name], tmp_path / "x")
    assert written.lacks == ()
    files = {str(path.relative_to(written.folder)) for path in written.folder.rglob("*.*")}
    assert {f"{name}.html", f"{name}.pdf"} <= files
    assert "results.json" not in files
    tables = [path for path in (written.folder / "tables").iterdir()]
    assert len(tables) > 4
    for path in tables:
        assert "money" not in path.read_text(encoding="utf-8"), path.name
    masses = (written.folder / "tables" / "weight_ledger.csv").read_text(encoding="utf-8")
    diesels = [option["id"] for option in results["options"] if option["kind"] != "battery"]
    told_of = {row.split(",")[0] for row in masses.splitlines()[1:]}
    assert diesels
    assert told_of
    assert not told_of & set(diesels)


def test_command_refuses_a_pack_that_is_not_there(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    case = str(CASES / "sloop_30_weekend.yaml")
    arguments = ["report", case, "--part", "broker", "--out", str(tmp_path / "out")]
    assert run_command(arguments) == CASE_AT_FAULT
    said = capsys.readouterr().err
    assert len(said.splitlines()) == 1
    assert "broker" in said
    assert "yard or insurer or summary" in said
    assert not (tmp_path / "out").exists()


def test_command_writes_a_pack_into_a_folder_of_its_own(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Few draws and no engine: the installed command writes a pack whole."""
    monkeypatch.setattr(cli, "DRAWS", FEW)
    monkeypatch.setattr(write, "make_pdf", lambda html, charts, inside: PdfResult(b"%PDF", (), 1))
    case = str(CASES / "sloop_30_weekend.yaml")
    assert run_command(["report", case, "--part", "yard", "--out", str(tmp_path)]) == DONE
    assert [path.name for path in tmp_path.iterdir()] == ["sloop_30_weekend-yard"]


def test_packs_tell_where_the_bank_stands_and_what_was_seen_there(
    pack: tuple[str, Pages], results: dict[str, Any]
) -> None:
    words = " ".join(told(pack[1]).split())
    motors = [option for option in results["options"] if option["installation"]]
    spaces = [motor["installation"]["battery_space"] for motor in motors]
    assert any(spaces) or "space is not named in the case" in words
    assert [space for space in spaces if space and space not in words] == []
    assert "Criteria and cautions say" not in words


def test_packs_print_no_five_digit_current(pack: tuple[str, Pages]) -> None:
    """A short circuit is a range of kiloamperes; its last digit is not known."""
    assert not re.findall(r"\d\d,\d{3}\s*A\b", told(pack[1]))
    assert "kA" in told(pack[1])


def reasons_beside_numbers(node: Any, key: str = "") -> list[str]:
    """Keys whose reason for being absent stands beside the number."""
    if isinstance(node, list):
        return [found for row in node for found in reasons_beside_numbers(row, key)]
    if not isinstance(node, dict):
        return []
    found = [hit for name, value in node.items() for hit in reasons_beside_numbers(value, name)]
    for name in ("peak_current", "peak_voltage", "string_limit"):
        told_so = [node[f"{name}_{unit}"] for unit in ("a", "v") if f"{name}_{unit}" in node]
        if node.get(f"{name}_why") and told_so and told_so[0] is not None:
            found.append(f"{key}.{name}")
    return found


def test_no_reason_for_absence_stands_beside_its_number(results: dict[str, Any]) -> None:
    assert reasons_beside_numbers(results) == []
    assert reasons_beside_numbers({"peak_current_a": 1.0, "peak_current_why": "no"})
