"""What the results say of money, where a hand can follow it."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import numpy as np
import pytest

from generator.analyses.money.account import account
from generator.analyses.money.bill import Bill
from generator.analyses.money.break_even import BreakEven, Grid, Turn
from generator.analyses.money.cost import Overhaul
from generator.report.numbers import Display
from generator.report.tree import Telling, tree
from tests.unit.report.lacking import draws, found

TELLING = Telling(Display("metric", "GBP"))


def told(**parts: Any) -> dict[str, Any]:
    node: dict[str, Any] = tree(account(found(**parts)), "here", TELLING)
    return node


def test_amounts_are_printed_as_the_bill_has_them_and_their_bands_as_drawn() -> None:
    """Of 1 to 100 the tenth from below lies at 10.9 and the tenth from above at 90.1."""
    values = Bill.printed(draws(0), 47.0)
    assert values[0, 0] == 47.0
    np.testing.assert_array_equal(values[1:], draws(0)[1:])
    alone = Bill.printed(np.array([[46.6]]), 47.0)
    assert alone[:, 0].tolist() == [47.0, 46.6]


def test_an_overhaul_is_told_within_one_year_five_and_the_horizon() -> None:
    """Ten years of horizon; the chance of each year as far as it goes is a hundredth of it."""
    years = np.arange(11.0)
    risk = Overhaul(
        wear=np.array([[0.4]]), years_left=np.array([[7.0]]), chance=years[np.newaxis] / 100.0,
        counted=True, price=np.array([[4600.0]]),
    )  # fmt: skip
    own = found()
    assert own.case.prices.horizon == 10
    node = told(cost=replace(own.cost, overhaul=risk))["overhaul"]
    assert [row["within_years"] for row in node["chance"]] == [1.0, 5.0, 10.0]
    assert [row["chance_share"] for row in node["chance"]] == pytest.approx([0.01, 0.05, 0.10])
    assert (node["wear_share"], node["left_years"], node["price_money"]) == (0.4, 7.0, 4600.0)
    held = told(cost=replace(own.cost, overhaul=replace(risk, counted=False)))["overhaul"]
    assert (held["price_money"], held["price_why"]) == (
        None, "the owner's ledger holds the overhaul",
    )  # fmt: skip


def test_a_map_is_told_point_by_point_across_first() -> None:
    """Two prices of diesel, 1.50 and 3.00 a litre, by one and two hours a year."""
    grid = Grid(
        np.array([1500.0, 3000.0]), np.array([3600.0, 7200.0]), np.arange(4.0).reshape(2, 2)
    )
    turn = Turn(None, 7200.0, None, 500.0, None, 12.0, {
        "hours": "never_turns", "bank": "never_turns", "today_bank": "no_price_of_bank",
    })  # fmt: skip
    node = told(break_even=BreakEven(grid, None, turn))
    rows = node["maps"]["hours_and_fuel"]
    assert [row["fuel_money_per_l"] for row in rows] == pytest.approx([1.5, 3.0, 1.5, 3.0])
    assert [row["hours_h"] for row in rows] == pytest.approx([1.0, 1.0, 2.0, 2.0])
    assert [row["saving_money"] for row in rows] == [0.0, 1.0, 2.0, 3.0]
    assert (node["maps"]["price_and_life"], node["unmapped"]) == ([], "")
    assert node["turn"]["today_bank_why"] == "the ledger names no price of a bank"
    assert (node["turn"]["most_hours_h"], node["turn"]["today_life_years"]) == (2.0, 12.0)


def test_without_a_first_price_no_sum_stands_and_what_is_known_is_told() -> None:
    own = found()
    node = told(cost=replace(own.cost, priced=False), savings=None, break_even=None)
    for key in ("first", "contingency", "present_value", "equal_yearly", "per_mile", "end_worth"):
        assert node[f"{key}_money"] is None
        assert node[f"{key}_why"] == "no price is given for fitting it"
    assert node["energy_yearly_money"] == round(float(own.cost.energy[0, 0]))
    assert (node["cumulative"], node["saving"], node["unmapped"]) == ([], None, "no_baseline")
