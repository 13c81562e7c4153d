"""How does a case file become a case, or a list of everything that is wrong with it?"""

from __future__ import annotations

import re
from collections.abc import Iterable
from pathlib import Path

from generator.case.build import build_case
from generator.case.case import Case
from generator.case.check import Finding, find_contradictions
from generator.case.check_places import find_misplaced
from generator.case.check_trial import find_trial_contradictions
from generator.case.check_wiring import find_wiring_contradictions
from generator.case.check_year import find_year_contradictions
from generator.case.files.beside import Beside
from generator.case.files.leg_list import LegList, join_leg_list
from generator.case.files.offsets_file import read_offsets
from generator.case.files.track import find_track_doubts, measure_tracks
from generator.case.files.weather_file import WeatherFile, read_weather
from generator.case.inherit import inherit_options
from generator.case.limits import find_impossible
from generator.case.plausible import find_doubts
from generator.case.proportions import find_misproportions
from generator.case.read import read_document
from generator.case.said import Keys, Place, line_of, normalise_section, path_text
from generator.case.validate import validate
from generator.errors import CaseError, Fault, first_of_each_file


def read_case(path: Path) -> Case:
    """The case with its warnings; CaseError with every fault at once, sorted by line."""
    document = read_document(path)
    faults = list(document.faults)
    root = normalise_section(document.root, document.file, faults)
    beside = Beside(path.parent, document.file, faults)
    listed = join_leg_list(root, beside)
    measure_tracks(root, beside)
    parents = inherit_options(root, document.file, faults)
    checked = validate(root, document.file, parents)
    faults.extend(checked.faults)
    lines = read_offsets(checked.case.boat.offsets, root, beside)
    found_weather = read_weather(checked.case.waters.weather_file, root, beside)
    weather = found_weather if isinstance(found_weather, WeatherFile) else None
    faults.extend(lines.faults)
    found = [
        *find_contradictions(checked.case),
        *find_trial_contradictions(checked.case),
        *find_misplaced(checked.case),
        *find_wiring_contradictions(checked.case),
        *find_year_contradictions(checked.case, found_weather),
    ]
    for find in (find_impossible, find_misproportions):
        nearer = {finding.place for finding in found}
        found += [finding for finding in find(checked.case) if finding.place not in nearer]
    findings = _not_inherited(found, parents)
    faults.extend(_placed(findings, root, document.file, False))
    if faults:
        raise CaseError(_told(faults, listed))
    doubts = [*find_doubts(checked.case), *find_track_doubts(checked.case.legs, beside.lengths)]
    warnings = first_of_each_file(_told(_placed(doubts, root, document.file, True), listed))
    content = b"".join((document.content, *beside.read.values()))
    return build_case(checked.case, root, path, content, tuple(warnings), (lines.offsets, weather))


def _told(faults: Iterable[Fault], listed: LegList | None) -> list[Fault]:
    """By line, those of a list of legs after those of the case, at their own file."""
    once = _once(faults)
    if listed is None:
        return once
    placed = [listed.told(fault) for fault in once]
    return sorted(placed, key=lambda fault: fault.file == listed.file)


def _not_inherited(findings: list[Finding], parents: dict[int, int]) -> list[Finding]:
    """Without what an option lacks only because the one it starts from lacks it."""
    lacking = {found.place for found in findings if found.problem == "is missing"}

    def parent_lacks(place: Place) -> bool:
        number = place[1] if len(place) > 2 and place[0] == "options" else None
        parent = parents.get(number) if isinstance(number, int) else None
        return parent is not None and ("options", parent, *place[2:]) in lacking

    return [f for f in findings if not (f.place in lacking and parent_lacks(f.place))]


def _placed(findings: Iterable[Finding], root: Keys, file: str, warning: bool) -> Iterable[Fault]:
    """Findings with their lines."""
    for found in findings:
        line, path = line_of(root, found.place), path_text(found.place)
        yield Fault(file, line, path, found.problem, found.expected, warning)


def _once(faults: Iterable[Fault]) -> list[Fault]:
    """By line; what an option inherits is told only where it stands."""
    told: dict[tuple[str, int, str, str], Fault] = {}
    for fault in faults:
        path = re.sub(r"^options\[[0-9]+\]", "options", fault.path)
        told.setdefault((fault.file, fault.line, path, fault.problem), fault)
    return sorted(told.values(), key=lambda fault: (fault.line, fault.path))
