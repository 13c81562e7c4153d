"""Is a number told once, by what it is, and is no reason given for what is there?"""

from __future__ import annotations

import json
from typing import Any

import numpy as np
import pytest

from generator.report.page import Page, bare_text
from generator.report.results.suffix import without_idle_reasons
from generator.report.sections import propeller, technical, technical_store, trips
from tests.report.conftest import studied

BOATS = ("sloop_30_weekend", "ketch_34_two_motors", "every_key")


def said_of(part: Any) -> str:
    return " ".join(bare_text(text) for text in (*part.text, part.body)).replace("\u00a0", " ")


def plain(page: Page, key: str, form: str) -> str:
    return page.plain(key, form).replace("\u00a0", " ")


def copy_of(name: str) -> dict[str, Any]:
    tree: dict[str, Any] = json.loads(json.dumps(studied(name)))
    return tree


def reasons_beside_values(node: Any, path: str = "") -> list[str]:
    if isinstance(node, list):
        return [
            bad for n, row in enumerate(node) for bad in reasons_beside_values(row, f"{path}.{n}")
        ]
    if not isinstance(node, dict):
        return []
    bad = [
        spot for key, row in node.items() for spot in reasons_beside_values(row, f"{path}.{key}")
    ]
    for key, reason in node.items():
        if not key.endswith("_why") or not reason:
            continue
        stem = key.removesuffix("_why")
        stems = (stem, f"{stem}_low", f"{stem}_high")
        beside = [
            v for n, v in node.items() if n != key and (n in stems or n.rpartition("_")[0] in stems)
        ]
        if beside and None not in beside:
            bad.append(f"{path}.{key}")
    return bad


@pytest.mark.parametrize("name", BOATS)
def test_no_reason_stands_beside_the_number_that_it_denies(name: str) -> None:
    tree = studied(name)
    assert reasons_beside_values(tree) == []
    for option in tree["options"]:
        fault = option.get("one_fault")
        if fault and None not in (fault["cruise_string_a"], fault["peak_string_a"]):
            assert fault["cruise_string_why"] is fault["peak_string_why"] is None


def test_a_reason_stays_where_its_number_is_absent() -> None:
    row = {"range_nm": None, "range_nm_why": "no", "heat_w": 3.0, "heat_why": "no"}
    assert without_idle_reasons([row]) == [{**row, "heat_why": None}]
    two = {"fall_kn": None, "fall_m": 1.0, "fall_why": "no", "why": "told"}
    assert without_idle_reasons(two) == two


@pytest.mark.parametrize("name", BOATS)
def test_reserve_names_what_decides_for_each_age(name: str) -> None:
    page = Page(studied(name))
    said = said_of(technical_store.bank(page))
    for motor in page.motors:
        own = page.value(f"{motor}.reserve")
        for age, share in (("of_new", "share_kwh"), ("of_aged", "share_aged_kwh")):
            parts = {"share": own[share], "demand": own["demand_kwh"]}
            by = own["by" if age == "of_new" else "by_aged"]
            assert parts[by] >= 0.97 * max(parts.values())  # counted draw by draw
            # the middle of the larger of both in each draw, no less than the larger middle
            assert 0.999 * max(parts.values()) <= own[f"{age}_kwh"] <= 1.08 * parts[by]
    tree = copy_of(name)
    for option in tree["options"]:
        option["reserve"] |= {"by": "share", "by_aged": "demand"}
    both = said_of(technical_store.bank(Page(tree)))
    assert "The share sets it when new and the manoeuvring rule at the end" in both
    assert "which is more than" not in said


def test_peak_held_as_long_cold_as_warm_is_said_once() -> None:
    tree = copy_of("sloop_30_weekend")
    page = Page(tree)
    own = page.value(f"{page.motors[0]}.duty")
    own |= {"peak_cold_min": 7.3, "peak_warm_min": 6.9}
    said = said_of(technical_store.duty(page))
    assert "lasts 7 min after a run at" in said
    assert "and as long from cold" in said
    own |= {"peak_cold_min": 9.0}
    assert "and 9 min from cold" in said_of(technical_store.duty(page))


def test_a_criterion_that_does_not_apply_is_not_called_judged() -> None:
    tree = studied("sloop_30_weekend")
    for option in tree["options"]:
        verdict = option["verdict"]
        results = [row["result"] for row in verdict["criteria"]]
        apart = results.count("not applicable")
        assert verdict["judged"] == len(results) - apart - results.count("not assessed")
        assert verdict["not_applicable"] == apart
        if apart:
            assert "All" not in verdict["words"]
            assert f"{apart} not applicable" in verdict["words"]
    assert any(option["verdict"]["not_applicable"] for option in tree["options"])


@pytest.mark.parametrize("name", BOATS)
def test_diesels_have_no_sun_for_want_of_a_bank(name: str) -> None:
    for option in studied(name)["options"]:
        if option["kind"] != "battery":
            assert option["sun_only_why"] == "no propulsion battery"


def test_chemistries_say_their_yardstick() -> None:
    page = Page(studied("sloop_30_weekend"))
    made = technical_store.chemistries(page)
    assert made is not None
    assert "with its reserve needs" in said_of(made)
    assert "for the trips and currents of" in bare_text(made.closing)


@pytest.mark.parametrize("name", BOATS)
def test_a_number_at_planned_cruise_is_the_value_at_planned_cruise(name: str) -> None:
    """Not that of the nearest row: every section prints the one of the comparison."""
    page = Page(studied(name))
    motor, cruise = page.motors[0], page.value("planning.cruise_speed_kn")
    said = said_of(technical.motion(page)[0])
    assert plain(page, f"{motor}.cruise_shaft_kw", "power") in said
    rows = page.value(f"{motor}.speed_power")
    speeds = [row["speed_kn"] for row in rows]
    for key, column in (("cruise_thrust_n", "thrust_n"), ("cruise_shaft_kw", "shaft_power_kw")):
        between = np.exp(np.interp(cruise, speeds, np.log([row[column] for row in rows])))
        assert page.value(f"{motor}.{key}") == pytest.approx(between, rel=0.004)


@pytest.mark.parametrize("name", BOATS)
def test_range_at_cruise_and_a_knot_below_is_that_of_those_speeds(name: str) -> None:
    page = Page(studied(name))
    said = said_of(trips.parts(page)[0])
    for motor in page.motors:
        bar = trips.row_at_cruise(page, motor, "calm")
        slow = page.value(f"{motor}.range_slower")
        wanted = page.value("planning.cruise_speed_kn") - 1.0
        assert slow["speed_kn"] == pytest.approx(wanted)
        rows = [
            row
            for row in page.value(f"{motor}.range")
            if (row["sea"], row["bank_age"]) == ("calm", "new") and row["range_nm"] is not None
        ]
        between = np.interp(
            wanted, [row["speed_kn"] for row in rows], [row["range_nm"] for row in rows]
        )
        assert slow["range_nm"] == pytest.approx(between, rel=0.004)
        wanted_text = plain(page, f"{bar}.range_nm", "distance")
        assert f"from {wanted_text} to " in said
        assert plain(page, f"{motor}.range_slower.range_nm", "distance") in said


@pytest.mark.parametrize("name", BOATS)
def test_the_propeller_section_says_where_the_limit_is_met(name: str) -> None:
    """At no more than the plate's torque, with the power that the bars take."""
    page = Page(studied(name))
    said = said_of(propeller.part(page))
    for motor in page.motors:
        met, plate = page.value(f"{motor}.reached"), page.value(f"{motor}.particulars.motor")
        rated = plate["continuous_power_kw"] * 1e3 / (plate["rated_speed_rpm"] * np.pi / 30.0)
        assert met["torque_newtonmetre"] <= rated * 1.001
        assert met["shaft_power_kw"] == page.value(f"{motor}.continuous_shaft_kw")
        for key, form in (
            ("turns_rpm", "rpm"),
            ("torque_newtonmetre", "torque"),
            ("speed_kn", "speed"),
            ("shaft_power_kw", "power"),
        ):
            assert plain(page, f"{motor}.reached.{key}", form) in said
