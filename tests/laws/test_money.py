"""What must hold for money whatever the case: signs, order, limits, doubts that move together."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from itertools import permutations
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.analyses.money.cost import Cost, cost
from generator.analyses.money.cost_ledger import ledger
from generator.analyses.money.savings import Saving, fair_baseline, saving
from generator.analyses.use.legs import Legs
from generator.arrays import Array
from generator.case.case import Case
from generator.case.open import read_case
from generator.case.option import Option
from generator.case.prices import CostItem
from generator.case.supply import Genset
from generator.draws import drawn, make_draws
from generator.money.present_value import (
    cumulative,
    discounted,
    present_value,
    recovery,
)
from generator.money.wear import overhaul_chance
from generator.physics.energy.emissions import carbon_payback
from generator.sensitivity import MoneyTornado, tornadoes
from generator.study import run

CASES = Path(__file__).parents[2] / "cases"
KEEP, NEW, ELECTRIC = range(3)
FLOWS = st.lists(st.floats(-1e5, 1e5), min_size=2, max_size=30).map(np.array)
PRICES = st.floats(100.0, 1e5)
FEW = settings(max_examples=30, deadline=None)
ENERGY, LITRES, HOURS = 6e8, 0.06, 1.6e5  # a year of the sloop: J, m3, s


@lru_cache(maxsize=1)
def sloop() -> Case:
    return read_case(CASES / "sloop_30_weekend.yaml")


def costed(case: Case, place: int, option: Option | None = None) -> Cost:
    option = option or case.options[place]
    yearly = np.array([[ENERGY if option.bank else LITRES]])
    legs = Legs((), yearly, np.array([[HOURS]]))
    return cost(case, option, legs, ledger(case, option))


def priced(case: Case, **prices: Any) -> Case:
    return replace(case, prices=replace(case.prices, **prices))


def held(case: Case, own: int = ELECTRIC, other: int = NEW) -> Saving:
    return saving(case, costed(case, own), costed(case, other))


def best(values: Array) -> float:
    return float(values[0, 0])


@given(FLOWS)
def test_zero_discount_is_the_plain_sum(flows: Array) -> None:
    assert float(present_value(flows, 0.0)) == pytest.approx(flows.sum(), abs=1e-6)
    np.testing.assert_allclose(cumulative(flows, 0.0), np.cumsum(flows), atol=1e-6)


def test_zero_discount_of_a_case_is_what_is_paid_less_what_is_left() -> None:
    case = priced(sloop(), discount_rate=0.0)
    for place in range(3):
        found = costed(case, place)
        paid = best(found.cumulative[:, -1:]) - best(found.residual)
        assert best(found.present_value) == pytest.approx(paid)


@given(PRICES, PRICES, st.floats(10.0, 1e4), st.floats(0.0, 0.1))
def test_payback_never_falls_when_the_price_rises(
    price: float, more: float, saved: float, rate: float
) -> None:
    flows = np.array([[-price], [-price - more]]) * np.array([1.0, *[0.0] * 25])
    flows[:, 1:] = saved
    years = recovery(discounted(flows, rate))
    assert years[1] >= years[0]


@FEW
@given(st.floats(0.0, 5.0), st.floats(0.01, 3.0))
def test_payback_of_a_case_never_falls_when_the_motor_is_dearer(cheap: float, more: float) -> None:
    case = sloop()
    years = []
    for scale in (cheap, cheap + more):
        option = case.options[ELECTRIC]
        costs = tuple(replace(item, amount=item.amount * scale) for item in option.costs)
        dear = replace(option, costs=costs)
        found = saving(case, costed(case, ELECTRIC, dear), costed(case, NEW))
        years.append(best(found.discounted_payback))
    assert years[1] >= years[0]


def test_order_of_items_is_irrelevant() -> None:
    case = sloop()
    option = case.options[ELECTRIC]
    first = costed(case, ELECTRIC)
    for order in list(permutations(option.costs))[::17]:
        other = costed(case, ELECTRIC, replace(option, costs=order))
        np.testing.assert_allclose(other.flows, first.flows, rtol=1e-12)
        assert best(other.present_value) == pytest.approx(best(first.present_value), rel=1e-12)


def test_nominal_and_real_terms_agree_when_their_rates_do() -> None:
    """(1 + r)(1 + i) is the nominal rate that is worth the real one."""
    real = priced(sloop(), discount_rate=0.03, inflation=0.025)
    nominal = priced(real, terms="nominal", discount_rate=1.03 * 1.025 - 1.0)
    for place in range(3):
        one, other = costed(real, place), costed(nominal, place)
        assert best(other.present_value) == pytest.approx(best(one.present_value), rel=1e-12)
        assert other.cumulative[0, -1] > one.cumulative[0, -1]


def test_a_saving_against_one_is_a_loss_against_the_other() -> None:
    there, back = held(sloop()), held(sloop(), NEW, ELECTRIC)
    assert best(there.present_value) == pytest.approx(-best(back.present_value))


@given(st.floats(0.0, 3.0), st.floats(0.0, 2.0), st.floats(0.0, 2.0), st.floats(1.0, 5.0))
def test_chance_of_an_overhaul_grows_with_wear(
    before: float, more: float, again: float, shape: float
) -> None:
    near, far = (float(overhaul_chance(before, before + w, shape)) for w in (more, more + again))
    assert 0.0 <= near <= far <= 1.0


def test_risk_of_an_overhaul_grows_from_year_to_year_and_is_no_more_than_its_price() -> None:
    case = priced(sloop(), contingency=0.0)
    keep = replace(case.options[KEEP], costs=())
    risk = costed(case, KEEP, keep).overhaul
    assert risk is not None
    assert risk.counted
    new = costed(case, NEW).overhaul
    assert new is not None
    hazard = np.diff(-np.log1p(-new.chance[0]))  # of each year, for an engine that came so far
    assert np.all(np.diff(hazard) > 0.0)
    assert risk.chance[0, -1] <= 1.0
    plain = costed(case, KEEP, keep).flows - costed(priced(case, overhaul=0.0), KEEP, keep).flows
    assert plain.sum() <= float(np.asarray(case.prices.overhaul).flat[0]) + 1e-9
    assert costed(case, KEEP).overhaul is not None
    assert not costed(case, KEEP).overhaul.counted  # type: ignore[union-attr]


def test_the_condition_of_the_engine_chooses_no_baseline() -> None:
    case = sloop()
    baselines = {
        fair_baseline(replace(case, engine=replace(case.engine, condition=condition)))
        for condition in ("dying", "worn", "good")
    }
    assert baselines == {"keep"}
    without = replace(case, options=(case.options[NEW], case.options[ELECTRIC]))
    assert fair_baseline(without) == "new diesel"
    assert fair_baseline(replace(case, options=(case.options[ELECTRIC],))) == ""


@pytest.mark.parametrize("life", [5.0, 10.0, 26.0])
def test_payback_is_looked_for_within_the_horizon_alone(life: float) -> None:
    """A bank that lasts longer than the years that are compared opens no second window."""
    case = sloop()
    option = case.options[ELECTRIC]
    assert option.bank is not None
    lasting = replace(option, bank=replace(option.bank, life=life))
    found = saving(case, costed(case, ELECTRIC, lasting), costed(case, KEEP))
    assert found.window == case.prices.horizon
    cheap = replace(lasting, costs=(item("Motor", 5000.0, "motor", source="quote"),))
    years = best(saving(case, costed(case, ELECTRIC, cheap), costed(case, KEEP)).discounted_payback)
    assert np.isinf(years) or years <= case.prices.horizon


def test_a_dying_engine_is_overhauled_in_the_first_year() -> None:
    case = priced(sloop(), overhaul=3000.0, contingency=0.0)
    keep = replace(case.options[KEEP], costs=())
    due = costed(case, KEEP, keep)
    assert due.overhaul is not None
    assert due.overhaul.chance[0, :3].tolist() == [0.0, 1.0, 1.0]
    free = costed(priced(case, overhaul=0.0), KEEP, keep)
    assert (due.flows - free.flows)[0, :3] == pytest.approx([0.0, 3000.0, 0.0])


def test_trends_of_fuel_and_electricity_move_together_and_keep_their_spread() -> None:
    case = sloop()
    tied = make_draws(case, 4000).values
    free = make_draws(priced(case, energy_correlation=0.0), 4000).values
    names = ("prices.diesel_trend", "prices.electricity_trend")
    together, apart = (
        float(np.corrcoef([values[name][1:, 0] for name in names])[0, 1]) for values in (tied, free)
    )
    assert together == pytest.approx(0.4, abs=0.05)  # of the ranks' normal deviates: 0.40
    assert abs(apart) < 0.05
    for name in names:
        np.testing.assert_allclose(np.sort(tied[name], 0), np.sort(free[name], 0))


@pytest.mark.parametrize(
    ("changes", "status"),
    [
        ({"year_on_market": 1997}, "out of scope"),
        ({"year_on_market": 1998}, "owed"),
        ({"year_on_market": 2004}, "owed"),
        ({"year_on_market": None}, "owed"),
        ({"year_on_market": 1984, "import_date": "1998-06-16"}, "out of scope"),
        ({"year_on_market": 1984, "import_date": "1998-06-17"}, "owed"),
        ({"year_on_market": 2004, "market": "NI"}, "owed"),
        ({"year_on_market": 2004, "market": "EEA", "assessment": "not required"}, "released"),
        ({"year_on_market": 2004, "assessment": "done"}, "done"),
        ({"year_on_market": 2004, "market": "US"}, "out of scope"),
        ({"year_on_market": 2004, "market": "US", "import_date": "2015-05-01"}, "owed"),
    ],
)
def test_an_assessment_is_owed_after_the_first_directive(
    changes: dict[str, object], status: str
) -> None:
    case = sloop()
    asked = replace(case.papers, conversion="not asked")
    case = replace(case, papers=asked, boat=replace(case.boat, **changes))  # type: ignore[arg-type]
    found = ledger(case, case.options[ELECTRIC])
    assert found.assessment == status
    rows = [row for row in found.payments if row.part == "assessment"]
    assert len(rows) == (status == "owed")
    assert ledger(case, case.options[NEW]).assessment == "not asked"
    plain = costed(sloop(), ELECTRIC).first
    price = float(np.asarray(case.prices.assessment).flat[0]) if rows else 0.0
    more = 1.0 + float(np.asarray(case.prices.contingency).flat[0])  # it is no quote
    assert best(costed(case, ELECTRIC).first) == pytest.approx(best(plain) + price * more)


@pytest.mark.parametrize(
    ("conversion", "status"),
    [("not in scope", "not in scope"), ("assessed", "done"), ("enquired", "owed"),
     ("refused", "owed"), ("not asked", "owed"), ("", "owed")],
)  # fmt: skip
def test_a_boat_whose_conversion_is_not_in_scope_owes_no_assessment(
    conversion: str, status: str
) -> None:
    """Though she came to her market after the first directive."""
    case = sloop()
    case = replace(
        case,
        papers=replace(case.papers, conversion=conversion),
        boat=replace(case.boat, year_on_market=2004),
    )
    found = ledger(case, case.options[ELECTRIC])
    assert found.assessment == status
    assert any(row.part == "assessment" for row in found.payments) == (status == "owed")


def test_panels_that_no_line_names_lack() -> None:
    case = read_case(CASES / "ketch_34_two_motors.yaml")
    option = next(each for each in case.options if each.supply and each.supply.panels)
    lines = tuple(each for each in option.costs if "anel" not in each.name)
    assert len(lines) == len(option.costs) - 1
    assert "panels" not in ledger(case, option).lacking
    assert "panels" in ledger(case, replace(option, costs=lines)).lacking


def item(name: str, amount: float, part: str, **more: object) -> CostItem:
    given: dict[str, object] = {
        "when": "first", "year": None, "source": "estimate", "price_year": None,
        "vat": "included", "doubted": True, "line": 0, **more,
    }  # fmt: skip
    return CostItem(name=name, amount=amount, part=part, **given)  # type: ignore[arg-type]


def test_tax_and_older_prices_are_raised_by_hand() -> None:
    """1000 + 20 % = 1200; three years at 2.5 % = 1200 x 1.076890625 = 1292.27."""
    case = priced(sloop(), inflation=0.025, vat_rate=0.20)
    option = replace(
        case.options[ELECTRIC],
        costs=(item("Cables", 1000.0, "electrics", vat="to add", price_year=2023),),
    )
    row = ledger(case, option).payments[0]
    assert best(row.amount) == pytest.approx(1292.26875)


def test_contingency_is_on_all_that_is_not_quoted_whenever_it_is_paid() -> None:
    """A tenth: of 2,000 of labour now, of 900 of insurance each year, of 3,000 in the fourth."""
    case = priced(sloop(), contingency=0.10, discount_rate=0.0, electricity=0.0, electric_service=0)
    option = replace(
        case.options[ELECTRIC],
        costs=(
            item("Labour", 2000.0, "labour"),
            item("Sale of the old engine", -500.0, "sale"),
            item("Motor", 6000.0, "motor", source="quote"),
            item("Insurance", 900.0, "insurance", when="yearly"),
            item("Winter", 700.0, "winter", when="yearly", source="quote"),
            item("New motor bearings", 3000.0, "other", when="once", year=4.0),
            item("Propeller", 800.0, "propeller", when="once", year=5.0, source="quote"),
        ),
    )
    found = costed(case, ELECTRIC, option)
    assert best(found.first) == pytest.approx(7500.0 + 200.0)
    assert best(found.other) == pytest.approx(1600.0 + 90.0)
    assert found.flows[0, 3:7] == pytest.approx([1690.0, 1690.0 + 3300.0, 1690.0 + 800.0, 1690.0])


def test_contingency_is_on_overhaul_and_banks_that_no_line_names() -> None:
    case = priced(sloop(), battery_later=0.5, overhaul=3000.0, horizon=10)
    option = case.options[ELECTRIC]
    assert option.bank is not None
    quoted = replace(
        option,
        costs=(item("Battery", 8000.0, "battery", source="quote"),),
        bank=replace(option.bank, life=6.0),
    )
    places = ((ELECTRIC, quoted), (KEEP, replace(case.options[KEEP], costs=())))
    for place, each in places:
        bare, more = (costed(priced(case, contingency=c), place, each) for c in (0.0, 0.10))
        later = (more.flows - bare.flows)[0]
        assert later[0] == 0.0  # the bank is quoted, the engine is aboard
        assert later.sum() == pytest.approx({ELECTRIC: 400.0, KEEP: 300.0}[place])


def test_a_quote_is_paid_as_quoted_in_every_draw() -> None:
    case = sloop()
    moved = drawn(case, make_draws(case, 50))
    rows = {row.name: row for row in ledger(moved, moved.options[ELECTRIC]).payments}
    motor = rows["Motor and controller"]
    assert np.unique(motor.amount).tolist() == [6900.0]
    assert not motor.contingency.any()
    labour = rows["Installer and yard labour"]
    assert np.ptp(labour.contingency) > 0.0
    over = priced(case, quote_scale=1.05)  # the owner's own word
    paid = next(iter(ledger(over, over.options[ELECTRIC]).payments))
    assert best(paid.amount) == pytest.approx(6900.0 * 1.05)


@pytest.mark.parametrize(
    ("life", "years"), [(5.0, [6, 11, 16, 21]), (12.0, [13, 25]), (26.0, []), (24.5, [25])]
)
def test_banks_are_replaced_in_the_year_after_their_life(life: float, years: list[int]) -> None:
    case = priced(sloop(), horizon=25)
    option = case.options[ELECTRIC]
    assert option.bank is not None
    option = replace(option, bank=replace(option.bank, life=life))
    rows = [row for row in ledger(case, option).payments if row.when == "once"]
    assert [int(row.year[0, 0]) for row in rows if row.year is not None] == years
    found = costed(case, ELECTRIC, option)
    assert len(years) == sum(np.diff(found.cumulative[0]) > 1000.0)


@pytest.mark.parametrize(
    ("bought", "worth"),
    [
        ((), 2000.0),  # ten of 12.5 years gone: a fifth of 10,000
        (((6000.0, 8.0),), 6000.0 * (1.0 - 2.0 / 12.5)),
        (((6000.0, 8.0), (500.0, 8.0)), 6500.0 * (1.0 - 2.0 / 12.5)),  # its boxes with it
        (((6000.0, 4.0), (5000.0, 9.0)), 5000.0 * (1.0 - 1.0 / 12.5)),  # in place of the other
        (((6000.0, 10.0),), 6000.0),
        (((6000.0, 11.0),), 2000.0),  # after the horizon: the first one is aboard still
    ],
)
def test_a_bank_that_is_bought_late_is_worth_what_its_age_leaves(
    bought: tuple[tuple[float, float], ...], worth: float
) -> None:
    case = priced(sloop(), horizon=10, residual_share=0.0)
    option = case.options[ELECTRIC]
    assert option.bank is not None
    first = item("Battery", 10000.0, "battery", source="quote")
    later = (
        item("Battery again", amount, "battery", when="once", year=year, source="quote")
        for amount, year in bought
    )
    option = replace(option, costs=(first, *later), bank=replace(option.bank, life=12.5))
    assert best(costed(case, ELECTRIC, option).residual) == pytest.approx(worth)


def test_a_bank_that_is_bought_late_and_not_at_first_is_worth_something_too() -> None:
    case = priced(sloop(), horizon=10, residual_share=0.0)
    option = case.options[ELECTRIC]
    assert option.bank is not None
    late = item("Battery", 6000.0, "battery", when="once", year=5.0, source="quote")
    option = replace(option, costs=(late,), bank=replace(option.bank, life=10.0))
    assert best(costed(case, ELECTRIC, option).residual) == pytest.approx(3000.0)


@pytest.mark.parametrize("horizon", [4, 6, 10, 12, 16])
@pytest.mark.parametrize("life", [5.0, 5.4, 7.5])
def test_banks_that_come_by_themselves_leave_what_the_last_has_left(
    horizon: int, life: float
) -> None:
    case = priced(sloop(), horizon=horizon, residual_share=0.0, battery_later=0.5)
    option = case.options[ELECTRIC]
    assert option.bank is not None
    costs = (item("Battery", 1000.0, "battery", source="quote"),)
    option = replace(option, costs=costs, bank=replace(option.bank, life=life))
    ends = 0.0
    while ends + life < horizon:  # the last one ends its life at or after the horizon
        ends += life
    price = 1000.0 if ends == 0.0 else 500.0
    left = price * (1.0 - (horizon - ends) / life)
    assert best(costed(case, ELECTRIC, option).residual) == pytest.approx(left)


@pytest.mark.parametrize("place", [KEEP, NEW, ELECTRIC])
@pytest.mark.parametrize("terms", ["real", "nominal"])
def test_lines_of_the_bill_add_and_are_whole_and_near_what_they_stand_for(
    place: int, terms: str
) -> None:
    case = priced(sloop(), terms=terms, inflation=0.031, vat_rate=0.1937, horizon=11)
    costs = tuple(replace(each, vat="to add") for each in case.options[place].costs)
    option = replace(case.options[place], costs=costs)
    found = costed(case, place, option)
    bill = found.bill
    now = [round(best(row.amount)) for row in found.payments if row.when == "first"]
    assert sum(now) + bill.contingency == bill.first
    parts = (bill.first, bill.yearly_worth, bill.later_worth, -bill.end_worth)
    assert sum(parts) == bill.ownership
    lines = (*parts, bill.contingency, bill.energy, bill.service, bill.other)
    assert all(line == round(line) for line in lines)
    assert bill.first == pytest.approx(best(found.first), abs=0.5)
    assert bill.ownership == pytest.approx(best(found.present_value), abs=2.0)
    rate = best(np.atleast_2d(case.prices.discount_rate))
    rise = 1.031 if terms == "nominal" else 1.0
    years = sum((rise / (1.0 + rate)) ** year for year in range(1, 12))
    assert bill.yearly_worth == pytest.approx(best(found.yearly) * years, abs=0.5)


@pytest.mark.parametrize(
    ("plug", "sources", "by"),
    [
        (True, (), "wall"), (True, ("panels", "genset"), "wall"), (False, (), "nothing"),
        (False, ("panels",), "own"), (False, ("wind",), "own"),
        (False, ("genset",), "genset"), (False, ("panels", "genset"), "genset"),
    ],
)  # fmt: skip
def test_energy_costs_what_is_bought_of_it(plug: bool, sources: tuple[str, ...], by: str) -> None:
    case = priced(sloop(), charging_efficiency=0.8, electricity=1e-7, diesel=2000.0,
                  electricity_trend=1.0, diesel_trend=1.0, use_scale=1.0)  # fmt: skip
    case = replace(case, berth=replace(case.berth, shore_power=plug))
    made: dict[str, Any] = {
        "panels": (object(),) if "panels" in sources else (),
        "genset": Genset(4000.0, 0.2, 0.8) if "genset" in sources else None,
        "wind": object() if "wind" in sources else None,
    }
    option = case.options[ELECTRIC]
    assert option.supply is not None
    found = costed(case, ELECTRIC, replace(option, supply=replace(option.supply, **made)))
    assert found.charged_by == by
    at_wall = ENERGY / 0.8
    litres = at_wall / 3.6e6 * (0.246 + 0.08145)  # of the line of fuel at rated power
    price = {"wall": at_wall * 1e-7, "genset": litres * 2.0}.get(by, 0.0)
    assert best(found.energy) == pytest.approx(price)


@given(st.floats(1.0, 1e4), st.floats(1.0, 1e4), st.floats(1.0, 1e3))
def test_carbon_payback_grows_with_what_is_made(made: float, more: float, saved: float) -> None:
    years = carbon_payback(np.array([made, made + more]), saved)
    assert years[1] > years[0]
    assert np.isinf(carbon_payback(made, 0.0))
    assert np.isinf(carbon_payback(made, -saved))


def test_tornado_of_money_holds_what_a_study_with_that_input_says() -> None:
    """One input set by hand in the case gives the end of its bar."""
    case = sloop()
    found = next(
        item
        for item in tornadoes(case, run(case, make_draws(case, 40)))
        if isinstance(item, MoneyTornado)
    )
    assert found.option == ELECTRIC
    bar = next(swing for swing in found.swing if swing.path == "prices.discount_rate")
    for rate, end in ((bar.low, bar.at_low), (bar.high, bar.at_high)):
        kept = tuple(each for each in case.assumptions if each.path != "prices.discount_rate")
        moved = replace(priced(case, discount_rate=rate), assumptions=kept)
        held = run(moved, make_draws(moved, 0)).options[ELECTRIC].findings.savings
        assert held is not None
        assert held.fairly is not None
        assert best(held.fairly.present_value) == pytest.approx(end)
    plain = run(case, make_draws(case, 0)).options[ELECTRIC].findings.savings
    assert plain is not None
    assert plain.fairly is not None
    assert found.swing_middle == -plain.fairly.extra
