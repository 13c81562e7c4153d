"""A report folder is whole or as it was before."""

from __future__ import annotations

import json
import os
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest

from generator.errors import EngineError
from generator.report import write

RESULTS: dict[str, Any] = {"schema": 1, "inputs": [{"path": "boat.beam", "value": 3.02}]}


@dataclass(frozen=True)
class Pages:
    html_screen: str
    html_print: str
    charts: dict[str, str]


@dataclass(frozen=True)
class Pdf:
    bytes: bytes
    log_lines: tuple[str, ...] = ()
    pages: int = 1


@pytest.fixture(autouse=True)
def _quick_engine(monkeypatch: pytest.MonkeyPatch) -> None:
    pages = Pages("<p>screen</p>", "<p>print</p>", {"power": "<svg/>"})
    monkeypatch.setattr(write, "make_pages", lambda results: pages)
    monkeypatch.setattr(write, "make_pdf", lambda html, charts: Pdf(b"%PDF", ("odd font",)))


def files(folder: Path) -> set[str]:
    return {str(path.relative_to(folder)) for path in folder.rglob("*") if path.is_file()}


def test_write_report_writes_every_file_and_nothing_else(tmp_path: Path) -> None:
    written = write.write_report(RESULTS, tmp_path / "out" / "sloop")
    assert written == write.Written(tmp_path / "out" / "sloop", ("odd font",), "")
    assert files(tmp_path) == {
        f"out/sloop/{name}"
        for name in (
            "report.html",
            "report.pdf",
            "results.json",
            "tables/inputs.csv",
            "figures/power.svg",
        )
    }
    text = (tmp_path / "out" / "sloop" / "results.json").read_text(encoding="utf-8")
    assert json.loads(text) == RESULTS


def test_write_report_leaves_nothing_of_an_older_report(tmp_path: Path) -> None:
    folder = tmp_path / "sloop"
    (folder / "figures").mkdir(parents=True)
    (folder / "figures" / "old.svg").write_text("<svg/>", encoding="utf-8")
    write.write_report(RESULTS, folder)
    assert "figures/old.svg" not in files(folder)
    assert [path.name for path in tmp_path.iterdir()] == ["sloop"]


def test_write_report_without_engine_writes_the_rest(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def lacking(html: str, charts: dict[str, str]) -> Pdf:
        raise EngineError("install it")

    monkeypatch.setattr(write, "make_pdf", lacking)
    written = write.write_report(RESULTS, tmp_path / "sloop")
    assert written.lacks == "install it"
    assert "report.html" in files(tmp_path / "sloop")
    assert "report.pdf" not in files(tmp_path / "sloop")


def test_write_report_keeps_the_older_report_when_drawing_fails(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    write.write_report(RESULTS, tmp_path / "sloop")
    before = files(tmp_path)

    def broken(html: str, charts: dict[str, str]) -> Pdf:
        raise OSError("disk full")

    monkeypatch.setattr(write, "make_pdf", broken)
    with pytest.raises(OSError, match="disk full"):
        write.write_report(RESULTS, tmp_path / "sloop")
    assert files(tmp_path) == before


def test_write_report_brings_the_older_report_back_when_the_swap_fails(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    write.write_report(RESULTS, tmp_path / "sloop")
    before = files(tmp_path)
    rename = Path.rename

    def refuse_new(self: Path, target: Path) -> Path:
        if self.name.startswith(".") and not self.name.endswith("-old"):
            raise PermissionError("no")
        return rename(self, target)

    monkeypatch.setattr(Path, "rename", refuse_new)
    with pytest.raises(PermissionError):
        write.write_report(RESULTS, tmp_path / "sloop")
    assert files(tmp_path) == before


def test_write_report_clears_what_a_killed_run_left(tmp_path: Path) -> None:
    write.write_report(RESULTS, tmp_path / "sloop")
    for ending in ("", "-old"):
        left = tmp_path / f".sloop-{os.getpid()}{ending}"
        left.mkdir()
        (left / "report.html").write_text("half", encoding="utf-8")
    write.write_report(RESULTS, tmp_path / "sloop")
    assert [path.name for path in tmp_path.iterdir()] == ["sloop"]


def test_write_report_never_replaces_a_folder_with_other_things_in_it(tmp_path: Path) -> None:
    folder = tmp_path / "letters"
    folder.mkdir()
    (folder / "will.txt").write_text("mine", encoding="utf-8")
    with pytest.raises(FileExistsError, match=r"will\.txt"):
        write.write_report(RESULTS, folder)
    assert files(tmp_path) == {"letters/will.txt"}


@pytest.mark.parametrize("kind", ["file", "link"])
def test_write_report_never_replaces_what_is_no_folder(tmp_path: Path, kind: str) -> None:
    place = tmp_path / "sloop"
    if kind == "file":
        place.write_text("mine", encoding="utf-8")
    else:
        (tmp_path / "elsewhere").mkdir()
        place.symlink_to(tmp_path / "elsewhere")
    with pytest.raises(FileExistsError, match="not a folder"):
        write.write_report(RESULTS, place)


def test_write_report_refuses_numbers_that_json_has_no_word_for(tmp_path: Path) -> None:
    with pytest.raises(ValueError, match="JSON"):
        write.write_report({"value": float("nan")}, tmp_path / "sloop")
    assert list(tmp_path.iterdir()) == []
