"""What is to be set in controller, management system and charger, and why?"""

from __future__ import annotations

from generator.analyses.installation import Circuit, Precharge, Setting, Voltages
from generator.analyses.wiring.loads import first
from generator.analyses.wiring.supply import BERTH_SHARE
from generator.case.case import Case
from generator.case.option import Bank, Motor
from generator.case.wiring import Wiring
from generator.tables.load import read_table

PEAK_SHARE = 0.8  # of the discharge limit that a peak may take: criterion 14, common practice
ALARM_AHEAD = 0.03  # of the charge, ahead of the planned floor: common practice
CONTROLLER, MANAGEMENT, CHARGER = "controller", "battery management", "charger"


def settings(
    case: Case, bank: Bank, motor: Motor, wiring: Wiring, volts: Voltages,
    circuits: tuple[Circuit, ...], filling: Precharge, limit: float,
) -> tuple[Setting, ...]:  # fmt: skip
    """Current, ramp, voltage and temperature limits, device by device."""
    drive = next(item for item in circuits if item.kind == "motor")
    charger = next((item for item in circuits if item.kind == "charger"), None)
    found = [
        *_controller(motor, wiring, volts, drive, limit),
        *_management(bank, volts, limit),
        Setting("contactor", "Closes after pre-charge of at least", filling.time, "s",
                "a hundredth of the voltage is left across it"),
    ]  # fmt: skip
    if charger is not None:
        found += _charger(case, volts, charger)
    return tuple(found)


def _controller(
    motor: Motor, wiring: Wiring, volts: Voltages, drive: Circuit, limit: float
) -> list[Setting]:
    peak = min(drive.peak, PEAK_SHARE * limit)
    return [
        Setting(CONTROLLER, "Battery current, most", peak, "a",
                "the lower of peak power and 0.8 of the discharge limit"),
        Setting(CONTROLLER, "Battery current for good", drive.continuous, "a",
                "continuous rating of the motor"),
        Setting(CONTROLLER, "Time at peak, most", first(motor.peak_time), "s",
                "peak rating of the motor"),
        Setting(CONTROLLER, "Ramp to full torque", first(wiring.ramp_time), "s",
                "spares gear, coupling and propeller"),
        Setting(CONTROLLER, "Cut-off below", volts.lowest, "v",
                "the higher of the cells' and the controller's lowest voltage"),
        Setting(CONTROLLER, "No regeneration above", volts.ceiling, "v",
                "a full bank takes no current: torque is shed first"),
    ]  # fmt: skip


def _management(bank: Bank, volts: Voltages, limit: float) -> list[Setting]:
    table = read_table("energy/temperature_limits")
    row = table.row_of("chemistry", bank.chemistry)
    cold, hot, hottest = table.matrix("charge_lowest", "charge_highest", "discharge_highest")[row]
    floor = 1.0 - first(bank.usable_share)
    return [
        Setting(MANAGEMENT, "Discharge limit, continuous", limit, "a", "of the bank as bought"),
        Setting(MANAGEMENT, "Alarm at a charge of", floor + ALARM_AHEAD, "share",
                "planned floor and a little ahead, so that it warns before it cuts off"),
        Setting(MANAGEMENT, "Charge stops at", volts.ceiling, "v",
                "cells in series times their highest voltage"),
        Setting(MANAGEMENT, "No charge below", float(cold), "degc", "cells are harmed for good"),
        Setting(MANAGEMENT, "No charge above", float(hot), "degc", "cells age fast"),
        Setting(MANAGEMENT, "Cut-off above", float(hottest), "degc", "ahead of any runaway"),
    ]  # fmt: skip


def _charger(case: Case, volts: Voltages, charger: Circuit) -> list[Setting]:
    found = [
        Setting(CHARGER, "Direct current, most", charger.continuous, "a",
                "charge rate, or what the berth gives"),
        Setting(CHARGER, "Voltage, most", volts.ceiling, "v", "charge ceiling of the bank"),
    ]  # fmt: skip
    if case.berth.breaker is not None:
        shore = BERTH_SHARE * first(case.berth.breaker)
        found.append(Setting(CHARGER, "Shore current, most", shore, "a",
                             "0.8 of the breaker of the berth, for hours"))  # fmt: skip
    return found
