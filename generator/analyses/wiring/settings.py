"""What is to be set in controller, management systems and chargers?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.motion.as_set import power_of
from generator.analyses.percentiles import scalar, spread
from generator.analyses.store.bank import BankResult
from generator.analyses.store.duty import Duty
from generator.analyses.store.limits import BESIDE, PEAK_SHARE, shared
from generator.analyses.wiring.installation import Circuit, Precharge, StringCurrent, Voltages
from generator.analyses.wiring.set_values import (
    CHARGER,
    CONTACTOR,
    CONTROLLER,
    MANAGEMENT,
    SUN_CHARGER,
    ChargerSettings,
    ContactorSettings,
    ControllerSettings,
    JoiningSettings,
    ManagementSettings,
    OneOutSettings,
    Settings,
    ShoreSettings,
    SunSettings,
)
from generator.arrays import Numbers
from generator.case.case import Case
from generator.case.option import Bank, Motor, Option
from generator.case.usage import Berth
from generator.case.wiring import Wiring
from generator.physics.energy.cell import charge_rate_limit
from generator.tables.load import read_table
from generator.tables.method import method

ALARM_AHEAD = method("bank.alarm_ahead")
HEAT_AHEAD = method("wiring.heat_ahead")
HIGHEST = method("bank.alarm_highest")


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

    @property
    def others(self) -> float:
        """What is drawn beside the motor [A]."""
        return sum(item.continuous for item in self.circuits if item.kind in BESIDE)


def settings(
    case: Case, option: Option, found: BankResult, duty: Duty | None, made: Made
) -> Settings:
    """Current, ramp, voltage and temperature limits, device by device."""
    bank, wiring = option.bank, option.installation
    assert bank is not None
    assert wiring is not None
    controller = _controller(case, option, found, duty, made)
    charger, sun = made.of("charger"), made.of("sun")
    assert charger is not None
    several = bank.blocks.parallel > 1
    filling = made.filling
    return Settings(
        controller=controller,
        one_out=_one_out(bank, made, controller.most) if several else None,
        management=_management(bank, found, made),
        joining=JoiningSettings(MANAGEMENT, _joined(bank, wiring, found)) if several else None,
        charger=_charger(bank, charger, made.volts),
        shore=_shore(case.berth),
        sun=None if sun is None else SunSettings(SUN_CHARGER, sun.continuous, made.volts.charger),
        contactor=ContactorSettings(CONTACTOR, filling.difference, filling.time, filling.limit),
    )


def _controller(
    case: Case, option: Option, found: BankResult, duty: Duty | None, made: Made
) -> ControllerSettings:
    motor, wiring, bank = option.motor, option.installation, option.bank
    assert motor is not None
    assert wiring is not None
    assert bank is not None
    strings = scalar(shared(bank, bank.blocks.parallel))
    most = min(found.as_set.peak_current, made.string.wired_peak * strings - made.others)
    steady = made.string.wired * strings - made.others
    return ControllerSettings(
        device=CONTROLLER,
        rule=found.as_set.rule,
        most=most,
        steady=min(found.as_set.continuous_current, steady, most),
        peak_left=_left(case, motor, found, most),
        peak_time=_time(motor, duty),
        ramp=scalar(wiring.ramp_time),
        fall=_fall(found, made.volts),
        cut_off=made.volts.lowest,
        regeneration=made.volts.regeneration,
    )


def _one_out(bank: Bank, made: Made, most: float) -> OneOutSettings:
    """What the controller is set to once a string is gone."""
    fewer = scalar(shared(bank, bank.blocks.parallel - 1))
    left = max(made.string.for_good * fewer - made.others, 0.0)
    return OneOutSettings(CONTROLLER, made.string.bound_by, min(left, most))


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


def _management(bank: Bank, found: BankResult, made: Made) -> ManagementSettings:
    """Each string has a management system of its own: its limits are those of one string."""
    table = read_table("energy/temperature_limits")
    row = table.row_of("chemistry", bank.chemistry)
    cold, warm, hot = table.matrix("charge_lowest", "charge_highest", "discharge_highest")[row]
    first, second = _alarms(found)
    warned = _warned(bank, found, second)
    return ManagementSettings(
        device=MANAGEMENT,
        bound_by=made.string.bound_by,
        charge_taken=first >= HIGHEST,
        alarm=min(made.string.for_good, PEAK_SHARE * made.string.own),
        trip=made.string.for_peak,
        cold_charge=found.cold_charge_low * scalar(bank.charge) / bank.blocks.parallel,
        first_alarm=first,
        second_alarm=second,
        cruise_warning=_lasts(warned, found.cruise_current),
        peak_warning=_lasts(warned, found.peak_current),
        cell_low_alarm=made.volts.cell_warning,
        cell_low=made.volts.cell_lowest,
        cell_full=made.volts.cell_highest,
        coldest=float(cold),
        warmest=float(warm),
        hot_alarm=float(hot) - HEAT_AHEAD,
        hot=float(hot),
    )


def _joined(bank: Bank, wiring: Wiring, found: BankResult) -> float:
    """Difference of two strings at rest at which their contactors may close [V]."""
    own = scalar(found.states[0].resistance_half) * bank.blocks.parallel
    current = scalar(wiring.charge_rate) * scalar(bank.charge) / bank.blocks.parallel
    return 2.0 * own * current


def _alarms(found: BankResult) -> tuple[float, float]:
    """Charge at the two alarms: ahead of the reserve's line, and ahead of the floor [-]."""
    aged, left = found.states[2], found.left[2]
    per_charge = np.asarray(aged.usable) / np.maximum(1.0 - aged.floor, 1e-9)  # J of all of it
    line = aged.floor + (np.asarray(aged.usable) - left) / np.maximum(per_charge, 1e-9)
    return _in_order(scalar(spread(line).high), scalar(spread(aged.floor).high))


def _warned(bank: Bank, found: BankResult, second: float) -> float:
    """Charge between the second alarm and the floor [A s]."""
    aged = found.states[2]
    charge = (second - scalar(spread(aged.floor).high)) * scalar(bank.charge)
    return max(charge, 0.0) * scalar(aged.capacity)


def _lasts(charge: float, current: Numbers) -> float:
    """How long a charge [A s] feeds a current [A], in s; nan where the bank cannot give that."""
    asked = scalar(spread(current).middle)
    if not np.isfinite(asked):
        return np.nan
    return charge / asked if asked > 0.0 else 0.0


def _in_order(line: float, floor: float) -> tuple[float, float]:
    """First alarm ahead of the reserve's line, second ahead of the floor and below the first."""
    second = floor + ALARM_AHEAD
    first = min(max(line, second) + ALARM_AHEAD, HIGHEST)
    return first, min(second, first - ALARM_AHEAD)


def _charger(bank: Bank, charger: Circuit, volts: Voltages) -> ChargerSettings:
    current = charger.continuous
    if charger.from_power:  # less current at the voltage at which it ends
        current *= volts.nominal / volts.charger
    return ChargerSettings(CHARGER, current, volts.charger, _warm(bank, current))


def _shore(berth: Berth) -> ShoreSettings | None:
    """What the breaker of the berth carries for hours."""
    if berth.breaker is None:
        return None
    return ShoreSettings(CHARGER, scalar(berth.breaker_share) * scalar(berth.breaker))


def _warm(bank: Bank, current: float) -> float:
    """Lowest step of cell temperature from which the bank takes all that the charger gives."""
    steps = read_table("energy/charge_ramp").column("temperature")
    rates = np.asarray(charge_rate_limit(bank.chemistry, steps)) * scalar(bank.charge)
    takes = np.flatnonzero(rates >= current)
    return float(steps[takes[0]]) if takes.size else float(steps[int(np.argmax(rates))])
