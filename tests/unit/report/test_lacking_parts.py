"""What do the results say where 0, 20, 43 and 60 of a hundred draws have no value?"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import numpy as np
import pytest

from generator.analyses.handling.range_bars import RangeBars
from generator.analyses.handling.range_table import RangeRows
from generator.analyses.key_numbers import KeyNumbers
from generator.analyses.money.account import account
from generator.analyses.money.bill import Bill
from generator.analyses.money.carbon import carbon
from generator.analyses.motion.rules_of_thumb import rules_of_thumb
from generator.analyses.motion.service_factor import ServiceFactor
from generator.analyses.motion.speed_table import SpeedPower
from generator.analyses.particulars import Particulars
from generator.analyses.store.chemistries import chemistries
from generator.analyses.store.duty import Held, _hold
from generator.analyses.store.one_fault import one_fault
from generator.analyses.use.berth import CURRENTS, never_full, without
from generator.analyses.use.energy_walk import Step, Walk
from generator.analyses.use.legs import YearOfLegs
from generator.analyses.use.use import Parts, use_of
from generator.analyses.year.sun_carries import without as without_sun
from generator.arrays import Array
from generator.report.numbers import Display
from generator.report.results.case_part import engine_part
from generator.report.results.suffix import PER_SI, excused
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


def made_of(item: Any) -> Any:
    """A record as it stands in the results."""
    assert item is not None
    return tree(item, "options.2", TELLING)


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
    row = made_of(KeyNumbers.of(part))
    check(row, "clean_need_kw", high, 1e-3)
    check(row, "cruise_battery_kw", high, 1e-3)
    assert row["cruise_fuel_why"] == "it runs from a battery"


def test_key_numbers_are_those_of_the_bars_and_of_the_worst_leg() -> None:
    part = found()
    row, bars = made_of(KeyNumbers.of(part)), made_of(part.bars.at_cruise)
    named = {(bar["sea"], bar["bank_age"]): bar["range_nm"] for bar in bars}
    assert row["calm_range_nm"] == named["calm", "new"]
    assert row["calm_aged_nm"] == named["calm", "aged"]
    assert row["wind_aged_nm"] == named["wind_20", "aged"]
    worst = part.legs.results[row["worst_leg"]]
    assert row["worst_leg_ratio"] == made_of(worst)["ratio_low"]
    none = replace(part, key=replace(part.key, worst_leg=None), bars=RangeBars((), None))
    row = made_of(KeyNumbers.of(none))
    assert row["worst_leg"] is row["worst_leg_ratio"] is row["calm_range_nm"] is None
    assert row["worst_leg_why"] == "no leg has to be made under engine"


def test_the_year_of_the_legs_is_energy_of_a_bank_and_fuel_of_a_tank() -> None:
    """Of 1 to 100 kWh and of as many litres the middle is 50.5; more than half lacking, none."""
    legs = replace(found().legs, yearly=draws(0) * 3.6e6, yearly_time=draws(0) * 3600.0)
    row = made_of(YearOfLegs.of(legs, "bank"))
    assert close(row["energy_kwh"], 50.5)
    assert close(row["motoring_h"], 50.5)
    assert close(
        made_of(YearOfLegs.of(replace(legs, yearly=draws(0) * 1e-3), "tank"))["energy_l"], 50.5
    )
    row = made_of(YearOfLegs.of(replace(legs, yearly=draws(60)), "bank"))
    check(row, "energy_kwh", None)


def test_particulars_are_those_of_the_plate() -> None:
    """The sloop's motor as her case has it, and the diesel that she has now."""
    motor = made_of(Particulars.of(found().option))
    assert motor["diesel"] is None
    assert motor["motor"]["continuous_power_kw"] == pytest.approx(10.0)
    diesel = made_of(Particulars.of(study().options[0].findings.option))
    assert diesel["motor"] is None
    assert diesel["diesel"]["tank_l"] == pytest.approx(55.0)


@lacking
def test_fuel_of_the_present_engine(number: int, high: float | None, low: float | None) -> None:
    keep = changed("key", cruise_drain=draws(number))
    keep = replace(keep, legs=replace(keep.legs, yearly=draws(number)))
    row = engine_part(keep.case, keep)
    check(row, "litres_per_hour_cruise_l", high, 3.6e6)
    check(row, "litres_per_year_l", high, 1e3)


@lacking
def test_motor_sailing(number: int, high: float | None, low: float | None) -> None:
    sail, three = found().sail, np.hstack([draws(number)] * 3)
    assert sail is not None
    row = tree(replace(sail.one_more, shaft=three, drain=three), "here", TELLING)[1]
    check(row, "shaft_w", high)
    check(row, "drain_w", high)
    row = tree(replace(sail.rows, locked_lost=three), "here", TELLING)[1]
    check(row, "locked_lost_kn", high, PER_SI["kn"])


@lacking
def test_power_returned_under_sail(number: int, high: float | None, low: float | None) -> None:
    sail, three = found().sail, np.hstack([draws(number)] * 3)
    assert sail is not None
    row = tree(replace(sail.rows, returned=three, returned_lost=three), "here", TELLING)[0]
    check(row, "returned_w", low)
    check(row, "returned_lost_kn", high, PER_SI["kn"])


@lacking
def test_rules_of_thumb(number: int, high: float | None, low: float | None) -> None:
    own = found()
    row = tree(rules_of_thumb(own.case, own.power, draws(number)), "here", TELLING)
    check(row, "computed_kw", high, 1e-3)
    check(row, "of_gerr_share", None if high is None else high / own.rules.gerr)


@lacking
def test_duty_at_cruise(number: int, high: float | None, low: float | None) -> None:
    values = dict.fromkeys(("space_cruise", "heat_cruise", "before"), draws(number))
    row = made_of(changed("duty", **values).duty)
    for key in ("space_cruise_degc", "heat_cruise_w", "before_share"):
        check(row, key, high)


@lacking
def test_load_and_heat_of_a_speed(number: int, high: float | None, low: float | None) -> None:
    values, good = draws(number), np.isfinite(draws(number))
    held = np.where(good, 600.0, 0.0)
    row = made_of(_hold(Held(values, held, held, values, good), 0))
    check(row, "load_share", high)
    check(row, "heat_w", high)
    assert row["state"] == ("not" if high is None else "for a time")
    assert row["possible_share"] == pytest.approx(1.0 - number / 100.0)


def test_what_is_held_for_a_day_is_held_for_good() -> None:
    """Of three draws, 10 minutes, a day and two: the middle one has no end, the low one has.

    The tenth percentile lies a fifth of the way from 10 minutes to what has no end.
    """
    times = np.array([[600.0], [600.0], [86400.0], [172800.0]])
    good = np.full((4, 1), True)
    for cold, middle in ((times, None), (np.minimum(times, 86399.0), 86399.0 / 60.0)):
        row = made_of(_hold(Held(times, cold, times, times, good), 0))
        assert close(row["cold_min"], middle)
        assert row["cold_why"] == ("for good" if middle is None else None)
        assert row["state"] == "for good"
    assert row["cold_low_min"] == pytest.approx(10.0 + 0.2 * (86399.0 / 60.0 - 10.0))


@lacking
def test_one_string_lost(number: int, high: float | None, low: float | None) -> None:
    values = dict.fromkeys(("distance", "endurance", "cruise_string", "peak_string"), draws(number))
    row = made_of(changed("fault", strings=2, **values).fault)
    check(row, "distance_nm", low, PER_SI["nm"])
    check(row, "endurance_h", low, PER_SI["h"])
    assert close(row["cruise_string_a"], high)
    assert close(row["peak_string_a"], high)
    lacks = "planned cruise cannot be had"
    assert (row["cruise_string_a"] is None) is (high is None)
    assert (row["cruise_string_why"] == lacks) is (number > 10)  # the cautious end is told as well


def test_current_without_end_is_no_huge_number() -> None:
    endless = np.full((101, 1), np.inf)
    own = found().outfit
    assert own.option.bank is not None
    blocks = replace(own.option.bank.blocks, parallel=1)
    single = replace(own.option, bank=replace(own.option.bank, blocks=blocks))
    fault = one_fault(replace(own, option=single), found().bank, None)
    assert fault is not None
    np.testing.assert_array_equal(fault.cruise_string, endless)
    row = made_of(fault)
    assert row["strings"] == 1
    assert row["cruise_string_a"] is row["peak_string_a"] is None
    assert row["cruise_string_why"] == row["peak_string_why"] == "no string is left"


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
        assert close(answer.cruise_current, high)
        assert close(answer.yearly, high * 1e9)


def test_life_of_a_chemistry_is_absent_where_the_yearly_use_is() -> None:
    own = found()
    made = replace(own.legs, yearly=draws(60))
    answer = chemistries(own.outfit, own.bank, made)
    for bank in made_of(answer)["banks"]:
        check(bank, "life_years", None)


@lacking
def test_carbon(number: int, high: float | None, low: float | None) -> None:
    """Saved: 200 kg less her own, so from 199 down; the same hundred from the other side.

    Of n without a value the rest are 100 + n ... 199: the cautious end is low, so the 50th is
    149 and the 51st 150 less nothing: sorted, n beyond the end, then 100 + n on: 149.5.
    """
    values = draws(number)
    row = tree(
        carbon(
            changed("emissions", yearly=values, diesel_yearly=np.array([[200.0]]), payback=values)
        ),
        "here", TELLING,
    )  # fmt: skip
    check(row, "yearly_kg", high)
    check(row, "saved_yearly_kg", None if high is None else 149.5)
    check(row, "payback_years", high)
    check(row, "payback_high_years", 90.1 if number == 0 else None)
    assert row["never_share"] == pytest.approx(number / 100)


@lacking
def test_berth(number: int, high: float | None, low: float | None) -> None:
    berth = found().use.berth
    assert berth is not None
    values, many = draws(number), np.hstack([draws(number)] * len(CURRENTS))
    other = replace(
        berth, typical=values, worst=values, typical_hours=values, worst_hours=values,
        outings=values, least_charger=None, absent=without(values, values),
    )  # fmt: skip
    by_breaker = dict.fromkeys(("typical", "worst"), never_full(many))
    charging = replace(berth.charging, typical=many, worst=many, absent=by_breaker)
    row = made_of(replace(found().use, berth=other, charging=charging))
    check(row["berth"], "typical_kwh", high, PER_SI["kwh"])
    check(row["berth"], "typical_hours_h", high, PER_SI["h"])
    check(row["berth"], "typical_hours_high_h", 90.1 if number == 0 else None, PER_SI["h"])
    check(row["berth"], "outings", low)
    check(row["charging"][3], "worst_h", high, PER_SI["h"])
    motored = row["berth"]["least_charger_why"].startswith("no charger")
    assert motored is (number == 0)


def test_hours_at_a_berth_that_nobody_read_are_not_known() -> None:
    """No breaker is read; or it is, and nothing comes in: then no time has an end."""
    hours = np.full((101, 1), np.inf)
    assert without(draws(0), None)["typical_hours"] == "no_breaker"
    assert without(draws(0), hours)["worst_hours"] == "nothing_charges_at_all"
    assert without(draws(0), draws(20))["worst_hours"] == "leg_beyond"


def test_parts_of_the_use_that_are_not_there_have_a_reason_and_tables_no_rows() -> None:
    row = made_of(use_of(Parts(coverage=None, berth=None)))
    assert row["walk"] == row["charging"] == row["sizing"] == []
    assert row["berth"] is row["walk_leg"] is row["walk_left_kwh"] is None
    assert row["coverage_why"] == "no passage is motored"
    assert row["berth_why"] == "no propulsion battery"
    assert row["walk_leg_why"].startswith("no bank, or the best estimate")
    assert row["sun_why"].startswith("no bank, no week of use")
    assert made_of(found().use)["berth_why"] is None


@lacking
def test_weeks_of_sun(number: int, high: float | None, low: float | None) -> None:
    carried = found().carried
    assert carried is not None
    lacks = without_sun(draws(number))
    row = made_of(replace(carried, ratio=draws(number), use=draws(number), absent=lacks))
    check(row, "ratio", low)
    check(row, "use_kwh", high, PER_SI["kwh"])
    assert (lacks["least"] == "no_panels_do_it") is (number == 0)


@lacking
def test_what_is_left_of_the_walk(number: int, high: float | None, low: float | None) -> None:
    """The 9.9th place of n beyond the low end and 1, 2, 3 ...: 10.9, and beyond it from 10 on."""
    walk = Walk(0, 100.0, (Step("reserve", 50.0),), draws(number))
    row = made_of(use_of(Parts(None, None, walk=walk)))
    check(row, "walk_left_low_kwh", 10.9 if number == 0 else None, PER_SI["kwh"])
    assert close(row["walk_left_kwh"], 50.0 * PER_SI["kwh"])  # the best estimate, at any number
    assert close(row["walk"][0]["energy_kwh"], 50.0 * PER_SI["kwh"])


@lacking
def test_mile_against_the_stream(number: int, high: float | None, low: float | None) -> None:
    whole = found().stream.rows
    least = np.hstack([draws(number)] * whole.least.shape[1])
    row = tree(replace(whole, least=least), "here", TELLING)[2]
    check(row, "least_kwh_per_nm", high, PER_SI["kwh_per_nm"])


@lacking
def test_drain_of_the_range(number: int, high: float | None, low: float | None) -> None:
    item = found().ranges[0]
    drain = np.broadcast_to(draws(number), (101, found().power.speed.size))
    rows = tree(RangeRows.of(found(ranges=(replace(item, drain=drain),))), "here", TELLING)
    row = next(each for each in rows if each["range_nm"] is not None)
    speed = row["speed_kn"] / PER_SI["kn"]
    check(row, "per_mile_kwh_per_nm", high, PER_SI["kwh_per_nm"] / speed)


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
    row = tree(account(found(cost=cost, savings=savings)), "here", TELLING)
    expected, lacks = (None, True) if high is None else (50.0, False)  # the best estimate
    for told, key in (
        (row, "present_value_money"), (row["cumulative"][3], "paid_money"),
        (row["saving"], "yearly_money"), (row["saving"], "present_value_money"),
        (row["saving"], "discounted_payback_years"),
    ):  # fmt: skip
        check(told, key, expected)
    # Ends that the draws without a value do not reach: a tenth from below of 1 to 100, and above.
    check(row, "present_value_low_money", None if lacks else 10.9)
    check(row["cumulative"][3], "paid_low_money", None if lacks else 10.9)
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
    rows = tree(SpeedPower.calm(whole), "here", TELLING)
    row = next((each for each in rows if each["speed_kn"] == speed), None)
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
    whole = found(power=replace(power, curves={**power.curves, "calm": curve}))
    rows = tree(SpeedPower.calm(whole), "here", TELLING)
    assert rows
    assert not any(row["within_continuous"] for row in rows)
    assert all(row["limit"] for row in rows)


def test_the_shares_are_those_of_the_issue() -> None:
    assert [float(np.isnan(draws(number)[1:]).mean()) for number in LACKING] == [0, 0.2, 0.43, 0.6]
