"""How long is the track of a leg?"""

from __future__ import annotations

import re
from collections.abc import Iterator
from xml.parsers.expat import ExpatError, ParserCreate

import numpy as np

from generator.arrays import Array
from generator.case.check import Finding
from generator.case.files.beside import Beside
from generator.case.said import Keys, Said, path_text
from generator.case.usage import LegKeys
from generator.errors import Fault

LARGEST = 20_000_000  # bytes; a point each second of a long day
METRES_PER_MILE = 1852.0
EARTH = 6_378_137.0  # m, radius at the equator of WGS 84, as plotters log by
TRACK = "trkseg"
LINES, POINTS = (TRACK, "rte"), ("trkpt", "rtept")
DECLARATIONS = re.compile(rb"<!\s*(DOCTYPE|ENTITY)", re.IGNORECASE)
SHORTEST = 50.0  # m
APART = 0.15  # share by which a distance may differ from its track without a word


def measure_tracks(root: Keys, beside: Beside) -> None:
    """Give each leg that names a track and no distance the length of the track."""
    legs = root.get("legs")
    if not isinstance(legs, list):
        return
    for place, leg in enumerate(legs):
        if not isinstance(leg, Keys) or "track" not in leg:
            continue
        said, path = leg["track"], path_text(("legs", place, "track"))
        known = len(beside.faults)
        content = beside.content(said, path, "GPX", LARGEST)
        length = None if content is None else _length(content, said, path, beside)
        if length is not None:
            beside.lengths[place] = length
        if "distance" in leg or not isinstance(said, Said):
            continue
        if length is None and len(beside.faults) > known:
            length = METRES_PER_MILE  # stands in, so that the one fault is told once
        if length is not None:
            text = f"{length / METRES_PER_MILE:.2f} nm"
            leg["distance"] = Said(text, said.line, said.column)
            leg.lines["distance"] = said.line


def _length(content: bytes, said: object, path: str, beside: Beside) -> float | None:
    """Along all tracks of the file, and its routes where it has no track [m]."""
    assert isinstance(said, Said)
    try:
        return passage_length(content)
    except UselessTrackError as error:
        problem = f"names {said.text}, which {error.problem}"
        beside.faults.append(Fault(beside.case_file, said.line, path, problem, error.expected))
        return None


class UselessTrackError(Exception):
    """What a file holds in place of a passage, and what was expected."""

    def __init__(self, problem: str, expected: str) -> None:
        self.problem = problem
        self.expected = expected
        super().__init__(problem)


def passage_length(content: bytes) -> float:
    """Along all tracks of a GPX file, and its routes where it has no track [m]."""
    if DECLARATIONS.search(content):
        raise UselessTrackError("declares entities of its own", "expected plain GPX")
    points = _Points()
    try:
        points.read(content)
        lines = [np.array(line, dtype=np.float64).reshape(-1, 2) for line in points.lines]
    except (ExpatError, KeyError, ValueError) as error:
        reason = f"lacks {error}" if isinstance(error, KeyError) else str(error)
        problem = f"cannot be read as GPX: {' '.join(reason.split())[:80]}"
        raise UselessTrackError(problem, "expected a track as a plotter exports it") from None
    if not all(np.isfinite(line).all() for line in lines):
        hope = "expected a track as a plotter exports it"
        raise UselessTrackError("cannot be read as GPX: a point is no number", hope)
    if not all(np.all(np.abs(line) <= (90.0, 180.0)) for line in lines):
        hope = "expected degrees, at most 90 and 180"
        raise UselessTrackError("holds a point that is not on earth", hope)
    tracks = sum(
        map(_along, (line for line, of in zip(lines, points.of, strict=True) if of == TRACK))
    )
    length = tracks or sum(map(_along, lines))
    if not length >= SHORTEST:
        hope = "expected the points of the passage"
        raise UselessTrackError("holds no track that leads anywhere", hope)
    return float(length)


class _Points:
    """The points of a GPX file, line by line, as its elements go by; nothing else is kept."""

    def __init__(self) -> None:
        self.lines: list[list[tuple[str, str]]] = []
        self.of: list[str] = []

    def read(self, content: bytes) -> None:
        """All points; ExpatError where the file is no XML, KeyError where a point has no place."""
        parser = ParserCreate()
        parser.StartElementHandler = self._start
        parser.Parse(content.decode("utf-8-sig").encode("utf-8"), True)

    def _start(self, name: str, attributes: dict[str, str]) -> None:
        element = name.rpartition(":")[2]
        if element in LINES:
            self.lines.append([])
            self.of.append(element)
        elif element in POINTS and self.lines:
            self.lines[-1].append((attributes["lat"], attributes["lon"]))


def _along(line: Array) -> float:
    """The way from point to point over the globe [m], its legs by half an angle's sine."""
    latitude, longitude = np.radians(line).T
    half_north, half_east = np.diff(latitude) / 2.0, np.diff(longitude) / 2.0
    cosines = np.cos(latitude[:-1]) * np.cos(latitude[1:])
    square = np.sin(half_north) ** 2 + cosines * np.sin(half_east) ** 2
    angle = 2.0 * np.arcsin(np.sqrt(np.clip(square, 0.0, 1.0)))
    return float(angle.sum() * EARTH)


def find_track_doubts(legs: tuple[LegKeys, ...], lengths: dict[int, float]) -> Iterator[Finding]:
    """A distance that is not that of the leg's own track."""
    for place, length in lengths.items():
        given = legs[place].distance
        if given and abs(given.value / length - 1.0) > APART:
            problem = f"is {given.shown} where its track is {length / METRES_PER_MILE:.1f} nm long"
            yield Finding(("legs", place, "distance"), problem, "expected about as much")
