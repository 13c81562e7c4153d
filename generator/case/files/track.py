"""How long is the track of a leg?"""

from __future__ import annotations

import re
from collections.abc import Iterator

from generator.case.check import Finding
from generator.case.files.beside import Beside
from generator.case.said import Keys, Said, path_text
from generator.case.usage import LegKeys
from generator.errors import Fault

LARGEST = 20_000_000  # bytes; a point each second of a long day
METRES_PER_MILE = 1852.0
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
    import gpxpy  # only where a case names a track
    from gpxpy.gpx import GPXException

    assert isinstance(said, Said)

    def refuse(problem: str, hope: str) -> None:
        text = f"names {said.text}, which {problem}"
        beside.faults.append(Fault(beside.case_file, said.line, path, text, hope))

    if DECLARATIONS.search(content):
        refuse("declares entities of its own", "expected plain GPX")
        return None
    try:
        found = gpxpy.parse(content.decode("utf-8-sig"))
        length = float(found.length_2d() or sum(route.length() or 0.0 for route in found.routes))
    except (GPXException, ValueError, OverflowError) as error:
        reason = " ".join(str(error).split())[:80]
        refuse(f"cannot be read as GPX: {reason}", "expected a track as a plotter exports it")
        return None
    if not length >= SHORTEST:
        refuse("holds no track that leads anywhere", "expected the points of the passage")
        return None
    points = [*found.walk(only_points=True), *(p for route in found.routes for p in route.points)]
    if not all(abs(p.latitude) <= 90.0 and abs(p.longitude) <= 180.0 for p in points):
        refuse("holds a point that is not on earth", "expected degrees, at most 90 and 180")
        return None
    return length


def find_track_doubts(legs: tuple[LegKeys, ...], lengths: dict[int, float]) -> Iterator[Finding]:
    """A distance that is not that of the leg's own track."""
    for place, length in lengths.items():
        given = legs[place].distance
        if given and abs(given.value / length - 1.0) > APART:
            problem = f"is {given.shown} where its track is {length / METRES_PER_MILE:.1f} nm long"
            yield Finding(("legs", place, "distance"), problem, "expected about as much")
