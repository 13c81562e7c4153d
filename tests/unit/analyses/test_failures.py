"""What single faults leave: each kind of left, from the findings of a real case."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from generator.analyses.findings import Findings
from generator.analyses.percentiles import scalar, spread
from generator.analyses.verdict.failure import PART, SAIL, WHOLE
from generator.analyses.verdict.failures import HOT_JOINT, counted, failures
from generator.analyses.verdict.spares import SPARES
from generator.case.open import read_case
from generator.report.numbers import Display
from generator.report.tree import Telling, tree
from tests.alone import alone

CASES = Path(__file__).parents[3] / "cases"


@lru_cache(maxsize=1)
def found() -> Findings:
    """The first motor of the case that has two strings."""
    case = read_case(CASES / "every_key.yaml")
    places = (place for place, option in enumerate(case.options) if option.bank)
    every = (alone(case, place, 20).findings for place in places)
    return next(findings for findings in every if findings.fault)


def told(findings: Findings) -> dict[str, dict[str, Any]]:
    """Every fault as it stands in the results, by its id."""
    rows = tree(failures(findings), "here", Telling(Display("metric", "EUR")))
    return {row["id"]: row for row in rows}


def changed(strings: int = 2, cruise: bool = False, peak: bool = False) -> Findings:
    base = found()
    assert base.fault is not None
    fault = replace(base.fault, strings=strings, cruise_trips=float(cruise), peak_trips=float(peak))
    return replace(base, fault=fault)


def with_plan(fallback: str | None, speed: float | None) -> Findings:
    base = found()
    plan = replace(base.case.planning, fallback=fallback, fallback_speed=speed)
    return replace(base, case=replace(base.case, planning=plan))


def test_failures_a_diesel_has_none_here() -> None:
    assert failures(replace(found(), fault=None)) == ()


def test_string_of_several_leaves_a_part_of_the_drive() -> None:
    item = told(changed())["string"]
    assert item["kind"] == PART
    assert item["words_left"].startswith(f"up to {item['speed_kn']:.1f}\u00a0kn")
    assert "full power would trip" not in item["words_left"]
    assert "full power would trip" in told(changed(peak=True))["string"]["words_left"]


def test_string_that_takes_the_others_with_it_leaves_the_sails() -> None:
    item = told(changed(cruise=True))["string"]
    assert item["kind"] == SAIL
    assert item["words_left"].startswith("her sails only")
    assert "Throttle back, isolate" in item["words_action"]


def test_string_alone_is_the_whole_bank() -> None:
    assert "string" not in told(changed(strings=1))


@pytest.mark.parametrize(
    ("fallback", "speed", "left", "other"),
    [
        ("none", None, "her sails only", None),
        (None, None, "her sails only", None),
        ("tow", None, "her sails or a tow", None),
        (
            "second propulsor",
            1.5433333,
            "her sails, or 3.0\u00a0kn by the second means of propulsion",
            3.0,
        ),
    ],
)
def test_loss_of_the_drive_leaves_what_the_skipper_has(
    fallback: str | None, speed: float | None, left: str, other: float | None
) -> None:
    every = told(with_plan(fallback, speed))
    for name in ("bank", "controller", "throttle", "mechanical", "rope"):
        assert every[name]["kind"] == SAIL
        assert every[name]["words_left"].partition(";")[0] == left
        assert every[name]["other_low_kn"] == (None if other is None else pytest.approx(other))


def test_joint_heats_with_the_square_of_the_current() -> None:
    base = found()
    assert base.bank is not None
    item = told(base)["joint"]
    cruise = scalar(spread(np.nan_to_num(base.bank.cruise_current)).middle)
    assert item["kind"] == WHOLE
    assert item["at_cruise_w"] == pytest.approx(HOT_JOINT * cruise**2, rel=1e-6)
    assert item["at_peak_w"] > item["at_cruise_w"]


def test_gauge_that_reads_high_costs_its_error_of_the_bank() -> None:
    """5 % of 20.48 kWh is 1.024 kWh."""
    item = told(found())["gauge"]
    assert item["energy_kwh"] == pytest.approx(1.024, rel=1e-3)
    assert 0.5 < item["distance_nm"] < 5.0


def test_house_goes_dark_only_without_a_battery_of_its_own() -> None:
    base = found()
    house = replace(base.case.house, separate_bank=False)
    dark = told(replace(base, case=replace(base.case, house=house)))
    assert "dark" in dark["bank"]["words_effect"]
    assert "own battery" in told(base)["bank"]["words_effect"]


def test_a_short_circuit_behind_the_busbar_may_take_the_strings_with_it() -> None:
    base = found()
    assert base.installation is not None
    drive = base.installation.circuit("motor")
    assert drive is not None
    made = base.installation
    for lone, said in ((False, "charger and converter are dead too"), (True, "curves")):
        devices = tuple(
            replace(item, selective=lone) if item.circuit == drive.id else item
            for item in made.devices
        )
        item = told(replace(base, installation=replace(made, devices=devices)))["feeder"]
        assert said in item["words_effect"]
        assert item["kind"] == SAIL


def test_one_string_out_names_the_current_that_the_controller_is_held_to() -> None:
    item = told(changed())["string"]
    assert item["words_action"].startswith(f"Throttle back to {item['held_a']:.0f}\u00a0A")
    assert item["held_a"] > 0.0


def test_count_of_faults_tells_those_that_take_the_drive_apart() -> None:
    every = failures(found())
    count = counted(every)
    assert count.all == len(every) > count.sail
    assert count.sail == len([item for item in every if item.kind == SAIL])


def test_spares_mend_faults_that_are_told() -> None:
    assert {spare.mends for spare in SPARES} <= set(told(changed()))
