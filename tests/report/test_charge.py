"""Will she be charged? What the page says of berth and year is what the results hold."""

from __future__ import annotations

import copy
from typing import Any

import pytest

from generator.report.figures.season_balance import _supplied, season_balance
from generator.report.page import Page, bare_text
from generator.report.sections import charge
from tests.report.conftest import studied

BOATS = ("sloop_30_weekend", "ketch_34_two_motors", "every_key")


def body(page: Page, place: int) -> str:
    return bare_text(charge.parts(page)[place].body).replace("\u00a0", " ")


@pytest.mark.parametrize("name", BOATS)
def test_hours_to_recharge_and_what_limits_are_there(name: str) -> None:
    page = Page(studied(name))
    said = body(page, 0)
    for motor in page.motors:
        for key in ("typical_hours_h", "typical_hours_high_h", "worst_hours_h"):
            shown = page.plain(f"{motor}.use.berth.{key}", "hours").replace("\u00a0", " ")
            assert shown in said
    limit = {"berth": "The shore supply limits", "charger": "The charger limits"}
    assert limit[page.value(f"{page.motors[0]}.use.berth.bound_by")] in said


def test_yes_is_said_only_where_the_criterion_passes() -> None:
    tree = copy.deepcopy(studied("sloop_30_weekend"))
    page = Page(tree)
    assert body(page, 0).startswith("Yes: ")
    page.value(page.find(f"{page.motors[0]}.verdict.criteria", id=11))["result"] = "conditional"  # type: ignore[arg-type]
    assert "Yes" not in body(page, 0)


def test_without_shore_power_the_page_says_so() -> None:
    tree: dict[str, Any] = copy.deepcopy(studied("sloop_30_weekend"))
    berth = tree["options"][2]["use"]["berth"]
    tree["berth"]["shore_power"] = berth["shore_power"] = False
    berth |= {"bound_by": None, "wall_kw": None, "into_bank_kw": None}
    berth |= dict.fromkeys(("typical_hours_h", "typical_hours_low_h", "typical_hours_high_h"))
    berth |= dict.fromkeys(("worst_hours_h", "worst_hours_low_h", "worst_hours_high_h"))
    said = body(Page(tree), 0)
    assert "has no shore power to recharge it" in said
    assert "Without any charging, a full battery" in said
    assert "limits the charging" not in said


def test_the_month_that_decides_is_that_of_the_year() -> None:
    page = Page(studied("ketch_34_two_motors"))
    month = page.value(f"{page.motors[0]}.energy_year.governing_month")
    assert f"{month} is the month that decides" in body(page, 1)
    (figure,) = charge.parts(page)[1].figures
    assert bare_text(figure.finding).startswith(f"{month} decides")
    assert "reserve" in body(page, 1)
    assert "is never used" in body(page, 1)


def test_the_services_that_the_engine_gave_are_named() -> None:
    text = bare_text(charge.parts(Page(studied("ketch_34_two_motors")))[1].closing)
    assert "no longer supplies hot water and cabin heat" in text
    assert "energy_year_months.csv" in text


def test_the_chart_names_only_what_it_draws() -> None:
    for name, sun in (("sloop_30_weekend", False), ("ketch_34_two_motors", True)):
        page = Page(studied(name))
        svg = season_balance(page, page.motors[0]).svg
        assert ("from the sun" in svg) is sun
        assert "from shore power" in svg
        assert "genset" not in svg


def test_what_is_left_over_is_taken_from_the_sun_first() -> None:
    row = {"shore_kwh": 1.0, "sun_kwh": 5.0, "spilled_kwh": 6.0, "wind_kwh": 3.0,
           "screw_kwh": 0.0, "genset_kwh": 0.5}  # fmt: skip
    assert [values for _, values in _supplied([row])] == [[1.0], [0.0], [2.5]]


def test_no_battery_needs_no_charge(results: dict[str, Any]) -> None:
    diesels = copy.deepcopy(results)
    del diesels["options"][2:]
    assert "nothing has to be charged" in body(Page(diesels), 0)
