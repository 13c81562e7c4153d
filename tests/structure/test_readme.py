"""The two commands of the README are what they say: one line each, and the ones that CI runs."""

from __future__ import annotations

import re
import subprocess

from tests.structure.source import ROOT

README = (ROOT / "README.md").read_text(encoding="utf-8")
COMMANDS = re.findall(r"^```sh\n(.*?)^```$", README, re.M | re.S)


def test_readme_has_two_commands_of_one_line() -> None:
    assert [command.count("\n") for command in COMMANDS] == [1, 1]
    assert "study report cases/sloop_30_weekend.yaml" in COMMANDS[0]
    assert COMMANDS[1].rstrip().endswith("pytest")


def test_readme_commands_are_sound_shell() -> None:
    for command in COMMANDS:
        subprocess.run(["bash", "-n", "-c", command], check=True)


def test_readme_names_every_demo_case() -> None:
    cases = {path.name for path in (ROOT / "cases").glob("*.yaml")}
    assert {name for name in cases if f"cases/{name}" not in README} == set()


def test_readme_pictures_and_files_exist() -> None:
    named = re.findall(r"\]\(([^)#:]+)\)", README) + re.findall(r"`(cases/[\w.]+)`", README)
    assert [name for name in named if not (ROOT / name).exists()] == []


def test_top_level_holds_only_what_the_guide_describes() -> None:
    expected = {"README.md", "DEVELOPERS.md", "pyproject.toml", "generator", "templates", "tests"}
    expected |= {"cases", "out"}
    built = {"build", "dist"}
    found = {path.name for path in ROOT.iterdir() if not path.name.startswith(".")}
    assert found - built <= expected
