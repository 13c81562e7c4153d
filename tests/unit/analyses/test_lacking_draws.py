"""What do analyses and criteria make of draws without a value?

Shares and middles as worked by hand in `tests/unit/report/lacking.py`.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import numpy as np
import pytest

from generator.analyses.findings import Findings
from generator.analyses.money.emissions import emissions
from generator.analyses.money.savings import saving
from generator.analyses.store.ageing import _worn_by
from generator.analyses.store.duty import duty
from generator.analyses.use.berth import berthed
from generator.analyses.use.energy_walk import energy_walk
from generator.analyses.verdict.criteria.catalogue import criteria
from generator.analyses.verdict.criteria.continuous_power import judge as judge_cruise
from generator.analyses.verdict.criteria.criterion import (
    CONDITIONAL,
    GO,
    NO,
    NOT_ASSESSED,
    Criterion,
    stated,
)
from generator.analyses.verdict.criteria.mooring import judge as judge_mooring
from generator.analyses.verdict.criteria.payback import judge as judge_payback
from generator.analyses.verdict.criteria.recharge import judge as judge_recharge
from generator.analyses.verdict.failures import failures
from generator.analyses.wiring.settings import Made, _fall, _management
from generator.analyses.year.panel_yield import panel_yield
from generator.analyses.year.sun_carries import reference_panels, sun_carries
from generator.case.open import read_case
from generator.report.numbers import Display
from generator.report.tree import Telling, tree
from generator.turning import break_even_of
from tests.unit.report.lacking import CASES, MIDDLES, changed, close, draws, found, study

lacking = pytest.mark.parametrize(("number", "high", "low"), MIDDLES)
HOUR = 3600.0
TELLING = Telling(Display("metric", "GBP"))


def criterion(number: int) -> Criterion:
    return next(row for row in criteria() if row.id == number)


def legs_of(number: int, own: Findings | None = None) -> Findings:
    """Her findings with so many draws in which a leg cannot be motored."""
    own = own or found()
    return replace(own, legs=replace(own.legs, yearly=draws(number) * 1e7))


def test_a_value_without_end_is_not_stated() -> None:
    assert [stated(value) for value in (2.0, np.inf, -np.inf, np.nan)] == [2.0, None, None, None]


def test_a_leg_that_cannot_be_motored_wears_the_bank_as_if_it_emptied_it() -> None:
    """Three passages of 2 J, and two that would empty a bank of 10 J: 6 and 20, or 6 and 4."""
    yearly = np.array([[6.0, 4.0], [6.0, np.nan]])
    np.testing.assert_array_equal(_worn_by(yearly, np.array([[30.0, 20.0]])), [[10.0], [26.0]])


@lacking
def test_cruise_held_for_good(number: int, high: float | None, low: float | None) -> None:
    """Speeds of 1, 2, 3 ... hundredths of her fastest; a load without a value holds none."""
    calm = found().power.curves["calm"]
    load = found().power.speed / (draws(number) * 0.01 * found().power.speed[-1])
    curve = replace(calm, output=replace(calm.output, motor_load=load))
    part = changed("power", curves={**found().power.curves, "calm": curve})
    judged = judge_cruise(criterion(5), part)
    assert judged.per_draw is not None
    held = judged.per_draw * np.asarray(part.case.planning.cruise_speed) / part.power.speed[-1]
    slowest = part.power.speed[0] / part.power.speed[-1]
    # slower than the first of the tabulated speeds is told as none
    wanted = np.nan_to_num(draws(number) * 0.01)
    np.testing.assert_allclose(held, np.where(wanted >= slowest - 1e-9, wanted, 0.0), rtol=1e-9)
    assert judged.result == NO  # half of the draws lie below half of her fastest speed
    said = tree(judged.facts, "here", TELLING)
    assert ("continuously in a calm" in said["words"]) is (said["held_kn"] is not None)


@lacking
def test_battery_currents(number: int, high: float | None, low: float | None) -> None:
    from generator.analyses.verdict.criteria.battery_currents import judge

    own = found()
    assert own.bank is not None
    one = np.ones((1, 1))
    set_to = replace(own.bank.as_set, limit=one, continuous_asked=0.0 * one)
    bank = replace(own.bank, drive_current=draws(number), as_set=set_to)
    judged = judge(criterion(14), replace(own, bank=bank))
    assert close(judged.value, high)
    assert close(judged.pessimistic, 90.1 if number == 0 else None)
    assert judged.result == NO
    facts = tree(judged.facts, "here", Telling(Display("metric", "EUR")))
    assert (facts["cruise_a"] is None) is (high is None)
    assert facts["words"]
    assert facts["words_mend"]


@pytest.mark.parametrize(
    ("share", "result"), [(0.10, GO), (0.11, CONDITIONAL), (0.50, CONDITIONAL), (0.51, NO)]
)
def test_battery_currents_are_judged_by_the_share_of_draws(share: float, result: str) -> None:
    """A hundred draws, of which a share lies outside at cruise: pass, condition or fail."""
    from generator.analyses.verdict.criteria.battery_currents import judge

    own = found()
    assert own.bank is not None
    outside = np.arange(101.0)[:, np.newaxis] > 100.5 - 100 * share
    one = np.ones((1, 1))
    set_to = replace(own.bank.as_set, limit=one, continuous_asked=0.5 * one)
    bank = replace(own.bank, drive_current=np.where(outside, 2.0, 0.5), as_set=set_to)
    assert judge(criterion(14), replace(own, bank=bank)).result == result
    set_to = replace(set_to, continuous_asked=np.where(outside, 2.0, 0.5))
    bank = replace(own.bank, drive_current=0.5 * one, as_set=set_to)
    expected = GO if result == GO else CONDITIONAL  # cruise is inside in all of them
    assert judge(criterion(14), replace(own, bank=bank)).result == expected


@pytest.mark.parametrize(("number", "told"), [(0, True), (43, True), (60, False)])
def test_battery_currents_say_what_cannot_be_had(number: int, told: bool) -> None:
    from generator.analyses.verdict.criteria.battery_currents import judge

    own = found()
    assert own.bank is not None
    part = replace(own, bank=replace(own.bank, drive_current=draws(number)))
    assert (judge(criterion(14), part).facts.outcome == "cannot") is not told
    part = replace(own, key=replace(own.key, cruise_drain=draws(number)))
    assert (judge(criterion(14), part).facts.outcome == "unknown") is not told


@lacking
def test_house_supply(number: int, high: float | None, low: float | None) -> None:
    """The leg takes 1 over 1, 2, 3 ... of the house load: the share is planned with high."""
    from generator.analyses.verdict.criteria.house_supply import judge

    own = found()
    drain = float(np.asarray(own.case.house.under_way).flat[0])
    house = replace(own.case.house, separate_bank=False, buffered=True)
    legs = tuple(
        replace(leg, need=1.0 / draws(number), time=np.full((1, 1), 1.0 / drain))
        for leg in own.legs.results
    )
    part = replace(own, case=replace(own.case, house=house), legs=replace(own.legs, results=legs))
    judged = judge(criterion(13), part)
    assert close(judged.value, high)
    assert (judged.pessimistic is None) is (number > 0)


@lacking
def test_usual_day_at_the_berth(
    number: int, high: float | None, low: float | None, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("generator.analyses.use.berth._taken_on", lambda *_: draws(number) * 3e5)
    own = found()
    berth = berthed(own.outfit, 10.0 * HOUR)
    assert berth is not None
    assert float(np.isnan(berth.typical[1:]).mean()) == number / 100
    assert berth.typical_hours is not None
    assert float(np.isnan(berth.typical_hours[1:]).mean()) == number / 100
    assert (berth.least_charger is None) is (number > 0)
    part = replace(own, use=replace(own.use, berth=berth))
    judged = judge_recharge(criterion(11), part)
    assert (judged.value is None) is (high is None)
    assert (judged.pessimistic is None) is (number > 0)
    assert (judged.result == GO) is (number == 0)
    assert (judged.facts.outcome == "no_day") is (high is None)
    lasts = tree(judge_mooring(criterion(12), part).facts, "here", TELLING)
    assert ("usual days" in lasts["words"]) is (number == 0)


@lacking
def test_weeks_of_sun(number: int, high: float | None, low: float | None) -> None:
    """Her use in the doubt of the draws; no panels are enough for what has no value."""
    own, sky = legs_of(number), study().sky
    assert sky is not None
    assert own.year is not None
    given = panel_yield(reference_panels(own.option), sky)
    assert given is not None
    carried = sun_carries(own.option, own.year, given, 0.95, own.legs, 1.2)
    assert carried is not None
    assert float(np.isnan(carried.use[1:]).mean()) == number / 100
    assert (carried.least is None) is (number > 0)


@pytest.mark.parametrize("number", [0, 60])
def test_unknown_saving_is_not_repaid_at_once(number: int) -> None:
    """A sum that has no value is neither below nor above nothing."""
    own = found()
    dear = replace(own.cost, flows=own.cost.flows + draws(number))
    held = saving(own.case, dear, own.cost)
    assert float(np.isnan(held.discounted_payback[1:]).mean()) == number / 100
    assert float(np.isnan(held.simple_payback[1:]).mean()) == number / 100


def test_payback_is_not_judged_where_the_saving_is_unknown() -> None:
    own = found()
    assert own.savings is not None
    assert own.savings.new_diesel is not None
    unknown = replace(own.savings.new_diesel, discounted_payback=draws(60))
    judged = judge_payback(
        criterion(25), replace(own, savings=replace(own.savings, new_diesel=unknown, keep=unknown))
    )
    assert judged.result == NOT_ASSESSED
    assert judged.facts.outcome == "unknown"


def test_carbon_that_is_not_known_is_not_repaid() -> None:
    own = found()
    cost = replace(own.cost, bought=draws(43))
    other = study().options[0].findings
    told = emissions(own.case, own.option, cost, (other.option, other.cost))
    assert told.payback is not None
    assert float(np.isnan(told.payback[1:]).mean()) == 0.43


def test_maps_of_money_need_an_energy_to_pay_for() -> None:
    case, other = read_case(CASES / "sloop_30_weekend.yaml"), study().options[0].findings
    own = legs_of(0)
    none = replace(own, legs=replace(own.legs, yearly=np.full((101, 1), np.nan)))
    assert break_even_of(case, own, other) is not None
    assert break_even_of(case, none, other) is None


def test_run_without_a_load_leaves_the_motor_as_warm_as_a_full_one() -> None:
    """Planned cruise far beyond the hull form: no load of its own, and no time at peak after it."""
    own = found()
    fast = replace(own.case, planning=replace(own.case.planning, cruise_speed=20.0))
    worked = duty(replace(own.outfit, case=fast))
    assert worked is not None
    assert np.isnan(worked.before).all()
    over = np.broadcast_to(worked.peak_load > 1.0, worked.peak_warm.shape)
    assert over.any()
    np.testing.assert_array_equal(worked.peak_warm[over], 0.0)


def test_walk_keeps_its_draws_without_a_value() -> None:
    own = found()
    item = own.legs.results[own.key.worst_leg or 0]
    asked = replace(item, need=np.where(np.isnan(draws(20)), np.nan, item.need))
    walk = energy_walk(own.outfit, asked, 0)
    assert walk is not None
    assert float(np.isnan(walk.left_each[1:]).mean()) == 0.2


@lacking
def test_alarms_before_the_floor(number: int, high: float | None, low: float | None) -> None:
    """Charge between alarm and floor over the middle current; no time where there is none."""
    own = found()
    assert own.bank is not None
    bank = replace(own.bank, peak_current=draws(number), cruise_current=draws(0))
    made = own.installation
    assert made is not None
    assert own.option.bank is not None
    whole = Made(made.voltages, made.circuits, made.string, made.precharge)
    record = _management(own.option.bank, bank, whole)
    row = tree(record, "here", Telling(Display("metric", "EUR")))
    if high is None:
        assert row["peak_warning_min"] is None
        assert "cannot give" in row["peak_warning_why"]
        assert row["words_peak_warning"] == row["peak_warning_why"]
    else:
        assert row["peak_warning_min"] == pytest.approx(row["cruise_warning_min"])


@pytest.mark.parametrize("number", [0, 20, 60, 100])
def test_torque_falls_off_no_lower_than_the_cut_off(number: int) -> None:
    """More than a tenth of the draws cannot hold peak power: the controller sheds last."""
    own = found()
    assert own.bank is not None
    assert own.installation is not None
    state = replace(own.bank.states[2], peak_voltage=draws(number) * 0.0 + 1e3)
    bank = replace(own.bank, states=(*own.bank.states[:2], state))
    volts = own.installation.voltages
    wanted = volts.cell_warning * volts.cells if number == 0 else volts.lowest
    assert _fall(bank, volts) == pytest.approx(wanted)


@pytest.mark.parametrize(("number", "told"), [(0, True), (43, True), (60, False)])
def test_failures_tell_no_number_that_is_none(number: int, told: bool) -> None:
    own = found()
    assert own.bank is not None
    assert own.fault is not None
    part = replace(
        own,
        bank=replace(own.bank, cruise_current=draws(number), peak_current=draws(0)),
        key=replace(own.key, cruise_drain=draws(number)),
        fault=replace(own.fault, strings=2, endurance=draws(number),
                      cruise_trips=0.0, peak_trips=0.0),
    )  # fmt: skip
    rows = faults(part)
    assert (" at cruise" in rows["joint"]["words_left"]) is told
    assert (rows["joint"]["at_cruise_w"] is not None) is told
    assert " at peak" in rows["joint"]["words_left"]
    assert ("\u00a0nm less" in rows["gauge"]["words_left"]) is told
    assert (", or " in rows["string"]["words_left"]) is told
    assert (rows["string"]["endurance_h"] is not None) is told


def test_range_without_a_number_is_told_in_words() -> None:
    own = found()
    none = tuple(replace(item, distance=np.zeros_like(item.distance)) for item in own.ranges)
    row = faults(own)["charger"]
    assert row["left_nm"] > 0.0
    assert "\u00a0nm to the reserve" in row["words_left"]
    row = faults(replace(own, ranges=none))["charger"]
    assert row["left_nm"] is None
    assert "cannot be held down to the reserve" in row["words_left"]


def faults(part: Findings) -> dict[str, dict[str, Any]]:
    rows = tree(failures(part), "here", Telling(Display("metric", "EUR")))
    return {row["id"]: row for row in rows}
