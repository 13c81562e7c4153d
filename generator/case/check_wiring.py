"""What of an installation cannot be: cable, fuse, insulation?"""

from __future__ import annotations

import math
from collections.abc import Iterator

from generator.case.check import Finding, si
from generator.case.plant_keys import BankKeys
from generator.case.said import Place
from generator.case.schema import CaseKeys, OptionKeys
from generator.case.wiring import TEMPERATURE_CLASSES, CircuitKeys
from generator.tables.load import read_table

TIMES_THE_BOAT = 2.0  # a cable longer than this does not lie in her
AGREE = 0.1  # share by which power and current of one charger may differ: losses and rounding
LARGEST = 300e-6  # m2, of a conductor in a boat
HOUSE = "flooded"  # chemistry whose charge voltage stands for a house battery: the higher one


def find_wiring_contradictions(case: CaseKeys) -> Iterator[Finding]:
    """Faults of every option's installation."""
    for number, option in enumerate(case.options):
        if "installation" not in option.model_fields_set:
            continue
        place: Place = ("options", number, "installation")
        if option.kind in ("keep", "new diesel"):
            hope = f"expected none for an option of kind {option.kind}"
            yield Finding(place, "is given", hope)
            continue
        yield from _insulation(option, place)
        yield from _circuits(case, option, place)
        yield from _charger(option, place)


def _charger(option: OptionKeys, place: Place) -> Iterator[Finding]:
    """One charger, told twice: its power into the bank, and the current of its circuit."""
    power, nominal = option.supply.charger.power, _nominal(option.bank)
    for number, circuit in enumerate(option.installation.circuits):
        current = circuit.current
        if circuit.name != "charger" or current is None or power is None or nominal is None:
            continue
        if abs(current.value * nominal / power.value - 1.0) > AGREE:
            problem = f"is {current.shown}, and supply.charger.power is {power.shown}"
            hope = f"expected {power.value / nominal:.0f} A at the bank's {nominal:g} V"
            yield Finding((*place, "circuits", number, "current"), problem, hope)


def _nominal(bank: BankKeys) -> float | None:
    """Nominal voltage of the bank, or of its blocks in series [V]."""
    block, series = bank.blocks.voltage, bank.blocks.series
    volts = si(bank.nominal_voltage) if bank.nominal_voltage else si(block) * (series or 1)
    return None if math.isnan(volts) else volts


def _insulation(option: OptionKeys, place: Place) -> Iterator[Finding]:
    """The temperature class decides what every cable may carry, so it is never guessed here."""
    known = ", ".join(f"{degrees} °C" for degrees in TEMPERATURE_CLASSES)
    given = option.installation.temperature_class
    spot = (*place, "temperature_class")
    if "temperature_class" not in option.installation.model_fields_set:
        hope = f"expected the class printed on the cable's jacket, one of: {known}"
        yield Finding(spot, "is missing", hope)
    elif given and round(given.value, 3) not in TEMPERATURE_CLASSES:
        yield Finding(spot, f"is {given.shown}", f"expected one of: {known}")
    space = option.installation.space_temperature
    if given and space and space.value >= given.value:
        problem = f"is {space.shown}, as warm as the insulation of {given.shown} bears"
        yield Finding((*place, "space_temperature"), problem, "expected less")


def _circuits(case: CaseKeys, option: OptionKeys, place: Place) -> Iterator[Finding]:
    """Each circuit by itself, and none twice."""
    seen: dict[str, int] = {}
    for number, circuit in enumerate(option.installation.circuits):
        spot = (*place, "circuits", number)
        if circuit.name and circuit.name in seen:
            problem = f"is `{circuit.name}`, as circuits[{seen[circuit.name]}]"
            yield Finding((*spot, "name"), problem, "expected each circuit once")
        elif circuit.name:
            seen[circuit.name] = number
        if circuit.name == "inverter" and "current" not in circuit.model_fields_set:
            yield Finding((*spot, "current"), "is missing", "expected the inverter's current")
        yield from _cable(case, circuit, spot)
        yield from _fuse(option, circuit, spot)


def _cable(case: CaseKeys, circuit: CircuitKeys, place: Place) -> Iterator[Finding]:
    """A cable that does not lie in this boat."""
    run, length = circuit.run, case.boat.hull.length_overall
    if run and length and run.value > TIMES_THE_BOAT * length.value:
        problem = f"is {run.shown}, more than twice her length of {length.shown}"
        hope = "expected the route one way, at most twice length_overall"
        yield Finding((*place, "run"), problem, hope)
    if circuit.area and circuit.area.value > LARGEST:
        hope = "expected a conductor of at most 300 mm2, such as `70 mm2`"
        yield Finding((*place, "area"), f"is {circuit.area.shown}", hope)


def _fuse(option: OptionKeys, circuit: CircuitKeys, place: Place) -> Iterator[Finding]:
    """A fuse that the circuit's highest voltage would arc across, or that stands past its end."""
    ceiling = _house(option) if circuit.name == "panel" else _ceiling(option.bank)
    rated = circuit.fuse_voltage
    if rated and ceiling and rated.value < ceiling:
        problem = f"is {rated.shown}, below the {ceiling:.1f} V that charging reaches"
        hope = "expected a fuse rated for the charge ceiling, whatever the label of the bank says"
        yield Finding((*place, "fuse_voltage"), problem, hope)
    apart, run = circuit.fuse_distance, circuit.run
    if apart and run and apart.value > run.value:
        problem = f"is {apart.shown}, past the end of a cable of {run.shown}"
        yield Finding((*place, "fuse_distance"), problem, "expected less than run")


def _ceiling(bank: BankKeys) -> float | None:
    """Voltage of the bank at the end of charge [V]; none where it is not known."""
    nominal = _nominal(bank)
    if nominal is None or not bank.chemistry:
        return None
    return _charged(bank.chemistry, nominal)


def _house(option: OptionKeys) -> float | None:
    """The same of the house battery."""
    nominal = option.installation.house_voltage
    return _charged(HOUSE, nominal.value) if nominal else None


def _charged(chemistry: str, nominal: float) -> float:
    table = read_table("energy/cells")
    row = table.row_of("chemistry", chemistry)
    cells = round(nominal / float(table.column("nominal")[row]))
    return cells * float(table.column("charge")[row])
