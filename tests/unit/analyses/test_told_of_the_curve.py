"""What is told of how far the resistance curve is known, beside the tables that it comes from."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import numpy as np
import pytest

from generator.analyses.handling.low_speed import CrawlRows
from generator.analyses.motion.power import KNOT
from generator.analyses.motion.second_opinions import second_opinions
from generator.analyses.motion.trial import TrialResult
from generator.analyses.motion.trial_table import TrialTable
from generator.case.case import Case
from generator.report.numbers import Display
from generator.report.template import reason
from generator.report.tree import Telling, tree
from generator.tables.load import read_table
from tests.unit.report.lacking import found, study


def told(item: Any) -> Any:
    return tree(item, "here", Telling(Display("metric", "EUR")))


def test_each_form_stands_beside_the_first_at_the_same_speed() -> None:
    rows = told(study().opinions.forms)
    forms = list(dict.fromkeys(row["form"] for row in rows))
    assert forms == ["family_out", "gko1993", "keuning1998", "keuning2008"]
    first = {row["speed_kn"]: row["total_n"] for row in rows if row["form"] == forms[0]}
    for row in rows:
        assert row["over_primary_share"] == pytest.approx(
            row["total_n"] / first[row["speed_kn"]] - 1.0
        )
    assert all(row["keel"] and row["name"] for row in rows)


def test_other_forms_are_read_between_their_speeds() -> None:
    """Half way from 5 to 6 kn lies the mean of their shares; she is planned for 4.5 kn."""
    rows = [row for row in told(study().opinions.forms) if row["form"] == "gko1993"]
    shares = {round(row["speed_kn"], 6): row["over_primary_share"] for row in rows}
    between = study().opinions.others_at(5.5 * KNOT)
    assert between[0] == pytest.approx(0.5 * (shares[5.0] + shares[6.0]))
    assert len(between) == 3


def test_a_form_that_has_no_answer_says_why() -> None:
    """The form of 2008 wants a midship coefficient of 0.63 to 0.80."""
    own = found()
    vessel = replace(own.power.vessel, form=replace(own.power.vessel.form, midship_coefficient=0.9))
    for row in told(second_opinions(own.case, vessel).forms):
        odd = row["form"] == "keuning2008"
        assert (row["total_n"] is None) is odd
        assert row["total_why"] == (reason("midship_beyond_form") if odd else None)


def test_scores_and_band_are_those_of_the_tables() -> None:
    table, rows = read_table("hull/regression_scores"), told(study().opinions.scores)
    assert [row["froude_number"] for row in rows] == table.column("froude_number").tolist()
    assert rows[0]["keuning1998_bias_share"] == table.column("keuning1998_bias")[0]
    assert rows[3]["hull_out_rms_share"] == table.column("hull_out_rms")[3]
    band = read_table("hull/regression_band")
    inside = band.column("inside")
    assert told(study().opinions.band)["family_inside_share"] == pytest.approx(
        float(inside[band.row_of("left_out", "family")])
    )


def test_watts_at_a_crawl_have_the_ends_of_the_battery_alone() -> None:
    """Draws of 90, 100 and 110 W: the ends lie a fifth of a step in."""
    battery = np.array([[100.0], [90.0], [100.0], [110.0]])
    one = np.array([[50.0]])
    (row,) = told(CrawlRows(np.array([2.0 * KNOT]), one, one / 2, battery, one * 1.5, one * 3))
    assert [row[f"battery{end}_w"] for end in ("_low", "", "_high")] == (
        pytest.approx([92.0, 100.0, 108.0])
    )
    assert (row["speed_kn"], row["shaft_w"], row["standing_w"]) == pytest.approx((2.0, 50.0, 25.0))
    assert (row["best_curve_w"], row["worst_curve_w"]) == pytest.approx((75.0, 150.0))


def test_readings_of_owners_stand_beside_this_boat_at_their_speed() -> None:
    own, table = found(), read_table("drive/owners_readings")
    assert own.low_speed is not None
    rows = told(own.low_speed.readings)
    assert [row["read_w"] for row in rows] == table.column("power").tolist()
    assert [row["boat"] for row in rows] == list(table.text("boat"))
    crawl = {row["speed_kn"]: row["battery_w"] for row in told(own.low_speed.rows)}
    beside = [row for row in rows if row["speed_kn"] in crawl]
    assert beside
    for row in beside:
        assert row["here_w"] == crawl[row["speed_kn"]]


def trial() -> tuple[Case, TrialResult]:
    own = found()
    return own.case, own.trial


def test_a_row_of_the_trial_has_its_doubt_on_both_sides() -> None:
    """4 kW with a sigma of ln power of 0.1: a tenth lies below 4 / exp(0.12816)."""
    case, read = trial()
    point = replace(
        read.points[0], shaft_power=4000.0, sigma=0.1, readings=(), used=True, speed=3.0 * KNOT
    )
    powers = np.array([[3000.0], [2900.0], [3000.0], [3100.0]])
    one = replace(read, points=(point,), model_power=powers, curve_power=powers + 500.0)
    table = told(TrialTable.of(case, one))
    (row,) = table["rows"]
    assert row["shaft_power_kw"] == 4.0
    assert row["shaft_power_low_kw"] == pytest.approx(4.0 / np.exp(0.12816))
    assert row["shaft_power_high_kw"] == pytest.approx(4.0 * np.exp(0.12816))
    assert (row["model_power_kw"], row["curve_power_kw"]) == pytest.approx((3.0, 3.5))
    assert (row["speed_kn"], row["law_power_kw"]) == (pytest.approx(3.0), None)
    assert row["law_power_why"] == reason("not_of_this_trial")


def test_model_and_curve_stand_at_the_rows_that_count() -> None:
    case, read = trial()
    first = replace(read.points[0], used=False, why="too windy")
    second = replace(read.points[0], used=True, why="")
    powers = np.array([[3000.0]])
    one = replace(read, points=(first, second), model_power=powers, curve_power=powers)
    rows = told(TrialTable.of(case, one))["rows"]
    assert [row["model_power_kw"] for row in rows] == [None, 3.0]
    assert [row["why"] for row in rows] == ["too windy", ""]


def test_what_the_trial_asks_of_the_curve_is_told_as_shares() -> None:
    case, read = trial()
    one = replace(read, law_over_fuel=1.31, turns_over_model=0.9, grows=False, sigma=None)
    table = told(TrialTable.of(case, one))
    assert table["law_over_fuel_share"] == pytest.approx(0.31)
    assert table["turns_over_model_share"] == pytest.approx(-0.1)
    assert (table["apart"], table["turns_wrong"]) == (True, True)
    assert table["growth_why"] == reason("one_factor_for_all_speeds")
    assert table["reference_kn"] is None
    assert TrialTable.of(replace(case, trial=None), one) is None
