"""Which labels does the installation carry, and where?"""

from __future__ import annotations

from generator.analyses.wiring.installation import Circuit, Device, Label, Switch, Voltages

UNSEEN = ("contactor", "pre-charge relay", "charge inhibit")  # named inside their boxes


def _remote(switches: tuple[Switch, ...]) -> str:
    return next(item.id for item in switches if item.kind == "remote disconnect")


def labels(
    key: str, volts: Voltages, circuits: tuple[Circuit, ...], devices: tuple[Device, ...],
    switches: tuple[Switch, ...],
) -> tuple[Label, ...]:  # fmt: skip
    """Voltage at the bank and the motor, one label for each fuse and switch, and both stops."""
    shock = (
        f"DANGER {{{key}.voltages.ceiling_v|voltage}} DC, short circuit up to "
        f"{{{key}.fault.label_ka|kiloamperes}}. Insulated tools, no rings"
    )
    found = [
        Label("battery compartment, outside", shock, {}),
        Label("motor and controller", f"{{{key}.voltages.ceiling_v|voltage}} DC. Isolate and prove "
              f"dead: the capacitors hold {{{key}.precharge.energy_j|joules}}", {}),
        Label("companionway", f"BATTERY DISCONNECT {_remote(switches)}: opens every "
              "string. Turn off and leave the boat in smoke", {}),
        Label("shore inlet", "Berth breaker {berth.breaker_a|current}; attend the first hour of "
              "each charge", {}),
    ]  # fmt: skip
    rated = {device.circuit: device for device in devices}
    for item in circuits:
        device = rated[item.id]
        kind = device.fuse_class or "class by its maker"
        text = (
            f"{device.id} {item.name}: {{here.rating_a|current}}, {kind}, "
            "{here.voltage_v|voltage} at least; spare of the same class only"
        )
        least = max(device.ceiling, device.voltage or 0.0)
        found.append(Label(device.place, text, {"rating_a": device.rating, "voltage_v": least}))
    found += [
        Label(switch.place, f"{switch.id} {switch.name}", {})
        for switch in switches
        if switch.kind not in UNSEEN
    ]
    return tuple(found)
