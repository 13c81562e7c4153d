"""The package as a user has it: built, installed elsewhere, and what it wrote there."""

from __future__ import annotations

import os
import subprocess
import sys
import sysconfig
from pathlib import Path

from tests.once import once, shared_folder
from tests.structure.source import ROOT

DEMOS = sorted({path.stem for path in (ROOT / "cases").glob("*.yaml")} - {"every_key"})
WHOLE = "ketch_34_two_motors"  # the demo that is written whole
PACK = "insurer"  # and the pack that is written of each other one


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
    """Folder of what the installed command wrote elsewhere; what it printed, and said.

    The demo of two motors whole, and of every other one a pack: the drawing engine is the same,
    and sets a pack in a fifth of the time.
    """
    folder = shared_folder() / "elsewhere"
    folder.mkdir()
    study = wheel_python().with_name("study")
    others = [case_of(name) for name in DEMOS if name != WHOLE]
    done = [
        run(study, "report", case_of(WHOLE), folder=folder),
        run(study, "report", *others, "--part", PACK, folder=folder),
    ]
    printed, said = "".join(one.stdout for one in done), "".join(one.stderr for one in done)
    return folder / "out", printed, said


def case_of(name: str) -> Path:
    return ROOT / "cases" / f"{name}.yaml"
