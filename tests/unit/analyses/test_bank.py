"""Bank, duty, fault, losses and other chemistries of a small case, checked against each other."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from generator.analyses.findings import Findings
from generator.analyses.motion.plant import controller_cut_off
from generator.analyses.store.bank_state import cut_off, floored, open_voltage, resistance
from generator.analyses.verdict.criteria.criterion import CONDITIONAL, GO, NO, Judgement
from generator.analyses.verdict.verdict import WORD_NO
from generator.physics.energy.pack import sag_current
from generator.report.numbers import Display
from generator.report.template import reason
from generator.report.tree import Telling, tree
from generator.study import OptionStudy
from tests.alone import alone, case_of
from tests.unit.case.faulty import changed

BANK = "bank: {chemistry: LFP, nominal_voltage: 51.2 V, charge: 300 Ah}"
KNOT = 1852 / 3600
# A management system that lets all through, and cells that give next to nothing.
HOPELESS = (
    "{chemistry: LFP, nominal_voltage: 51.2 V, charge: 60 Ah, resistance: 60 mohm, "
    "discharge_limit: 400 A}"
)
WEAK = (
    "{chemistry: LFP, nominal_voltage: 51.2 V, charge: 150 Ah, resistance: 30 mohm, "
    "discharge_limit: 500 A}"
)


def study(*exchanges: tuple[str, str]) -> OptionStudy:
    return alone(case_of(changed(*exchanges)), 2, 0)


def bank(text: str) -> tuple[str, str]:
    return BANK, f"bank: {text}"


def findings(*exchanges: tuple[str, str]) -> Findings:
    return study(*exchanges).findings


def row(found: OptionStudy, number: int) -> Judgement:
    return next(item for item in found.verdict.judgements if item.criterion.id == number)


def one(values: object) -> float:
    return float(np.asarray(values).flat[0])


def test_usable_is_counted_from_the_higher_floor_once() -> None:
    found = findings()
    aged = found.store.aged
    assert aged is not None
    by_sag = one(aged.sag_floor) + one(aged.gauge_error)
    floor = max(by_sag, one(aged.planned_floor))
    assert one(aged.floor) == pytest.approx(floor)
    expected = one(found.store.nominal) * one(aged.capacity) * (1 - floor)
    assert one(found.store.usable_aged) == pytest.approx(expected)


def test_a_weak_bank_is_floored_by_its_sag() -> None:
    found = findings(bank(WEAK))
    aged = found.store.aged
    assert aged is not None
    assert one(aged.sag_floor) + 0.05 > one(aged.planned_floor)
    assert one(aged.floor) == pytest.approx(min(one(aged.sag_floor) + 0.05, 1.0))


def test_a_motor_with_more_in_hand_takes_no_energy_away() -> None:
    """Peak power ends higher up in charge, and what her passages ask of the bank is the same."""
    weak = bank(
        "{chemistry: LFP, nominal_voltage: 51.2 V, charge: 150 Ah, resistance: 20 mohm, "
        "discharge_limit: 700 A}"
    )
    plain, strong = (
        findings(weak, ("peak_power: 12 kW", f"peak_power: {peak} kW")) for peak in (10, 13)
    )
    assert plain.store.aged is not None
    assert strong.store.aged is not None
    assert one(strong.store.aged.peak_floor) > one(plain.store.aged.peak_floor) + 0.01
    assert one(strong.store.aged.floor) == pytest.approx(one(plain.store.aged.floor), abs=1e-9)
    assert one(plain.store.aged.peak_floor) > one(plain.store.aged.sag_floor) + 0.01


def test_the_floor_is_where_the_power_asked_for_ends() -> None:
    """By hand: at the floor by sag the bank gives just what is asked; half of it asks for less."""
    found = findings(bank(WEAK))
    option, aged, asked = found.option, found.store.aged, found.store.asked
    assert option.bank is not None
    assert option.motor is not None
    assert aged is not None
    assert asked is not None
    state = aged.sag_floor
    opened, inner = open_voltage(option.bank, state), resistance(option.bank, aged.condition, state)
    current = one(sag_current(opened, inner, asked))
    lowest = one(cut_off(option.bank, controller_cut_off(option.bank, option.motor)))
    assert one(opened) - one(inner) * current == pytest.approx(lowest, abs=0.05)
    eased = floored(option.bank, aged, 0.5 * asked, controller_cut_off(option.bank, option.motor))
    assert one(eased.usable) > one(aged.usable)


def test_a_bank_that_gives_no_power_has_nothing_usable() -> None:
    option, aged = findings().option, findings().store.aged
    assert option.bank is not None
    assert aged is not None
    none = floored(option.bank, replace(aged, given_half=np.zeros((1, 1))), 5e3, 60.0)
    assert one(none.usable) == 0.0


def test_a_bank_that_gives_half_full_no_more_than_cruise_has_little_usable() -> None:
    """What it never gives keeps nothing back; the rows of what it cannot do say so."""
    found = study(bank(HOPELESS))
    aged = found.findings.store.aged
    assert aged is not None
    assert one(aged.peak_floor) == 1.0
    assert one(aged.floor) == pytest.approx(0.55, abs=0.01)  # half, and the gauge's error
    assert row(found, 14).result == CONDITIONAL  # it gives cruise, half full, and no more
    assert row(found, 3).result == NO
    assert found.verdict.word == WORD_NO


def test_a_limit_below_the_motor_is_never_a_plausible_number() -> None:
    low = "{chemistry: LFP, nominal_voltage: 51.2 V, charge: 300 Ah, discharge_limit: 40 A}"
    found = study(bank(low))
    assert row(found, 14).result == NO
    fast = found.findings.power.speed > 5.0 * KNOT
    for item in found.findings.ranges:
        assert not item.distance[:, fast].any()
    assert one(found.findings.legs.results[0].ratio) == 0.0


@pytest.mark.parametrize(
    ("charge", "result", "outcome"),
    [(600, GO, "inside"), (320, CONDITIONAL, "set_down"), (200, CONDITIONAL, "hard"),
     (120, NO, "outside")],
)  # fmt: skip
def test_lead_is_judged_by_its_rate_at_cruise(charge: int, result: str, outcome: str) -> None:
    """Some 48 A at cruise: 0.08, 0.15, 0.24 and 0.41 C; at 0.35 C continuous power is cut."""
    found = study(bank(f"{{chemistry: AGM, nominal_voltage: 48 V, charge: {charge} Ah}}"))
    judged = row(found, 14)
    assert (judged.result, judged.facts.outcome) == (result, outcome)
    assert found.findings.bank is not None
    rate = one(found.findings.bank.cruise_rate) * 3600.0
    assert (rate <= 0.2) is (outcome in ("inside", "set_down"))
    assert (rate <= 0.35) is (result != NO)


def test_lead_gives_less_than_lithium_of_the_same_label() -> None:
    lead = findings(bank("{chemistry: flooded, nominal_voltage: 48 V, charge: 640 Ah}"))
    same = findings(bank("{chemistry: LFP, nominal_voltage: 51.2 V, charge: 600 Ah}"))
    assert one(lead.legs.results[0].need) > one(same.legs.results[0].need)  # Peukert and sag
    assert one(lead.store.usable_aged) < one(same.store.usable_aged)


def test_given_share_replaces_the_ageing_laws() -> None:
    given = "{chemistry: LFP, nominal_voltage: 51.2 V, charge: 300 Ah, aged_share: 0.7}"
    found = findings(bank(given))
    assert found.store.last is not None
    assert found.store.aged is not None
    assert found.bank is not None
    new, aged, last = (age.after for age in found.bank.ages)
    assert (new, aged, last) == (0.0, 5.0, 10.0)
    assert one(found.store.last.condition.share) == pytest.approx(0.7)
    assert one(found.store.aged.condition.share) == pytest.approx(0.85)  # half of the way


def test_one_string_of_two() -> None:
    text = (
        "{chemistry: LFP, blocks: {series: 4, parallel: 2, voltage: 12.8 V, charge: 150 Ah, "
        "discharge_limit: 150 A}}"
    )
    found = findings(bank(text))
    fault = found.fault
    assert fault is not None
    # one string at some 52 V less sag, by what its fuse carries for good, at most its own 150 A
    assert found.installation is not None
    carries = found.installation.string.for_good
    assert carries < 150.0
    assert 47.0 * carries < one(fault.power) < 52.0 * carries
    assert 0.0 < one(fault.speed) < one(found.power.top.continuous) + 1e-9
    # cruise current all through the string that is left: below 150 A; peak above: it trips
    assert found.bank is not None
    assert one(fault.cruise_string) == pytest.approx(one(found.bank.cruise_current))
    assert fault.cruise_trips == 0.0
    assert fault.peak_trips == 1.0


def test_one_string_of_one_leaves_nothing() -> None:
    fault = findings().fault
    assert fault is not None
    assert one(fault.power) == one(fault.speed) == one(fault.distance) == 0.0


def test_losses_add_up_to_what_is_taken() -> None:
    ledger = findings().losses
    assert ledger is not None
    steps = (
        ledger.bank, ledger.cables, ledger.standby, ledger.motor, ledger.gear, ledger.seal,
        ledger.bearings, ledger.propeller, ledger.towing,
    )  # fmt: skip
    assert ledger.taken.size == 3
    np.testing.assert_allclose(sum(steps), ledger.taken, rtol=1e-9)
    assert all((part >= 0.0).all() for part in steps)


def test_a_still_space_leaves_less_rating_and_less_time() -> None:
    motor = "gear_ratio: 1.4}"
    airy = findings((motor, "gear_ratio: 1.4, airflow: 300 m3/h}")).duty
    still = findings((motor, "gear_ratio: 1.4, airflow: 0 m3/h}")).duty
    assert airy is not None
    assert still is not None
    assert one(still.space_full) > one(airy.space_full)
    assert one(still.continuous_power) < one(airy.continuous_power)
    assert one(still.peak_warm) < one(airy.peak_warm) < one(airy.peak_cold)


def test_hold_times_fall_with_speed_and_wind() -> None:
    duty = findings().duty
    assert duty is not None
    for hold in duty.holds.values():
        assert (np.diff(hold.load[0]) > 0).all()
        times = np.minimum(hold.after_cruise[0], 1e9)
        assert (np.diff(times) <= 0).all()
        assert (hold.after_cruise <= hold.from_cold).all()
    assert (duty.holds["wind_25"].after_cruise <= duty.holds["calm"].after_cruise).all()


def test_every_chemistry_meets_the_same_need() -> None:
    found = findings().chemistries
    assert found is not None
    by_name = {bank.chemistry: bank for bank in found.banks}
    lead, lithium = by_name["AGM"], by_name["LFP"]
    # nothing trips lead, which is asked for 0.35 C at most; lithium trips at 1 C, set to 0.8 of it
    asked = found.peak_current * found.voltage * 3600.0
    assert lead.peak == pytest.approx(asked / 0.35)
    assert lithium.peak == pytest.approx(asked / 0.8)
    assert lead.nominal > lithium.nominal
    assert lead.mass > 3 * lithium.mass
    assert all(bank.nominal >= found.need for bank in found.banks)


@pytest.mark.parametrize(
    ("number", "exchange", "result"),
    [
        (3, ("cruise_speed: 5.0 kn", "cruise_speed: 5.0 kn\n  hold_time: 15 min"), GO),
        (3, ("cruise_speed: 5.0 kn", "cruise_speed: 5.0 kn\n  hold_time: 14.9 min"), CONDITIONAL),
        (3, ("cruise_speed: 5.0 kn", "cruise_speed: 5.0 kn\n  hold_time: 0 min\n"
             "  manoeuvring_time: 0 min\n  reserve_share: 0 %"), NO),
        (10, ("cruise_speed: 5.0 kn", "cruise_speed: 5.0 kn\n  fallback: second propulsor\n"
              "  fallback_speed: 3.5 kn"), GO),
        (10, ("cruise_speed: 5.0 kn", "cruise_speed: 5.0 kn\n  fallback: tow"), CONDITIONAL),
        (10, ("cruise_speed: 5.0 kn", "cruise_speed: 5.0 kn"), CONDITIONAL),
        (13, ("separate_bank: true", "separate_bank: true"), GO),
        (13, ("separate_bank: true", "separate_bank: false\n  buffered: true"), GO),
        (13, ("separate_bank: true", "separate_bank: false\n  buffered: true\n"
              "  under_way: 900 W"), CONDITIONAL),
        (13, ("separate_bank: true", "separate_bank: false\n  under_way: 900 W"), NO),
        (15, ("country: DK", "country: DK\n  coldest: 6 °C"), GO),
        (15, ("country: DK", "country: DK\n  coldest: 2 °C"), CONDITIONAL),
        (15, ("country: DK", "country: DK\n  coldest: -3 °C"), NO),
    ],
)  # fmt: skip
def test_criteria_can_pass_and_fail_through_a_case(
    number: int, exchange: tuple[str, str], result: str
) -> None:
    assert row(study(exchange), number).result == result


def test_a_lock_out_makes_the_cold_a_condition() -> None:
    cold = ("country: DK", "country: DK\n  coldest: 2 °C")
    for said, result in (("true", CONDITIONAL), ("false", NO)):
        text = BANK[:-1] + f", charge_lock_out: {said}}}"
        assert row(study(cold, (BANK, text)), 15).result == result


def test_what_cannot_be_held_is_said_without_a_number() -> None:
    found = study(bank(HOPELESS))
    facts = tree(row(found, 14).facts, "here", Telling(Display("metric", "EUR")))
    assert "cannot deliver continuous power" in facts["words"]
    assert (facts["continuous_a"], facts["continuous_why"]) == (
        None,
        reason("continuous_not_given"),
    )
    assert row(found, 3).facts.outcome == "not_held"
    said = tree(row(found, 3).facts, "here", Telling(Display("metric", "EUR")))
    # what lies above half charge and the gauge's error, in the best estimate
    assert said["kept_kwh"] == pytest.approx(1.15, abs=0.01)
    assert "can keep only 1.2\u00a0kWh" in said["words"]
