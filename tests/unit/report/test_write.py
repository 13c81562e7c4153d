"""A report folder is whole or as it was before, and never takes a file of its owner's."""

from __future__ import annotations

import json
import os
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest

from generator.errors import EngineError
from generator.report import write
from generator.report.packs import packs
from generator.report.render import Stage

RESULTS: dict[str, Any] = {
    "schema": 1,
    "tool_version": "0",
    "inputs": [{"path": "boat.beam", "value": 3.02}],
    "case": {"units": "metric", "currency": "EUR"},
}
WHOLE = {
    ".written",
    "report.html",
    "report.pdf",
    "results.json",
    "tables/data_dictionary.csv",
    "tables/inputs.csv",
    "figures/power.svg",
}


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
    monkeypatch.setattr(write, "make_pages", lambda results, stage: pages)
    monkeypatch.setattr(write, "make_pack", lambda results, pack, stage: pages)
    monkeypatch.setattr(
        write, "make_pdf", lambda html, charts, inside=(): Pdf(b"%PDF", ("odd font",))
    )


def files(folder: Path) -> set[str]:
    return {str(path.relative_to(folder)) for path in folder.rglob("*") if not path.is_dir()}


def contents(folder: Path) -> dict[str, bytes]:
    return {name: (folder / name).read_bytes() for name in files(folder)}


def breaking(error: Exception) -> Any:
    def broken(*_: Any) -> Any:
        raise error

    return broken


def test_write_report_writes_every_file_and_nothing_else(tmp_path: Path) -> None:
    written = write.write_report(RESULTS, tmp_path / "out" / "sloop")
    assert written == write.Written(tmp_path / "out" / "sloop", ("odd font",), ())
    assert files(tmp_path) == {f"out/sloop/{name}" for name in WHOLE}
    text = (tmp_path / "out" / "sloop" / "results.json").read_text(encoding="utf-8")
    assert json.loads(text) == RESULTS


def test_write_report_leaves_nothing_of_an_older_report(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    more = Pages("<p>old</p>", "", {"old": "<svg/>"})
    with monkeypatch.context() as older:
        older.setattr(write, "make_pages", lambda results, stage: more)
        write.write_report(RESULTS, tmp_path / "sloop")
    assert "sloop/figures/old.svg" in files(tmp_path)
    write.write_report(RESULTS, tmp_path / "sloop")
    assert files(tmp_path) == {f"sloop/{name}" for name in WHOLE}


def test_same_results_give_the_same_bytes(tmp_path: Path) -> None:
    for name in ("a", "b"):
        write.write_report(RESULTS, tmp_path / name)
    assert contents(tmp_path / "a") == contents(tmp_path / "b")


# What breaks down, what its lack is called, and what is then not in the set.
STAGES = {
    "csv_tables": ("tables", {"tables/data_dictionary.csv", "tables/inputs.csv"}),
    "make_pages": (
        "report.html and report.pdf",
        {"report.html", "report.pdf", "figures/power.svg"},
    ),
    "make_pdf": ("report.pdf", {"report.pdf"}),
}


@pytest.mark.parametrize("error", [TypeError("a defect"), EngineError("install it"), OSError("x")])
@pytest.mark.parametrize("stage", STAGES)
@pytest.mark.parametrize("older", [False, True])
def test_a_stage_that_breaks_down_takes_no_other_file_with_it(
    stage: str, error: Exception, older: bool, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The rest goes to a folder of its own; an older report stays as it was."""
    folder = tmp_path / "sloop"
    if older:
        write.write_report(RESULTS, folder)
    before = contents(tmp_path)
    monkeypatch.setattr(write, stage, breaking(error))
    written = write.write_report(RESULTS, folder)
    what, missing = STAGES[stage]
    assert written.lacks == (write.Lack(what, error),)
    assert written.folder == tmp_path / "sloop-incomplete"
    assert files(written.folder) == WHOLE - missing
    assert contents(folder) == {name.removeprefix("sloop/"): text for name, text in before.items()}


def test_a_chart_that_cannot_be_drawn_is_a_lack(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def pages(results: dict[str, Any], stage: Stage) -> Pages:
        assert stage("the chart range", breaking(ZeroDivisionError("no miles"))) is None
        return Pages("<p>screen</p>", "<p>print</p>", {"power": "<svg/>"})

    monkeypatch.setattr(write, "make_pages", pages)
    written = write.write_report(RESULTS, tmp_path / "sloop")
    (lack,) = written.lacks
    assert (lack.what, str(lack.reason)) == ("the chart range", "no miles")
    assert lack.reason.__traceback__ is not None
    assert files(tmp_path) == {f"sloop-incomplete/{name}" for name in WHOLE}


def test_a_chart_that_the_drawing_engine_leaves_out_is_a_lack(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    line = "ERROR: Failed to load image at 'chart:power': no element found"
    monkeypatch.setattr(write, "make_pdf", lambda html, charts, inside=(): Pdf(b"%PDF", (line,)))
    written = write.write_report(RESULTS, tmp_path / "sloop")
    assert [lack.what for lack in written.lacks] == ["a chart in report.pdf"]
    assert "chart:power" in str(written.lacks[0].reason)


def test_a_whole_report_removes_the_incomplete_one(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with monkeypatch.context() as without:
        without.setattr(write, "make_pdf", breaking(EngineError("install it")))
        write.write_report(RESULTS, tmp_path / "sloop")
        write.write_report(RESULTS, tmp_path / "sloop")  # one incomplete set replaces another
    assert [path.name for path in tmp_path.iterdir()] == ["sloop-incomplete"]
    write.write_report(RESULTS, tmp_path / "sloop")
    assert [path.name for path in tmp_path.iterdir()] == ["sloop"]


def test_an_incomplete_report_with_a_file_of_the_owner_stays(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with monkeypatch.context() as without:
        without.setattr(write, "make_pdf", breaking(EngineError("install it")))
        write.write_report(RESULTS, tmp_path / "sloop")
    (tmp_path / "sloop-incomplete" / "tables" / "mine.csv").write_text("mine", encoding="utf-8")
    before = contents(tmp_path / "sloop-incomplete")
    write.write_report(RESULTS, tmp_path / "sloop")
    assert contents(tmp_path / "sloop-incomplete") == before


def test_an_incomplete_report_never_takes_the_place_of_a_whole_one(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Another case may be called `sloop-incomplete`."""
    write.write_report(RESULTS, tmp_path / "sloop-incomplete")
    write.write_report(RESULTS, tmp_path / "sloop")
    before = contents(tmp_path)
    assert {f"sloop-incomplete/{name}" for name in WHOLE} < set(before)
    monkeypatch.setattr(write, "make_pdf", breaking(EngineError("install it")))
    with pytest.raises(FileExistsError, match="holds a whole report"):
        write.write_report(RESULTS, tmp_path / "sloop")
    assert contents(tmp_path) == before


def test_write_report_keeps_the_older_report_when_the_disk_is_full(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    write.write_report(RESULTS, tmp_path / "sloop")
    before = contents(tmp_path)
    monkeypatch.setattr(write, "write_texts", breaking(OSError("disk full")))
    with pytest.raises(OSError, match="disk full"):
        write.write_report(RESULTS, tmp_path / "sloop")
    assert contents(tmp_path) == before


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


OWNERS = [
    "notes.txt",
    "tables/mine.csv",
    "figures/mine.svg",
    "tables/more/mine.csv",
    "report.html~",
    "photos/stern.jpg",
    ".hidden",
]


# Of an older version no list tells which tables and figures were ours.
UNTOLD = ("tables/mine.csv", "figures/mine.svg")


@pytest.mark.parametrize(
    ("name", "listed"),
    [*((name, True) for name in OWNERS), *((name, False) for name in OWNERS if name not in UNTOLD)],
)
def test_no_file_of_the_owner_is_ever_deleted(name: str, listed: bool, tmp_path: Path) -> None:
    folder = tmp_path / "sloop"
    write.write_report(RESULTS, folder)
    (folder / name).parent.mkdir(exist_ok=True)
    (folder / name).write_text("mine", encoding="utf-8")
    if not listed:
        (folder / ".written").unlink()
    before = contents(tmp_path)
    said = r"tables/more/" if "more" in name else r"photos/" if "photos" in name else name
    with pytest.raises(FileExistsError, match=said.replace(".", r"\.")):
        write.write_report(RESULTS, folder)
    assert contents(tmp_path) == before


@pytest.mark.parametrize("name", sorted(WHOLE - {".written"}))
def test_no_file_that_its_owner_changed_is_ever_deleted(name: str, tmp_path: Path) -> None:
    write.write_report(RESULTS, tmp_path / "sloop")
    with (tmp_path / "sloop" / name).open("a", encoding="utf-8") as stream:
        stream.write(" and mine")
    before = contents(tmp_path)
    with pytest.raises(FileExistsError, match=name.replace(".", r"\.")):
        write.write_report(RESULTS, tmp_path / "sloop")
    assert contents(tmp_path) == before


@pytest.mark.parametrize("name", ["report.html", "tables", "mine"])
def test_a_link_in_the_folder_is_the_owners(name: str, tmp_path: Path) -> None:
    folder = tmp_path / "sloop"
    write.write_report(RESULTS, folder)
    place = folder / name
    if place.exists():
        place.rename(tmp_path / "elsewhere")
    place.symlink_to(tmp_path / "elsewhere")
    with pytest.raises(FileExistsError, match=name.replace(".", r"\.")):
        write.write_report(RESULTS, folder)
    assert place.is_symlink()


def test_a_file_that_its_owner_removed_is_not_missed(tmp_path: Path) -> None:
    write.write_report(RESULTS, tmp_path / "sloop")
    (tmp_path / "sloop" / "report.pdf").unlink()
    write.write_report(RESULTS, tmp_path / "sloop")
    assert files(tmp_path / "sloop") == WHOLE


def test_a_file_that_the_owner_adds_during_the_run_is_seen(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    write.write_report(RESULTS, tmp_path / "sloop")
    mine = tmp_path / "sloop" / "mine.txt"

    def meanwhile(html: str, charts: dict[str, str], inside: object = ()) -> Pdf:
        mine.write_text("mine", encoding="utf-8")
        return Pdf(b"%PDF")

    monkeypatch.setattr(write, "make_pdf", meanwhile)
    with pytest.raises(FileExistsError, match=r"mine\.txt"):
        write.write_report(RESULTS, tmp_path / "sloop")
    assert mine.read_text(encoding="utf-8") == "mine"
    assert [path.name for path in tmp_path.iterdir()] == ["sloop"]


def test_a_report_of_an_older_version_is_replaced(tmp_path: Path) -> None:
    write.write_report(RESULTS, tmp_path / "sloop")
    (tmp_path / "sloop" / ".written").unlink()
    write.write_report(RESULTS, tmp_path / "sloop")
    assert files(tmp_path / "sloop") == WHOLE


def test_a_pack_of_an_older_version_is_replaced(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    page = '<meta name="generator" content="study 0.1.0">'
    monkeypatch.setattr(write, "make_pack", lambda *_: Pages(page, "", {}))
    folder, pack = tmp_path / "sloop-yard", packs()["yard"]
    write.write_pack(RESULTS, pack, folder)
    assert files(folder) == {".written", "yard.html", "yard.pdf"}
    (folder / ".written").unlink()
    write.write_pack(RESULTS, pack, folder)
    (folder / ".written").unlink()
    (folder / "report.html").write_text("mine", encoding="utf-8")
    with pytest.raises(FileExistsError, match=r"report\.html"):
        write.write_pack(RESULTS, pack, folder)


def test_a_pack_without_paper_goes_to_a_folder_of_its_own(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(write, "make_pdf", breaking(TypeError("a defect")))
    written = write.write_pack(RESULTS, packs()["yard"], tmp_path / "sloop-yard")
    assert [lack.what for lack in written.lacks] == ["yard.pdf"]
    assert files(tmp_path) == {
        f"sloop-yard-incomplete/{name}" for name in (".written", "yard.html", "figures/power.svg")
    }


ODD_RESULTS = ["", "{}", "[]", "mine", '{"schema": 1}', '{"schema": "1", "tool_version": "0"}',
               "[" * 100_000]  # fmt: skip


@pytest.mark.parametrize("text", ODD_RESULTS)
def test_results_of_someone_else_are_never_replaced(text: str, tmp_path: Path) -> None:
    folder = tmp_path / "sloop"
    folder.mkdir()
    (folder / "results.json").write_text(text, encoding="utf-8")
    with pytest.raises(FileExistsError, match=r"results\.json"):
        write.write_report(RESULTS, folder)
    assert contents(folder) == {"results.json": text.encode()}


@pytest.mark.parametrize("text", [*ODD_RESULTS, '{"whole": true, "files": []}'])
def test_a_list_that_is_none_of_ours_covers_nothing(text: str, tmp_path: Path) -> None:
    write.write_report(RESULTS, tmp_path / "sloop")
    (tmp_path / "sloop" / ".written").write_text(text, encoding="utf-8")
    with pytest.raises(FileExistsError, match=r"\.written"):
        write.write_report(RESULTS, tmp_path / "sloop")


def test_an_empty_folder_is_filled(tmp_path: Path) -> None:
    (tmp_path / "sloop").mkdir()
    write.write_report(RESULTS, tmp_path / "sloop")
    assert files(tmp_path / "sloop") == WHOLE


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
