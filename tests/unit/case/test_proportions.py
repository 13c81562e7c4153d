"""Numbers that can each be, and do not make a boat together, are refused or doubted."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from generator.case.open import read_case
from generator.case.proportions import all_proportions
from generator.errors import CaseError, Fault
from tests.corpus.variants import KEPT, edited, read_plain, spelled, write_variants
from tests.unit.case.faulty import FULL, SMALL, changed, doubts, faults, lines, read

FIN: dict[str, Any] = {"boat.hull.keel_type": "fin"}
# She: 10.40 m over all, 8.55 m waterline, 3.20 m beam, 1.55 m draught, 0.72 m of it canoe body,
# 6.60 t; motor of 10 kW, bank of 400 Ah and 20.5 kWh; engine of 1998, study of 2026.
HULL, KEEL, RUDDER = "boat.hull.", "boat.keel.", "boat.rudder."
AIR, AFLOAT, MOTOR, BANK = (
    "boat.windage.",
    "boat.floatation.",
    "options.a.motor.",
    "options.a.bank.",
)
NO_CANOE = "no canoe draught"
# row of the table, key, a value that is seldom met, one that cannot be, other keys
ODD: list[tuple[str, str, str, str, dict[str, Any]]] = [
    (HULL + "waterline_length", "", "6.5 m", "4.6 m", {}),  # 0.625, 0.44
    (HULL + "beam", "", "4.9 m", "5.6 m", {}),  # 0.47, 0.54: a catamaran
    (HULL + "draught", "", "3.0 m", "4.8 m", {}),  # 0.29, 0.46
    # box 6.60 t / 1025 x 0.915 / (0.55 x 8.55 x 2.82) = 0.444 m; body 0.444 / 0.70 = 0.635 m
    (HULL + "draught of the canoe body", HULL + "draught", "0.65 m", "0.5 m", {NO_CANOE: ""}),
    (
        HULL + "canoe_draught",
        "",
        "0.46 m",
        "0.35 m",
        {},
    ),  # coefficients 0.97 and 1.27: with a fuller prism, 1.1
    (HULL + "canoe_draught", "", "1.0 m", "1.5 m", {}),  # coefficients 0.44 and 0.30
    (
        HULL + "displacement",
        "",
        "14 t",
        "26 t",
        {NO_CANOE: ""},
    ),  # 22.4 and 41.6 kg/m3: 6.60 t in pounds is 14.6
    (HULL + "displacement", "", "12 t", "21 t", {**FIN, NO_CANOE: ""}),  # 19 and 34 kg/m3
    (KEEL + "wetted_area", "", "24 m2", "40 m2", {}),  # of 26.5 m2: 0.91, 1.51
    (KEEL + "wetted_area", "", "11 m2", "24 m2", FIN),  # 0.41, 0.91
    (KEEL + "volume", "", "1300 l", "3200 l", {}),  # of 6439 l: 0.20, 0.50: half the boat
    (KEEL + "volume", "", "900 l", "3200 l", FIN),  # 0.14, 0.50
    (KEEL + "chord", "", "6.7 m", "8.5 m", {}),  # 0.78, 0.99
    (KEEL + "chord", "", "3.8 m", "8.5 m", FIN),  # 0.44, 0.99: a fin of the whole waterline
    (RUDDER + "wetted_area", "", "3.9 m2", "9.5 m2", {}),  # 0.147, 0.358
    (RUDDER + "chord", "", "1.1 m", "2.3 m", {}),  # 0.129, 0.269
    (AIR + "freeboard", "", "1.9 m", "3.3 m", {}),  # 0.18, 0.32
    (AIR + "mast_height", "", "19 m", "24.5 m", {}),  # 1.83, 2.36
    (AIR + "mast_diameter", "", "300 mm", "700 mm", {}),  # of 12.6 m: 0.024, 0.056
    (AFLOAT + "freeboard_aft", "", "1.9 m", "3.3 m", {}),
    (AFLOAT + "waterplane_area", "", "21 m2", "25 m2", {}),  # of 24.1 m2: 0.87, 1.04
    (AFLOAT + "transverse_radius", "", "2 m", "3.7 m", {}),  # of 10.24 m2: 0.195, 0.36
    (AFLOAT + "longitudinal_radius", "", "20 m", "45 m", {}),  # of 73.1 m2: 0.27, 0.62
    (AFLOAT + "metacentric_height", "", "2 m", "4 m", {}),  # 0.625, 1.25
    (AFLOAT + "roll_period", "", "5 s", "14 s", {}),  # 1.56, 4.4 s/m
    (AFLOAT + "plate_load", "", "5.5 t", "10 t", {}),  # 0.83, 1.52
    ("boat.worth", "", "500000 EUR", "20000000 EUR", {}),  # 76, 3030 EUR/kg
    ("engine.tank", "", "1000 l", "4000 l", {}),  # 845 and 3380 kg: 0.128, 0.512
    ("engine.hours", "", "50 h", "", {}),  # of 28 years: 1.8 h a year
    ("propeller.diameter", "", "790 mm", "1500 mm", {"propeller.aperture_height": "1.6 m"}),
    (MOTOR + "peak_power", "", "40 kW", "650 kW", {}),  # 4, 65
    (MOTOR + "mass", "", "200 kg", "900 kg", {}),  # 20, 90 g/W
    (BANK + "discharge_limit", "", "2800 A", "26 kA", {}),  # 7, 65 C
    (BANK + "blocks.discharge_limit", "", "1300 A", "13 kA", {}),  # of 200 Ah: 6.5, 65 C
    (BANK + "mass", "", "700 kg", "6000 kg", {}),  # of 186 kg by 110 Wh/kg: 3.8, 32
    ("options.a.supply.panels.0.power", "", "2500 W", "9 kW", {}),  # of 33.3 m2: 75, 270 W/m2
]


def found(folder: Path, changes: dict[str, Any]) -> list[Fault]:
    """Everything that is said of the kept case with every key, some of them changed."""
    write_variants(folder)
    tree = read_plain((KEPT / "every_key.yaml").read_text(encoding="utf-8"))
    without = [HULL + "canoe_draught"] if NO_CANOE in changes else []
    sets = {key: value for key, value in changes.items() if key != NO_CANOE}
    path = folder / "odd.yaml"
    path.write_text(spelled(edited(tree, {"remove": without, "set": sets})), encoding="utf-8")
    try:
        return list(read_case(path).warnings)
    except CaseError as error:
        return error.faults


def row_of(row: str, others: dict[str, Any]) -> tuple[str, str]:
    """The row of the table that a line goes by."""
    key = row.replace("options.a.", "options.").replace("panels.0", "panels")
    keel = "fin" if "boat.hull.keel_type" in others else "long"
    return (key, keel) if (key, keel) in all_proportions() else (key, "")


def said(faults: list[Fault], key: str, row: tuple[str, str]) -> list[tuple[str, bool]]:
    """The values of a key that are doubted or refused for that proportion, and whether doubted."""
    path = key.replace("options.a.", "options[2].").replace("panels.0", "panels[0]")
    return [
        (fault.problem.removeprefix("is ").partition(": ")[0], fault.warning)
        for fault in faults
        if fault.path == path and all_proportions()[row].meaning in fault.problem
    ]


@pytest.mark.parametrize(("row", "key", "odd", "never", "others"), ODD)
def test_odd_proportion_is_doubted_and_an_impossible_one_refused(
    tmp_path: Path, row: str, key: str, odd: str, never: str, others: dict[str, Any]
) -> None:
    key, by = key or row, row_of(row, others)
    assert said(found(tmp_path, {**others, key: odd}), key, by) == [(odd, True)]
    if never:
        assert said(found(tmp_path, {**others, key: never}), key, by) == [(never, False)]


def test_every_row_of_the_table_is_tried() -> None:
    assert {row_of(row, others) for row, *_, others in ODD} == set(all_proportions())


def test_an_engine_that_is_not_built_yet_is_no_engine(tmp_path: Path) -> None:
    text = changed(("  year: 1992\n  condition", "  year: 2090\n  condition"))
    assert lines(tmp_path, text) == [
        "boat.yaml:28: engine.year: is 2090, after the study's own date, expected at most 2026"
    ]
    new = changed(("{rated_power: 15 kW}", "{rated_power: 15 kW, year: 2028}"))
    assert faults(tmp_path, new) == []


def test_two_legs_of_one_name_are_doubted_and_cannot_be_followed(tmp_path: Path) -> None:
    leg = SMALL[SMALL.index("  - name: ", SMALL.index("legs:")) : SMALL.index("house:")]
    name = leg.splitlines()[0].removeprefix("  - name: ")
    twice = SMALL.replace(leg, leg + leg)
    assert [doubt.path for doubt in doubts(tmp_path, twice)] == ["legs[1].name"]
    third = leg.replace(name, "Home") + f"    follows: {name}\n"
    found = faults(tmp_path, SMALL.replace(leg, leg + leg + third))
    assert [(fault.path, fault.problem) for fault in found] == [
        ("legs[2].follows", f"is `{name}`, the name of several legs")
    ]


def test_more_outings_than_days_are_doubted(tmp_path: Path) -> None:
    leg = SMALL[SMALL.index("  - name: ", SMALL.index("legs:")) : SMALL.index("house:")]
    often = leg.replace("times_per_year: 20", "times_per_year: 200")
    name = leg.splitlines()[0].removeprefix("  - name: ")
    text = SMALL.replace(leg, often + often.replace(name, "Home"))
    found = [doubt for doubt in read(tmp_path, text).warnings if "outings" in doubt.problem]
    assert [str(doubt).partition(": warning: ")[2] for doubt in found] == [
        "legs: make 400 outings a year, expected at most 366: legs of one outing follow"
    ]


def test_a_trial_on_dry_land_is_refused(tmp_path: Path) -> None:
    found = faults(tmp_path, FULL.replace("wind: 5 kn, depth: 8 m", "wind: 5 kn, depth: 1 m", 1))
    assert [fault.path for fault in found] == ["trial.rows[0].depth"]
    found = faults(tmp_path, FULL.replace("wind: 5 kn, depth: 8 m", "wind: 5 kn, depth: 1 mm", 1))
    assert [fault.path for fault in found] == ["trial.rows[0].depth"]
