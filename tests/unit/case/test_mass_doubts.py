"""Are masses that can hardly be doubted, each at its place?"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.unit.case.faulty import ROOT, changed, read

SLOOP = (ROOT / "cases/sloop_30_weekend.yaml").read_text(encoding="utf-8")


def doubts(folder: Path, text: str) -> list[str]:
    words = ("of fuel leave", "of battery hold", "of motor come")
    found = [str(warning) for warning in read(folder, text).warnings]
    return [line for line in found if any(word in line for word in words)]


def lighter(part: str, mass: str) -> str:
    """The sloop with another mass of the one line that comes aboard as that part."""
    lines = SLOOP.splitlines(keepends=True)
    start = next(n for n, line in enumerate(lines) if "    added:" in line and n > OPTION)
    place = next(n for n in range(start, len(lines)) if f"part: {part}," in lines[n])
    head, _, tail = lines[place].partition("mass: ")
    lines[place] = f"{head}mass: {mass},{tail.partition(',')[2]}"
    return "".join(lines)


OPTION = SLOOP[: SLOOP.index("  - id: a\n")].count("\n")


def test_masses_of_a_whole_case_are_not_doubted(tmp_path: Path) -> None:
    assert doubts(tmp_path, SLOOP) == []


@pytest.mark.parametrize(
    ("part", "mass", "words"),
    [
        ("battery", "60 kg", "makes 60 kg of battery hold"),
        ("motor", "18 kg", "has 18 kg of motor come, expected about 25 kg or more"),
    ],
)
def test_what_is_too_light_to_be_whole_is_doubted(
    tmp_path: Path, part: str, mass: str, words: str
) -> None:
    (told,) = doubts(tmp_path, lighter(part, mass))
    assert words in told


def test_fuel_that_its_tank_does_not_hold_is_doubted(tmp_path: Path) -> None:
    """55 litres are at most 46 kg."""
    assert doubts(tmp_path, changed(("mass: 23 kg", "mass: 46 kg"), text=SLOOP)) == []
    (told,) = doubts(tmp_path, changed(("mass: 23 kg", "mass: 48 kg"), text=SLOOP))
    assert "has 48 kg of fuel leave, more than the tank holds, expected at most 46 kg" in told
