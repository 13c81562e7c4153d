"""What does the table of offsets beside the case hold, or what is wrong with it?"""

from __future__ import annotations

import csv
import io
import math
from dataclasses import dataclass
from pathlib import Path

from generator.case.boat import Offsets
from generator.case.said import Keys, line_of
from generator.errors import Fault

NAMES = ["x_m", "z_m", "half_breadth_m"]
LARGEST = 1_000_000  # bytes
FEWEST_STATIONS = 5
FEWEST_POINTS = 3  # of one station, keel and waterline among them


@dataclass(frozen=True)
class Lines:
    """The offsets, or the faults of their file."""

    offsets: Offsets | None
    faults: tuple[Fault, ...] = ()


def read_offsets(folder: Path, name: str | None, root: Keys, case_file: str) -> Lines:
    """The offsets named in the case; nothing where none are named."""
    if not name:
        return Lines(None)
    line = line_of(root, ("boat", "offsets"))
    path = folder / name
    hope = f"expected a CSV file with the columns {', '.join(NAMES)}, at most 1 MB, in UTF-8"
    try:
        if path.is_symlink() or path.stat().st_size > LARGEST:
            raise OSError
        text = path.read_text(encoding="utf-8-sig")
    except (OSError, UnicodeDecodeError):
        problem = f"names `{name}`, which cannot be read"
        return Lines(None, (Fault(case_file, line, "boat.offsets", problem, hope),))
    return _rows(name, text)


def _rows(name: str, text: str) -> Lines:
    """Every row as three numbers; each bad row is a fault with its line."""
    reader = csv.reader(io.StringIO(text))
    rows = [(reader.line_num, cells) for cells in reader if any(cell.strip() for cell in cells)]
    rows = [row for row in rows if not row[1][0].startswith("#")]
    if not rows or [cell.strip() for cell in rows[0][1]] != NAMES:
        line = rows[0][0] if rows else 1
        hope = f"expected the line {','.join(NAMES)}"
        return Lines(None, (Fault(name, line, "", "has no line of names", hope),))
    faults, points = [], []
    for line, cells in rows[1:]:
        point = _point(cells)
        if point is None:
            hope = "expected three numbers in metres, the half breadth not below 0"
            faults.append(Fault(name, line, "", "is no point of the hull", hope))
        else:
            points.append(point)
    if not faults:
        faults.extend(_stations(name, points))
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


def _stations(name: str, points: list[tuple[float, float, float]]) -> list[Fault]:
    """Too few stations or points, a height given twice, or a hull that never meets the water."""
    heights: dict[float, list[float]] = {}
    for x, z, _ in points:
        heights.setdefault(x, []).append(z)
    if len(heights) < FEWEST_STATIONS:
        hope = f"expected {FEWEST_STATIONS} or more"
        return [Fault(name, 1, "", f"has {len(heights)} stations", hope)]
    faults = []
    for x, found in sorted(heights.items()):
        if len(set(found)) < max(FEWEST_POINTS, len(found)):
            hope = f"expected {FEWEST_POINTS} or more points of different height"
            faults.append(Fault(name, 1, f"station {x:g} m", f"has {len(found)} points", hope))
        elif max(found) < 0.0:
            hope = "expected points up to the waterline, z_m 0, and above"
            faults.append(Fault(name, 1, f"station {x:g} m", "ends below the waterline", hope))
    if not any(min(found) < 0.0 for found in heights.values()):
        hope = "expected points below the waterline, z_m below 0"
        faults.append(Fault(name, 1, "", "has no point in the water", hope))
    return faults
