"""Which labels does the installation carry, and where?"""

from __future__ import annotations

import math
from dataclasses import dataclass

from generator.analyses.percentiles import scalar
from generator.analyses.wiring.installation import (
    Circuit,
    Device,
    Fault,
    Precharge,
    Switch,
    Voltages,
)
from generator.analyses.wiring.label import (
    BankLabel,
    DisconnectLabel,
    FuseLabel,
    Label,
    MotorLabel,
    ShoreLabel,
    SwitchLabel,
)
from generator.case.usage import Berth

UNSEEN = ("contactor", "pre-charge relay", "charge inhibit")  # named inside their boxes
KILOAMPERE = 1e3


@dataclass(frozen=True)
class Listed:
    """What of the installation is labelled."""

    volts: Voltages
    short: Fault
    filling: Precharge
    circuits: tuple[Circuit, ...]
    devices: tuple[Device, ...]
    switches: tuple[Switch, ...]


def labels(berth: Berth, made: Listed) -> tuple[Label, ...]:
    """Voltage at the bank and the motor, one label for each fuse and switch, and both stops."""
    rated = {device.circuit: device for device in made.devices}
    seen = (switch for switch in made.switches if switch.kind not in UNSEEN)
    breaker = None if berth.breaker is None else scalar(berth.breaker)
    return (
        BankLabel(made.volts.ceiling, _rounded_up(made.short)),
        MotorLabel(made.volts.ceiling, made.filling.energy),
        DisconnectLabel(next(s.id for s in made.switches if s.kind == "remote disconnect")),
        ShoreLabel(breaker),
        *(_fuse(item, rated[item.id]) for item in made.circuits),
        *(SwitchLabel(s.id, s.kind, s.of_circuit, s.part, s.by, s.at) for s in seen),
    )


def _rounded_up(short: Fault) -> float:
    """The greatest short circuit of all [A], in whole kiloamperes and never less than it is."""
    greatest = max(short.string_greatest, short.bank_greatest)
    return math.ceil(greatest / KILOAMPERE) * KILOAMPERE


def _fuse(item: Circuit, device: Device) -> FuseLabel:
    return FuseLabel(
        device=device.id,
        circuit_name=item.name,
        fuse_class=device.fuse_class,
        place=device.place,
        rating=device.rating,
        voltage=max(device.ceiling, device.voltage or 0.0),
    )
