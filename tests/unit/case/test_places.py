"""Masses where no mass can stand, and tables of offsets that are none, are told with their line."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.unit.case.faulty import ROOT, changed, lines, read

BATTERY = "{name: Battery, mass: 150 kg, x: 2 m, plus_minus: 10 %, from: builder}"
SPACES = """  datum: aft end of the waterline
  spaces:
    - {name: Locker, x: 2.5 m, z: 0 m, volume: 90 l, max_mass: 120 kg}
    - {name: Berth, x: 4 m, y: -0.7 m, z: 0.1 m, volume: 90 l, max_mass: 200 kg}
"""
DATUM = "  datum: aft end of the waterline\n"


@pytest.mark.parametrize(
    ("old", "new", "message"),
    [
        ("x: 2 m", "x: 20 m", "options[2].added[0].x: is 20 m, outside the hull, expected a place"),
        ("x: 2 m", "x: -2 m", "options[2].added[0].x: is -2 m, outside the hull"),
        ("x: 2 m", "x: 2 m, y: 1.6 m", "options[2].added[0].y: is 1.6 m, outside the hull"),
        ("x: 2 m", "x: 2 m, z: -1.7 m", "options[2].added[0].z: is -1.7 m, outside the hull"),
        (DATUM, "", "boat.datum: is missing, expected one of: aft end of the waterline, midships"),
        (DATUM, DATUM.replace("aft end", "fore end"), "added[0].x: is 2 m, outside the hull"),
        ("mass: 150 kg", "mass: -150 kg", "added[0].mass: is `-150 kg`, expected a mass"),
        ("x: 2 m", "x: 2 m, space: Locker", "added[0].space: is `Locker`, no space of the boat"),
        ("x: 2 m", "x: 2 m, part: motr", "added[0].part: is `motr`, did you mean `motor`?"),
        (DATUM, DATUM + "  offsets: ../x.csv\n", "boat.offsets: is `../x.csv`, expected the name"),
        (DATUM, DATUM + "  offsets: x.csv\n", "boat.offsets: names x.csv: there is no such file"),
        (DATUM, DATUM + "  floatation: {light_displacement: 5 t}\n", "light_displacement: is 5 t"),
    ],
)  # fmt: skip
def test_a_mass_out_of_place_is_one_fault(tmp_path: Path, old: str, new: str, message: str) -> None:
    found = lines(tmp_path, changed((old, new)))
    assert len(found) == 1, found
    assert message in found[0]


def test_a_bank_heavier_than_its_space_is_a_fault(tmp_path: Path) -> None:
    text = changed((DATUM, SPACES), ("x: 2 m", "space: Locker"))
    found = lines(tmp_path, text)
    assert len(found) == 1, found
    assert (
        "added[0].mass: is 150 kg, more than Locker may carry, expected at most 120 kg" in found[0]
    )


def test_two_items_that_overfill_a_space_together_are_a_fault(tmp_path: Path) -> None:
    two = (
        "{name: Fore, mass: 110 kg, space: Berth}\n      - {name: Aft, mass: 100 kg, space: Berth}"
    )
    found = lines(tmp_path, changed((DATUM, SPACES), (BATTERY, two)))
    assert len(found) == 1, found
    assert "puts 210 kg into Berth, expected at most 200 kg there" in found[0]


def test_an_item_in_a_space_stands_at_its_middle(tmp_path: Path) -> None:
    case = read(tmp_path, changed((DATUM, SPACES), ("x: 2 m", "space: Berth")))
    item = case.options[2].added[0]
    assert (item.x, item.y, item.z) == (4.0, -0.7, 0.1)


GOOD = (ROOT / "cases" / "fieldfare_lines.csv").read_text(encoding="utf-8")


def with_lines(folder: Path, table: str) -> list[str]:
    (folder / "hull.csv").write_text(table, encoding="utf-8")
    return lines(folder, changed((DATUM, DATUM + "  offsets: hull.csv\n")))


def test_a_good_table_of_offsets_is_read(tmp_path: Path) -> None:
    assert with_lines(tmp_path, GOOD) == []
    case = read(tmp_path, changed((DATUM, DATUM + "  offsets: hull.csv\n")))
    assert case.boat.offsets is not None
    assert len(case.boat.offsets.x) == GOOD.count("\n") - 2
    assert max(case.boat.offsets.half_breadth) > 1.39


@pytest.mark.parametrize(
    ("table", "message"),
    [
        ("", "hull.csv:1: has no line of names, expected the line x_m,z_m,half_breadth_m"),
        ("x,z,y\n1,2,3\n", "hull.csv:1: has no line of names"),
        ("x_m,z_m,half_breadth_m\n1,2\n", "hull.csv:2: is no point of the hull"),
        ("x_m,z_m,half_breadth_m\n1,2,-3\n", "the half breadth not below 0"),
        ("x_m,z_m,half_breadth_m\n1,2,nan\n", "hull.csv:2: is no point of the hull"),
        ("x_m,z_m,half_breadth_m\n1,-1,0\n1,0,1\n", "hull.csv:1: has 1 stations, expected 5"),
        (GOOD.replace("\n0.214,1,", "\n0.214,0.5,"), "station 0.214 m: has"),
    ],
)
def test_a_bad_table_of_offsets_is_told_with_its_line(
    tmp_path: Path, table: str, message: str
) -> None:
    found = with_lines(tmp_path, table)
    assert len(found) == 1, found
    assert message in found[0]


def test_every_bad_row_of_the_offsets_is_told(tmp_path: Path) -> None:
    found = with_lines(tmp_path, "x_m,z_m,half_breadth_m\n1,a,0\n1,0,b\n")
    assert len(found) == 2
