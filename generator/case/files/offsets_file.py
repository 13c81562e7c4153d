"""What does the table of offsets beside the case hold, or what is wrong with it?"""

from __future__ import annotations

import csv
import io
import math
from dataclasses import dataclass

from generator.case.boat import Offsets
from generator.case.files.beside import Beside
from generator.case.read import file_text
from generator.case.said import Keys
from generator.errors import CaseError, Fault

NAMES = ["x_m", "z_m", "half_breadth_m"]
LARGEST = 1_000_000  # bytes
FEWEST_STATIONS = 5
FEWEST_POINTS = 3  # of one station, keel and waterline among them


@dataclass(frozen=True)
class Lines:
    """The offsets, or the faults of their file."""

    offsets: Offsets | None
    faults: tuple[Fault, ...] = ()


def read_offsets(name: str | None, root: Keys, beside: Beside) -> Lines:
    """The offsets named in the case; nothing where none are named."""
    boat = root.get("boat")
    if not name or not isinstance(boat, Keys):
        return Lines(None)
    content = beside.content(boat.get("offsets"), "boat.offsets", "CSV", LARGEST)
    if content is None:
        return Lines(None)
    file = beside.file(name)
    try:
        return _rows(name, file, file_text(content, file))
    except CaseError as error:
        return Lines(None, tuple(error.faults))


def _cells(file: str, text: str) -> list[tuple[int, list[str]]]:
    """The lines that hold something, with their numbers."""
    reader = csv.reader(io.StringIO(text))
    try:
        return [
            (reader.line_num, cells)
            for cells in reader
            if any(cell.strip() for cell in cells) and not cells[0].startswith("#")
        ]
    except csv.Error as error:
        fault = Fault(file, reader.line_num, "", f"is no table: {error}", "expected CSV")
        raise CaseError([fault]) from None


def _rows(name: str, file: str, text: str) -> Lines:
    """Every row as three numbers; each bad row is a fault with its line."""
    rows = _cells(file, text)
    if not rows or [cell.strip() for cell in rows[0][1]] != NAMES:
        line = rows[0][0] if rows else 1
        hope = f"expected the line {','.join(NAMES)}"
        return Lines(None, (Fault(file, line, "", "has no line of names", hope),))
    faults, points = [], []
    for line, cells in rows[1:]:
        point = _point(cells)
        if point is None:
            hope = "expected three numbers in metres, the half breadth not below 0"
            faults.append(Fault(file, line, "", "is no point of the hull", hope))
        else:
            points.append(point)
    if not faults:
        faults.extend(_stations(file, points))
    if faults:
        return Lines(None, tuple(faults))
    x, z, half = zip(*sorted(points), strict=True)
    return Lines(Offsets(name, x, z, half))


def _point(cells: list[str]) -> tuple[float, float, float] | None:
    try:
        x, z, half = (float(cell) for cell in cells)
    except ValueError:
        return None
    return (x, z, half) if math.isfinite(x + z + half) and half >= 0.0 else None


def _stations(file: str, points: list[tuple[float, float, float]]) -> list[Fault]:
    """Too few stations or points, a height given twice, or a hull without water or breadth."""
    heights: dict[float, list[float]] = {}
    for x, z, _ in points:
        heights.setdefault(x, []).append(z)
    if len(heights) < FEWEST_STATIONS:
        hope = f"expected {FEWEST_STATIONS} or more"
        return [Fault(file, 1, "", f"has {len(heights)} stations", hope)]
    faults = []
    for x, found in sorted(heights.items()):
        if len(set(found)) < max(FEWEST_POINTS, len(found)):
            hope = f"expected {FEWEST_POINTS} or more points of different height"
            faults.append(Fault(file, 1, f"station {x:g} m", f"has {len(found)} points", hope))
        elif max(found) < 0.0:
            hope = "expected points up to the waterline, z_m 0, and above"
            faults.append(Fault(file, 1, f"station {x:g} m", "ends below the waterline", hope))
    if not any(half > 0.0 for _, z, half in points if z < 0.0):
        hope = "expected points below the waterline, z_m below 0, with a half breadth above 0"
        faults.append(Fault(file, 1, "", "has no breadth in the water", hope))
    return faults
