"""The second word: every answer through a case, the numbers by hand, the words beside them."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from generator.analyses.money.cost import Cost, cost
from generator.analyses.money.cost_ledger import ledger
from generator.analyses.money.savings import savings
from generator.analyses.money.worth import Worth, worth
from generator.analyses.use.legs import Legs
from generator.case.case import Case
from generator.case.open import read_case
from generator.case.prices import CostItem
from generator.report.numbers import Display
from generator.report.template import said
from generator.report.tree import Telling, tree
from generator.report.view import View

CASES = Path(__file__).parents[3] / "cases"
KEEP, NEW, ELECTRIC = range(3)
POUNDS = Display("metric", "GBP")


@lru_cache(maxsize=1)
def sloop() -> Case:
    """A dying diesel with its overhauls in the ledger alone; energy costs nothing."""
    case = read_case(CASES / "sloop_30_weekend.yaml")
    prices = replace(
        case.prices, discount_rate=0.0, electricity=0.0, diesel=0.0, residual_share=0.0,
        diesel_service=400.0, electric_service=100.0, horizon=10,
    )  # fmt: skip
    silent = tuple(
        replace(each, origin="default") if each.path == "prices.overhaul" else each
        for each in case.assumptions
    )
    return replace(case, prices=prices, assumptions=silent)


def line(amount: float, part: str = "motor", when: str = "first") -> CostItem:
    return CostItem(part, amount, when, None, "quote", part, None, "included", True, 0)


def engine(case: Case, condition: str) -> Case:
    kept = case.options[KEEP]
    assert kept.diesel is not None
    kept = replace(kept, diesel=replace(kept.diesel, condition=condition))
    options = (kept, *case.options[1:])
    return replace(case, engine=replace(case.engine, condition=condition), options=options)


def ledgers(case: Case, **lines: tuple[CostItem, ...]) -> Case:
    """The case with other payments, by the id of the option."""
    options = tuple(replace(each, costs=lines.get(each.id, each.costs)) for each in case.options)
    return replace(case, options=options)


def costed(case: Case, place: int, energy: float = 1.0) -> Cost:
    option = case.options[place]
    legs = Legs((), np.array([[energy]]), np.array([[1.0]]))
    return cost(case, option, legs, ledger(case, option))


def judged(case: Case, place: int = ELECTRIC, energy: float = 1.0) -> Worth:
    kinds = {option.kind: number for number, option in enumerate(case.options)}
    costs = {kind: costed(case, number, energy) for kind, number in kinds.items()}
    own, keep, new = costed(case, place, energy), costs.get("keep"), costs.get("new diesel")
    held = savings(case, case.options[place], own, keep, new)
    baseline = new if held.fair == "new diesel" else keep
    return worth(case, case.options[place], own, held, baseline)


def words(found: Worth, part: str = "") -> str:
    node = tree(found, "here", Telling(POUNDS))
    return said(View(node, Worth, "here", POUNDS), part, "worth").replace("\u00a0", " ")


def number(found: Worth, key: str) -> Any:
    return tree(found, "here", Telling(POUNDS))[key]


OVERHAUL = (line(2000.0, "overhaul"),)


def test_it_pays_back_when_what_is_saved_has_returned_what_it_costs_more() -> None:
    """3,500 to fit against an overhaul of 2,000, 300 saved in service a year: five years."""
    found = judged(ledgers(sloop(), keep=OVERHAUL, a=(line(3500.0),)))
    assert found.outcome == "pays_back"
    assert number(found, "payback_years") == pytest.approx(5.0)
    assert number(found, "extra_money") == pytest.approx(1500.0 - 10 * 300.0)
    assert words(found) == (
        "it pays back in 5 years compared with keeping the present diesel with the overhauls "
        "listed, and is the cheaper one in 100% of cases"
    )


def test_it_costs_more_where_it_does_not_come_back_within_the_years_compared() -> None:
    """9,000 against 2,000, less ten years of 300."""
    found = judged(ledgers(sloop(), keep=OVERHAUL, a=(line(9000.0),)))
    assert found.outcome == "costs_more"
    assert number(found, "extra_money") == pytest.approx(4000.0)
    assert number(found, "payback_years") is None
    assert words(found) == (
        "it costs £4,000 more over 10 years than keeping the present diesel with the overhauls "
        "listed, so money alone is no reason for it"
    )
    case = ledgers(sloop(), keep=OVERHAUL, a=(line(9000.0),))
    none = judged(replace(case, study=replace(case.study, reasons=())))
    assert words(none).endswith("money alone is no reason for it, and no other reason was given")


def test_one_that_is_dearer_at_no_time_has_nothing_to_pay_back() -> None:
    found = judged(ledgers(sloop(), keep=OVERHAUL, a=(line(1500.0),)))
    assert found.outcome == "never_behind"
    assert words(found).startswith("it costs no more to fit than keeping the present diesel")


def test_worth_at_the_end_may_make_it_cheaper_where_payments_do_not() -> None:
    """5,400 against 2,000: 400 short after ten years, and a motor still worth a fifth of 5,400."""
    case = ledgers(sloop(), keep=OVERHAUL, a=(line(5400.0),))
    found = judged(replace(case, prices=replace(case.prices, residual_share=0.2)))
    assert found.outcome == "worth_at_end"
    assert number(found, "extra_money") == pytest.approx(400.0 - 1080.0)
    assert "only by what motor and battery are still worth then" in words(found)


@pytest.mark.parametrize("condition", ["good", "worn", "dying"])
def test_the_answer_does_not_hang_on_the_condition_where_the_overhaul_is_in_the_ledger(
    condition: str,
) -> None:
    found = judged(engine(ledgers(sloop(), keep=OVERHAUL, a=(line(9000.0),)), condition))
    assert (found.baseline, found.needs) == ("keep", "ledger")
    assert number(found, "extra_money") == pytest.approx(4000.0)


def test_the_baseline_is_named_with_what_it_needs() -> None:
    case = ledgers(sloop(), keep=(), a=(line(9000.0),))
    worn = judged(engine(case, "worn"))
    assert worn.needs == "chance"
    assert 0.0 < number(worn, "chance_share") < 1.0
    assert "with an overhaul at £" in words(worn)
    assert "weighted by its chance of" in words(worn)
    given = tuple(
        replace(each, origin="given") if each.path == "prices.overhaul" else each
        for each in case.assumptions
    )
    case = replace(case, assumptions=given, prices=replace(case.prices, overhaul=3000.0))
    dying = judged(engine(case, "dying"))
    assert dying.needs == "now"
    assert number(dying, "extra_money") == pytest.approx(9000.0 - 3000.0 * 1.15 - 3000.0)
    assert "with an overhaul in the first year at £3,450, contingency included" in words(dying)


def test_without_a_price_there_is_no_answer_and_what_is_missing_is_named() -> None:
    case = ledgers(sloop(), keep=(), a=())
    both = judged(engine(case, "dying"))
    assert both.outcome == "unpriced"
    assert number(both, "extra_money") is number(both, "ownership_money") is None
    assert words(both) == (
        "there is no answer on money, because no price is given for fitting it or for the overhaul "
        "that the dying engine needs"
    )
    own = judged(engine(case, "worn"))
    assert words(own) == "there is no answer on money, because no price is given for fitting it"
    kept = judged(engine(case, "dying"), KEEP)
    assert words(kept).endswith("no price is given for the overhaul that the dying engine needs")
    only = replace(ledgers(sloop(), new=()), options=ledgers(sloop(), new=()).options[NEW:])
    other = judged(only, ELECTRIC - 1)
    assert words(other).endswith("no price is given for the new diesel that it is held against")


def test_the_baseline_itself_and_a_case_without_one() -> None:
    kept = judged(ledgers(sloop(), keep=OVERHAUL), KEEP)
    assert kept.outcome == "reference"
    assert number(kept, "ownership_money") == pytest.approx(2000.0 + 10 * 400.0)
    assert "costs £6,000 over 10 years" in words(kept)
    lone = replace(sloop(), options=sloop().options[ELECTRIC:])
    assert words(judged(lone, 0)) == (
        "there is no answer on money, because there is no diesel option to compare with"
    )


def test_energy_that_is_not_known_has_no_answer() -> None:
    found = judged(sloop(), energy=float("nan"))
    assert found.outcome == "not_motored"
    assert number(found, "extra_money") is None
    assert "cannot be made under engine" in words(found)


@pytest.mark.parametrize(
    ("price", "condition", "told"),
    [
        (6900.0, "worn", ""),
        (7100.0, "worn", "the price is 51% of the £14,000 that the boat is worth, and little of "
         "it is recovered at a sale"),
        (6900.0, "good", "the present engine is in good health, so nothing forces the change"),
    ],
)  # fmt: skip
def test_it_warns_above_half_of_her_worth_and_beside_a_healthy_engine(
    price: float, condition: str, told: str
) -> None:
    case = engine(ledgers(sloop(), keep=OVERHAUL, a=(line(price),)), condition)
    case = replace(case, boat=replace(case.boat, worth=14000.0))
    assert words(judged(case), "warning") == told
    assert words(judged(case, KEEP), "warning") == ""
