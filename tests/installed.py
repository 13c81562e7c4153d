"""The package as a user has it: built, installed elsewhere, and the demos it wrote there."""

from __future__ import annotations

import os
import subprocess
import sys
import sysconfig
from pathlib import Path

from tests.once import once, shared_folder
from tests.structure.source import ROOT

DEMOS = sorted({path.stem for path in (ROOT / "cases").glob("*.yaml")} - {"every_key"})


def run(*command: str | Path, folder: Path) -> subprocess.CompletedProcess[str]:
    """A command run elsewhere without fault, our checkout not on its path."""
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
    return done


@once
def built(kind: str) -> Path:
    """One distribution, built with the libraries at hand, so that no network is needed."""
    target = shared_folder() / kind
    run(sys.executable, "-m", "hatchling", "build", "-t", kind, "-d", target, folder=ROOT)
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


@once
def wheel_python() -> Path:
    """Interpreter of an environment with our wheel."""
    python = empty_environment(shared_folder() / "wheel-environment")
    install(python, built("wheel"))
    return python


@once
def finished() -> tuple[Path, str, str]:
    """Folder of the reports of all demos by one installed command; what it printed, and said."""
    folder = shared_folder() / "elsewhere"
    folder.mkdir()
    cases = [ROOT / "cases" / f"{name}.yaml" for name in DEMOS]
    done = run(wheel_python().with_name("study"), "report", *cases, folder=folder)
    return folder / "out", done.stdout, done.stderr
