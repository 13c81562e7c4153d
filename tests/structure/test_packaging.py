"""One function finds the templates in a checkout and installed from wheel, sdist, editable."""

from __future__ import annotations

import sys
import tarfile
import zipfile
from pathlib import Path

import pytest

from tests.installed import (
    DEMOS,
    PACK,
    WHOLE,
    built,
    empty_environment,
    finished,
    install,
    run,
    wheel_python,
)
from tests.structure.source import ROOT

FIND = "from generator.report.render import templates_folder; print(templates_folder())"


def found_by(python: Path | str, folder: Path) -> Path:
    """The templates that an interpreter finds."""
    return Path(run(python, "-c", FIND, folder=folder).stdout.strip())


def template_names(folder: Path) -> set[str]:
    """Without what Python or the template library compiled of them."""
    every = (path.relative_to(folder) for path in folder.rglob("*") if path.is_file())
    return {str(path) for path in every if "__pycache__" not in path.parts}


def assert_all_templates(folder: Path) -> None:
    assert (folder / "report.html").is_file()
    assert template_names(folder) == template_names(ROOT / "templates")


def test_templates_folder_is_found_in_a_checkout() -> None:
    assert found_by(sys.executable, ROOT) == ROOT / "templates"


def test_templates_folder_is_found_after_wheel_install(tmp_path: Path) -> None:
    folder = found_by(wheel_python(), tmp_path)
    assert folder.is_relative_to(wheel_python().parents[1])
    assert_all_templates(folder)


def test_templates_folder_is_found_after_editable_install(tmp_path: Path) -> None:
    python = empty_environment(tmp_path / "venv")
    install(python, "-e", ROOT)
    assert found_by(python, tmp_path) == ROOT / "templates"


def test_wheel_of_the_sdist_is_that_of_the_checkout(tmp_path: Path) -> None:
    """So whoever installs the one has what the tests of the other look at, templates and all."""
    with tarfile.open(built("sdist")) as archive:
        archive.extractall(tmp_path, filter="data")
    (folder,) = tmp_path.iterdir()
    run(sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", tmp_path, folder=folder)
    (made,) = tmp_path.glob("*.whl")
    assert contents(made) == contents(built("wheel"))


def contents(wheel: Path) -> dict[str, bytes]:
    with zipfile.ZipFile(wheel) as archive:
        return {name: archive.read(name) for name in archive.namelist()}


def test_sdist_holds_what_the_repository_holds() -> None:
    with tarfile.open(built("sdist")) as archive:
        held = {name.partition("/")[2] for name in archive.getnames()}
    if (ROOT / ".git").exists():
        kept = run("git", "ls-files", "--cached", folder=ROOT).stdout.splitlines()
        assert [name for name in kept if (ROOT / name).exists() and name not in held] == []
    for needed in ("README.md", "DEVELOPERS.md", "templates/report.html", ".ci/run"):
        assert needed in held


def test_wheel_holds_every_file_of_the_package() -> None:
    with zipfile.ZipFile(built("wheel")) as archive:
        held = set(archive.namelist())
    files = {
        str(path.relative_to(ROOT))
        for path in (ROOT / "generator").rglob("*")
        if path.is_file() and path.suffix != ".pyc"
    }
    assert sorted(files - held) == []
    assert [name for name in held if name.startswith(("tests", "cases"))] == []


WRITTEN = {
    "": {"report.html", "report.pdf", "results.json"},
    f"-{PACK}": {f"{PACK}.html", f"{PACK}.pdf"},
}


@pytest.mark.parametrize("case", DEMOS)
def test_installed_command_writes_each_demo_from_another_folder(case: str) -> None:
    """One whole and the others as a pack, each in the folder that is named after both."""
    out, said, _ = finished()
    part = "" if case == WHOLE else f"-{PACK}"
    assert str(Path("out") / f"{case}{part}") in said
    names = {item.name for item in (out / f"{case}{part}").iterdir()}
    assert names == {".written", "figures", "tables"} | WRITTEN[part]
    folders = {f"{name}{'' if name == WHOLE else f'-{PACK}'}" for name in DEMOS}
    assert {item.name for item in out.iterdir()} == folders
