"""What hangs as a label in the boat? The words of each stand in templates/words/wiring.html."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

from generator.records import number, record

IN_FILE = "wiring"
ALSO = ("place",)


@record
class BankLabel:
    """On the battery's compartment."""

    SAID_BY: ClassVar[str] = "bank_label"
    SAID_IN: ClassVar[str] = IN_FILE
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ALSO
    ceiling: float = number("voltage", "voltage at the end of charge")
    fault: float = number("kiloamperes", "greatest short circuit, rounded up")


@record
class MotorLabel:
    """On motor and controller."""

    SAID_BY: ClassVar[str] = "motor_label"
    SAID_IN: ClassVar[str] = IN_FILE
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ALSO
    ceiling: float = number("voltage", "voltage at the end of charge")
    left: float = number("joules", "energy in the capacitors")


@record
class DisconnectLabel:
    """At the remote disconnect of the battery."""

    SAID_BY: ClassVar[str] = "disconnect_label"
    SAID_IN: ClassVar[str] = IN_FILE
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ALSO
    switch: str


@record
class ShoreLabel:
    """At the shore inlet."""

    SAID_BY: ClassVar[str] = "shore_label"
    SAID_IN: ClassVar[str] = IN_FILE
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ALSO
    breaker: float | None = number("current", "breaker of the berth")
    absent: Mapping[str, str] = field(default_factory=lambda: {"breaker": "not_said"})


@record
class FuseLabel:
    """At one fuse."""

    SAID_BY: ClassVar[str] = "fuse_label"
    SAID_IN: ClassVar[str] = IN_FILE
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ALSO
    device: str
    circuit_name: str
    fuse_class: str | None
    place: str
    rating: float = number("current", "rating")
    voltage: float = number("voltage", "least voltage of the fuse")


@record
class SwitchLabel:
    """At one switch: its facts, for it is called what the list of switches calls it."""

    SAID_BY: ClassVar[str] = "switch_label"
    SAID_IN: ClassVar[str] = IN_FILE
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ALSO
    id: str
    kind: str
    of_circuit: str
    part: str
    by: str
    at: str


Label = BankLabel | MotorLabel | DisconnectLabel | ShoreLabel | FuseLabel | SwitchLabel
