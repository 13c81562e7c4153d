"""What is to be set in controller, management systems and chargers, and why?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.motion.as_set import power_of
from generator.analyses.percentiles import scalar, spread
from generator.analyses.store.bank import BankResult
from generator.analyses.store.duty import Duty
from generator.analyses.store.limits import BESIDE, CUSTOMARY, PEAK_SHARE, STATED, shared
from generator.analyses.wiring.installation import (
    PEAK_LEFT,
    Circuit,
    Precharge,
    Setting,
    StringCurrent,
    Voltages,
)
from generator.analyses.wiring.loads import SUN
from generator.case.case import Case
from generator.case.option import Bank, Motor, Option
from generator.physics.energy.cell import charge_rate_limit
from generator.tables.load import read_table
from generator.tables.method import method

ALARM_AHEAD = method("bank.alarm_ahead")
HEAT_AHEAD = method("wiring.heat_ahead")
CONTROLLER, MANAGEMENT, CHARGER = "controller", "battery management", "charger"
FIRST, SECOND = "First alarm, at a charge of", "Second alarm, at a charge of"
HOT = "A cell hot: alarm"
MOST, FOR_GOOD = "Battery current, most", "Battery current, continuous"
ONE_OUT = "Battery current with one string out, most"
HIGHEST = method("bank.alarm_highest")
WHY_MOST = {
    STATED: "the lowest of peak power, 0.8 of the maker's limit, and what the strings carry",
    CUSTOMARY: "no limit is stated: the lowest of peak power, what is customary of the chemistry, "
    "and what the strings carry",
}


@dataclass(frozen=True)
class Made:
    """What of the installation the settings go by."""

    volts: Voltages
    circuits: tuple[Circuit, ...]
    string: StringCurrent
    filling: Precharge

    def of(self, kind: str) -> Circuit | None:
        """The first circuit of a kind."""
        return next((item for item in self.circuits if item.kind == kind), None)


def settings(
    case: Case, option: Option, found: BankResult, duty: Duty | None, made: Made
) -> tuple[Setting, ...]:
    """Current, ramp, voltage and temperature limits, device by device."""
    return (
        *_controller(case, option, found, duty, made),
        *_strings(option, found, made),
        *_alarms(option, found),
        *_cells(option, found, made.volts),
        *_charger(case, option, found, made),
        *_contactor(made),
    )


def _controller(
    case: Case, option: Option, found: BankResult, duty: Duty | None, made: Made
) -> list[Setting]:
    motor, wiring, bank = option.motor, option.installation, option.bank
    assert motor is not None
    assert wiring is not None
    assert bank is not None
    others = sum(item.continuous for item in made.circuits if item.kind in BESIDE)
    strings = scalar(shared(bank, bank.blocks.parallel))
    most = min(found.as_set.peak_current, made.string.wired_peak * strings - others)
    steady = min(found.as_set.continuous_current, made.string.wired * strings - others, most)
    rows = [
        Setting(CONTROLLER, MOST, most, "a", WHY_MOST[found.as_set.rule]),
        Setting(CONTROLLER, FOR_GOOD, steady, "a",
                "warm rating of the motor from an aged bank, half full, and never above the most"),
        Setting(CONTROLLER, PEAK_LEFT, _left(case, motor, found, most) / 1e3, "kw",
                "at rated turns, the bank half full"),
        Setting(CONTROLLER, "Time at peak, most", _time(motor, duty) / 60.0, "min",
                "the shorter of the maker's time and that after a run at planned cruise"),
        Setting(CONTROLLER, "Ramp to full torque", scalar(wiring.ramp_time), "s",
                "spares gear, coupling and propeller"),
        Setting(CONTROLLER, "Torque falls off from", _fall(found, made.volts), "v",
                "a low cell's alarm, or less where peak power at the floor takes it lower"),
        Setting(CONTROLLER, "Cut-off below", made.volts.lowest, "v",
                "the higher of the cells' and the controller's lowest voltage"),
        Setting(CONTROLLER, "No regeneration above", made.volts.regeneration, "v",
                "below the charger's end and well below the cut-off of the cells"),
    ]  # fmt: skip
    if bank.blocks.parallel > 1:
        fewer = scalar(shared(bank, bank.blocks.parallel - 1))
        left = max(made.string.for_good * fewer - others, 0.0)
        rows.insert(2, Setting(CONTROLLER, ONE_OUT, min(left, most),
                               "a", f"{made.string.bound_by} is the least"))  # fmt: skip
    return rows


def _left(case: Case, motor: Motor, found: BankResult, most: float) -> float:
    """Peak power as set, or less where the wiring of the case carries less [W]."""
    own = scalar(spread(found.as_set.peak_power, "low").middle)
    if most >= found.as_set.peak_current:
        return own
    less = power_of(motor, found.aged, case.factors, max(most, 0.0))
    return min(own, scalar(spread(less, "low").middle))


def _time(motor: Motor, duty: Duty | None) -> float:
    """Time at peak after a run at planned cruise, no longer than the maker's [s]."""
    stated = scalar(motor.peak_time)
    if duty is None:
        return stated
    return min(stated, scalar(spread(np.minimum(duty.peak_warm, stated)).middle))


def _fall(found: BankResult, volts: Voltages) -> float:
    """Voltage from which the controller sheds torque, so that the cut-off is not met [V]."""
    at_peak = scalar(spread(found.states[2].peak_voltage, "low", most_lacking=1.0).low)
    return max(volts.lowest, min(volts.cell_warning * volts.cells, at_peak))


def _strings(option: Option, found: BankResult, made: Made) -> list[Setting]:
    """Each string has a management system of its own: its limits are those of one string."""
    bank = option.bank
    assert bank is not None
    cold = found.cold_charge_low * scalar(bank.charge) / bank.blocks.parallel
    alarm = min(made.string.for_good, PEAK_SHARE * made.string.own)
    rows = [
        Setting(MANAGEMENT, "Discharge of each string, alarm above", alarm, "a",
                f"continuous, ahead of its cut-off; {made.string.bound_by} is the least"),
        Setting(MANAGEMENT, "Discharge of each string, cut-off above", made.string.for_peak, "a",
                "before its fuse opens: the least of maker's limit, fuse, isolator and cable"),
        Setting(MANAGEMENT, "Charge of each string at the coldest, most", cold, "a",
                "charge rate in the coldest of ten draws"),
    ]  # fmt: skip
    if bank.blocks.parallel > 1:
        why = "the fuller one then gives the other no more than a charger does"
        apart = _joined(option, found)
        rows.append(Setting(MANAGEMENT, "Strings joined within, most", apart, "v", why))
    return rows


def _joined(option: Option, found: BankResult) -> float:
    """Difference of two strings at rest at which their contactors may close [V]."""
    bank, wiring = option.bank, option.installation
    assert bank is not None
    assert wiring is not None
    own = scalar(found.states[0].resistance_half) * bank.blocks.parallel
    current = scalar(wiring.charge_rate) * scalar(bank.charge) / bank.blocks.parallel
    return 2.0 * own * current


def _alarms(option: Option, found: BankResult) -> list[Setting]:
    """Ahead of the reserve line, then of the floor; what time the second one leaves."""
    bank = option.bank
    assert bank is not None
    aged, left = found.states[2], found.left[2]
    per_charge = np.asarray(aged.usable) / np.maximum(1.0 - aged.floor, 1e-9)  # J of all of it
    line = aged.floor + (np.asarray(aged.usable) - left) / np.maximum(per_charge, 1e-9)
    first, second = _in_order(scalar(spread(line).high), scalar(spread(aged.floor).high))
    warned = (second - scalar(spread(aged.floor).high)) * scalar(bank.charge)
    warned = max(warned, 0.0) * scalar(aged.capacity)  # A s
    ahead = "ahead of the reserve, old and cold, in nine draws of ten"
    if first >= HIGHEST:
        ahead = "the highest that is of use: old and cold, the reserve takes nearly all of the bank"
    rows = [
        Setting(MANAGEMENT, FIRST, first, "share", ahead),
        Setting(MANAGEMENT, SECOND, second, "share",
                "ahead of the floor that counts, old and cold, in nine draws of ten"),
    ]  # fmt: skip
    for name, current in (("cruise", found.cruise_current), ("peak", found.peak_current)):
        asked = scalar(spread(current).middle)
        time, why = warned / asked if asked > 0.0 else 0.0, "charge between them over the current"
        if not np.isfinite(asked):
            time, why = np.nan, "old and cold, the bank cannot give that current"
        rows.append(Setting(MANAGEMENT, f"Second alarm to the floor, at {name}", time / 60.0,
                            "min", why))  # fmt: skip
    return rows


def _in_order(line: float, floor: float) -> tuple[float, float]:
    """First alarm ahead of the reserve's line, second ahead of the floor and below the first."""
    second = floor + ALARM_AHEAD
    first = min(max(line, second) + ALARM_AHEAD, HIGHEST)
    return first, min(second, first - ALARM_AHEAD)


def _cells(option: Option, found: BankResult, volts: Voltages) -> list[Setting]:
    bank = option.bank
    assert bank is not None
    table = read_table("energy/temperature_limits")
    row = table.row_of("chemistry", bank.chemistry)
    cold, hot, hottest = table.matrix("charge_lowest", "charge_highest", "discharge_highest")[row]
    return [
        Setting(MANAGEMENT, "A cell low: alarm", volts.cell_warning, "cell_v",
                "ahead of its cut-off"),
        Setting(MANAGEMENT, "A cell low: cut-off", volts.cell_lowest, "cell_v",
                "lowest voltage of a cell"),
        Setting(MANAGEMENT, "A cell full: charge stops", volts.cell_highest, "cell_v",
                "highest voltage of a cell; chargers end before it"),
        Setting(MANAGEMENT, "No charge below", float(cold), "degc", "cells are harmed for good"),
        Setting(MANAGEMENT, "No charge above, regeneration included", float(hot), "degc",
                "cells age fast"),
        Setting(MANAGEMENT, HOT, float(hottest) - HEAT_AHEAD, "degc",
                "ahead of its cut-off"),
        Setting(MANAGEMENT, "A cell hot: cut-off", float(hottest), "degc",
                "ahead of any runaway"),
    ]  # fmt: skip


def _charger(case: Case, option: Option, found: BankResult, made: Made) -> list[Setting]:
    charger, sun, bank = made.of("charger"), made.of("sun"), option.bank
    assert charger is not None
    assert bank is not None
    current = charger.continuous
    if charger.from_power:  # less current at the voltage at which it ends
        current *= made.volts.nominal / made.volts.charger
    rows = [
        Setting(CHARGER, "Direct current, most", current, "a",
                "what the charger gives, or what the berth lets in, at its highest voltage"),
        Setting(CHARGER, "Voltage, most", made.volts.charger, "v",
                "below the cut-off of the cells"),
        Setting(CHARGER, "Full current only with cells above", _warm(bank, current), "degc",
                "below it the bank takes less than this charger gives"),
    ]  # fmt: skip
    if case.berth.breaker is not None:
        shore = scalar(case.berth.breaker_share) * scalar(case.berth.breaker)
        rows.append(Setting(CHARGER, "Shore current, most", shore, "a",
                            "what the breaker of the berth carries for hours"))  # fmt: skip
    if sun is not None:
        rows.append(Setting(SUN, "Direct current, most", sun.continuous, "a",
                            "all its panels at the nominal voltage"))  # fmt: skip
        rows.append(Setting(SUN, "Voltage, most", made.volts.charger, "v",
                            "as the charger; stopped by the charge inhibit"))  # fmt: skip
    return rows


def _warm(bank: Bank, current: float) -> float:
    """Lowest step of cell temperature from which the bank takes all that the charger gives."""
    steps = read_table("energy/charge_ramp").column("temperature")
    rates = np.asarray(charge_rate_limit(bank.chemistry, steps)) * scalar(bank.charge)
    takes = np.flatnonzero(rates >= current)
    return float(steps[takes[0]]) if takes.size else float(steps[int(np.argmax(rates))])


def _contactor(made: Made) -> list[Setting]:
    filling = made.filling
    return [
        Setting("drive contactor", "Closes at a measured difference of, most",
                filling.difference, "v", "not by time alone"),
        Setting("drive contactor", "Reached by pre-charge after", filling.time, "s",
                "nothing else may draw through the resistor meanwhile"),
        Setting("drive contactor", "Pre-charge given up after", filling.limit, "s",
                "a short circuit behind the contactor, or something draws"),
    ]  # fmt: skip
