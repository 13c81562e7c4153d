"""What is the case file of one line of the panel: common rules, her boat, the line's changes?"""

from __future__ import annotations

import csv
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np

from generator.analyses.motion.demand import Scale, Weather
from generator.analyses.motion.hull import vessel
from generator.analyses.motion.power import KNOT, on_hull, power
from generator.case.case import Case
from generator.case.open import read_case
from tests.corpus.variants import Tree, edited, read_plain, spelled

HERE = Path(__file__).parent
SETTINGS = (0.62, 0.72, 0.82, 0.91, 1.0)  # of the speed at full throttle
STREAM = 0.2  # kn, with her on the way out
RPM = 2.0 * np.pi / 60.0


@dataclass(frozen=True)
class Line:
    """One line of the panel: which boat and option, what is changed, what is expected."""

    number: str
    said: str
    boat: str
    option: str
    changes: str
    expected: str
    rows: str
    advice: str
    issue: str
    known_miss: str
    known_rows: str
    why: str

    @property
    def name(self) -> str:
        """Number and what sets it apart from others of that number."""
        return f"{self.number} {self.said}".strip()

    @property
    def groups(self) -> tuple[frozenset[int], ...]:
        """Rows that bind: of each group at least one."""
        return tuple(frozenset(int(row) for row in group.split("/")) for group in self.rows.split())


def lines() -> tuple[Line, ...]:
    """The whole panel, in its order."""
    with (HERE / "panel.csv").open(encoding="utf-8", newline="") as stream:
        return tuple(Line(**row) for row in csv.DictReader(stream))


def tree_of(line: Line) -> Tree:
    """Sections of the case without a trial: the diesel that is in her, and the line's option."""
    common = read_plain((HERE / "common.yaml").read_text(encoding="utf-8"))
    boat = read_plain((HERE / f"{line.boat}.yaml").read_text(encoding="utf-8"))
    template = common.pop("battery")
    options = [
        _over(template, option) if option["kind"] == "battery" else option
        for option in boat["options"]
        if option["id"] in ("keep", line.option)
    ]
    tree = {"version": "1", **_over(common, boat), "options": options}
    removed, changed = changes(line)
    return edited(tree, {"remove": removed, "set": changed})


def changes(line: Line) -> tuple[list[str], dict[str, Any]]:
    """Keys that go (`-key`) and keys with their new value (`key=value`), split by semicolons."""
    parts = [part.strip() for part in line.changes.split(";") if part.strip()]
    removed = [part[1:] for part in parts if part.startswith("-") and part != "-trial"]
    pairs = [part.split("=", 1) for part in parts if not part.startswith("-")]
    return removed, {key: read_plain(value) for key, value in pairs}


def write_case(line: Line, folder: Path) -> Path:
    """The case file of a line, with a trial read off the boat's own curve unless it has none."""
    tree = tree_of(line)
    path = folder / f"{line.name.replace(' ', '_')}.yaml"
    path.write_text(spelled(tree), encoding="utf-8")
    if "-trial" not in line.changes.split(";"):
        tree["trial"] = trial_of(read_case(path))
        path.write_text(spelled(tree), encoding="utf-8")
    return path


def trial_of(case: Case) -> Tree:
    """A trial of the present engine in a calm: five settings both ways, up to full throttle.

    Speeds, turns and the power at full throttle are those of the study's own curve, so that
    they fit pitch and gear whatever the model of the hull is.
    """
    hull, keep = vessel(case.boat, case.waters, 0.0, case.propeller), case.options[0]
    top = power(case, keep, hull, Scale()).top.continuous.item()
    speeds = np.array(SETTINGS) * top
    output = on_hull(case, keep, hull, None, Scale(), speeds, Weather(0.0, 1.0)).output
    turns = np.ravel(output.turns) / RPM
    rows = [
        {
            "engine_speed": f"{each:.1f} rpm",
            "speed_out": f"{speed / KNOT + STREAM:.3f} kn",
            "speed_back": f"{speed / KNOT - STREAM:.3f} kn",
            "wind": "4 kn",
        }
        for speed, each in zip(speeds, turns, strict=True)
    ]
    rows[-1]["curve_power"] = f"{np.ravel(output.power)[-1] / 1e3:.3f} kW"
    return {"full_throttle_speed": f"{turns[-1]:.1f} rpm", "rows": rows}


def _over(below: Tree, above: Tree) -> Tree:
    """Sections filled up key by key; texts and lists are replaced whole."""
    if not (isinstance(below, dict) and isinstance(above, dict)):
        return above
    merged = {key: _over(below[key], value) if key in below else value
              for key, value in above.items()}  # fmt: skip
    return {**below, **merged}
