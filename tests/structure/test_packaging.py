"""One function finds the templates in a checkout and installed from wheel, sdist, editable."""

from __future__ import annotations

import os
import subprocess
import sys
import sysconfig
import tarfile
import zipfile
from pathlib import Path

import pytest

from tests.structure.source import ROOT

FIND = "from generator.report.render import templates_folder; print(templates_folder())"

DEMOS = sorted({path.stem for path in (ROOT / "cases").glob("*.yaml")} - {"every_key"})


def run(*command: str | Path, folder: Path) -> str:
    """Output of a command run elsewhere, without our checkout on its path."""
    environment = {name: value for name, value in os.environ.items() if name != "PYTHONPATH"}
    done = subprocess.run(
        [str(part) for part in command],
        cwd=folder,
        env=environment,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr
    return done.stdout.strip()


def build(kind: str, project: Path, target: Path) -> Path:
    """Build one distribution with the libraries at hand, so that no network is needed."""
    run(sys.executable, "-m", "hatchling", "build", "-t", kind, "-d", target, folder=project)
    (made,) = target.iterdir()
    return made


def empty_environment(folder: Path) -> Path:
    """Interpreter of a new environment that borrows our libraries but not our package."""
    run(sys.executable, "-m", "venv", "--without-pip", folder, folder=folder.parent)
    (site,) = folder.glob("lib/python*/site-packages")
    # A folder named in a .pth file is only searched: editable installs inside it stay unseen.
    (site / "borrowed.pth").write_text(sysconfig.get_path("purelib") + "\n", encoding="utf-8")
    return folder / "bin" / "python"


def install(python: Path, *what: str | Path) -> None:
    """Install without the libraries that the package needs: they are borrowed."""
    flags = ("--no-deps", "--no-index", "--no-build-isolation", "--ignore-installed", "-q")
    run(sys.executable, "-m", "pip", "--python", python, "install", *flags, *what, folder=ROOT)


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return build("wheel", ROOT, tmp_path_factory.mktemp("wheel"))


@pytest.fixture(scope="module")
def sdist(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return build("sdist", ROOT, tmp_path_factory.mktemp("sdist"))


@pytest.fixture(scope="module")
def wheel_python(wheel: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    python = empty_environment(tmp_path_factory.mktemp("installed") / "venv")
    install(python, wheel)
    return python


def template_names(folder: Path) -> set[str]:
    return {str(path.relative_to(folder)) for path in folder.rglob("*") if path.is_file()}


def assert_all_templates(folder: Path) -> None:
    assert (folder / "report.html").is_file()
    assert template_names(folder) == template_names(ROOT / "templates")


def test_templates_folder_is_found_in_a_checkout() -> None:
    assert Path(run(sys.executable, "-c", FIND, folder=ROOT)) == ROOT / "templates"


def test_templates_folder_is_found_after_wheel_install(wheel_python: Path, tmp_path: Path) -> None:
    folder = Path(run(wheel_python, "-c", FIND, folder=tmp_path))
    assert folder.is_relative_to(wheel_python.parents[1])
    assert_all_templates(folder)


def test_templates_folder_is_found_after_editable_install(tmp_path: Path) -> None:
    python = empty_environment(tmp_path / "venv")
    install(python, "-e", ROOT)
    assert Path(run(python, "-c", FIND, folder=tmp_path)) == ROOT / "templates"


def test_templates_folder_is_found_after_sdist_install(sdist: Path, tmp_path: Path) -> None:
    python = empty_environment(tmp_path / "venv")
    install(python, sdist)
    assert_all_templates(Path(run(python, "-c", FIND, folder=tmp_path)))


def test_sdist_holds_what_the_repository_holds(sdist: Path) -> None:
    with tarfile.open(sdist) as archive:
        held = {name.partition("/")[2] for name in archive.getnames()}
    if (ROOT / ".git").exists():
        kept = run("git", "ls-files", "--cached", folder=ROOT).splitlines()
        assert [name for name in kept if (ROOT / name).exists() and name not in held] == []
    for needed in ("README.md", "DEVELOPERS.md", "templates/report.html", ".ci/run"):
        assert needed in held


def test_wheel_holds_every_file_of_the_package(wheel: Path) -> None:
    with zipfile.ZipFile(wheel) as archive:
        held = set(archive.namelist())
    files = {
        str(path.relative_to(ROOT))
        for path in (ROOT / "generator").rglob("*")
        if path.is_file() and path.suffix != ".pyc"
    }
    assert sorted(files - held) == []
    assert [name for name in held if name.startswith(("tests", "cases"))] == []


@pytest.mark.parametrize("case", DEMOS)
def test_installed_command_writes_each_demo_from_another_folder(
    case: str, wheel_python: Path, tmp_path: Path
) -> None:
    study = wheel_python.with_name("study")
    said = run(study, "report", ROOT / "cases" / f"{case}.yaml", folder=tmp_path)
    folder = tmp_path / "out" / case
    assert str(Path("out") / case) in said
    assert {item.name for item in folder.iterdir()} == {
        ".written",
        "figures",
        "report.html",
        "report.pdf",
        "results.json",
        "tables",
    }
    assert [item.name for item in (tmp_path / "out").iterdir()] == [case]
