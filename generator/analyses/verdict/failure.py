"""What does a single fault leave? One record for each fault that a battery option can have.

What it is, what it does, what is left, what is done and what the same fault leaves of a diesel
stand in templates/words/failures.html.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

from generator.arrays import Array, Numbers
from generator.records import number, record

WHOLE, PART, SAIL = "all", "part", "sail"
IN_FILE = "failures"
ALSO = ("effect", "left", "action", "diesel")


def _no_other() -> dict[str, str]:
    return {"other": "no_propulsor"}


def _of_string() -> dict[str, str]:
    return {"speed": "no_speed_held", "endurance": "no_speed_held", "held": "no_such_setting"}


def _of_throttle() -> dict[str, str]:
    return {**_no_other(), **dict.fromkeys(("top", "a_second"), "no_speed_held")}


def _of_joint() -> dict[str, str]:
    return dict.fromkeys(("at_cruise", "at_peak"), "current_not_given")


def _of_charger() -> dict[str, str]:
    return {"left": "no_range"}


def _of_gauge() -> dict[str, str]:
    return {"distance": "no_range"}


@record
class BankOpens:
    """All strings go at once."""

    SAID_BY: ClassVar[str] = "bank"
    SAID_IN: ClassVar[str] = IN_FILE
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ALSO
    id: str
    kind: str  # WHOLE, PART of the drive, or SAIL
    fallback: str  # sail, tow or second propulsor: what moves her without the drive
    own_battery: bool  # the house has one
    house: Numbers = number("watts", "house under way", expected=True)
    other: Numbers | None = number("speed", "speed by the second propulsor", cautious="low")
    absent: Mapping[str, str] = field(default_factory=_no_other)


@record
class StringTrips:
    """One of several strings goes. ``left``: sail, alarm (less throttle at the alarm), part."""

    SAID_BY: ClassVar[str] = "string"
    SAID_IN: ClassVar[str] = IN_FILE
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ALSO
    id: str
    kind: str  # WHOLE, PART of the drive, or SAIL
    left: str
    strings: int = number("count", "strings side by side")
    speed: Array = number("speed", "speed held without that string")
    endurance: Array = number("hours", "time at manoeuvring speed", cautious="low")
    slow: Numbers = number("speed", "manoeuvring speed", expected=True)
    held: float | None = number("current", "battery current, one string out")
    absent: Mapping[str, str] = field(default_factory=_of_string)


@record
class FeederShorts:
    """A short circuit behind the busbar: what opens besides the fuse of the drive."""

    SAID_BY: ClassVar[str] = "feeder"
    SAID_IN: ClassVar[str] = IN_FILE
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ALSO
    id: str
    kind: str  # WHOLE, PART of the drive, or SAIL
    fallback: str  # sail, tow or second propulsor: what moves her without the drive
    alone: bool  # its fuse opens before those of the strings
    own_battery: bool  # the house has one
    house: Numbers = number("watts", "house under way", expected=True)
    other: Numbers | None = number("speed", "speed by the second propulsor", cautious="low")
    absent: Mapping[str, str] = field(default_factory=_no_other)


@record
class ControllerStops:
    """The drive stops, the battery stays alive."""

    SAID_BY: ClassVar[str] = "controller"
    SAID_IN: ClassVar[str] = IN_FILE
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ALSO
    id: str
    kind: str  # WHOLE, PART of the drive, or SAIL
    fallback: str  # sail, tow or second propulsor: what moves her without the drive
    house: Numbers = number("watts", "house under way", expected=True)
    other: Numbers | None = number("speed", "speed by the second propulsor", cautious="low")
    absent: Mapping[str, str] = field(default_factory=_no_other)


@record
class ThrottleFails:
    """Thrust that nobody asked for."""

    SAID_BY: ClassVar[str] = "throttle"
    SAID_IN: ClassVar[str] = IN_FILE
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ALSO
    id: str
    kind: str  # WHOLE, PART of the drive, or SAIL
    fallback: str  # sail, tow or second propulsor: what moves her without the drive
    top: Array = number("speed", "top speed on the peak", cautious="low")
    a_second: Array = number("height", "way in a second at that speed")
    other: Numbers | None = number("speed", "speed by the second propulsor", cautious="low")
    absent: Mapping[str, str] = field(default_factory=_of_throttle)


@record
class ShaftLetsGo:
    """What turns the shaft lets go: one real conversion in five had such a fault."""

    SAID_BY: ClassVar[str] = "mechanical"
    SAID_IN: ClassVar[str] = IN_FILE
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ALSO
    id: str
    kind: str  # WHOLE, PART of the drive, or SAIL
    fallback: str  # sail, tow or second propulsor: what moves her without the drive
    direct: bool  # no belt or gear
    other: Numbers | None = number("speed", "speed by the second propulsor", cautious="low")
    absent: Mapping[str, str] = field(default_factory=_no_other)


@record
class RopeInScrew:
    """Rope in the propeller."""

    SAID_BY: ClassVar[str] = "rope"
    SAID_IN: ClassVar[str] = IN_FILE
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ALSO
    id: str
    kind: str  # WHOLE, PART of the drive, or SAIL
    fallback: str  # sail, tow or second propulsor: what moves her without the drive
    other: Numbers | None = number("speed", "speed by the second propulsor", cautious="low")
    absent: Mapping[str, str] = field(default_factory=_no_other)


@record
class JointHeats:
    """A lug that works loose."""

    SAID_BY: ClassVar[str] = "joint"
    SAID_IN: ClassVar[str] = IN_FILE
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ALSO
    id: str
    kind: str  # WHOLE, PART of the drive, or SAIL
    joint: float = number("resistance", "resistance of a bad joint")
    at_cruise: float | None = number("watts", "heat in it at cruise")
    at_peak: float | None = number("watts", "heat in it at peak")
    absent: Mapping[str, str] = field(default_factory=_of_joint)


@record
class ChargerFails:
    """Nothing comes in any more."""

    SAID_BY: ClassVar[str] = "charger"
    SAID_IN: ClassVar[str] = IN_FILE
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ALSO
    id: str
    kind: str  # WHOLE, PART of the drive, or SAIL
    berth: str
    left: Array = number("distance", "range to the reserve, aged", cautious="low")
    cruise: Numbers = number("speed", "planned cruise", expected=True)
    absent: Mapping[str, str] = field(default_factory=_of_charger)


@record
class GaugeReadsHigh:
    """What the gauge shows is not there."""

    SAID_BY: ClassVar[str] = "gauge"
    SAID_IN: ClassVar[str] = IN_FILE
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ALSO
    id: str
    kind: str  # WHOLE, PART of the drive, or SAIL
    error: Numbers = number("percent", "error of the gauge", cautious="high")
    energy: float = number("energy", "energy less than shown")
    distance: float | None = number("distance", "distance less than shown")
    absent: Mapping[str, str] = field(default_factory=_of_gauge)


@record
class HouseUnfed:
    """The converter to the house fails."""

    SAID_BY: ClassVar[str] = "house"
    SAID_IN: ClassVar[str] = IN_FILE
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ALSO
    id: str
    kind: str  # WHOLE, PART of the drive, or SAIL
    own_battery: bool  # the house has one
    house: Numbers = number("watts", "house under way", expected=True)


Failure = (
    BankOpens | StringTrips | FeederShorts | ControllerStops | ThrottleFails | ShaftLetsGo
    | RopeInScrew | JointHeats | ChargerFails | GaugeReadsHigh | HouseUnfed
)  # fmt: skip


@record
class FailureCount:
    """How many faults there are, and how many take the drive away."""

    all: int = number("count", "single faults")
    sail: int = number("count", "faults that take the drive")
