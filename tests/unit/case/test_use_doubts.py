"""What the owner leaves open about her use is asked, and what stands against the word is told."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.answer.answer import answer
from generator.draws import make_draws
from generator.report.results_file import build
from generator.study import run
from tests.unit.case.faulty import SMALL, changed, read

MUST = ("    refuge: true\n    sailable: true\n", "    refuge: false\n    sailable: false\n")
LEGS = SMALL[SMALL.index("legs:\n") : SMALL.index("house:\n")]


def warned(folder: Path, *exchanges: tuple[str, str]) -> dict[str, str]:
    return {item.path: str(item) for item in read(folder, changed(*exchanges)).warnings}


def test_no_leg_that_must_be_made_is_told(tmp_path: Path) -> None:
    assert "none that must be made" in warned(tmp_path)["legs"]
    assert "legs" not in warned(tmp_path, MUST)


@pytest.mark.parametrize("key", ["refuge", "sailable"])
def test_an_answer_that_is_left_out_is_asked(tmp_path: Path, key: str) -> None:
    both = {"refuge": "    refuge: false\n", "sailable": "    sailable: false\n"}
    left = "".join(line for name, line in both.items() if name != key)
    said = warned(tmp_path, (MUST[0], left))
    assert "must be made" in said[f"legs[0].{key}"]
    assert f"legs[0].{key}" not in warned(tmp_path, MUST)


def test_a_bank_that_nothing_charges_is_told(tmp_path: Path) -> None:
    assert "no way to charge" in warned(tmp_path)["options[2].supply"]
    plug = ("shore_power: false", "shore_power: true\n  breaker: 16 A\n  voltage: 230 V")
    assert "options[2].supply" not in warned(tmp_path, plug)


@pytest.mark.parametrize(("kept", "told"), [("15 %", True), ("20 %", False), ("25 %", False)])
def test_a_lowered_reserve_wants_a_reason(tmp_path: Path, kept: str, told: bool) -> None:
    cruise = "  cruise_speed: 5.0 kn\n"
    lower = (cruise, f"{cruise}  reserve_share: {kept}\n")
    assert ("planning.reserve_share" in warned(tmp_path, lower)) is told
    why = (cruise, f"{cruise}  reserve_share: {kept}\n  reserve_reason: Near the yard\n")
    assert "planning.reserve_share" not in warned(tmp_path, why)


@pytest.mark.parametrize("key", ["insurer", "conversion"])
def test_a_refusal_is_told(tmp_path: Path, key: str) -> None:
    said = warned(tmp_path, ("house:\n", f"papers: {{{key}: refused}}\nhouse:\n"))
    assert "suitable" in said[f"papers.{key}"]
    other = warned(tmp_path, ("house:\n", f"papers: {{{key}: not asked}}\nhouse:\n"))
    assert f"papers.{key}" not in other


def test_a_plant_too_large_for_her_is_told(tmp_path: Path) -> None:
    large = (
        "continuous_power: 8 kW, peak_power: 12 kW",
        "continuous_power: 80 kW, peak_power: 90 kW",
    )
    assert "for a boat of her mass" in warned(tmp_path, large)["options[2].motor.continuous_power"]
    assert "options[2].motor.continuous_power" not in warned(tmp_path)


@pytest.mark.parametrize(("fetch", "told"), [("0.9 km", True), ("1.1 km", False), ("19 km", False),
                                             ("21 km", True)])  # fmt: skip
def test_a_fetch_is_held_against_the_class_of_the_waters(
    tmp_path: Path, fetch: str, told: bool
) -> None:
    """Sheltered waters have 2 to 10 km; a factor of two beyond either end is asked."""
    waters = ("exposure: sheltered", f"exposure: sheltered\n  fetch: {fetch}")
    assert ("waters.fetch" in warned(tmp_path, waters)) is told


def test_a_wish_without_a_subject_is_asked_for_one(tmp_path: Path) -> None:
    wish = ("  currency: EUR\n", "  currency: EUR\n  reasons: [Old engine, Peace]\n")
    assert "2 in all" in warned(tmp_path, wish)["study.reasons[0]"]
    named = ("  currency: EUR\n", "  currency: EUR\n  reasons: [{text: Peace, subject: quiet}]\n")
    assert "study.reasons[0]" not in warned(tmp_path, named)


def test_without_a_passage_the_answer_is_to_write_them_down(tmp_path: Path) -> None:
    """True sentences and no more than conditions, for want of what she must be able to do."""
    text = SMALL.replace(LEGS, "")
    assert "is missing" in {item.path: str(item) for item in read(tmp_path, text).warnings}["legs"]
    case = read(tmp_path, text)
    study = run(case, make_draws(case, 20))
    tree = build(case, study, led=answer(case, study))
    assert tree["answer"]["advice"]["words"] == "Write down your passages, then ask again."
    for option in tree["options"]:
        assert option["verdict"]["criteria"][0]["result"] == "conditional"
        assert "no passage was written down" in option["verdict"]["criteria"][0]["facts"]["words"]
