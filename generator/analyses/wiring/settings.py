"""What is to be set in controller, management system and charger, and why?"""

from __future__ import annotations

from generator.analyses.bank import BankResult
from generator.analyses.criteria.battery_currents import PEAK_SHARE
from generator.analyses.installation import Circuit, Precharge, Setting, Voltages
from generator.analyses.spread import scalar, spread
from generator.case.case import Case
from generator.case.option import Option
from generator.tables.load import read_table
from generator.tables.method import method

ALARM_AHEAD = method("bank.alarm_ahead")
CONTROLLER, MANAGEMENT, CHARGER = "controller", "battery management", "charger"


def settings(
    case: Case,
    option: Option,
    found: BankResult,
    volts: Voltages,
    circuits: tuple[Circuit, ...],
    filling: Precharge,
) -> tuple[Setting, ...]:
    """Current, ramp, voltage and temperature limits, device by device."""
    drive = next(item for item in circuits if item.kind == "motor")
    charger = next(item for item in circuits if item.kind == "charger")
    return (
        *_controller(option, found, volts, drive),
        *_management(option, found, volts),
        *_charger(case, volts, charger),
        Setting(
            "contactor",
            "Closes after pre-charge of",
            filling.time,
            "s",
            "a hundredth of the voltage is left across it",
        ),
    )


def _controller(
    option: Option, found: BankResult, volts: Voltages, drive: Circuit
) -> list[Setting]:
    motor, wiring = option.motor, option.installation
    assert motor is not None
    assert wiring is not None
    peak = min(drive.peak, PEAK_SHARE * scalar(spread(found.limit).middle))
    return [
        Setting(CONTROLLER, "Battery current, most", peak, "a",
                "the lower of peak power and 0.8 of the discharge limit"),
        Setting(CONTROLLER, "Battery current for good", drive.continuous, "a",
                "continuous rating of the motor from an aged bank, half full"),
        Setting(CONTROLLER, "Time at peak, most", scalar(motor.peak_time) / 60.0, "min",
                "peak rating of the motor"),
        Setting(CONTROLLER, "Ramp to full torque", scalar(wiring.ramp_time), "s",
                "spares gear, coupling and propeller"),
        Setting(CONTROLLER, "Cut-off below", volts.lowest, "v",
                "the higher of the cells' and the controller's lowest voltage"),
        Setting(CONTROLLER, "No regeneration above", volts.ceiling, "v",
                "a full bank takes no current: torque is shed first"),
    ]  # fmt: skip


def _management(option: Option, found: BankResult, volts: Voltages) -> list[Setting]:
    bank = option.bank
    assert bank is not None
    table = read_table("energy/temperature_limits")
    row = table.row_of("chemistry", bank.chemistry)
    cold, hot, hottest = table.matrix("charge_lowest", "charge_highest", "discharge_highest")[row]
    floor = scalar(found.states[2].floor)
    coldest = scalar(found.cold_charge) * scalar(bank.charge)
    return [
        Setting(MANAGEMENT, "Discharge limit, continuous",
                scalar(spread(found.limit).middle), "a",
                "of the bank as bought"),
        Setting(MANAGEMENT, "Alarm at a charge of", min(floor + ALARM_AHEAD, 1.0), "share",
                "ahead of the floor that counts, old and cold: a warning before the cut-off"),
        Setting(MANAGEMENT, "Charge stops at", volts.ceiling, "v",
                "cells in series times their highest voltage"),
        Setting(MANAGEMENT, "Charge at the coldest, most", coldest, "a",
                "charge rate that the coldest bank of the season bears"),
        Setting(MANAGEMENT, "No charge below", float(cold), "degc", "cells are harmed for good"),
        Setting(MANAGEMENT, "No charge above", float(hot), "degc", "cells age fast"),
        Setting(MANAGEMENT, "Cut-off above", float(hottest), "degc", "ahead of any runaway"),
    ]  # fmt: skip


def _charger(case: Case, volts: Voltages, charger: Circuit) -> list[Setting]:
    found = [
        Setting(CHARGER, "Direct current, most", charger.continuous, "a",
                "what the charger gives, or what the berth lets in"),
        Setting(CHARGER, "Voltage, most", volts.ceiling, "v", "charge ceiling of the bank"),
    ]  # fmt: skip
    if case.berth.breaker is not None:
        shore = scalar(case.berth.breaker_share) * scalar(case.berth.breaker)
        found.append(Setting(CHARGER, "Shore current, most", shore, "a",
                             "what the breaker of the berth carries for hours"))  # fmt: skip
    return found
