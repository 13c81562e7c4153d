"""Exit codes and words of the command, apart from what a study finds."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from generator.cli import CASE_AT_FAULT, DONE, FAILED, attempt, for_each, run_command, tell_defect
from generator.errors import CaseError, EngineError, Fault
from generator.version import VERSION

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


def command(*arguments: str, folder: Path, first: str = "") -> subprocess.CompletedProcess[str]:
    """The command in a fresh interpreter; modules in the folder `first` come before others."""
    path = os.pathsep.join(part for part in (first, str(ROOT)) if part)
    return subprocess.run(
        [sys.executable, "-m", "generator", *arguments],
        cwd=folder,
        env={**os.environ, "PYTHONPATH": path},
        capture_output=True,
        text=True,
        check=False,
    )


@pytest.mark.parametrize("verb", ["report", "check"])
@pytest.mark.parametrize("content", ["version: 1\n", "boat: [\n", None])
def test_command_faulty_case_exits_with_2_and_writes_nothing(
    verb: str, content: str | None, tmp_path: Path
) -> None:
    if content is not None:
        (tmp_path / "boat.yaml").write_text(content, encoding="utf-8")
    before = list(tmp_path.iterdir())
    done = command(verb, "boat.yaml", folder=tmp_path)
    assert done.returncode == 2, done.stderr
    assert all(line.startswith("boat.yaml:") for line in done.stderr.splitlines())
    assert list(tmp_path.iterdir()) == before


def test_command_without_engine_writes_the_page_and_exits_with_1(tmp_path: Path) -> None:
    """What a machine without Pango says is said by a stand-in for the drawing engine."""
    engine = tmp_path / "engine"
    engine.mkdir()
    (engine / "weasyprint.py").write_text("raise OSError('no library')\n", encoding="utf-8")
    done = command("report", str(DEMO), folder=tmp_path, first=str(engine))
    assert done.returncode == 1, done.stderr
    (said,) = [line for line in done.stderr.splitlines() if "Pango" in line]
    assert "install" in said
    written = {path.name for path in (tmp_path / "out" / DEMO.stem).iterdir()}
    assert written == {"report.html", "results.json", "tables", "figures"}


def test_command_writes_the_good_case_beside_a_faulty_one(tmp_path: Path) -> None:
    """A pack of the good one: it is set in a fifth of the time of a whole report."""
    (tmp_path / "faulty.yaml").write_text("version: 1\n", encoding="utf-8")
    cases, ways = ("faulty.yaml", str(DEMO)), ("--out", "reports", "--part", "insurer")
    done = command("report", *cases, *ways, folder=tmp_path)
    assert done.returncode == 2, done.stderr
    (written,) = (tmp_path / "reports").iterdir()
    assert written.name == f"{DEMO.stem}-insurer"
    assert {path.name for path in written.iterdir()} >= {"insurer.html", "insurer.pdf"}


def test_command_strict_makes_a_fault_of_a_warning(tmp_path: Path) -> None:
    """A waterline of 5.1 m under a boat of 9.14 m is doubtful, not impossible."""
    text = DEMO.read_text(encoding="utf-8").replace("{value: 7.60 m,", "{value: 5.1 m,")
    (tmp_path / "boat.yaml").write_text(text, encoding="utf-8")
    plain = command("check", "boat.yaml", folder=tmp_path)
    strict = command("check", "--strict", "boat.yaml", folder=tmp_path)
    assert (plain.returncode, strict.returncode) == (0, 2)
    assert "warning: boat.hull.waterline_length" in plain.stderr
    assert strict.stderr == plain.stderr.replace("warning: ", "")
