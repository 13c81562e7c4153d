"""The whole installation of an option: circuits, fuses, switches, settings, what to confirm."""

from __future__ import annotations

from dataclasses import dataclass, replace

from generator.analyses.percentiles import scalar
from generator.analyses.store.bank import BankResult
from generator.analyses.store.duty import Duty
from generator.analyses.store.limits import house_power, string_rating
from generator.analyses.wiring.circuits import (
    Surroundings,
    chosen,
    circuit,
    conductor,
    drop_area,
    fault_area,
)
from generator.analyses.wiring.earthing import Subjects, to_confirm
from generator.analyses.wiring.fuses import (
    UNKNOWN_LET_THROUGH,
    Stand,
    class_of,
    fuse,
    rating,
    warm_share,
    with_selectivity,
)
from generator.analyses.wiring.installation import (
    Circuit,
    Device,
    Fault,
    Installation,
    Problem,
    StringCurrent,
    Switch,
    Voltages,
)
from generator.analyses.wiring.labels import Listed, labels
from generator.analyses.wiring.loads import CONVERTER, OF_HOUSE, Load, loads
from generator.analyses.wiring.settings import Made, settings
from generator.analyses.wiring.supply import fault, flows, panel_power, voltages
from generator.analyses.wiring.switching import precharge, switches
from generator.arrays import Numbers
from generator.case.case import Case
from generator.case.option import Bank, Option
from generator.case.usage import House
from generator.physics.energy.protection import LOAD_SHARE, breaker_capacity
from generator.tables.method import method

LARGEST_HOUSE = 2200.0  # A of cranking current: the last row of the table of breakers
DEVICES = method("wiring.devices")
PAIR = 2  # conductors of a circuit that lies by itself


@dataclass(frozen=True)
class Aboard:
    """What of boat and placement the lists name: spaces of the battery, height of the mast [m]."""

    battery_space: str | None
    mast_height: Numbers


def installation(
    case: Case,
    option: Option,
    place: int,
    found: BankResult | None,
    worked: Duty | None,
    aboard: Aboard,
) -> Installation | None:
    """The installation of a battery option; none of a diesel."""
    bank, motor, wiring = option.bank, option.motor, option.installation
    if bank is None or motor is None or wiring is None or found is None:
        return None
    volts, strings = voltages(bank, wiring, found), bank.blocks.parallel
    short = fault(case, place, bank, wiring, volts)
    around = Surroundings(
        scalar(wiring.temperature_class), scalar(wiring.space_temperature), wiring.bundled or PAIR
    )
    sharing = scalar(bank.sharing)
    carried = loads(wiring, volts, flows(case, option, found, volts), strings, sharing)
    carried = _fed(carried, case.house)
    built = [leg(load, around, short, strings, bool(wiring.sheathed)) for load in carried]
    circuits = tuple(wired for wired, _ in built)
    devices = with_selectivity(tuple(device for _, device in built), strings)
    opened = switches(wiring, circuits, volts)
    filling = precharge(wiring, volts, short, opened)
    string = _string(bank, circuits[0], devices[0], opened, warm_share(around.air))
    subjects = Subjects(case, option, wiring, volts, circuits, scalar(aboard.mast_height))
    return Installation(
        voltages=volts,
        strings=strings,
        fault=short,
        string=string,
        circuits=circuits,
        devices=devices,
        switches=opened,
        precharge=filling,
        settings=settings(case, option, found, worked, Made(volts, circuits, string, filling)),
        labels=labels(case.berth, Listed(volts, short, filling, circuits, devices, opened)),
        confirm=to_confirm(subjects, found.nominal),
        battery_space=aboard.battery_space,
        temperature_class=around.temperature_class,
        space_temperature=around.air,
        path_drop=_path_drop(circuits, volts),
        house_power=house_power(case, wiring),
        sun_power=panel_power(option),
        bundled=around.bundled,
        sheathed=bool(wiring.sheathed),
        assumed=not wiring.said,
        problems=_problems(circuits, devices),
    )


def _path_drop(circuits: tuple[Circuit, ...], volts: Voltages) -> float:
    """What string leg, motor leg and the devices in both lose at the continuous current."""
    legs = [next(item for item in circuits if item.kind == kind) for kind in ("string", "motor")]
    drive = legs[1].continuous
    return sum(item.drop.lost for item in legs) / volts.nominal + DEVICES * drive / volts.nominal


def _string(
    bank: Bank, wired: Circuit, device: Device, opened: tuple[Switch, ...], warm: float
) -> StringCurrent:
    """What one string may carry; all strings are equal and stand first."""
    own = scalar(string_rating(bank))
    isolators = [
        item.current
        for item in opened
        if item.circuit == wired.id and item.kind == "isolator" and item.current
    ]
    parts = {
        "its management system": own,
        "four fifths of its warm fuse": warm * LOAD_SHARE * device.rating,
        "its isolator": min(isolators, default=device.rating),
        "its cable": wired.conductor.ampacity,
    }
    rest = min(parts["its isolator"], parts["its cable"])
    steady, peak = min(parts["four fifths of its warm fuse"], rest), min(warm * device.rating, rest)
    return StringCurrent(
        own=own,
        for_good=min(own, steady),
        for_peak=min(own, peak),
        wired=steady,
        wired_peak=peak,
        bound_by=min(parts, key=lambda name: parts[name]),
    )


def _fed(carried: list[Load], house: House) -> list[Load]:
    """Where the house has no battery of its own, its panel hangs on the converter alone."""
    if house.separate_bank or house.buffered:
        return carried
    return [
        replace(load, source=CONVERTER, name=f"{CONVERTER} to {load.target}")
        if load.kind == "panel"
        else load
        for load in carried
        if load.kind != "house feed"
    ]


def leg(
    load: Load, around: Surroundings, short: Fault, strings: int, sheathed: bool
) -> tuple[Circuit, Device]:
    """One circuit with its fuse: the fuse by the load, the conductor by the fuse."""
    here = _fault_at(load, short, strings)
    name = f"F{load.id[1:]}"
    kind, rated = class_of(load, here, around.air), rating(load, here, around.air)
    slow = UNKNOWN_LET_THROUGH if kind is None else kind.let_through
    spoiled = fault_area(rated, slow, here, around)
    if load.plan.area is None:
        copper = max(drop_area(load, around), spoiled)
        wire = chosen(max(rated, load.continuous), copper, around)
    else:
        wire = conductor(scalar(load.plan.area), load.plan.conductors or 1, around, True)
    alone = load.kind == "string" or load.kind in OF_HOUSE
    device = fuse(load, wire, Stand(name, here, None if alone else "F1", sheathed, around.air))
    wired = circuit(load, around, wire, spoiled, name)
    if load.plan.area is None and wire.ampacity < rated:
        lacking = Problem(load.id, "no_such_conductor")
        wired = replace(wired, problems=(*wired.problems, lacking))
    return wired, device


def _fault_at(load: Load, short: Fault, strings: int) -> float:
    """Prospective current at the fuse of a circuit [A].

    The fuse of a string meets its own string behind it, or all the others before it. Of the
    house battery nothing is known: the highest row of the table of breakers is taken.
    """
    if load.kind == "string":
        return short.string_greatest * max(1, strings - 1)
    if load.kind in OF_HOUSE:
        return breaker_capacity(LARGEST_HOUSE, branch=False)
    return short.bank_greatest


def _problems(circuits: tuple[Circuit, ...], devices: tuple[Device, ...]) -> tuple[Problem, ...]:
    """Everything that does not hold, of circuits and then of fuses."""
    of_wires = tuple(problem for item in circuits for problem in item.problems)
    return (*of_wires, *(problem for item in devices for problem in item.problems))
