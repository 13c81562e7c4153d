"""What is carried aboard against which single fault?"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Spare:
    """One thing to carry, and the fault that it mends."""

    item: str
    mends: str  # id of the fault


SPARES = (
    Spare("one fuse of each rating and class in the schedule, and its key or spanner", "string"),
    Spare("a contactor of each size; relay, fuse and resistor of the pre-charge", "bank"),
    Spare("a controller with the settings file of this boat loaded", "controller"),
    Spare("a throttle with its cable", "throttle"),
    Spare("coupling bolts, a shaft key, a mount, and the belt where there is one", "mechanical"),
    Spare("lugs of each size, heat-shrink, the torque wrench", "joint"),
    Spare("a portable charger for the berth's socket", "charger"),
)
