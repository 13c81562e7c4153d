"""Every table of the package tells its title, source, range and worth, and its units."""

from __future__ import annotations

import csv
import re
from pathlib import Path

import pytest

from tests.structure.source import PACKAGE, source_keys

TABLES = sorted((PACKAGE / "tables").rglob("*.csv"))
HEADER = ("# title: ", "# source: ", "# valid: ", "# confidence: ")
UNIT = re.compile(r"-|%|(?:1e-?\d+ )?[A-Za-z°%µΩ][A-Za-z0-9°%µΩ/*.^ -]*")
# A cell like "3-5" or "3 (4 at sea)" holds prose that belongs in value, low, high, note.
PROSE = re.compile(r"\d\s*(?:-|–|\.\.|to)\s*\d|\d\s*\(")
NUMBER = re.compile(r"[-+]?\d*\.?\d+(?:[eE][-+]?\d+)?")


def tables() -> list[object]:
    return [pytest.param(path, id=str(path.relative_to(PACKAGE / "tables"))) for path in TABLES]


def head(path: Path) -> list[str]:
    lines = path.read_text(encoding="utf-8").splitlines()
    return [line for line in lines if line.startswith("#")]


def body(path: Path) -> list[list[str]]:
    lines = path.read_text(encoding="utf-8").splitlines()
    return list(csv.reader(line for line in lines if not line.startswith("#")))


@pytest.mark.parametrize("path", tables())
def test_table_opens_with_its_four_header_lines(path: Path) -> None:
    lines = path.read_text(encoding="utf-8").splitlines()
    for line, start in zip(lines, HEADER, strict=False):
        assert line.startswith(start)
        assert line[len(start) :].strip()


@pytest.mark.parametrize("path", tables())
def test_table_keeps_comments_at_its_head(path: Path) -> None:
    lines = path.read_text(encoding="utf-8").splitlines()
    assert all(line.startswith("#") for line in lines[: len(head(path))])


@pytest.mark.parametrize("path", tables())
def test_table_source_is_in_the_bibliography(path: Path) -> None:
    text = head(path)[1].removeprefix("# source:")
    keys = [part.strip().split(",")[0] for part in text.split(";")]
    assert [key for key in keys if key not in source_keys()] == []


@pytest.mark.parametrize("path", tables())
def test_table_has_names_units_and_full_rows(path: Path) -> None:
    names, units, *rows = body(path)
    assert all(re.fullmatch(r"[A-Za-z][A-Za-z0-9_]*", name) for name in names)
    assert len(set(names)) == len(names)
    assert all(UNIT.fullmatch(unit) for unit in units)
    assert rows
    assert {len(row) for row in (units, *rows)} == {len(names)}


@pytest.mark.parametrize("path", tables())
def test_table_columns_with_units_hold_bare_numbers(path: Path) -> None:
    """Prose is split into value, low, high, note before it becomes a table."""
    names, units, *rows = body(path)
    for column, (name, unit) in enumerate(zip(names, units, strict=True)):
        cells = [row[column].strip() for row in rows if row[column].strip()]
        if unit == "-" and not any(NUMBER.fullmatch(cell) for cell in cells):
            continue
        if unit != "-" or name in {"value", "low", "high"}:
            assert [cell for cell in cells if PROSE.search(cell)] == []


@pytest.mark.parametrize("table", ["register.csv", "rules/method.csv"])
def test_register_sources_are_in_the_bibliography(table: str) -> None:
    names, _units, *rows = body(PACKAGE / "tables" / table)
    column = names.index("source")
    assert sorted({row[column] for row in rows} - source_keys()) == []


def test_register_defaults_lie_inside_their_range() -> None:
    names, _units, *rows = body(PACKAGE / "tables" / "register.csv")
    value, low, high = (names.index(name) for name in ("value", "low", "high"))
    wrong = [
        row[0]
        for row in rows
        if row[low] and row[high] and not float(row[low]) <= float(row[value]) <= float(row[high])
    ]
    assert wrong == []


@pytest.mark.parametrize("table", ["register.csv", "rules/method.csv"])
def test_register_marks_say_how_far_a_default_is_to_be_trusted(table: str) -> None:
    names, _units, *rows = body(PACKAGE / "tables" / table)
    column = names.index("mark")
    assert {row[column] for row in rows} <= {"published", "common practice", "memory"}


def test_every_number_of_the_method_is_used_and_none_is_missing() -> None:
    """Called by name in the package, and no name is called that the table lacks."""
    code = "\n".join(path.read_text(encoding="utf-8") for path in PACKAGE.rglob("*.py"))
    called = set(re.findall(r'\bmethod\("([a-z_.]+)"\)', code))
    names, _units, *rows = body(PACKAGE / "tables" / "rules" / "method.csv")
    keys = [row[names.index("key")] for row in rows]
    assert len(keys) > 40
    assert len(set(keys)) == len(keys)
    assert set(keys) == called


@pytest.mark.parametrize("folder", ["analyses", "case", "money"])
def test_no_number_of_common_practice_stands_in_code(folder: str) -> None:
    """What rests on practice or memory is a row of a table, so that the report can print it."""
    assigned = re.compile(r"^[A-Z][A-Z_, ]*\b.*=.*\d.*#.*(common practice|memory)")
    found = [
        f"{path.name}:{number}: {line}"
        for path in sorted((PACKAGE / folder).rglob("*.py"))
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1)
        if assigned.match(line)
    ]
    assert found == []
