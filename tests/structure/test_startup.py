"""The quick commands stay quick: what they load is checked, how long they take is in bench/."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

SLOW = ("numpy", "pandas", "scipy", "matplotlib", "weasyprint", "pvlib", "pint", "rich")
PROBE = """
import sys
from generator.cli import run_command
code = run_command(sys.argv[1:])
print("loaded:", *sorted({name.partition(".")[0] for name in sys.modules}))
raise SystemExit(code)
"""


def loaded_by(*arguments: str) -> tuple[int, set[str]]:
    """Exit code and loaded packages of one command in a fresh interpreter."""
    done = subprocess.run(
        [sys.executable, "-c", PROBE, *arguments], capture_output=True, text=True, check=False
    )
    last = done.stdout.splitlines()[-1]
    assert last.startswith("loaded:"), done.stderr
    return done.returncode, set(last.split())


@pytest.mark.parametrize(
    "arguments", [["--help"], ["--version"], ["report", "--help"], ["check", "--help"], []]
)
def test_quick_commands_load_no_slow_library(arguments: list[str]) -> None:
    code, loaded = loaded_by(*arguments)
    assert code == 0
    assert loaded & set(SLOW) == set()


def test_check_loads_nothing_that_draws(tmp_path: Path) -> None:
    """A faulty case is refused before anything that draws or solves is loaded."""
    case = tmp_path / "broken.yaml"
    case.write_text("version: 1\n", encoding="utf-8")
    code, loaded = loaded_by("check", str(case))
    assert code == 2
    assert loaded & {"matplotlib", "weasyprint", "pandas", "scipy", "pvlib"} == set()
