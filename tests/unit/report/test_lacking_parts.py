"""What do the results say where 0, 20, 43 and 60 of a hundred draws have no value?"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import numpy as np
import pytest

from generator.analyses.money.bill import Bill
from generator.analyses.motion.rules_of_thumb import rules_of_thumb
from generator.analyses.motion.service_factor import ServiceFactor
from generator.analyses.store.chemistries import chemistries
from generator.analyses.store.duty import Hold
from generator.arrays import Array
from generator.report.numbers import Display
from generator.report.results.carbon_part import carbon_part
from generator.report.results.case_part import engine_part
from generator.report.results.cost_part import cost_part
from generator.report.results.curve_part import curve_rows, range_rows
from generator.report.results.energy_part import chemistries_part, duty_part, one_fault_part
from generator.report.results.quick_part import quick_part
from generator.report.results.stream_part import stream_part
from generator.report.results.suffix import PER_SI, excused, plain
from generator.report.results.under_sail_part import under_sail_part
from generator.report.results.use_part import use_part
from generator.report.tree import Telling, tree
from tests.unit.report.lacking import (
    ELECTRIC,
    LACKING,
    MIDDLES,
    changed,
    close,
    draws,
    excuses,
    found,
    study,
)

lacking = pytest.mark.parametrize(("number", "high", "low"), MIDDLES)


def check(row: dict[str, Any], key: str, wanted: float | None, scale: float = 1.0) -> None:
    assert close(row[key], None if wanted is None else wanted * scale), (key, row[key])
    assert excuses(row, key), f"{key} has no reason"


def test_a_number_that_is_none_has_its_reason_beside_it() -> None:
    row = excused({"a": 1.0, "b": np.nan, "c": np.inf, "d": None, "e": True}, "too far")
    told = {"a": 1.0, "b": None, "c": None, "d": None, "e": True}
    assert row == told | {"b_why": "too far", "c_why": "too far"}


TELLING = Telling(Display("metric", "EUR"))


@lacking
def test_service_factor(number: int, high: float | None, low: float | None) -> None:
    row = tree(ServiceFactor((), draws(number)), "here", TELLING)
    check(row, "at_cruise", high)


def band(number: int) -> dict[str, Any]:
    """The band of the power curve where so many draws have no need at cruise."""
    whole = study()
    key = replace(whole.options[0].findings.key, cruise_shaft_power=draws(number))
    first = replace(whole.options[0], findings=replace(whole.options[0].findings, key=key))
    changed_study = replace(whole, options=(first, *whole.options[1:]))
    row: dict[str, Any] = tree(changed_study.evidence, "evidence", TELLING)
    return row


@lacking
def test_band_of_the_power_curve(number: int, high: float | None, low: float | None) -> None:
    """Low end: 9.9th place, 10.9; high end: 90.1, or beyond it; both over the middle of 50.5."""
    row = band(number)
    check(row, "curve_low_pct", None if high is None else (10.9 / 50.5 - 1.0) * 100.0)
    check(row, "curve_high_pct", (90.1 / 50.5 - 1.0) * 100.0 if number == 0 else None)


def test_nothing_is_a_share_of_a_middle_without_end() -> None:
    """Of 50 without a value the middle lies between the 50th, a number, and the 51st, none."""
    row = band(50)
    check(row, "curve_low_pct", None)
    check(row, "curve_high_pct", None)


@lacking
def test_needs_at_cruise(number: int, high: float | None, low: float | None) -> None:
    part = changed("key", clean_need=draws(number), cruise_drain=draws(number))
    row = quick_part(part, [])
    check(row, "clean_need_kw", high, 1e-3)
    check(row, "cruise_battery_kw", high, 1e-3)


@lacking
def test_fuel_of_the_present_engine(number: int, high: float | None, low: float | None) -> None:
    keep = changed("key", cruise_drain=draws(number))
    keep = replace(keep, legs=replace(keep.legs, yearly=draws(number)))
    row = engine_part(keep.case, keep)
    check(row, "litres_per_hour_cruise_l", high, 3.6e6)
    check(row, "litres_per_year_l", high, 1e3)


@lacking
def test_motor_sailing(number: int, high: float | None, low: float | None) -> None:
    three = np.hstack([draws(number)] * 3)
    part = changed("sail", more_shaft=three, more_drain=three, lost={"locked": three})
    row = under_sail_part(part)
    check(row["one_more"][1], "shaft_w", high)
    check(row["one_more"][1], "battery_w", high)
    check(row["rows"][1], "locked_lost_kn", high, PER_SI["kn"])


@lacking
def test_power_returned_under_sail(number: int, high: float | None, low: float | None) -> None:
    three = np.hstack([draws(number)] * 3)
    row = under_sail_part(changed("sail", returned=three, returned_lost=three))["rows"][0]
    check(row, "returned_w", low)
    check(row, "returned_lost_kn", high, PER_SI["kn"])


@lacking
def test_rules_of_thumb(number: int, high: float | None, low: float | None) -> None:
    own = found()
    rules = rules_of_thumb(own.case, own.power, draws(number))
    assert close(plain(rules.computed), high)


@lacking
def test_duty_at_cruise(number: int, high: float | None, low: float | None) -> None:
    values = dict.fromkeys(("space_cruise", "heat_cruise", "before"), draws(number))
    row = duty_part(changed("duty", **values))
    assert row is not None
    for key in ("space_cruise_c", "heat_cruise_w", "before_share"):
        check(row, key, high)


@lacking
def test_load_and_heat_of_a_speed(number: int, high: float | None, low: float | None) -> None:
    values, good = draws(number), np.isfinite(draws(number))
    held = np.where(good, 600.0, 0.0)
    hold = Hold(values, held, held, values, good)
    row = duty_part(changed("duty", holding=hold))
    assert row is not None
    check(row["holding"], "load_share", high)
    check(row["holding"], "heat_w", high)
    assert row["holding"]["state"] == ("not" if high is None else "for a time")


@lacking
def test_one_string_lost(number: int, high: float | None, low: float | None) -> None:
    values = dict.fromkeys(("distance", "endurance", "cruise_share", "peak_share"), draws(number))
    row = one_fault_part(changed("fault", strings=2, **values))
    assert row is not None
    check(row, "distance_nm", low, PER_SI["nm"])
    check(row, "endurance_h", low, PER_SI["h"])
    assert close(row["cruise_string_a"], high)
    assert close(row["peak_string_a"], high)
    assert row["string_why"] == ("planned cruise cannot be had" if high is None else None)


def test_current_without_end_is_no_huge_number() -> None:
    endless = np.full((101, 1), np.inf)
    row = one_fault_part(changed("fault", strings=1, cruise_share=endless, peak_share=endless))
    assert row is not None
    assert row["cruise_string_a"] is None
    assert row["string_why"] == "no string is left"


@lacking
def test_chemistries(number: int, high: float | None, low: float | None) -> None:
    """The longest leg by the middle of its need; the current at cruise that lead is sized by."""
    own = found()
    assert own.bank is not None
    legs = tuple(replace(leg, need=draws(number) * 1e6) for leg in own.legs.results)
    bank = replace(own.bank, cruise_current=draws(number))
    made = replace(own.legs, results=legs, yearly=draws(number) * 1e9)
    answer = chemistries(own.outfit, bank, made)
    assert (answer is None) is (high is None)
    if answer is not None and high is not None:
        assert close(answer.need.cruise_current, high)
        assert close(answer.need.yearly, high * 1e9)


def test_life_of_a_chemistry_is_absent_where_the_yearly_use_is() -> None:
    own = found()
    made = replace(own.legs, yearly=draws(60))
    answer = chemistries(own.outfit, own.bank, made)
    row = chemistries_part(found(chemistries=answer))
    assert row is not None
    for bank in row["banks"]:
        check(bank, "life_years", None)


@lacking
def test_carbon(number: int, high: float | None, low: float | None) -> None:
    """Saved: 200 kg less her own, so from 199 down; the same hundred from the other side.

    Of n without a value the rest are 100 + n ... 199: the cautious end is low, so the 50th is
    149 and the 51st 150 less nothing: sorted, n beyond the end, then 100 + n on: 149.5.
    """
    values = draws(number)
    row = carbon_part(
        changed("emissions", yearly=values, diesel_yearly=np.array([[200.0]]), payback=values)
    )
    assert row is not None
    check(row, "yearly_kg", high)
    check(row, "saved_yearly_kg", None if high is None else 149.5)
    check(row, "payback_years", high)
    check(row, "payback_high_years", 90.1 if number == 0 else None)
    assert row["never_share"] == pytest.approx(number / 100)


@lacking
def test_berth(number: int, high: float | None, low: float | None) -> None:
    berth = found().use.berth
    assert berth is not None
    values, many = draws(number), np.hstack([draws(number)] * len(berth.currents))
    other = replace(
        berth, typical=values, worst=values, hours_typical=values, hours_worst=values,
        by_current_typical=many, by_current_worst=many, outings=values, least_charger=None,
    )  # fmt: skip
    row = use_part(found(use=replace(found().use, berth=other)), (), TELLING)
    check(row["berth"], "typical_kwh", high, PER_SI["kwh"])
    check(row["berth"], "typical_hours_h", high, PER_SI["h"])
    check(row["berth"], "typical_hours_high_h", 90.1 if number == 0 else None, PER_SI["h"])
    check(row["berth"], "outings", low)
    check(row["charging"][3], "worst_h", high, PER_SI["h"])
    motored = row["berth"]["least_charger_kw_why"].startswith("no charger")
    assert motored is (number == 0)


@lacking
def test_weeks_of_sun(number: int, high: float | None, low: float | None) -> None:
    carried = found().carried
    assert carried is not None
    row = use_part(
        found(carried=replace(carried, ratio=draws(number), use=draws(number))), (), TELLING
    )
    check(row["sun"], "ratio", low)
    check(row["sun"], "use_kwh", high, PER_SI["kwh"])


@lacking
def test_what_is_left_of_the_walk(number: int, high: float | None, low: float | None) -> None:
    """The 9.9th place of n beyond the low end and 1, 2, 3 ...: 10.9, and beyond it from 10 on."""
    walk = found().use.walk
    assert walk is not None
    other = replace(found().use, walk=replace(walk, left_each=draws(number)))
    row = use_part(found(use=other), (), TELLING)
    check(row, "walk_left_low_kwh", 10.9 if number == 0 else None, PER_SI["kwh"])


@lacking
def test_mile_against_the_stream(number: int, high: float | None, low: float | None) -> None:
    whole = found().stream
    width = whole.least.shape[1]
    row = stream_part(changed("stream", least=np.hstack([draws(number)] * width)))["rows"][2]
    check(row, "least_kwh_per_nm", high, PER_SI["kwh_per_nm"])


@lacking
def test_drain_of_the_range(number: int, high: float | None, low: float | None) -> None:
    item = found().ranges[0]
    drain = np.broadcast_to(draws(number), (101, found().power.speed.size))
    rows = range_rows(found(ranges=(replace(item, drain=drain),)))
    row = next(each for each in rows if each["range_nm"] is not None)
    speed = row["speed_kn"] / PER_SI["kn"]
    check(row, "energy_per_mile_kwh", high, PER_SI["kwh_per_nm"] / speed)


@lacking
def test_money(number: int, high: float | None, low: float | None) -> None:
    """What is paid is planned with at its high end, what is saved at its low one."""
    own = found()
    assert own.savings is not None
    assert own.savings.new_diesel is not None
    values, years = draws(number), np.hstack([draws(number)] * own.cost.cumulative.shape[1])
    nothing, nought = np.zeros((1, 1)), Bill(0, 0, 0, 0, 0, 0, 0, 0)
    saved = replace(
        own.savings.new_diesel, yearly=values, present_value=values, discounted_payback=values,
        bills=(nought, replace(nought, first=50.0, energy=50.0)),
    )  # fmt: skip
    cost = replace(
        own.cost, payments=(), first=nothing, yearly_worth=nothing, end_worth=nothing,
        present_value=values, equal_yearly=values, cumulative=years,
    )  # fmt: skip
    savings = replace(own.savings, keep=saved, new_diesel=saved)
    row = cost_part(found(cost=cost, savings=savings))
    expected, lacks = (None, True) if high is None else (50.0, False)  # the best estimate
    for told, key in (
        (row, "present_value_money"), (row["cumulative"][3], "middle_money"),
        (row["saving"], "yearly_money"), (row["saving"], "present_value_money"),
        (row["saving"], "discounted_payback_years"),
    ):  # fmt: skip
        check(told, key, expected)
    # Ends that the draws without a value do not reach: a tenth from below of 1 to 100, and above.
    check(row, "present_value_low_money", None if lacks else 10.9)
    check(row["cumulative"][3], "low_money", None if lacks else 10.9)
    check(row["saving"], "yearly_high_money", None if lacks else 90.1 - number)
    check(row["saving"], "present_value_high_money", None if lacks else 90.1 - number)
    check(row["saving"], "discounted_payback_low_years", None if lacks else 10.9)


def with_lacking_curve(number: int, values: Array) -> Any:
    """Her calm curve where at the fifth speed so many draws lie beyond the formulas."""
    power = study().options[ELECTRIC].findings.power
    calm = power.curves["calm"]
    feasible = np.array(np.broadcast_to(calm.demand.feasible, (101, power.speed.size)))
    feasible[101 - number :, 4] = False
    table = np.broadcast_to(values, feasible.shape)
    demand = replace(calm.demand, feasible=feasible, shaft_power=table, propeller_efficiency=table)
    curve = replace(calm, demand=demand)
    return found(power=replace(power, curves={**power.curves, "calm": curve}))


@pytest.mark.parametrize("number", [0, 5, 9, 20])
def test_speed_beyond_the_formulas_in_some_draws(number: int) -> None:
    """Up to a tenth of the draws: the need's middle is 50.5, its high end the 90.1th of them.

    The efficiency is planned with at its low end: 50.5 - n. Above a tenth the band has no upper
    end, and the speed is not tabulated.
    """
    whole = with_lacking_curve(number, draws(0))
    speed = whole.power.speed[4] * PER_SI["kn"]
    row = next((each for each in curve_rows(whole, "calm") if each["speed_kn"] == speed), None)
    assert (row is None) is (number > 10)
    if row is not None:
        check(row, "shaft_power_kw", 50.5, 1e-3)
        check(row, "shaft_power_high_kw", 90.1, 1e-3)
        check(row, "propeller_efficiency", 50.5 - number)


def test_load_without_a_value_is_not_within_the_rating() -> None:
    power = study().options[ELECTRIC].findings.power
    calm = power.curves["calm"]
    output = replace(calm.output, load=np.full((101, power.speed.size), np.nan))
    curve = replace(calm, output=output)
    rows = curve_rows(found(power=replace(power, curves={**power.curves, "calm": curve})), "calm")
    assert rows
    assert not any(row["within_continuous"] for row in rows)
    assert all(row["limit"] for row in rows)


def test_the_shares_are_those_of_the_issue() -> None:
    assert [float(np.isnan(draws(number)[1:]).mean()) for number in LACKING] == [0, 0.2, 0.43, 0.6]
