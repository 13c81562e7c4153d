"""One limit of the bank in speeds, settings, cables and word; the motor as it will be set."""

from __future__ import annotations

import numpy as np
import pytest

from generator.analyses.findings import Findings
from generator.analyses.motion.as_set import power_from
from generator.analyses.motion.plant import battery_power, warm_power
from generator.analyses.motion.pull import greatest_pull
from generator.analyses.percentiles import scalar, spread
from generator.analyses.store.bank_state import draws_current
from generator.analyses.store.limits import limits
from generator.analyses.verdict.criteria.catalogue import criteria
from generator.analyses.verdict.criteria.criterion import GO
from generator.analyses.verdict.criteria.evaluate import JUDGES
from generator.physics.drive.gear import input_power
from generator.report.numbers import Display
from generator.report.tree import Telling, tree
from tests.alone import alone, case_of
from tests.unit.case.faulty import changed

BANK = "bank: {chemistry: LFP, nominal_voltage: 51.2 V, charge: 300 Ah}"
LITHIUM = "chemistry: LFP, nominal_voltage: 51.2 V"
STRINGS = f"{LITHIUM}, blocks: {{series: 1, parallel: 2, voltage: 51.2 V, charge: 150 Ah"
FOR_GOOD = 162.1  # A: 8 kW warm and its losses, from the old, cold bank half full
BESIDE = 12.7  # A of the house's converter, from a bank that is nearly empty
# What a limit leaves: its four fifths, or the current of continuous power where that is more, and
# never what the house draws beside it.
BANKS = {
    "stated, small": (f"{LITHIUM}, charge: 300 Ah, discharge_limit: 200 A", FOR_GOOD),
    "stated, large": (f"{LITHIUM}, charge: 300 Ah, discharge_limit: 450 A", 360.0),
    "stated of a string": (f"{STRINGS}, discharge_limit: 100 A}}", 160.0 - BESIDE),  # 2 x 100 x 0.8
    "customary lithium": (f"{LITHIUM}, charge: 150 Ah", 150.0 - BESIDE),  # 1 C
    "customary lead": ("chemistry: AGM, nominal_voltage: 48 V, charge: 400 Ah", 127.6),  # 0.35 C
}
MOST, GOOD = "Battery current, most", "Battery current, continuous"
FIRST, SECOND = "First alarm, at a charge of", "Second alarm, at a charge of"


def found(bank: str, draws: int = 0) -> Findings:
    text = changed((BANK, f"bank: {{{bank}}}"))
    return alone(case_of(text), 2, draws).findings


def settings(own: Findings) -> dict[str, float]:
    assert own.installation is not None
    set_to = own.installation.settings
    return {
        MOST: set_to.controller.most, GOOD: set_to.controller.steady,
        FIRST: set_to.management.first_alarm, SECOND: set_to.management.second_alarm,
    }  # fmt: skip


@pytest.mark.parametrize("name", BANKS)
def test_no_pull_and_no_speed_takes_more_than_the_motor_is_set_to(name: str) -> None:
    bank, most = BANKS[name]
    own = found(bank)
    aged, motor = own.store.aged, own.option.motor
    assert aged is not None
    assert motor is not None
    # of lead the 12.4 A of the house's converter come off, for no fifth is left to it
    assert float(aged.limits.motor[0, 0]) == pytest.approx(most, abs=0.1)
    warm = battery_power(
        motor, warm_power(motor, own.case.factors), motor.rated_speed, own.case.factors
    )
    if own.option.bank is not None and own.option.bank.chemistry == "LFP":
        volts = aged.open_half - aged.resistance_half * FOR_GOOD
        if name.startswith("stated, small"):
            assert float((np.ravel(warm)[0] / volts)[0, 0]) == pytest.approx(FOR_GOOD, abs=0.1)
    limit = float(aged.limits.motor[0, 0])
    for peak in (False, True):
        speed = np.array([0.0, 1.0, 2.0, 3.0])
        pull = greatest_pull(own.option, own.power, own.case.factors, speed, peak)
        power = input_power(pull.shaft_power, motor.gear_efficiency) + motor.seal_and_bearings
        turns = pull.shaft_speed * motor.gear_ratio
        drawn = draws_current(aged, battery_power(motor, power, turns, own.case.factors))
        assert np.all(drawn <= limit * (1.0 + 1e-5))
    calm = own.power.curves["calm"]
    drawn = draws_current(aged, calm.output.drain)
    for load, top in (
        (calm.output.load, own.power.top.continuous), (calm.output.peak_load, own.power.top.peak)
    ):  # fmt: skip
        assert np.all(np.atleast_2d(drawn)[load <= 1.0] <= limit * (1.0 + 1e-9))
        assert float(np.interp(top[0, 0], own.power.speed, drawn[0])) <= 1.01 * limit


@pytest.mark.parametrize("name", BANKS)
def test_settings_and_cables_are_those_of_the_motor_as_set(name: str) -> None:
    """For good never above the most, that never above the limit; the cable carries what is set."""
    own = found(BANKS[name][0], 40)
    values, bank, made = settings(own), own.bank, own.installation
    assert bank is not None
    assert made is not None
    limit = scalar(spread(bank.as_set.limit).middle)
    assert values[GOOD] <= values[MOST] <= limit * (1.0 + 1e-9)
    assert bank.as_set.continuous_current <= bank.as_set.peak_current
    assert values[MOST] == pytest.approx(bank.as_set.peak_current, rel=1e-3)
    assert 0.0 < values[SECOND] < values[FIRST] < 1.0
    drive = made.circuit("motor")
    assert drive is not None
    assert drive.continuous <= drive.peak
    assert drive.peak == pytest.approx(values[MOST], rel=1e-3)
    left = made.settings.controller.peak_left
    assert left == pytest.approx(scalar(spread(bank.as_set.peak_power, "low").middle))


def test_nothing_that_a_bank_gives_hangs_on_who_states_its_limit() -> None:
    """The customary rate of 300 Ah of lithium is 300 A: a maker who states it changes nothing."""
    own, stated = (found(f"{LITHIUM}, charge: 300 Ah{more}") for more in ("", STATED))
    assert own.power.top.peak == pytest.approx(stated.power.top.peak)
    assert own.power.as_set is not None
    assert stated.power.as_set is not None
    assert (own.power.as_set.rule, stated.power.as_set.rule) == ("customary", "stated")
    assert own.power.as_set.peak_power == pytest.approx(stated.power.as_set.peak_power)
    for one, other in zip(own.ranges, stated.ranges, strict=True):
        np.testing.assert_allclose(one.distance, other.distance)
    assert settings(own) == pytest.approx(settings(stated), nan_ok=True)


STATED = ", discharge_limit: 300 A"


def test_lead_without_a_stated_limit_is_not_without_limits() -> None:
    """0.35 C of 200 Ah are 70 A: some 3 kW, whatever the motor's plate says."""
    lead = "chemistry: AGM, nominal_voltage: 48 V, charge: 200 Ah"
    own, free = found(lead), found(f"{lead}, discharge_limit: 2000 A")
    assert own.power.as_set is not None
    assert 2.0e3 < float(own.power.as_set.peak_power[0, 0]) < 3.2e3
    assert float(own.power.top.peak[0, 0]) < float(free.power.top.peak[0, 0])
    assert float(own.docking.ahead_peak[0, 0]) < float(free.docking.ahead_peak[0, 0])
    assert own.docking.stops[0].distance[0, 0] > free.docking.stops[0].distance[0, 0]


def test_a_rich_bank_leaves_the_plate_and_a_poor_one_cuts_it() -> None:
    rich, poor = found(BANKS["stated, large"][0]), found(BANKS["stated, small"][0])
    motor, aged, set_to = poor.option.motor, poor.store.aged, poor.power.as_set
    assert motor is not None
    assert aged is not None
    assert set_to is not None
    assert rich.power.as_set is not None
    assert float(rich.power.as_set.peak_power[0, 0]) == 12e3
    assert not rich.power.as_set.peak_cut
    assert set_to.peak_cut
    # 162 A at what the half-full bank still has under them, less the losses of the drive
    current = float(aged.limits.motor[0, 0])
    volts = float((aged.open_half - aged.resistance_half * current)[0, 0])
    drain = battery_power(motor, set_to.peak_power, motor.rated_speed, poor.case.factors)
    assert float(np.asarray(drain)[0, 0]) == pytest.approx(current * volts, rel=1e-6)
    assert poor.duty is not None
    rating = float(poor.duty.continuous_power[0, 0])
    assert float(poor.duty.peak_load[0, 0]) == pytest.approx(
        float(set_to.peak_power[0, 0]) / rating
    )
    # what it may draw falls, and so does the floor that its peak sets
    assert float(aged.peak_floor[0, 0]) < float(rich.store.aged.peak_floor[0, 0])  # type: ignore[union-attr]
    assert (
        float(aged.peak_current[0, 0]) == pytest.approx(current) == pytest.approx(FOR_GOOD, abs=0.1)
    )


def test_for_good_the_motor_may_take_all_that_the_maker_states() -> None:
    """A bank that sags far takes more amperes for the same power: still inside its limit."""
    own = found(f"{LITHIUM}, charge: 300 Ah, resistance: 20 mohm, discharge_limit: 200 A")
    set_to, aged = own.power.as_set, own.store.aged
    assert set_to is not None
    assert aged is not None
    asked = float(set_to.continuous_asked[0, 0])
    assert FOR_GOOD + 10.0 < asked < 200.0 - BESIDE
    assert float(set_to.limit[0, 0]) == pytest.approx(asked)
    assert not set_to.continuous_cut
    judged = JUDGES[14](next(each for each in criteria() if each.id == 14), own)
    assert (judged.result, judged.facts.outcome) == (GO, "inside")
    assert judged.facts.beside == pytest.approx(BESIDE, abs=0.1)
    said = tree(judged.facts, "here", Telling(Display("metric", "EUR")))["words"]
    assert "beside 13\u00a0A for the house converter" in said


def test_shaft_power_of_a_drain_is_the_inverse_of_the_drain() -> None:
    own = found(BANKS["stated, small"][0])
    motor = own.option.motor
    assert motor is not None
    power = np.array([500.0, 3e3, 8e3, 12e3])
    drain = battery_power(motor, power, motor.rated_speed, own.case.factors)
    back = np.asarray(power_from(motor, drain, own.case.factors)).reshape(-1)
    np.testing.assert_allclose(back, power, rtol=1e-6)


@pytest.mark.parametrize(("house", "left"), [(0.0, 160.0), (30.0, 160.0), (60.0, 140.0)])
def test_the_house_takes_its_part_of_the_limit(house: float, left: float) -> None:
    """A fifth of 200 A is left to it in any case; what it takes beyond comes off the motor's."""
    bank = found(BANKS["stated, small"][0]).option.bank
    assert bank is not None
    assert float(limits(bank, house).motor[0, 0]) == pytest.approx(left)
    assert float(np.asarray(limits(bank, house).bank)) == 200.0


@pytest.mark.parametrize(
    ("steady", "house", "left"),
    [(159.0, 0.0, 160.0), (175.0, 0.0, 175.0), (175.0, 30.0, 170.0), (230.0, 0.0, 200.0)],
)
def test_what_is_drawn_for_good_may_come_up_to_the_limit(
    steady: float, house: float, left: float
) -> None:
    """The free fifth is kept of what is drawn above it; beside the house, and never beyond."""
    bank = found(BANKS["stated, small"][0]).option.bank
    assert bank is not None
    assert float(limits(bank, house, steady).motor[0, 0]) == pytest.approx(left)
