"""Which legs stand in a list beside the case, and which of its lines are wrong?

The list is a table of a spreadsheet: its first line names the keys of a leg, with a unit in
brackets where the cells hold bare numbers (``distance [nm]``). Every cell becomes what the same
value in the case file would be, so that the schema checks both alike.
"""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterator
from dataclasses import dataclass, replace

from generator.case.files.beside import Beside
from generator.case.nearest import nearest
from generator.case.read import file_text
from generator.case.said import Keys, Said
from generator.case.usage import LegKeys
from generator.errors import CaseError, Fault

KEY = "legs_file"
LARGEST = 1_000_000  # bytes
MOST_LEGS = 400  # two seasons of a busy log
MOST_COLUMNS = 60  # twice as many as a leg has keys
FIRST_COLUMN = 1_000_000  # no column of a case file is as far right: places stay apart
HEAD = re.compile(r"\s*([a-z_]+)\s*(?:\[\s*([^\]]*?)\s*\])?\s*")
NEEDED = ("name", "times_per_year", "speed", "refuge", "sailable")
FLAGS = ("refuge", "sailable")


@dataclass(frozen=True)
class LegList:
    """Where the legs of the list begin among all legs, and what its file is called."""

    first: int
    file: str

    def told(self, fault: Fault) -> Fault:
        """A fault of one of the list's legs, told at its own file and column."""
        found = re.match(r"legs\[(\d+)\]\.?(.*)", fault.path)
        if not found or int(found[1]) < self.first:
            return fault
        return replace(fault, file=self.file, path=found[2])


def join_leg_list(root: Keys, beside: Beside) -> LegList | None:
    """Put the legs of the list behind those of the case."""
    said = root.get(KEY)
    content = beside.content(said, KEY, "CSV", LARGEST)
    own = root.get("legs", [])
    if content is None or not isinstance(said, Said) or not isinstance(own, list):
        return None
    file = beside.file(said.text)
    try:
        found = list(_legs(file_text(content, file), file, beside.faults))
    except CaseError as error:
        beside.faults.extend(error.faults)
        found = []
    if not found and not any(fault.file == file for fault in beside.faults):
        beside.faults.append(Fault(file, 1, "", "holds no leg", "expected one line for each"))
    if found or own or KEY not in root:
        root["legs"] = [*own, *found]
    else:
        root["legs"] = []
    root.lines.setdefault("legs", said.line)
    return LegList(len(own), file)


def _legs(text: str, file: str, faults: list[Fault]) -> Iterator[Keys]:
    """One set of keys for each line below the head."""
    head = text.partition("\n")[0]
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=";" if ";" in head else ",")
    try:
        columns = _columns(next(reader, []), file, faults)
        if columns is None:
            return
        count = 0
        for cells in reader:
            if not any(cell.strip() for cell in cells):
                continue
            count += 1
            if count > MOST_LEGS:
                problem = f"holds more than {MOST_LEGS} legs"
                hope = "expected like passages gathered in one line, with times_per_year"
                faults.append(Fault(file, reader.line_num, "", problem, hope))
                return
            yield from _leg(cells, columns, reader.line_num, file, faults)
    except csv.Error as error:
        faults.append(Fault(file, reader.line_num, "", f"is no table: {error}", "expected CSV"))


def _columns(cells: list[str], file: str, faults: list[Fault]) -> list[tuple[str, str]] | None:
    """Key and unit of each column; none, with faults, where the head is of no use."""
    columns: list[tuple[str, str]] = []
    known, before = list(LegKeys.model_fields), len(faults)
    if len(cells) > MOST_COLUMNS:
        problem = f"has {len(cells)} columns"
        faults.append(Fault(file, 1, "", problem, f"expected at most {MOST_COLUMNS}"))
        return None
    for cell in cells:
        found = HEAD.fullmatch(cell.lower())
        name, unit = (found[1], HEAD.fullmatch(cell)) if found else (cell.strip(), None)
        if name not in known:
            hope = nearest(name, known) or f"expected one of: {', '.join(known)}"
            faults.append(Fault(file, 1, name[:60], "unknown column", hope))
        elif name in (key for key, _ in columns):
            faults.append(Fault(file, 1, name, "is given twice", "expected one column"))
        columns.append((name, (unit[2] if unit else "") or ""))
    names = [name for name, _ in columns]
    for name in NEEDED:
        if name not in names:
            faults.append(Fault(file, 1, name, "is missing", "expected a column of that name"))
    if "distance" not in names and "track" not in names:
        hope = "expected a column of that name, or track"
        faults.append(Fault(file, 1, "distance", "is missing", hope))
    return columns if len(faults) == before else None


def _leg(
    cells: list[str], columns: list[tuple[str, str]], line: int, file: str, faults: list[Fault]
) -> Iterator[Keys]:
    """The keys of one line; an empty cell is a key left out."""
    if any(cell.strip() for cell in cells[len(columns) :]):
        problem = f"has {len(cells)} cells under {len(columns)} columns"
        faults.append(Fault(file, line, "", problem, "expected as many, or quotes round a comma"))
        return
    values: dict[str, object] = {}
    for place, ((name, unit), cell) in enumerate(zip(columns, cells, strict=False)):
        text = cell.strip()
        if not text:
            continue
        text = text.lower() if name in FLAGS else f"{text} {unit}".strip()
        values[name] = Said(text, line, FIRST_COLUMN + place)
    yield Keys(values, dict.fromkeys(values, line), line)
