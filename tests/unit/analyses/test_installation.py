"""Rules go by the charge ceiling; circuits, fuses and lists of a small case by hand."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import numpy as np
import pytest

from generator.analyses.verdict.criteria.criterion import CONDITIONAL, GO, NO, Judgement
from generator.analyses.wiring.installation import RULE_HIGH, RULE_LOW, Installation
from generator.analyses.wiring.set_values import Settings
from generator.draws import make_draws
from generator.physics.energy.protection import fuse_class
from generator.records import Number, numbers_of, records_of
from generator.report.numbers import Display
from generator.report.tree import Telling, tree
from generator.study import OptionStudy, run
from generator.units.kinds import KINDS
from tests.alone import alone
from tests.unit.case.faulty import changed, read

BANK = "bank: {chemistry: LFP, nominal_voltage: 51.2 V, charge: 300 Ah}"


def study(folder: Path, bank: str, wiring: str = "") -> OptionStudy:
    text = changed((BANK, f"bank: {{{bank}}}\n{wiring}".rstrip("\n")))
    case = read(folder, text)
    return alone(case, 2, 0)


def made(found: OptionStudy) -> Installation:
    assert found.findings.installation is not None
    return found.findings.installation


def told(record: Any) -> Any:
    """A record, or several, as it stands in the results."""
    return tree(record, "here", Telling(Display("metric", "EUR")))


def lfp(cells: int) -> str:
    return f"chemistry: LFP, nominal_voltage: {cells * 3.2:.1f} V, cells: {cells}, charge: 300 Ah"


def result(found: OptionStudy, number: int) -> str:
    return next(row.result for row in found.verdict.judgements if row.criterion.id == number)


@pytest.mark.parametrize(
    ("cells", "ceiling", "by_ceiling", "by_label", "judged"),
    [
        (13, 47.45, RULE_LOW, RULE_LOW, GO),
        (14, 51.10, RULE_HIGH, RULE_LOW, GO),
        (15, 54.75, RULE_HIGH, RULE_LOW, GO),  # sold as 48 V
        (16, 58.40, RULE_HIGH, RULE_HIGH, GO),
        (17, 62.05, RULE_HIGH, RULE_HIGH, NO),
    ],
)
def test_rules_go_by_the_ceiling_and_not_by_the_label(
    tmp_path: Path, cells: int, ceiling: float, by_ceiling: str, by_label: str, judged: str
) -> None:
    """3.65 V at the end of charge times the cells in series; 3.2 V times them on the label."""
    found = study(tmp_path, lfp(cells))
    volts = made(found).voltages
    assert volts.cells == cells
    assert volts.ceiling == pytest.approx(ceiling)
    assert (volts.band, volts.band_by_label) == (by_ceiling, by_label)
    assert result(found, 22) == judged
    noted = {item.id for item in made(found).confirm}
    assert ("scope" in noted) == (by_ceiling == RULE_HIGH)
    assert ("touch" in noted) == (cells == 17)
    propulsion = [item for item in made(found).devices if item.place != "house battery, positive"]
    assert all(item.voltage is not None and item.voltage >= ceiling for item in propulsion)


def test_the_label_of_fifteen_cells_would_allow_a_larger_fuse(tmp_path: Path) -> None:
    """By label 150 % of the conductor; by ceiling the conductor, or the next size above it."""
    found = made(study(tmp_path, lfp(15)))
    motor, device = found.circuit("motor"), found.devices[1]
    assert motor is not None
    assert device.most < 1.5 * motor.conductor.ampacity


def test_above_the_touch_limit_a_specialist_with_a_monitor_makes_it_conditional(
    tmp_path: Path,
) -> None:
    wiring = (
        "    installation: {temperature_class: 105 °C, specialist_design: true, "
        "insulation_monitor: true}\n"
    )
    found = study(tmp_path, lfp(17), wiring)
    assert result(found, 22) == CONDITIONAL
    alone = wiring.replace(", insulation_monitor: true", "")
    assert result(study(tmp_path, lfp(17), alone), 22) == NO


def test_strings_share_unequally_and_each_has_its_fuse(tmp_path: Path) -> None:
    """Two strings of 0.8 sharing: each is wired for 1 / (2 x 0.8) of all currents."""
    found = made(study(tmp_path, "chemistry: LFP, blocks: {series: 1, parallel: 2, "
                                 "voltage: 51.2 V, charge: 150 Ah}"))  # fmt: skip
    first, second, motor = found.circuits[:3]
    converter = found.circuit("converter")
    assert converter is not None
    assert (first.kind, second.kind, motor.kind) == ("string", "string", "motor")
    assert first.continuous == pytest.approx((motor.continuous + converter.continuous) / 1.6)
    assert first.device != second.device


def test_fault_of_the_bank_is_worked_by_hand(tmp_path: Path) -> None:
    """300 Ah: 16 x 140 mohm Ah x 0.3 / 300 Ah = 2.24 mohm, 0.5 of links and 0.3 of trunk.

    Full cells rest at 3.38 V or so: 54.1 V over 2.74 and 3.04 mohm.
    """
    fault = made(study(tmp_path, lfp(16))).fault
    assert fault.string_resistance == pytest.approx(2.74e-3)
    assert fault.string_likely == pytest.approx(fault.open_voltage / 2.74e-3)
    assert fault.bank_likely == pytest.approx(fault.open_voltage / 3.04e-3)
    assert 53.0 < fault.open_voltage < 55.0


def test_the_makers_short_circuit_current_comes_first(tmp_path: Path) -> None:
    wiring = "    installation: {temperature_class: 105 °C, short_circuit_current: 6 kA}\n"
    fault = made(study(tmp_path, lfp(16), wiring)).fault
    assert fault.by_maker
    assert fault.string_likely == pytest.approx(6000.0)
    assert fault.bank_likely < 6000.0  # one string, and the trunk before the busbar


def test_a_fault_is_told_as_a_range_until_the_maker_says(tmp_path: Path) -> None:
    wiring = "    installation: {temperature_class: 105 °C, short_circuit_current: 6 kA}\n"
    for said, ranged in (("", True), (wiring, False)):
        case = read(tmp_path, changed((BANK, f"bank: {{{lfp(16)}}}\n{said}".rstrip("\n"))))
        found = run(case, make_draws(case, 0))
        (item,) = [row for row in told(found.cautions) if row["id"] == "fault"]
        fault = next(each.findings.installation for each in found.options if each.findings.bank)
        assert fault is not None
        likely, most = (f"{value / 1e3:.1f}" for value in
                        (fault.fault.bank_likely, fault.fault.bank_greatest))  # fmt: skip
        range_said = f"with {likely} to {most}\u00a0kA, " if ranged else f"with {most}\u00a0kA, "
        assert f"a short circuit {range_said}" in item["words"]
        assert item["likely_ka"] < item["greatest_ka"]


def test_likely_and_greatest_fault_are_never_one_for_the_other(tmp_path: Path) -> None:
    """54.1 V over 3.04 mohm are 17.8 kA, over the least resistances, 1.77 mohm, 30.6 kA."""
    row = told(made(study(tmp_path, lfp(16))))
    fault = row["fault"]
    volts = fault["open_voltage_v"]
    assert fault["bank_likely_ka"] == pytest.approx(volts / 3.04)
    assert fault["bank_greatest_ka"] == pytest.approx(volts / 1.767, rel=1e-3)
    assert fault["string_likely_ka"] == pytest.approx(volts / 2.74)
    assert fault["string_greatest_ka"] == pytest.approx(volts / 1.667, rel=1e-3)
    assert row["labels"][0]["fault_ka"] == 33.0  # of the 32.5 behind one string


@pytest.mark.parametrize(
    ("circuit", "said"),
    [
        ("fuse: 400 A, area: 35 mm2", "F2: larger than its conductor allows"),
        ("fuse: 100 A", "F2: too small for its load"),
        ("fuse_voltage: 125 V, fuse_breaking: 5 kA", "F2: breaks less than the prospective fault"),
        ("fuse_distance: 400 mm", "F2: too far from its source"),
        ("area: 16 mm2", "C2: carries more than it may"),
        ("run: 15 m, area: 50 mm2", "C2: loses more than the permitted voltage"),
    ],
)
def test_a_stated_part_that_does_not_hold_changes_the_verdict(
    tmp_path: Path, circuit: str, said: str
) -> None:
    wiring = (
        "    installation:\n      temperature_class: 105 °C\n      circuits:\n"
        f"        - {{name: motor, {circuit}}}\n"
    )
    found = study(tmp_path, lfp(16), wiring)
    assert said in {row["words"] for row in told(made(found).problems)}
    assert result(found, 22) == CONDITIONAL
    row = next(item for item in found.verdict.judgements if item.criterion.id == 22)
    assert row.facts.first in made(found).problems
    assert told(row.facts.first)["words"] in told(row.facts)["words"]


def test_a_sheath_lets_the_fuse_stand_further_away(tmp_path: Path) -> None:
    wiring = (
        "    installation:\n      temperature_class: 105 °C\n      sheathed: true\n"
        "      circuits:\n        - {name: motor, fuse_distance: 400 mm}\n"
    )
    assert made(study(tmp_path, lfp(16), wiring)).problems == ()


def test_switches_open_every_source_and_stop_at_the_helm(tmp_path: Path) -> None:
    found = made(study(tmp_path, lfp(16)))
    kinds = [item.kind for item in found.switches]
    for kind in ("isolator", "contactor", "remote disconnect", "emergency stop", "neutral start"):
        assert kind in kinds
    stop = next(item for item in found.switches if item.kind == "emergency stop")
    assert "helm" in told(stop)["words_place"]
    rated = [item for item in found.switches
             if item.current is not None and item.kind != "pre-charge relay"]  # fmt: skip
    by_id = {item.id: item for item in found.circuits}
    assert all(item.current >= by_id[item.circuit].continuous for item in rated if item.current)


def test_a_house_without_a_battery_hangs_on_the_converter(tmp_path: Path) -> None:
    case = read(tmp_path, changed(("separate_bank: true", "separate_bank: false")))
    panel = made(alone(case, 2, 0)).circuit("panel")
    own = made(study(tmp_path, lfp(16))).circuit("panel")
    assert panel is not None
    assert own is not None
    assert (panel.source, own.source) == ("DC-DC converter", "house battery")


def test_the_converters_output_has_its_fuse_at_the_house_battery(tmp_path: Path) -> None:
    """It is fed from both ends: 480 W at 92 % from a bank at 40.96 V, 480 W at 12 V."""
    found = made(study(tmp_path, lfp(16)))
    feed, converter = found.circuit("house feed"), found.circuit("converter")
    assert feed is not None
    assert converter is not None
    assert (feed.source, feed.target) == ("house battery", converter.target)
    assert feed.continuous == pytest.approx(480.0 / 12.0)
    assert converter.continuous == pytest.approx(480.0 / 0.92 / 40.96)
    (own,) = [item for item in found.devices if item.circuit == feed.id]
    assert own.place == "house battery, positive"
    assert own.rating >= feed.continuous / 0.8
    assert feed.conductor.ampacity >= own.rating
    case = read(tmp_path, changed(("separate_bank: true", "separate_bank: false")))
    apart = made(alone(case, 2, 0))
    assert apart.circuit("house feed") is None


def test_settings_keep_to_the_limits_of_bank_and_motor(tmp_path: Path) -> None:
    found = made(study(tmp_path, f"{lfp(16)}, discharge_limit: 200 A"))
    values = settings(found)
    # four fifths of 200 A are less than the 166.5 A of 8 kW for good, and those are given
    assert values["controller", "Battery current, most"] == pytest.approx(162.1, abs=0.1)
    larger = made(study(tmp_path, f"{lfp(16)}, discharge_limit: 220 A"))  # four fifths are 176 A
    assert settings(larger)["controller", "Battery current, most"] == pytest.approx(176.0)
    assert values["battery management", "A cell full: charge stops"] == pytest.approx(3.65)
    assert values["battery management", "No charge below"] == 0.0
    assert values["controller", "Cut-off below"] >= 16 * 2.5
    assert values["battery management", "Second alarm, at a charge of"] == pytest.approx(0.23)


def declared(item: Any) -> dict[str, Number]:
    kind: Any = type(item)
    return numbers_of(kind)


def settings(found: Installation) -> dict[tuple[str, str], float]:
    """Every value as it is shown, by its device and its label."""
    every = (getattr(found.settings, name) for name in records_of(Settings))
    return {
        (item.device, f"{said.label[0].upper()}{said.label[1:]}"):
            getattr(item, name) * KINDS[said.kind].per_si
        for item in every if item is not None
        for name, said in declared(item).items()
    }  # fmt: skip


TWO = (
    "chemistry: LFP, blocks: {series: 1, parallel: 2, voltage: 51.2 V, charge: 150 Ah, "
    "discharge_limit: 300 A}"
)


def test_a_string_carries_no_more_than_its_fuse_isolator_and_cable(tmp_path: Path) -> None:
    """Each management system is set to act before the fuse of its string, whatever it could do."""
    found = study(tmp_path, TWO)
    own, values = made(found), settings(made(found))
    device, isolator = own.devices[0], next(s for s in own.switches if s.circuit == "C1")
    assert own.string.own == 300.0
    assert isolator.current is not None
    wire = own.circuits[0].conductor.ampacity
    warm = 1.0 - 0.005 * 20.0  # in 50 °C of air, rated for 30
    alarm = values["battery management", "Discharge of each string, alarm above"]
    trip = values["battery management", "Discharge of each string, cut-off above"]
    assert alarm == pytest.approx(min(240.0, 0.8 * warm * device.rating, isolator.current, wire))
    assert trip == pytest.approx(min(300.0, warm * device.rating, isolator.current, wire))
    assert alarm < 300.0
    fault = found.findings.fault
    assert fault is not None
    assert float(fault.string_carries.flat[0]) == pytest.approx(alarm)
    volts = own.voltages.cells * 3.4
    assert float(fault.power.flat[0]) < alarm * volts  # one string is left
    held = values["controller", "Battery current, one string out"]
    converter = own.circuit("converter")
    assert converter is not None
    assert held == pytest.approx(alarm - converter.continuous)


def test_strings_are_joined_only_when_they_are_nearly_equal(tmp_path: Path) -> None:
    """Two strings of 150 Ah: 0.2 C are 30 A through both of them."""
    found = study(tmp_path, TWO)
    bank, values = found.findings.bank, settings(made(found))
    assert bank is not None
    string = 2.0 * float(bank.states[0].resistance_half.flat[0])
    joined = values["battery management", "Strings joined within, most"]
    assert joined == pytest.approx(2.0 * string * 30.0)
    assert 0.1 < joined < 3.0
    alone = settings(made(study(tmp_path, lfp(16))))
    assert ("battery management", "Strings joined within, most") not in alone


def test_peak_through_one_string_counts_as_a_trip_where_its_fuse_is_smaller(
    tmp_path: Path,
) -> None:
    found = study(tmp_path, TWO).findings
    assert found.fault is not None
    assert found.installation is not None
    peak = float(found.fault.peak_string.flat[0])
    assert found.installation.string.for_peak < peak
    assert found.fault.peak_trips == 1.0


def test_fuses_break_the_fault_of_the_least_resistances(tmp_path: Path) -> None:
    """16 x 110 mohm Ah x 0.25 / 300 Ah = 1.467 mohm, with 0.2 of links and 0.1 of trunk."""
    found = made(study(tmp_path, lfp(16)))
    fault = found.fault
    assert fault.string_greatest == pytest.approx(fault.open_voltage / 1.667e-3, rel=1e-3)
    assert fault.bank_greatest == pytest.approx(fault.open_voltage / 1.767e-3, rel=1e-3)
    at_busbar = [item for item in found.devices if "busbar" in item.place]
    assert at_busbar
    for item in at_busbar:
        assert item.fault == pytest.approx(fault.bank_greatest)
        assert item.breaking is not None
        assert item.breaking >= fault.bank_greatest


def test_a_fuse_in_warm_air_is_larger(tmp_path: Path) -> None:
    """Half a per cent for each kelvin over 30 °C: in 50 °C it is asked for a ninth more."""
    cool, warm = (
        made(study(tmp_path, lfp(16), f"    installation: {{{TEMPERATURES % air}}}\n"))
        for air in (30, 50)
    )
    for before, after in zip(cool.devices, warm.devices, strict=True):
        assert after.least == pytest.approx(before.least / 0.9)
        assert after.rating >= after.least


TEMPERATURES = "temperature_class: 105 °C, space_temperature: %d °C"


def test_a_fuse_grows_until_a_class_of_its_rating_breaks_the_fault(tmp_path: Path) -> None:
    """Above 50 kA only square bodies of 40 A and more are sold: the converter takes one."""
    found = made(study(tmp_path, "chemistry: LFP, nominal_voltage: 51.2 V, charge: 900 Ah"))
    assert found.fault.bank_greatest > 50e3
    converter = found.circuit("converter")
    assert converter is not None
    device = found.device_of(converter.id)
    assert device.rating == 40.0
    assert converter.conductor.ampacity >= 40.0
    assert device.problems == ()


def test_the_first_alarm_comes_before_the_reserve_and_the_second_before_the_floor(
    tmp_path: Path,
) -> None:
    found = study(tmp_path, lfp(16))
    values = settings(made(found))
    bank = found.findings.bank
    assert bank is not None
    floor = float(bank.states[2].floor.flat[0])
    usable, left = (float(part.flat[0]) for part in (bank.states[2].usable, bank.left[2]))
    first = values["battery management", "First alarm, at a charge of"]
    second = values["battery management", "Second alarm, at a charge of"]
    line = floor + (1.0 - floor) * (usable - left) / usable  # where the reserve begins
    assert first == pytest.approx(line + 0.03)
    assert second == pytest.approx(floor + 0.03)
    assert first > second
    cruise = values["battery management", "Second alarm to floor, at cruise"]
    assert cruise > values["battery management", "Second alarm to floor, at peak"] > 0.0


def test_voltages_stand_in_their_order(tmp_path: Path) -> None:
    """No more regeneration, charger's end, cell cut-off; and below: cut-off, fall, alarm."""
    found = made(study(tmp_path, lfp(16)))
    volts, values = found.voltages, settings(found)
    assert volts.regeneration < volts.charger < volts.ceiling
    assert values["charger", "Voltage, most"] == pytest.approx(0.97 * 58.4)
    assert values["controller", "No regeneration above"] == pytest.approx(0.96 * 58.4)
    low, alarm = (values["battery management", f"A cell low: {what}"]
                  for what in ("cut-off", "alarm"))  # fmt: skip
    assert low == pytest.approx(2.5)
    assert alarm == pytest.approx(2.8)
    fall = values["controller", "Torque falls off from"]
    assert values["controller", "Cut-off below"] <= fall <= 16 * alarm
    hot = values["battery management", "A cell hot: cut-off"]
    assert values["battery management", "A cell hot: alarm"] < hot
    lead = made(study(tmp_path, "chemistry: AGM, nominal_voltage: 48 V, charge: 600 Ah"))
    assert lead.voltages.charger == lead.voltages.ceiling  # it wants its full charge


def test_cold_charge_is_that_of_the_coldest_of_ten_draws(tmp_path: Path) -> None:
    """4 °C is in the step of 0.05 C: 15 A of 300 Ah; a charger of 0.2 C waits for 15 °C."""
    text = changed((BANK, f"bank: {{{lfp(16)}}}"), ("kind: salt", "kind: salt\n  coldest: 4 °C"))
    case = read(tmp_path, text)
    values = settings(made(alone(case, 2, 0)))
    assert values["battery management", "Charge of each string, at coldest"] == (
        pytest.approx(15.0)
    )
    assert values["charger", "Full current only with cells above"] == 15.0
    moved = alone(case, 2, 40).findings.bank
    assert moved is not None
    assert moved.cold_charge_low <= float(np.median(moved.cold_charge))


def test_the_controller_is_set_by_the_warm_rating_and_the_motors_own_time(tmp_path: Path) -> None:
    found = study(tmp_path, lfp(16))
    worked, values = found.findings.duty, settings(made(found))
    assert worked is not None
    drive = made(found).circuit("motor")
    assert drive is not None
    assert values["controller", "Battery current, continuous"] <= drive.continuous + 1e-9
    own = float(worked.peak_warm.flat[0]) / 60.0
    assert values["controller", "Time at peak, most"] == pytest.approx(
        min(own, drive.peak_time / 60.0)
    )


def test_a_limited_bank_says_what_peak_power_is_left(tmp_path: Path) -> None:
    rich = settings(made(study(tmp_path, lfp(16))))
    poor = settings(made(study(tmp_path, f"{lfp(16)}, discharge_limit: 150 A")))
    name = ("controller", "Peak power left, old and cold")
    assert poor[name] < rich[name]
    # the whole of 150 A for good, but for the 12.7 A of the converter
    assert poor["controller", "Battery current, most"] == pytest.approx(137.3, abs=0.1)


def test_pre_charge_closes_on_a_measured_difference_or_gives_up(tmp_path: Path) -> None:
    values = settings(made(study(tmp_path, lfp(16))))
    assert values["drive contactor", "Closes at a difference of, most"] == (pytest.approx(0.584))
    reached = values["drive contactor", "Reached by pre-charge after"]
    assert values["drive contactor", "Pre-charge given up after"] == pytest.approx(3.0 * reached)


def test_the_remote_disconnect_opens_every_string_and_not_the_drive_alone(tmp_path: Path) -> None:
    found = made(study(tmp_path, TWO))
    strings = {item.id for item in found.circuits if item.kind == "string"}
    contactors = {item.circuit: item for item in found.switches if item.kind == "contactor"}
    assert strings < set(contactors)  # one in every string, and the drive's own
    assert all("S1" in told(contactors[string])["words"] for string in strings)
    (remote,) = [item for item in found.switches if item.kind == "remote disconnect"]
    assert remote.circuit in strings
    assert "every string" in told(remote)["words"]
    said = next(row["words"] for row in told(found.labels) if "DISCONNECT" in row["words"])
    assert "every string" in said


def test_pre_charge_has_its_relay_and_a_fuse_that_breaks_the_fault(tmp_path: Path) -> None:
    found = made(study(tmp_path, lfp(16)))
    (relay,) = [item for item in found.switches if item.kind == "pre-charge relay"]
    assert found.precharge.relay == relay.id
    assert relay.current == pytest.approx(found.precharge.first_current)
    kind = fuse_class(found.voltages.ceiling, found.fault.bank_greatest, found.precharge.fuse)
    assert kind is not None
    drive = found.circuit("motor")
    assert drive is not None
    assert found.precharge.fuse < found.device_of(drive.id).rating


PANELS = (
    "    supply:\n      panels:\n        - {name: On the arch, power: 300 W}\n"
    "        - {name: On the deck, power: 212 W}\n"
)


def test_panels_have_fuse_isolator_voltage_and_charge_inhibit(tmp_path: Path) -> None:
    """512 W at 51.2 V are 10 A: 12.5 A for good, 13.9 A in warm air, so 15 A."""
    found = made(study(tmp_path, lfp(16), PANELS))
    sun = found.circuit("sun")
    assert sun is not None
    assert sun.continuous == pytest.approx(10.0)
    assert found.device_of(sun.id).least == pytest.approx(12.5 / 0.9)
    kinds = {item.kind for item in found.switches if item.circuit == sun.id}
    assert kinds == {"isolator", "charge inhibit"}
    values = settings(found)
    assert values["sun charger", "Voltage, most"] == pytest.approx(found.voltages.charger)
    charger = found.circuit("charger")
    assert charger is not None
    assert "charge inhibit" in {s.kind for s in found.switches if s.circuit == charger.id}
    without = made(study(tmp_path, lfp(16)))
    assert without.circuit("sun") is None
    string, bare = found.circuits[0], without.circuits[0]
    assert string.continuous == pytest.approx(bare.continuous)  # a source loads no string


def test_sources_that_are_not_sized_are_told(tmp_path: Path) -> None:
    supply = "    supply:\n      genset: {power: 3 kW}\n"
    (item,) = [row for row in made(study(tmp_path, lfp(16), supply)).confirm if row.id == "sources"]
    said = told(item)
    assert (said["genset_kw"], said["wind_w"]) == (3.0, None)
    assert "a charging machine of 3.0\u00a0kW, not in" in said["words"]
    assert "fuse and isolator" in said["words"]
    bare = made(study(tmp_path, lfp(16))).confirm
    assert "sources" not in {row.id for row in bare}


def test_label_of_a_fuse_says_its_class_and_voltage(tmp_path: Path) -> None:
    found = made(study(tmp_path, lfp(16)))
    rows = {row["words"].split()[0]: row for row in told(found.labels)}
    for device in found.devices:
        label = rows[device.id]
        assert device.fuse_class
        assert device.fuse_class in label["words"]
        assert label["voltage_v"] >= device.ceiling


def test_drop_on_the_whole_path_has_string_motor_and_devices(tmp_path: Path) -> None:
    found = made(study(tmp_path, lfp(16)))
    drive, string = found.circuit("motor"), found.circuits[0]
    assert drive is not None
    volts = drive.drop.lost + string.drop.lost + 0.5e-3 * drive.continuous
    assert found.path_drop == pytest.approx(volts / 51.2)
    assert found.path_drop > drive.drop.share


def test_charger_gives_its_power_at_the_voltage_at_which_it_ends(tmp_path: Path) -> None:
    """What the berth lets in is a power: 10 A at 58 V ask for more of the post than at 51.2 V."""
    found = made(study(tmp_path, lfp(16)))
    charger, values = found.circuit("charger"), settings(found)
    assert charger is not None
    assert values["charger", "Direct current, most"] * found.voltages.charger == (
        pytest.approx(charger.continuous * 51.2)
    )
    stated = (
        "    installation:\n      temperature_class: 105 °C\n      circuits:\n"
        "        - {name: charger, current: 30 A}\n"
    )
    own = settings(made(study(tmp_path, lfp(16), stated)))
    assert own["charger", "Direct current, most"] == pytest.approx(30.0)


def test_a_diesel_has_no_installation(tmp_path: Path) -> None:
    case = read(tmp_path, changed())
    options = run(case, make_draws(case, 0)).options
    assert options[0].findings.installation is None
    assert result(options[0], 22) == "not applicable"


def test_currents_name_the_power_that_the_limit_leaves(tmp_path: Path) -> None:
    def row(bank: str) -> Judgement:
        judged = study(tmp_path, bank).verdict.judgements
        return next(item for item in judged if item.criterion.id == 14)

    rich = row(f"{lfp(16)}, discharge_limit: 450 A")
    assert (rich.result, rich.facts.outcome, rich.facts.peak_cut) == (GO, "inside", False)
    poor = row(f"{lfp(16)}, discharge_limit: 150 A")
    assert (poor.result, poor.facts.outcome, poor.facts.peak_cut) == (CONDITIONAL, "set_down", True)
    assert poor.facts.set_to == pytest.approx(137.3, abs=0.1)  # 150 A, and 12.7 A beside it
    left = float(poor.facts.continuous_power[0, 0])
    assert 0.85 < left / (137.3 * 51.2) < 0.97  # what losses and sag leave of it
    said = told(poor.facts)["words"]
    assert "limited to 137\u00a0A, which leaves" in said
