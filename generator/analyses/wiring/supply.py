"""Which voltages does the bank reach, which fault does it feed, and what do its circuits carry?"""

from __future__ import annotations

import numpy as np

from generator.analyses.bank import BankResult
from generator.analyses.bank_state import draws_current
from generator.analyses.installation import RULE_HIGH, RULE_LOW, Fault, Voltages
from generator.analyses.plant import battery_power
from generator.analyses.spread import scalar
from generator.analyses.wiring.loads import Flow
from generator.case.case import Case
from generator.case.option import Bank, Motor, Option
from generator.case.usage import Berth
from generator.case.wiring import Wiring
from generator.physics.energy.cell import charge_ceiling, open_circuit_voltage, series_cells
from generator.physics.energy.fault_current import fault_current, string_resistance
from generator.physics.energy.protection import FIFTY_VOLTS
from generator.tables.method import method

FULL = 1.0  # state of charge
TOUCH_LIMIT = method("wiring.touch_voltage")
HOUSE_SHARE = method("wiring.house_margin")
HOUSE_CHEMISTRY = "flooded"  # the higher charge voltage of those that a house battery has


def voltages(bank: Bank, wiring: Wiring, found: BankResult) -> Voltages:
    """Label, ceiling and cut-off; the band of the fuse rule by ceiling and by label."""
    nominal = scalar(bank.nominal_voltage)
    ceiling, house = charge_ceiling(bank.chemistry, found.cells), scalar(wiring.house_voltage)
    return Voltages(
        nominal=nominal,
        cells=found.cells,
        ceiling=ceiling,
        lowest=scalar(found.cut_off),
        band=_band(ceiling),
        band_by_label=_band(nominal),
        touch_limit=TOUCH_LIMIT,
        house=house,
        house_ceiling=charge_ceiling(HOUSE_CHEMISTRY, series_cells(HOUSE_CHEMISTRY, house)),
    )


def _band(voltage: float) -> str:
    return RULE_HIGH if voltage >= FIFTY_VOLTS else RULE_LOW


def fault(bank: Bank, wiring: Wiring, volts: Voltages) -> Fault:
    """Prospective currents of a full bank with the least resistance that its cells may have."""
    strings = bank.blocks.parallel
    opened = volts.cells * float(open_circuit_voltage(bank.chemistry, FULL))
    own = _string(bank, wiring, volts.cells)
    maker = wiring.short_circuit_current
    if maker is not None:
        own = opened / scalar(maker)
    trunk = scalar(wiring.trunk_links)
    return Fault(
        string=float(fault_current(opened, own, 1)),
        bank=float(fault_current(opened, own, strings, trunk)),
        string_resistance=own,
        trunk_resistance=trunk,
        open_voltage=opened,
        by_maker=maker is not None,
    )


def _string(bank: Bank, wiring: Wiring, cells: int) -> float:
    """Resistance of one string in the first instant [ohm], by its cells or by the bank's own."""
    charge = scalar(bank.charge) / bank.blocks.parallel
    share, links = scalar(wiring.instant_resistance), scalar(wiring.string_links)
    if bank.resistance is None:
        return float(string_resistance(cells, scalar(bank.resistance_charge), charge, share, links))
    cells_alone = max(scalar(bank.resistance) - scalar(bank.link_resistance), 0.0)
    return float(cells_alone * bank.blocks.parallel * share + links)


def flows(case: Case, option: Option, found: BankResult, volts: Voltages) -> dict[str, Flow]:
    """Currents of each kind of circuit: the motor's by its ratings, the rest by case and berth."""
    motor, bank, wiring = option.motor, option.bank, option.installation
    assert motor is not None
    assert bank is not None
    assert wiring is not None
    house = max(HOUSE_SHARE * scalar(case.house.under_way), scalar(wiring.house_peak))
    converter, panel = house / volts.nominal, house / volts.house
    charger = _charger(option, case.berth, volts)
    every = {
        "motor": _motor(case, motor, found, volts),
        "charger": Flow(charger, charger, 0.0),
        "converter": Flow(converter, converter, 0.0),
        "panel": Flow(panel, panel, 0.0),
        "house feed": Flow(panel, panel, 0.0),
    }
    for plan in wiring.circuits:
        if plan.name not in ("string", "motor") and plan.current is not None:
            every[plan.name] = Flow(scalar(plan.current), scalar(plan.current), 0.0)
    return every


def _motor(case: Case, motor: Motor, found: BankResult, volts: Voltages) -> Flow:
    """Of an aged, cold bank: continuous current half full, peak current at the floor."""
    power = scalar(battery_power(motor, motor.continuous_power, motor.rated_speed, case.factors))
    most = scalar(battery_power(motor, motor.peak_power, motor.rated_speed, case.factors))
    sagged = float(np.nan_to_num(scalar(found.peak_current), nan=most / volts.lowest))
    steady = scalar(draws_current(found.states[2], power))
    steady = float(np.nan_to_num(steady, nan=power / volts.lowest))
    return Flow(
        max(steady, power / volts.nominal),
        max(sagged, most / volts.nominal),
        scalar(motor.peak_time),
    )


def _charger(option: Option, berth: Berth, volts: Voltages) -> float:
    """What the charger gives [A]: all it can, or what the derated breaker of the berth lets in."""
    assert option.charger_power is not None
    assert option.supply is not None
    given = scalar(option.charger_power)
    if berth.breaker is not None and berth.voltage is not None:
        wall = scalar(berth.breaker) * scalar(berth.voltage) * scalar(berth.breaker_share)
        given = min(given, wall * scalar(option.supply.charger.efficiency))
    return given / volts.nominal
