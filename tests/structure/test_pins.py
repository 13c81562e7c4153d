"""Is every library that the package and its tests need pinned, by name and version alone?"""

from __future__ import annotations

import re
import tomllib
from importlib.metadata import requires

from packaging.requirements import Requirement

from tests.structure.source import ROOT

LINES = (ROOT / ".ci" / "constraints.txt").read_text(encoding="utf-8").splitlines()
PINS = [line for line in LINES if not line.startswith("#")]


def plain(name: str) -> str:
    return re.sub(r"[-_.]+", "-", name).lower()


def needed() -> set[str]:
    """All libraries that pyproject.toml asks for, and those that they ask for."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    waiting = [*project["dependencies"], *project["optional-dependencies"]["dev"]]
    found: set[tuple[str, str]] = set()
    while waiting:
        asked = Requirement(waiting.pop())
        for extra in ("", *asked.extras):
            here = asked.marker is None or asked.marker.evaluate({"extra": ""})
            if not here or (plain(asked.name), extra) in found:
                continue
            found.add((plain(asked.name), extra))
            for line in requires(asked.name) or []:
                inner = Requirement(line)
                if inner.marker is None or inner.marker.evaluate({"extra": extra}):
                    inner.marker = None
                    waiting.append(str(inner))
    return {name for name, _ in found}


def test_every_library_has_its_pin() -> None:
    pinned = {plain(line.partition("==")[0]) for line in PINS}
    assert sorted(needed() - pinned) == []
    assert len(needed()) > 60


def test_a_pin_is_a_name_and_a_version() -> None:
    assert [line for line in PINS if not re.fullmatch(r"[A-Za-z0-9._-]+==[0-9][\w.]*", line)] == []
