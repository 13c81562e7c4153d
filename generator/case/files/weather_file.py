"""What does a weather file beside the case hold: a typical year of sun, warmth and wind?"""

from __future__ import annotations

import csv
from collections.abc import Callable
from dataclasses import dataclass, replace
from pathlib import Path

import numpy as np

from generator.arrays import Array
from generator.case.files.beside import Beside
from generator.case.said import Keys

HOURS = 8760
MISSING = 9000.0  # W/m2: files mark what was not measured by 9999
DAYS_BEFORE = np.concatenate(
    [[0], np.cumsum([31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31])[:-1]]
)
LARGEST = 20_000_000  # bytes
KINDS = "EPW, TMY3 (.csv) or TMY2 (.tm2)"
HOPE = "expected 8,760 hours of a year of 365 days, in order"


@dataclass(frozen=True)
class WeatherFile:
    """A typical year, hour by hour from midnight of 1 January, the clock's own zone."""

    name: str
    place: str
    latitude: float  # degrees, north positive
    longitude: float  # degrees, east positive
    zone: float  # hours ahead of universal time
    sun: Array  # W/m2 on the level, mean of the hour
    air: Array  # degC
    wind: Array  # m/s


@dataclass(frozen=True)
class Refusal:
    """Why a file is not taken."""

    problem: str
    expected: str


@dataclass(frozen=True)
class _Row:
    """One hour of a file and the line it stands on."""

    line: int
    month: int
    day: int
    hour: int  # 1 to 24, at whose end it was noted
    sun: float
    air: float
    wind: float


@dataclass(frozen=True)
class _Place:
    name: str
    latitude: float
    longitude: float
    zone: float


class _UnreadError(Exception):
    """A line that holds no hour."""

    def __init__(self, line: int) -> None:
        self.line = line
        super().__init__(f"in line {line}")


def read_weather(name: str | None, root: Keys, beside: Beside) -> WeatherFile | Refusal | None:
    """The weather file that a case names; nothing where it names none or none can be had."""
    waters = root.get("waters")
    if not name or not isinstance(waters, Keys):
        return None
    path = "waters.weather_file"
    content = beside.content(waters.get("weather_file"), path, KINDS, LARGEST)
    return None if content is None else typical_year(name, content)


def typical_year(name: str, content: bytes) -> WeatherFile | Refusal:
    """The typical year of an EPW, TMY3 or TMY2 file, or why it cannot be used."""
    try:
        text = content.decode("utf-8")
    except UnicodeDecodeError:
        text = content.decode("latin-1")  # some EPW files name their places in it
    readers: dict[str, Callable[[list[str]], tuple[_Place, list[_Row]]]] = {
        ".epw": _epw,
        ".tm2": _tmy2,
        ".csv": _tmy3,
    }
    hope = f"expected an {KINDS} file"
    try:
        place, rows = readers[Path(name).suffix.lower()](text.splitlines())
    except _UnreadError as error:
        return Refusal(f"cannot be read in line {error.line}", hope)
    except (ValueError, IndexError, KeyError, StopIteration, csv.Error):
        return Refusal("cannot be read", hope)
    if not (abs(place.latitude) <= 90.0 and abs(place.longitude) <= 180.0):
        return Refusal("names no place on earth in line 1", "expected latitude and longitude")
    clean = "".join(letter for letter in place.name if letter.isprintable())
    return _gap(rows) or _file(name, replace(place, name=clean), rows)


def _hours(lines: list[str], before: int, hour: Callable[[int, str], _Row]) -> list[_Row]:
    """Each line below the head as an hour; the first that holds none is told by its number."""
    rows = []
    for number, line in enumerate(lines[before:], start=before + 1):
        try:
            if line.strip():
                rows.append(hour(number, line))
        except (ValueError, IndexError, csv.Error):
            raise _UnreadError(number) from None
    return rows


def _cells(line: str) -> list[str]:
    return next(csv.reader([line]))


def _gap(rows: list[_Row]) -> Refusal | None:
    """The first hour that is missing, doubled, or was not measured."""
    for number, row in enumerate(rows[:HOURS]):
        if not 1 <= row.month <= 12:
            return Refusal(f"has month {row.month} in line {row.line}", HOPE)
        at = (int(DAYS_BEFORE[row.month - 1]) + row.day - 1) * 24 + row.hour - 1
        if at != number:
            found = f"{row.month}-{row.day} hour {row.hour}"
            return Refusal(f"has a gap before line {row.line}: {found} is out of turn", HOPE)
        if not 0.0 <= row.sun < MISSING:
            return Refusal(f"has no sunshine in line {row.line}", "expected 0 to 1,500 W/m2")
        if not -90.0 < row.air < 70.0:
            return Refusal(f"has no air temperature in line {row.line}", "expected °C")
        if not 0.0 <= row.wind < 99.0:
            return Refusal(f"has no wind in line {row.line}", "expected m/s")
    if len(rows) != HOURS:
        return Refusal(f"has {len(rows)} hours", HOPE)
    return None


def _file(name: str, place: _Place, rows: list[_Row]) -> WeatherFile:
    columns = np.array([(row.sun, row.air, row.wind) for row in rows], dtype=np.float64)
    return WeatherFile(
        name=name,
        place=place.name,
        latitude=place.latitude,
        longitude=place.longitude,
        zone=place.zone,
        sun=columns[:, 0],
        air=columns[:, 1],
        wind=columns[:, 2],
    )


def _epw(lines: list[str]) -> tuple[_Place, list[_Row]]:
    """EnergyPlus: eight lines of header; month, day, hour; columns counted from the left."""
    head = _cells(lines[0])
    if head[0] != "LOCATION":
        raise ValueError(head[0])
    place = _Place(head[1], float(head[6]), float(head[7]), float(head[8]))

    def hour(number: int, line: str) -> _Row:
        cells = _cells(line)
        values = (float(cells[13]), float(cells[6]), float(cells[21]))
        return _Row(number, int(cells[1]), int(cells[2]), int(cells[3]), *values)

    return place, _hours(lines, 8, hour)


def _tmy3(lines: list[str]) -> tuple[_Place, list[_Row]]:
    """TMY3: a line about the station, a line of names, columns by their names."""
    station = _cells(lines[0])
    place = _Place(station[1], float(station[4]), float(station[5]), float(station[3]))
    names = _cells(lines[1])
    sun, air, wind = (names.index(name) for name in ("GHI (W/m^2)", "Dry-bulb (C)", "Wspd (m/s)"))

    def hour(number: int, line: str) -> _Row:
        cells = _cells(line)
        month, day, _ = cells[0].split("/")
        values = (float(cells[sun]), float(cells[air]), float(cells[wind]))
        return _Row(number, int(month), int(day), int(cells[1][:2]), *values)

    return place, _hours(lines, 2, hour)


def _tmy2(lines: list[str]) -> tuple[_Place, list[_Row]]:
    """TMY2: columns of fixed width, tenths of a degree and of a metre per second."""
    head = lines[0]
    name, zone = head[7:29].strip(), float(head[33:36])
    north = (float(head[39:41]) + float(head[42:44]) / 60.0) * (1.0 if head[37] == "N" else -1.0)
    east = (float(head[47:50]) + float(head[51:53]) / 60.0) * (1.0 if head[45] == "E" else -1.0)

    def hour(number: int, line: str) -> _Row:
        values = (float(line[17:21]), float(line[67:71]) / 10.0, float(line[95:98]) / 10.0)
        return _Row(number, int(line[3:5]), int(line[5:7]), int(line[7:9]), *values)

    return _Place(name, north, east, zone), _hours(lines, 1, hour)
