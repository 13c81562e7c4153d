"""What is told of how far the resistance curve is known, beside the tables that it comes from."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import numpy as np
import pytest

from generator.analyses.handling.low_speed import CrawlRows
from generator.analyses.motion.power import KNOT
from generator.analyses.motion.second_opinions import second_opinions
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
