"""What the first two sections say: how figures are known, which trip must be made, the better."""

from __future__ import annotations

import copy
import re
from typing import Any

import pytest
from markupsafe import Markup

from generator.report.page import Page, bare_text
from generator.report.sections import boat, options
from tests.report.conftest import KETCH, studied

Results = dict[str, Any]
ROWS = re.compile(r'<tr class="[^"]*">(.*?)</tr>', re.DOTALL)
CELLS = re.compile(r"<(?:td|th)\b")
MOST = 7  # options, diesels counted


def text(markup: Any) -> str:
    apart = Markup(str(markup).replace("</t", " </t"))  # cells and heads
    return " ".join(bare_text(apart).split()).replace("\u00a0", " ")


def of_count(count: int) -> Page:
    """The diesels of the ketch and as many motors as it takes, each with a name of its own."""
    results = copy.deepcopy(studied(KETCH))
    own = results["options"]
    for place in range(MOST - len(own)):
        more = copy.deepcopy(own[2 + place % 2])
        own.append(more | {"id": f"more{place}", "name": f"Motor {'CDE'[place]}, as quoted"})
    results["options"] = own[-1:] if count == 1 else own[:count]
    motors = sum(option["kind"] == "battery" for option in results["options"])
    if motors < 2:
        results["comparison"]["differences"] = []
        results["answer"]["comparison"] = None
    return Page(results)


@pytest.mark.parametrize("count", range(1, MOST + 1))
def test_tables_hold_one_to_seven_options(count: int) -> None:
    page = of_count(count)
    tables = [each for each in options.parts(page) if each and each.name != "adds-part"]
    assert len(tables) == 2
    for part in tables:
        body = str(part.body)
        widths = [float(each) for each in re.findall(r'<col style="width: ([\d.]+)%"', body)]
        assert len(widths) == count + 1
        assert sum(widths) == pytest.approx(100.0, abs=0.1)
        assert min(widths) > 11.0  # some 19 mm on paper
        for row in ROWS.findall(body):
            heading = f'colspan="{count + 1}"' in row
            assert len(CELLS.findall(row)) == (1 if heading else count + 1), row
        for option in page.options:
            assert page.name(option) in body


def test_groups_stand_in_the_order_of_the_reader() -> None:
    body = str(options.parts(Page(studied(KETCH)))[1].body)  # type: ignore[union-attr]
    groups = [text(each) for each in re.findall(r'<th scope="row" colspan.*?</th>', body)]
    assert groups == ["Speed and range", "Battery", "Weight", "Money"]


def test_the_better_motor_is_marked_where_the_difference_is_beyond_its_doubt() -> None:
    """By the judgement draw by draw, and nowhere else; not where both are shown alike."""
    page = Page(studied(KETCH))
    body = "".join(str(part.body) for part in options.parts(page) if part)
    marked = re.findall(r'<strong class="better"><data data-key="(options\.(\d)[^"]*)"', body)
    judged = {row["id"]: row["better"] for row in page.value("comparison.differences")}
    lines = {
        "continuous": "continuous_shaft_kw", "top_continuous": "top_speed.continuous_kn",
        "top_peak": "top_speed.peak_kn", "peak_time": "duty.peak_warm_min",
        "made": "facts.made_kn", "calm_range": "calm_range_nm",
        "calm_aged": "calm_aged_nm", "usable": "bank.usable_kwh",
        "available": "bank.available_aged_kwh", "net": "weight.net_kg",
        "first": "cost.first_money", "present": "cost.present_value_money",
    }  # fmt: skip
    wanted = {(tail, judged[name]) for name, tail in lines.items() if judged.get(name) is not None}
    assert len(wanted) >= 9
    found = {
        (tail, int(place)) for key, place in marked for tail in lines.values()
        if key.endswith(f".{tail}")
    }  # fmt: skip
    assert found == wanted
    assert len(marked) == len(found)


def test_two_alike_as_shown_have_no_better_one() -> None:
    results = copy.deepcopy(studied(KETCH))
    a, b = results["options"][2:]
    b["top_speed"]["continuous_kn"] = a["top_speed"]["continuous_kn"] + 0.001
    body = str(options.parts(Page(results))[1].body)  # type: ignore[union-attr]
    assert '<strong class="better"><data data-key="options.3.top_speed.continuous_kn"' not in body
    assert '<strong class="better"><data data-key="options.3.top_speed.peak_kn"' in body


def test_one_motor_has_nothing_to_be_better_than() -> None:
    page = Page(studied("sloop_30_weekend"))
    parts = options.parts(page)
    assert options.adds(page) is None
    assert "better" not in "".join(str(part.body) for part in parts if part)
    assert "underlined" not in options.lead(page)


def test_what_the_larger_motor_adds_is_said_with_its_price() -> None:
    page = Page(studied(KETCH))
    part = options.adds(page)
    assert part is not None
    assert part.title == "What the larger motor adds for its money"
    said = text(part.body)
    two = page.value("answer.comparison")
    for key, form in (("dearer_money", "money"), ("heavier_kg", "mass"), ("wind_kn", "speed")):
        assert page.plain(f"answer.comparison.{key}", form).replace("\u00a0", " ") in said
    chips = re.findall(r'<span class="chip (\w+)">([^<]*)</span>', str(part.body))
    words = {"go": "Pass", "conditional": "Pass with conditions", "no": "Fail"}
    ways = [row[motor] for row in two["rows"] for motor in ("smaller", "larger")]
    assert chips == [(way, words[way]) for way in ways]


@pytest.mark.parametrize(
    ("name", "value", "said"),
    [
        ("dearer_money", -500.0, "€500 less to fit"),
        ("dearer_money", 0.0, "costs as much to fit"),
        ("dearer_money", None, "not known, because a price is missing"),
        ("heavier_kg", -12.0, "It weighs 12 kg less."),
        ("farther_nm", -2.0, "Its range in a calm is 2.0 nm shorter."),
    ],
)
def test_a_larger_motor_that_adds_less_is_said_so(name: str, value: Any, said: str) -> None:
    results = copy.deepcopy(studied(KETCH))
    results["answer"]["comparison"][name] = value
    part = options.adds(Page(results))
    assert part is not None
    assert said in text(part.body)


def test_differences_within_the_uncertainty_are_no_gain() -> None:
    results = copy.deepcopy(studied(KETCH))
    results["answer"]["comparison"] |= {"wind_low_kn": -0.2, "faster_low_kn": -0.1}
    for row in results["comparison"]["differences"]:
        if row["id"] == "calm_aged":
            row |= {"better": None, "even": True}
    part = options.adds(Page(results))
    assert part is not None
    said = text(part.body)
    assert "Their speeds differ by less than the uncertainty" in said
    assert "Their ranges in a calm differ by less than the uncertainty." in said


def test_ratings_of_whole_numbers_have_no_decimals_and_others_keep_theirs() -> None:
    body = text(options.parts(Page(studied(KETCH)))[0].body)  # type: ignore[union-attr]
    assert "15 kW for 10 min" in body
    assert "51.2 V" in body
    assert ".0 kW" not in body
    assert "to motor at 5 kn" in text(boat.lead(Page(studied(KETCH))))
    assert "to motor at 4.8 kn" in text(boat.lead(Page(studied("sloop_30_weekend"))))


def test_each_particular_says_how_it_is_known() -> None:
    page = Page(studied(KETCH))
    rows = ROWS.findall(str(boat.parts(page)[0].body))
    said = [text(Markup(row)) for row in rows]
    assert "Displacement as she floats 7,900 kg weighed ± 4 %" in said
    assert "Draught of the hull without keel 0.80 m estimated ± 8 %" in said
    assert "Beam on the waterline 2.83 m worked out" in said


@pytest.mark.parametrize(
    ("facts", "said"),
    [
        ({"refuge": True, "sailable": True}, "can be sailed or broken off"),
        ({"refuge": True, "sailable": False}, "can be broken off"),
        ({"refuge": False, "sailable": True}, "can be sailed"),
        ({"refuge": None, "sailable": None}, "not stated"),
        ({"must_make": True}, "must be made under engine"),
    ],
)
def test_a_trip_says_how_it_ends_without_the_engine(facts: Results, said: str) -> None:
    results = copy.deepcopy(studied(KETCH))
    results["legs"] = [results["legs"][0] | facts]
    row = ROWS.findall(str(boat.parts(Page(results))[-1].body))[0]
    assert f'<td class="words">{said}</td>' in " ".join(row.split())


def test_a_trip_without_an_exposed_part_has_no_head_wind() -> None:
    page = Page(studied(KETCH))
    rows = ROWS.findall(str(boat.parts(page)[-1].body))
    assert page.value("legs.2.exposed_distance_nm") == 0
    assert "sheltered throughout" in rows[2]
    assert "legs.2.wind_kn" not in rows[2]
    assert "legs.0.wind_kn" in rows[0]


def test_a_berth_without_shore_supply_is_said_so() -> None:
    results = copy.deepcopy(studied(KETCH))
    results["berth"] |= {"shore_power": False, "breaker_a": None}
    said = text(boat.parts(Page(results))[1].body)
    assert "where there is no shore supply" in said
    assert " A at " not in said
