"""What is the case file of the base boat with one thing taken from her?"""

from __future__ import annotations

import csv
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from generator.case.open import read_case
from tests.corpus.variants import edited, read_plain, spelled
from tests.trade.panel.reader import trial_of

HERE = Path(__file__).parent


@dataclass(frozen=True)
class Shortage:
    """What is changed, the row that names it, the part in its words and in the first remedy."""

    name: str
    changes: str
    row: str
    reason: str
    remedy: str
    says: str


def shortages() -> dict[str, Shortage]:
    """All of them by name."""
    with (HERE / "shortages.csv").open(encoding="utf-8", newline="") as stream:
        return {row["name"]: Shortage(**row) for row in csv.DictReader(stream)}


def write_boat(folder: Path, name: str, changes: str = "") -> Path:
    """The base boat, with a trial read off her own curve before anything is taken from her."""
    tree = read_plain((HERE / "base.yaml").read_text(encoding="utf-8"))
    path = folder / f"{name.replace(' ', '_')}.yaml"
    path.write_text(spelled(tree), encoding="utf-8")
    tree["trial"] = trial_of(read_case(path))
    parts = [part.strip() for part in changes.split(";") if part.strip()]
    pairs = [part.split("=", 1) for part in parts if not part.startswith("-")]
    edits: dict[str, Any] = {
        "remove": [part[1:] for part in parts if part.startswith("-")],
        "set": {key: read_plain(value) for key, value in pairs},
    }
    path.write_text(spelled(edited(tree, edits)), encoding="utf-8")
    return path
