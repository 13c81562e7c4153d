"""What opens, locks and pre-charges the motor circuit, and what is set in its devices?"""

from __future__ import annotations

from generator.analyses.installation import Circuit, Precharge, Switch, Voltages
from generator.analyses.spread import scalar
from generator.case.wiring import Wiring
from generator.physics.energy.precharge import charge_time, first_current, resistor_energy
from generator.tables.method import method

LEFT = method("wiring.contactor_share")
GIVEN_UP = method("wiring.precharge_limit")


def precharge(wiring: Wiring, volts: Voltages) -> Precharge:
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
        energy=float(resistor_energy(volts.ceiling, capacitance)),
        first_power=start * volts.ceiling,
    )


def switches(circuits: tuple[Circuit, ...], volts: Voltages) -> tuple[Switch, ...]:
    """Isolators of strings and circuits, contactor, remote disconnect, stop and interlock."""
    found: list[Switch] = []
    for item in circuits:
        if item.kind in ("string", "motor", "panel"):
            number = len(found) + 1
            name = f"Isolator of {item.source}" if item.kind == "string" else "Main isolator"
            name = "House isolator" if item.kind == "panel" else name
            place = f"{item.source}, reached from outside the battery space"
            current = max(item.continuous, item.peak)
            found.append(
                Switch(f"Q{number}", "isolator", name, place, item.id, current, item.ceiling)
            )
    motor = next(item for item in circuits if item.kind == "motor")
    current = max(motor.continuous, motor.peak)
    helm = "helm, within reach of the steering position"
    return (
        *found,
        Switch("K1", "contactor", "Main contactor", f"{motor.source}, behind its fuse",
               motor.id, current, volts.ceiling),
        Switch("S1", "remote disconnect", "Remote disconnect of the battery",
               "companionway, outside the battery space", motor.id, None, volts.ceiling),
        Switch("S2", "emergency stop", "Emergency stop", helm, motor.id, None, volts.ceiling),
        Switch("S3", "neutral start", "Neutral interlock of the throttle", helm, motor.id,
               None, None),
    )  # fmt: skip
