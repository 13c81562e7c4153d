"""Is a case that was valid still valid, and does it give the numbers written down for it?

The kept cases stay as they are while the demos in cases/ go on; a new limit that refuses one of
them stands in refused_since.csv. The stored numbers are our own and no truth: one that moves
belongs into the change list of DEVELOPERS.md, and `python -m tests.recorded.renew` stores it.
"""

from __future__ import annotations

import csv
import json
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import pytest

from generator.case.open import read_case
from generator.errors import CaseError, Fault
from tests.recorded.stored_numbers import CASES, NAMES, PARTS, STORED, computed, stored

REFUSED = Path(__file__).with_name("refused_since.csv")
KEPT = sorted(path.stem for path in CASES.glob("*.yaml"))

Row = dict[str, str]


def refused_since(path: Path = REFUSED) -> list[Row]:
    with path.open(encoding="utf-8", newline="") as stream:
        return list(csv.DictReader(stream))


def faults_of(case: str, folder: Path = CASES) -> Sequence[Fault]:
    try:
        read_case(folder / f"{case}.yaml")
    except CaseError as error:
        return error.faults
    return ()


def unexplained(faults: Sequence[Fault], rows: list[Row]) -> tuple[list[Fault], list[Row]]:
    """The faults that no row tells of, and the rows that no fault bears out."""

    def told(fault: Fault, row: Row) -> bool:
        return fault.path == row["path"] and row["message"] in str(fault)

    lone = [fault for fault in faults if not any(told(fault, row) for row in rows)]
    return lone, [row for row in rows if not any(told(fault, row) for fault in faults)]


@pytest.mark.parametrize("case", KEPT)
def test_kept_case_is_read_without_a_fault_but_those_of_listed_limits(case: str) -> None:
    rows = [row for row in refused_since() if row["case"] == case]
    assert unexplained(faults_of(case), rows) == ([], [])


def test_every_listed_limit_is_of_a_kept_case_and_says_which_it_is() -> None:
    rows = refused_since()
    assert all(row["case"] in KEPT and row["limit"] and row["message"] for row in rows)


def test_unexplained_a_fault_needs_its_row_and_a_row_its_fault(tmp_path: Path) -> None:
    text = (CASES / "sloop_30_weekend.yaml").read_text(encoding="utf-8")
    text = text.replace("draught: {value: 1.45 m", "draught: {value: -1 m")
    (tmp_path / "boat.yaml").write_text(
        text.replace("draught: {value: 1.45 m", "draught: {value: -1 m")
    )
    faults = faults_of("boat", tmp_path)
    row = {"path": "boat.hull.draught", "message": "above 0 m"}
    assert [fault.path for fault in faults] == ["boat.hull.draught"]
    assert unexplained(faults, [row]) == ([], [])
    assert unexplained(faults, []) == (list(faults), [])
    assert unexplained(faults, [{**row, "message": "above 1 m"}])[0] == list(faults)
    assert unexplained((), [row]) == ([], [row])


@pytest.mark.parametrize(("name", "part"), [(name, part) for name in NAMES for part in PARTS])
def test_kept_case_gives_the_stored_numbers(name: str, part: str) -> None:
    wanted, found = stored(name, part), computed(name, part)
    assert set(found) == set(wanted), f"{name}, {part}"
    pairs = {key: (value, found[key]) for key, value in wanted.items()}
    moved = {key: f"{old} -> {new}" for key, (old, new) in pairs.items() if not same(old, new)}
    assert not moved, f"{name}, {part}: {json.dumps(moved, indent=1)}"


def test_every_stored_file_is_of_a_case_and_a_part() -> None:
    files = {path.relative_to(STORED).as_posix() for path in STORED.rglob("*.json")}
    assert files == {f"{name}/{part}.json" for name in NAMES for part in PARTS}


def same(old: Any, new: Any) -> bool:
    """Numbers to one part in a million, words and gaps exactly, lists item by item."""
    if isinstance(old, list):
        return len(old) == len(new) and all(same(*pair) for pair in zip(old, new, strict=True))
    return bool(new == pytest.approx(old, rel=1e-6)) if isinstance(old, float) else bool(new == old)
