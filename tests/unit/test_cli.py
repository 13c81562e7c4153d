"""Exit codes and words of the command, apart from what a study finds."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from generator import cli
from generator.cli import (
    CASE_AT_FAULT,
    DONE,
    FAILED,
    attempt,
    for_each,
    run_command,
    tell_defect,
    tell_lack,
)
from generator.errors import CaseError, EngineError, Fault
from generator.report.pdf import PdfResult
from generator.report.results_file import SCHEMA
from generator.report.write import Lack
from generator.version import VERSION
from tests.unit.case.faulty import SMALL

Act = Callable[[Path], int]
FAULT = Fault("boat.yaml", 7, "boat.beam", "no unit", "expected a length such as 3.1 m")
PLACE = Path("boat.yaml")
ROOT = Path(__file__).parents[2]
DEMO = ROOT / "cases" / "sloop_30_weekend.yaml"


def raising(error: Exception) -> Act:
    def act(path: Path) -> int:
        raise error

    return act


def test_attempt_prints_every_fault_of_a_case(capsys: pytest.CaptureFixture[str]) -> None:
    assert attempt(raising(CaseError([FAULT, FAULT])), PLACE) == CASE_AT_FAULT
    said = capsys.readouterr()
    assert said.out == ""
    line = "boat.yaml:7: boat.beam: no unit, expected a length such as 3.1 m"
    assert said.err.splitlines() == [line, line]


@pytest.mark.parametrize("error", [EngineError("no engine"), PermissionError("no entry")])
def test_attempt_tells_other_failures_in_one_line(
    error: Exception, capsys: pytest.CaptureFixture[str]
) -> None:
    assert attempt(raising(error), PLACE) == FAILED
    assert capsys.readouterr().err == f"boat.yaml: not written: {error}\n"


@pytest.mark.parametrize(
    ("codes", "expected"),
    [
        ([DONE, DONE], DONE),
        ([DONE, CASE_AT_FAULT], CASE_AT_FAULT),
        ([CASE_AT_FAULT, CASE_AT_FAULT], CASE_AT_FAULT),
        ([CASE_AT_FAULT, FAILED, DONE], FAILED),
    ],
)
def test_for_each_gives_2_only_if_nothing_worse_than_faulty_cases(
    codes: list[int], expected: int
) -> None:
    waiting = iter(codes)
    done: list[Path] = []

    def act(path: Path) -> int:
        done.append(path)
        return next(waiting)

    paths = [Path(f"{number}.yaml") for number in range(len(codes))]
    assert for_each(paths, act) == expected
    assert done == paths


def test_run_command_tells_its_version(capsys: pytest.CaptureFixture[str]) -> None:
    assert run_command(["--version"]) == DONE
    assert capsys.readouterr().out == f"study {VERSION}\n"


@pytest.mark.parametrize("arguments", [["--oops"], ["report"], ["reprot", "a.yaml"], ["check"]])
def test_run_command_wrong_arguments_are_no_fault_of_a_case(
    arguments: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    assert run_command(arguments) == FAILED
    assert len(capsys.readouterr().err.splitlines()) == 1


def test_run_command_refuses_two_cases_for_one_folder(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    paths = [str(tmp_path / folder / "sloop.yaml") for folder in ("a", "b")]
    assert run_command(["report", *paths, "--out", str(tmp_path)]) == FAILED
    assert str(tmp_path / "sloop") in capsys.readouterr().err


def test_tell_defect_is_one_line_and_no_traceback(capsys: pytest.CaptureFixture[str]) -> None:
    tell_defect(ZeroDivisionError, ZeroDivisionError("by\nzero"), None)
    said = capsys.readouterr().err
    assert said.count("\n") == 1
    assert "ZeroDivisionError: by zero" in said


def test_tell_lack_of_the_machine_is_its_own_words(capsys: pytest.CaptureFixture[str]) -> None:
    tell_lack(PLACE, Lack("report.pdf", EngineError("install it")))
    assert capsys.readouterr().err == "boat.yaml: lacks report.pdf: install it\n"


def test_tell_lack_of_a_defect_is_one_line_and_no_traceback(
    capsys: pytest.CaptureFixture[str],
) -> None:
    tell_lack(PLACE, Lack("the chart range", ZeroDivisionError("by\nzero")))
    said = capsys.readouterr().err
    assert said.startswith("boat.yaml: lacks the chart range, by a defect of this tool")
    assert said.endswith("ZeroDivisionError: by zero\n")
    assert said.count("\n") == 1


def test_tell_lack_shows_developers_where_it_broke(tmp_path: Path) -> None:
    script = tmp_path / "broken.py"
    script.write_text(
        "from pathlib import Path\n"
        "from generator.cli import tell_lack\n"
        "from generator.report.write import Net\n"
        "net = Net()\n"
        "net.stage('the chart range', lambda: 1 / 0)\n"
        "tell_lack(Path('boat.yaml'), net.lacks[0])\n",
        encoding="utf-8",
    )
    done = subprocess.run(
        [sys.executable, "-X", "dev", str(script)],
        env={**os.environ, "PYTHONPATH": str(ROOT)},
        capture_output=True,
        text=True,
        check=True,
    )
    assert done.stderr.count("Traceback") == 1
    assert "broken.py" in done.stderr
    assert "boat.yaml: lacks the chart range" in done.stderr.splitlines()[-1]


@pytest.fixture
def quick(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Path:
    """A case whose study takes a second: few draws, without what moves it."""
    monkeypatch.setattr(cli, "DRAWS", 20)
    monkeypatch.setattr("generator.sensitivity.tornadoes", lambda case, study: ())
    monkeypatch.setattr("generator.search.smallest", lambda case, study: ())
    path = tmp_path / "boat.yaml"
    path.write_text(SMALL, encoding="utf-8")
    return path


def stand_in(_html: str, _charts: dict[str, str], _inside: object = ()) -> PdfResult:
    """In place of the drawing engine, which takes fifteen seconds for a report."""
    return PdfResult(b"%PDF", (), 1)


def broken(*_: object) -> None:
    raise ZeroDivisionError("no miles")


@pytest.mark.usefixtures("sketched")
def test_report_goes_on_without_a_chart_that_cannot_be_drawn(
    quick: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Page, paper, results and tables are all there, and the page says what is not.

    The paper is a stand-in's: that the engine sets a page without a chart is shown by a pack.
    """
    out = quick.parent / "out"
    monkeypatch.setattr("generator.report.write.make_pdf", stand_in)
    monkeypatch.setattr("generator.report.sections.technical.speed_power", broken)
    assert run_command(["report", str(quick), "--out", str(out)]) == FAILED
    said = [line for line in capsys.readouterr().err.splitlines() if "warning:" not in line]
    (line,) = said
    assert line.startswith(f"{quick}: lacks the chart speed-power, by a defect of this tool")
    assert line.endswith("ZeroDivisionError: no miles")
    (folder,) = out.iterdir()
    assert folder.name == "boat-incomplete"
    figures = {path.name for path in (folder / "figures").iterdir()}
    assert "speed-power.svg" not in figures
    assert len(figures) > 3
    assert (folder / "report.pdf").read_bytes().startswith(b"%PDF")
    results = json.loads((folder / "results.json").read_text(encoding="utf-8"))
    assert results["schema"] == SCHEMA
    assert results["options"]
    assert list((folder / "tables").iterdir())
    page = (folder / "report.html").read_text(encoding="utf-8")
    assert page.count("This chart could not be drawn.") == 1
    start = page.index('<figure id="speed-power">')
    assert "This chart could not be drawn." in page[start : page.index("</figure>", start)]


def test_pack_is_set_without_a_diagram_that_cannot_be_drawn(
    quick: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr("generator.report.sections.diagram.single_line", broken)
    out = quick.parent / "out"
    assert run_command(["report", str(quick), "--out", str(out), "--part", "yard"]) == FAILED
    assert "by a defect of this tool" in capsys.readouterr().err
    (folder,) = out.iterdir()
    assert (folder / "yard.pdf").read_bytes().startswith(b"%PDF-1.7")
    page = (folder / "yard.html").read_text(encoding="utf-8")
    assert "This chart could not be drawn." in page


@pytest.mark.usefixtures("sketched")
def test_report_goes_on_without_the_chart_of_the_front_page(
    quick: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    out = quick.parent / "out"
    monkeypatch.setattr("generator.report.write.make_pdf", stand_in)
    monkeypatch.setattr("generator.report.sections.front.front_bars", broken)
    assert run_command(["report", str(quick), "--out", str(out)]) == FAILED
    page = (out / "boat-incomplete" / "report.html").read_text(encoding="utf-8")
    assert page.count("This chart could not be drawn.") == 1


def test_report_keeps_the_results_when_a_section_breaks_down(
    quick: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    out = quick.parent / "out"
    monkeypatch.setattr("generator.report.sections.technical.motion", broken)
    assert run_command(["report", str(quick), "--out", str(out)]) == FAILED
    said = [line for line in capsys.readouterr().err.splitlines() if "warning:" not in line]
    (line,) = said
    assert line.startswith(f"{quick}: lacks report.html and report.pdf, by a defect")
    folder = out / "boat-incomplete"
    assert {path.name for path in folder.iterdir()} == {
        ".written", "results.json", "tables", "figures",
    }  # fmt: skip
    assert list((folder / "tables").iterdir())


@pytest.mark.usefixtures("sketched")
def test_report_without_engine_writes_the_page_and_exits_with_1(
    quick: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """What a machine without Pango says is said by a stand-in for the drawing engine."""
    engine, out = quick.parent / "engine", quick.parent / "out"
    engine.mkdir()
    (engine / "weasyprint.py").write_text("raise OSError('no library')\n", encoding="utf-8")
    for name in [name for name in sys.modules if name.partition(".")[0] == "weasyprint"]:
        monkeypatch.delitem(sys.modules, name)
    monkeypatch.syspath_prepend(engine)
    assert run_command(["report", str(quick), "--out", str(out)]) == FAILED
    (said,) = [line for line in capsys.readouterr().err.splitlines() if "Pango" in line]
    assert "install" in said
    (folder,) = out.iterdir()
    assert folder.name == "boat-incomplete"
    written = {path.name for path in folder.iterdir()}
    assert written == {".written", "report.html", "results.json", "tables", "figures"}


@pytest.mark.usefixtures("sketched")
def test_report_writes_the_good_case_beside_a_faulty_one(
    quick: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A pack of the good one, set by a stand-in: what counts is that both are looked at."""
    faulty, out = quick.with_name("faulty.yaml"), quick.parent / "reports"
    faulty.write_text("version: 1\n", encoding="utf-8")
    monkeypatch.setattr("generator.report.write.make_pdf", stand_in)
    ways = ("--out", str(out), "--part", "insurer")
    assert run_command(["report", str(faulty), str(quick), *ways]) == CASE_AT_FAULT
    (written,) = out.iterdir()
    assert written.name == "boat-insurer"
    assert {path.name for path in written.iterdir()} >= {"insurer.html", "insurer.pdf"}


def test_report_refuses_a_folder_with_files_of_the_owner_before_the_study(
    quick: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr("generator.study.run", broken)
    for ending, more in (("", []), ("-no-prices", ["--no-prices"]), ("-yard", ["--part", "yard"])):
        folder = quick.parent / f"boat{ending}"
        folder.mkdir()
        (folder / "mine.txt").write_text("mine", encoding="utf-8")
        arguments = ["report", str(quick), "--out", str(quick.parent), *more]
        assert run_command(arguments) == FAILED
        assert f"{folder} holds what this tool did not write" in capsys.readouterr().err
        assert [path.name for path in folder.iterdir()] == ["mine.txt"]


@pytest.mark.parametrize("verb", ["report", "check"])
@pytest.mark.parametrize("name", ["..yaml", "...yaml", ".yaml", ".boat.yaml", " .yaml",
                                  "a\nb.yaml", "a\x1b[31m.yaml", "a\udc80.yaml"])  # fmt: skip
def test_a_case_whose_name_names_no_folder_is_at_fault(
    verb: str, name: str, quick: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """`..yaml` would replace the folder of all reports."""
    out = quick.parent / "out"
    (out / "other").mkdir(parents=True)
    path = quick.with_name(name)
    quick.rename(path)
    more = ["--out", str(out)] if verb == "report" else []
    assert run_command([verb, str(path), *more]) == CASE_AT_FAULT
    (line,) = capsys.readouterr().err.splitlines()
    assert ":1: has a name that no folder can be called after" in line
    assert line.isprintable()
    assert [item.name for item in out.iterdir()] == ["other"]
    assert {item.name for item in quick.parent.iterdir()} == {"out", path.name}


def test_run_command_tells_two_names_of_one_file_apart_from_two_files(
    quick: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Links of one name to two files would be written to one folder."""
    for folder in ("a", "b"):
        (quick.parent / folder).mkdir()
        (quick.parent / folder / "real.yaml").write_text(SMALL, encoding="utf-8")
    (quick.parent / "a" / "real.yaml").rename(quick.parent / "one.yaml")
    (quick.parent / "a" / "sloop.yaml").symlink_to("../one.yaml")
    (quick.parent / "b" / "sloop.yaml").symlink_to("real.yaml")
    paths = [str(quick.parent / folder / "sloop.yaml") for folder in ("a", "b")]
    assert run_command(["report", *paths, "--out", str(quick.parent / "out")]) == FAILED
    assert "more than one case would be written to" in capsys.readouterr().err


def command(*arguments: str, folder: Path) -> subprocess.CompletedProcess[str]:
    """The command in a fresh interpreter."""
    return subprocess.run(
        [sys.executable, "-m", "generator", *arguments],
        cwd=folder,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
        capture_output=True,
        text=True,
        check=False,
    )


@pytest.mark.parametrize("verb", ["report", "check"])
@pytest.mark.parametrize("content", ["boat: [\n", None])
def test_run_command_faulty_case_is_2_and_writes_nothing(
    verb: str, content: str | None, tmp_path: Path, monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:  # fmt: skip
    if content is not None:
        (tmp_path / "boat.yaml").write_text(content, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    before = list(tmp_path.iterdir())
    assert run_command([verb, "boat.yaml"]) == CASE_AT_FAULT
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err
    assert all(line.startswith("boat.yaml:") for line in said.err.splitlines())
    assert list(tmp_path.iterdir()) == before


@pytest.mark.parametrize("verb", ["report", "check"])
def test_command_faulty_case_exits_with_2_and_writes_nothing(verb: str, tmp_path: Path) -> None:
    (tmp_path / "boat.yaml").write_text("version: 1\n", encoding="utf-8")
    before = list(tmp_path.iterdir())
    done = command(verb, "boat.yaml", folder=tmp_path)
    assert done.returncode == 2, done.stderr
    assert all(line.startswith("boat.yaml:") for line in done.stderr.splitlines())
    assert list(tmp_path.iterdir()) == before


def test_run_command_strict_makes_a_fault_of_a_warning(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """A waterline of 5.1 m under a boat of 9.14 m is doubtful, not impossible."""
    text = DEMO.read_text(encoding="utf-8").replace("{value: 7.60 m,", "{value: 5.1 m,")
    (tmp_path / "boat.yaml").write_text(text, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    assert run_command(["check", "boat.yaml"]) == DONE
    plain = capsys.readouterr().err
    assert run_command(["check", "--strict", "boat.yaml"]) == CASE_AT_FAULT
    strict = capsys.readouterr().err
    assert "warning: boat.hull.waterline_length" in plain
    assert strict == plain.replace("warning: ", "")
