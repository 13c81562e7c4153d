"""The whole installation of an option: circuits, fuses, switches, settings, what to confirm."""

from __future__ import annotations

from generator.analyses.installation import (
    RULE_HIGH,
    RULE_LOW,
    Circuit,
    Device,
    Fault,
    Installation,
    Voltages,
)
from generator.analyses.plant import battery_power
from generator.analyses.wiring.circuits import (
    Surroundings,
    chosen,
    circuit,
    conductor,
    drop_area,
    fault_area,
)
from generator.analyses.wiring.fuses import (
    UNKNOWN_LET_THROUGH,
    Stand,
    class_of,
    fuse,
    rating,
    with_selectivity,
)
from generator.analyses.wiring.loads import Flow, Load, first, loads
from generator.analyses.wiring.switching import precharge, switches
from generator.case.case import Case
from generator.case.option import Bank, Option
from generator.case.wiring import Wiring
from generator.physics.energy.cell import charge_ceiling, series_cells
from generator.physics.energy.fault_current import fault_current, string_resistance
from generator.physics.energy.protection import FIFTY_VOLTS, breaker_capacity

TOUCH_LIMIT = 60.0  # V DC, limit in common use


def installation(case: Case, option: Option) -> Installation | None:
    """The installation of a battery option; none of a diesel."""
    bank, motor, wiring = option.bank, option.motor, option.installation
    if bank is None or motor is None or wiring is None:
        return None
    volts = _voltages(bank, wiring)
    strings = 1
    fault = _fault(bank, wiring, volts, strings)
    around = Surroundings(
        first(wiring.temperature_class), first(wiring.space_temperature), wiring.bundled or 2
    )
    carried = loads(wiring, volts, _flows(case, option, volts), strings, 1.0)
    built = [_leg(load, around, fault, strings, bool(wiring.sheathed)) for load in carried]
    circuits = tuple(circuit for circuit, _ in built)
    devices = with_selectivity(tuple(device for _, device in built))
    problems = [*(f"{c.id}: {said}" for c in circuits for said in c.problems)]
    problems += [f"{d.id}: {said}" for d in devices for said in d.problems]
    return Installation(
        voltages=volts,
        strings=strings,
        fault=fault,
        circuits=circuits,
        devices=devices,
        switches=switches(circuits, volts),
        precharge=precharge(wiring, volts),
        settings=(),
        labels=(),
        confirm=(),
        temperature_class=around.temperature_class,
        space_temperature=around.air,
        bundled=around.bundled,
        sheathed=bool(wiring.sheathed),
        assumed=not wiring.said,
        problems=tuple(problems),
    )


def _voltages(bank: Bank, wiring: Wiring) -> Voltages:
    nominal = first(bank.nominal_voltage)
    cells = series_cells(bank.chemistry, nominal)
    ceiling = charge_ceiling(bank.chemistry, cells)
    house = first(wiring.house_voltage)
    return Voltages(
        nominal=nominal,
        cells=cells,
        ceiling=ceiling,
        lowest=0.8 * nominal,
        band=_band(ceiling),
        band_by_label=_band(nominal),
        touch_limit=TOUCH_LIMIT,
        house=house,
        house_ceiling=charge_ceiling("flooded", series_cells("flooded", house)),
    )


def _band(voltage: float) -> str:
    return RULE_HIGH if voltage >= FIFTY_VOLTS else RULE_LOW


def _fault(bank: Bank, wiring: Wiring, volts: Voltages, strings: int) -> Fault:
    charge = first(bank.charge) / strings
    own = string_resistance(
        volts.cells, 140e-3 * 3600, charge, first(wiring.instant_resistance),
        first(wiring.string_links),
    )  # fmt: skip
    trunk = first(wiring.trunk_links)
    maker = wiring.short_circuit_current
    if maker is not None:
        own = volts.nominal / first(maker)
    return Fault(
        string=float(fault_current(volts.nominal, own, 1)),
        bank=float(fault_current(volts.nominal, own, strings, trunk)),
        string_resistance=float(own),
        trunk_resistance=trunk,
        open_voltage=volts.nominal,
        by_maker=maker is not None,
    )


def _flows(case: Case, option: Option, volts: Voltages) -> dict[str, Flow]:
    """Currents of each kind of circuit; the motor's from its ratings."""
    motor, bank, wiring = option.motor, option.bank, option.installation
    assert motor is not None
    assert bank is not None
    assert wiring is not None
    steady, peak = (
        first(battery_power(motor, power, motor.rated_speed, case.factors)) / volts.nominal
        for power in (motor.continuous_power, motor.peak_power)
    )
    house = max(1.25 * first(case.house.under_way), first(wiring.house_peak))
    charger = first(wiring.charge_rate) * first(bank.charge)
    berth = case.berth
    if berth.breaker is not None and berth.voltage is not None:
        charger = min(charger, 0.8 * first(berth.breaker) * first(berth.voltage) / volts.nominal)
    small = house / volts.nominal
    return {
        "motor": Flow(steady, peak, first(motor.peak_time)),
        "charger": Flow(charger, charger, 0.0),
        "converter": Flow(small, small, 0.0),
        "panel": Flow(house / volts.house, house / volts.house, 0.0),
    }


def _leg(
    load: Load, around: Surroundings, fault: Fault, strings: int, sheathed: bool
) -> tuple[Circuit, Device]:
    """One circuit with its fuse: the fuse by the load, the conductor by the fuse."""
    here = fault.bank
    if load.kind == "string":
        here = fault.string * max(1, strings - 1)
    if load.kind == "panel":
        here = breaker_capacity(2200.0, branch=False)
    name = "F" + load.id[1:]
    kind, rated = class_of(load, here), rating(load)
    slow = UNKNOWN_LET_THROUGH if kind is None else kind.let_through
    spoiled = fault_area(rated, slow, here, around)
    if load.plan.area is None:
        wanted = max(rated, load.continuous)
        wire = chosen(wanted, max(drop_area(load, around), spoiled), around)
    else:
        wire = conductor(first(load.plan.area), 1, around, True)
    upstream = None if load.kind in ("string", "panel") else "F1"
    device = fuse(load, wire, Stand(name, here, upstream, sheathed))
    return circuit(load, around, wire, spoiled, name), device
