"""What is carried aboard against which single fault?"""

from __future__ import annotations

from typing import ClassVar

from generator.records import record


@record
class Spare:
    """One thing to carry, named by the fault that it mends."""

    SAID_BY: ClassVar[str] = "spare"
    SAID_IN: ClassVar[str] = "failures"
    mends: str  # id of the fault


SPARES = tuple(
    Spare(fault)
    for fault in ("string", "bank", "controller", "throttle", "mechanical", "joint", "charger")
)
