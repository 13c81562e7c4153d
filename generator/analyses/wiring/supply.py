"""Which voltages does the bank reach, which fault does it feed, and what do its circuits carry?"""

from __future__ import annotations

import numpy as np

from generator.analyses.motion.plant import battery_power
from generator.analyses.percentiles import scalar, spread
from generator.analyses.store.bank import BankResult
from generator.analyses.store.bank_state import draws_current
from generator.analyses.store.limits import house_power
from generator.analyses.wiring.installation import RULE_HIGH, RULE_LOW, Fault, Voltages
from generator.analyses.wiring.loads import Flow
from generator.arrays import Numbers
from generator.case.case import Case
from generator.case.option import Bank, Motor, Option
from generator.case.usage import Berth
from generator.case.wiring import Wiring
from generator.physics.energy.cell import (
    LEAD,
    charge_ceiling,
    lowest_voltage,
    open_circuit_voltage,
    series_cells,
)
from generator.physics.energy.fault_current import fault_current, string_resistance
from generator.physics.energy.protection import FIFTY_VOLTS
from generator.tables.method import method

FULL = 1.0  # state of charge
TOUCH_LIMIT = method("wiring.touch_voltage")
CHARGER_SHARE = method("wiring.charger_share")
REGENERATION_SHARE = method("wiring.regeneration_share")
BELOW_CHARGER = REGENERATION_SHARE / CHARGER_SHARE
LOW_WARNING = method("wiring.low_warning")
HOUSE_CHEMISTRY = "flooded"  # the higher charge voltage of those that a house battery has


def voltages(bank: Bank, wiring: Wiring, found: BankResult) -> Voltages:
    """Label, ceiling and cut-off; the band of the fuse rule by ceiling and by label."""
    nominal = scalar(bank.nominal_voltage)
    ceiling, house = charge_ceiling(bank.chemistry, found.cells), scalar(wiring.house_voltage)
    lead = bank.chemistry in LEAD  # its charger ends at the ceiling itself: no cell is cut off
    ends = ceiling if lead else CHARGER_SHARE * ceiling
    if bank.end_of_charge is not None:
        ends = min(scalar(bank.end_of_charge), ceiling)
    cell = lowest_voltage(bank.chemistry, 1)
    return Voltages(
        nominal=nominal,
        cells=found.cells,
        ceiling=ceiling,
        lowest=scalar(found.cut_off),
        band=_band(ceiling),
        band_by_label=_band(nominal),
        touch_limit=TOUCH_LIMIT,
        charger=ends,
        regeneration=min(REGENERATION_SHARE * ceiling, BELOW_CHARGER * ends),
        cell_highest=charge_ceiling(bank.chemistry, 1),
        cell_lowest=cell,
        cell_warning=LOW_WARNING * cell,
        house=house,
        house_ceiling=charge_ceiling(HOUSE_CHEMISTRY, series_cells(HOUSE_CHEMISTRY, house)),
    )


def _band(voltage: float) -> str:
    return RULE_HIGH if voltage >= FIFTY_VOLTS else RULE_LOW


def fault(case: Case, place: int, bank: Bank, wiring: Wiring, volts: Voltages) -> Fault:
    """Prospective currents of a full bank: by the best estimate, and by the least resistances.

    What must be broken goes by the second: the low end of each resistance's range, or the high
    end of the maker's short-circuit current.
    """
    strings = bank.blocks.parallel
    opened = volts.cells * float(open_circuit_voltage(bank.chemistry, FULL))
    said = _ends(case, f"options[{place}].")
    low = {path: ends[0] for path, ends in said.items()}
    own, least = _string(bank, wiring, volts.cells, {}), _string(bank, wiring, volts.cells, low)
    maker = wiring.short_circuit_current
    if maker is not None:
        own = opened / scalar(maker)
        most = said.get("installation.short_circuit_current", (0.0, scalar(maker)))[1]
        least = min(own, opened / most)
    trunk = scalar(wiring.trunk_links)
    least_trunk = min(trunk, low.get("installation.trunk_links", trunk))
    return Fault(
        string_likely=float(fault_current(opened, own, 1)),
        bank_likely=float(fault_current(opened, own, strings, trunk)),
        string_resistance=own,
        trunk_resistance=trunk,
        open_voltage=opened,
        by_maker=maker is not None,
        string_greatest=float(fault_current(opened, least, 1)),
        bank_greatest=float(fault_current(opened, least, strings, least_trunk)),
    )


def _ends(case: Case, head: str) -> dict[str, tuple[float, float]]:
    """Low and high end of every number of one option, by what its path ends with."""
    return {
        item.path.removeprefix(head): (item.low, item.high)
        for item in case.assumptions
        if item.path.startswith(head)
    }


def _string(bank: Bank, wiring: Wiring, cells: int, low: dict[str, float]) -> float:
    """Resistance of one string in the first instant [ohm], by its cells or by the bank's own."""

    def least(path: str, value: Numbers) -> float:
        return min(scalar(value), low.get(path, np.inf))

    charge = scalar(bank.charge) / bank.blocks.parallel
    share = least("installation.instant_resistance", wiring.instant_resistance)
    links = least("installation.string_links", wiring.string_links)
    if bank.resistance is None:
        per_charge = least("bank.resistance_charge", bank.resistance_charge)
        return float(string_resistance(cells, per_charge, charge, share, links))
    whole = least("bank.resistance", bank.resistance)
    cells_alone = max(whole - scalar(bank.link_resistance), 0.0)
    return float(cells_alone * bank.blocks.parallel * share + links)


def flows(case: Case, option: Option, found: BankResult, volts: Voltages) -> dict[str, Flow]:
    """Currents of each kind of circuit: the motor's by its ratings, the rest by case and berth."""
    motor, bank, wiring = option.motor, option.bank, option.installation
    assert motor is not None
    assert bank is not None
    assert wiring is not None
    house = house_power(case, wiring)
    panel = house / volts.house
    converter = house / scalar(case.house.converter_efficiency) / volts.lowest  # bank nearly empty
    charger = _charger(option, case.berth, volts)
    sun = panel_power(option) / volts.nominal
    every = {
        "motor": _motor(case, motor, found, volts),
        "charger": Flow(charger, charger, 0.0),
        "converter": Flow(converter, converter, 0.0),
        "panel": Flow(panel, panel, 0.0),
        "house feed": Flow(panel, panel, 0.0),
        "sun": Flow(sun, sun, 0.0),
    }
    for plan in wiring.circuits:
        if plan.name not in ("string", "motor") and plan.current is not None:
            every[plan.name] = Flow(scalar(plan.current), scalar(plan.current), 0.0)
    return every


def _motor(case: Case, motor: Motor, found: BankResult, volts: Voltages) -> Flow:
    """Of an aged, cold bank: continuous current half full, peak current at the floor.

    The high end of both, but no more than the controller is set to: cables and fuses are bought
    once, for nine draws in ten.
    """
    most_set = found.as_set.peak_current
    power = scalar(battery_power(motor, motor.continuous_power, motor.rated_speed, case.factors))
    most = scalar(battery_power(motor, motor.peak_power, motor.rated_speed, case.factors))
    # lacking: copper and fuses need a current; no circuit meets more than power at the cut-off
    sagged = np.nan_to_num(found.peak_current, nan=most / volts.lowest)
    # lacking: likewise
    steady = np.nan_to_num(draws_current(found.states[2], power), nan=power / volts.lowest)
    return Flow(
        min(max(scalar(spread(steady).high), power / volts.nominal), most_set),
        min(max(scalar(spread(sagged).high), most / volts.nominal), most_set),
        scalar(motor.peak_time),
    )


def panel_power(option: Option) -> float:
    """All panels of an option at standard conditions [W]."""
    groups = () if option.supply is None else option.supply.panels
    return sum(scalar(group.power) for group in groups)


def _charger(option: Option, berth: Berth, volts: Voltages) -> float:
    """What the charger gives [A]: all it can, or what the derated breaker of the berth lets in."""
    assert option.charger_power is not None
    assert option.supply is not None
    given = scalar(option.charger_power)
    if berth.breaker is not None and berth.voltage is not None:
        wall = scalar(berth.breaker) * scalar(berth.voltage) * scalar(berth.breaker_share)
        given = min(given, wall * scalar(option.supply.charger.efficiency))
    return given / volts.nominal
