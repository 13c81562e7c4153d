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
REMOTE = "S1"  # opens every string


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
        fuse=smallest(volts.ceiling, short.bank_greatest),
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
        Switch(f"K{number}", "contactor", item.kind, item.id, item.source, REMOTE, "case",
               _most(item), volts.ceiling)
        for number, item in enumerate(strings, 1)
    ]  # fmt: skip
    drive, relay = f"K{len(strings) + 1}", f"K{len(strings) + 2}"
    filling = float(first_current(volts.ceiling, scalar(wiring.precharge_resistance)))
    inhibited = [item for item in circuits if item.kind in ("charger", "sun")]
    return (
        *isolators,
        *contactors,
        Switch(drive, "contactor", "motor", motor.id, motor.source, "", "behind_fuse",
               _most(motor), volts.ceiling),
        Switch(relay, "pre-charge relay", "motor", motor.id, motor.source, drive, "behind_fuse",
               filling, volts.ceiling),
        Switch(REMOTE, "remote disconnect", "string", strings[0].id, "", "", "below",
               None, volts.ceiling),
        Switch("S2", "emergency stop", "motor", motor.id, "", drive, "helm", None, volts.ceiling),
        Switch("S3", "neutral start", "motor", motor.id, "", "", "helm"),
        *(
            Switch(f"S{number}", "charge inhibit", item.kind, item.id, item.target, "", "wires")
            for number, item in enumerate(inhibited, 4)
        ),
    )  # fmt: skip


def _isolators(circuits: tuple[Circuit, ...]) -> list[Switch]:
    """One for every string, the drive, the house panel and the panels' charger."""
    found: list[Switch] = []
    for item in circuits:
        if item.kind not in OPENED:
            continue
        found.append(
            Switch(f"Q{len(found) + 1}", "isolator", item.kind, item.id, item.source, "",
                   "battery", _most(item), item.ceiling)
        )  # fmt: skip
    return found


def _most(item: Circuit) -> float:
    return max(item.continuous, item.peak)
