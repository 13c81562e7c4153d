"""What opens, locks and pre-charges the circuits of an installation?"""

from __future__ import annotations

from generator.analyses.percentiles import scalar
from generator.analyses.wiring.fuses import smallest
from generator.analyses.wiring.installation import Circuit, Fault, Precharge, Switch, Voltages
from generator.case.wiring import Wiring
from generator.physics.energy.precharge import charge_time, first_current, resistor_energy
from generator.tables.method import method

LEFT = method("wiring.contactor_share")
GIVEN_UP = method("wiring.precharge_limit")
OPENED = ("string", "motor", "panel", "sun")  # circuits with an isolator
BELOW = "companionway, outside the battery space"
HELM = "helm, within reach of the steering position"


def precharge(
    wiring: Wiring, volts: Voltages, short: Fault, opened: tuple[Switch, ...]
) -> Precharge:
    """Filling the controller's capacitors at the charge ceiling, the worst case."""
    capacitance, resistance = (
        scalar(wiring.controller_capacitance),
        scalar(wiring.precharge_resistance),
    )
    start = float(first_current(volts.ceiling, resistance))
    filled = float(charge_time(resistance, capacitance, LEFT))
    return Precharge(
        capacitance=capacitance,
        resistance=resistance,
        first_current=start,
        time=filled,
        difference=LEFT * volts.ceiling,
        limit=GIVEN_UP * filled,
        fuse=smallest(volts.ceiling, short.bank_most),
        relay=next(item.id for item in opened if item.kind == "pre-charge relay"),
        energy=float(resistor_energy(volts.ceiling, capacitance)),
        first_power=start * volts.ceiling,
    )


def switches(wiring: Wiring, circuits: tuple[Circuit, ...], volts: Voltages) -> tuple[Switch, ...]:
    """Isolators, a contactor in every string and one before the controller, stops and locks.

    The contactors of the strings open the whole bank: charger, converter and drive go dead.
    """
    isolators = _isolators(circuits)
    strings = [item for item in circuits if item.kind == "string"]
    motor = next(item for item in circuits if item.kind == "motor")
    contactors = [
        Switch(f"K{number}", "contactor",
               f"Contactor of {item.source}, opened by S1 and by its management system",
               f"{item.source}, or inside its case", item.id, _most(item), volts.ceiling)
        for number, item in enumerate(strings, 1)
    ]  # fmt: skip
    drive, relay = f"K{len(strings) + 1}", f"K{len(strings) + 2}"
    filling = float(first_current(volts.ceiling, scalar(wiring.precharge_resistance)))
    behind = f"{motor.source}, behind its fuse"
    inhibited = [item for item in circuits if item.kind in ("charger", "sun")]
    return (
        *isolators,
        *contactors,
        Switch(drive, "contactor", "Drive contactor", behind, motor.id, _most(motor),
               volts.ceiling),
        Switch(relay, "pre-charge relay", f"Pre-charge relay, closed only before {drive}", behind,
               motor.id, filling, volts.ceiling),
        Switch("S1", "remote disconnect", "Remote disconnect of the battery: opens every string",
               BELOW, strings[0].id, None, volts.ceiling),
        Switch("S2", "emergency stop", f"Emergency stop: torque off first, then {drive}", HELM,
               motor.id, None, volts.ceiling),
        Switch("S3", "neutral start", "Neutral interlock of the throttle", HELM, motor.id,
               None, None),
        *(
            Switch(f"S{number}", "charge inhibit",
                   f"Charge inhibit of the management systems to the {item.target}",
                   f"management systems to {item.target}", item.id, None, None)
            for number, item in enumerate(inhibited, 4)
        ),
    )  # fmt: skip


def _isolators(circuits: tuple[Circuit, ...]) -> list[Switch]:
    """One for every string, the drive, the house panel and the panels' charger."""
    found: list[Switch] = []
    for item in circuits:
        if item.kind not in OPENED:
            continue
        name = {
            "string": f"Isolator of {item.source}",
            "motor": "Main isolator",
            "panel": "House isolator",
            "sun": "Isolator of the panels' charger: part or cover the panels first",
        }[item.kind]
        place = f"{item.source}, reached from outside the battery space"
        number = f"Q{len(found) + 1}"
        found.append(Switch(number, "isolator", name, place, item.id, _most(item), item.ceiling))
    return found


def _most(item: Circuit) -> float:
    return max(item.continuous, item.peak)
