"""Which values are set in controller, management systems and chargers?

One record for each device; the reason of each value is said in templates/words/settings.html.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

from generator.records import number, record

IN_FILE = "settings"
CONTROLLER, MANAGEMENT, CHARGER = "controller", "battery management", "charger"
SUN_CHARGER, CONTACTOR = "sun charger", "drive contactor"


@record
class ControllerSettings:
    """Currents, time and voltages of the motor's controller."""

    SAID_BY: ClassVar[str] = "controller"
    SAID_IN: ClassVar[str] = IN_FILE
    SAYS_ALSO: ClassVar[tuple[str, ...]] = (
        "most", "steady", "peak_left", "peak_time", "ramp", "fall", "cut_off", "regeneration",
    )  # fmt: skip
    device: str
    rule: str  # stated or customary: where the limit of the bank comes from
    most: float = number("current", "battery current, most")
    steady: float = number("current", "battery current, continuous")
    peak_left: float = number("power", "peak power left, old and cold")
    peak_time: float = number("minutes", "time at peak, most")
    ramp: float = number("seconds", "ramp to full torque")
    fall: float = number("voltage", "torque falls off from")
    cut_off: float = number("voltage", "cut-off below")
    regeneration: float = number("voltage", "no regeneration above")


@record
class OneOutSettings:
    """The controller once one of several strings is out."""

    SAID_BY: ClassVar[str] = "one_out"
    SAID_IN: ClassVar[str] = IN_FILE
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("current",)
    device: str
    bound_by: str
    current: float = number("current", "battery current, one string out")


@record
class ManagementSettings:
    """Currents, alarms, cell voltages and temperatures of each string's management system.

    ``charge_taken``: the reserve takes nearly all of the bank, so that the first alarm stands at
    the highest charge that is of use.
    """

    SAID_BY: ClassVar[str] = "management"
    SAID_IN: ClassVar[str] = IN_FILE
    SAYS_ALSO: ClassVar[tuple[str, ...]] = (
        "alarm", "trip", "cold_charge", "first_alarm", "second_alarm", "cruise_warning",
        "peak_warning", "cell_low_alarm", "cell_low", "cell_full", "coldest", "warmest",
        "hot_alarm", "hot",
    )  # fmt: skip
    device: str
    bound_by: str  # what of a string carries least
    charge_taken: bool
    alarm: float = number("current", "discharge of each string, alarm above")
    trip: float = number("current", "discharge of each string, cut-off above")
    cold_charge: float = number("current", "charge of each string, at coldest")
    first_alarm: float = number("share", "first alarm, at a charge of")
    second_alarm: float = number("share", "second alarm, at a charge of")
    cruise_warning: float = number("minutes", "second alarm to floor, at cruise")
    peak_warning: float = number("minutes", "second alarm to floor, at peak")
    cell_low_alarm: float = number("cell_voltage", "a cell low: alarm")
    cell_low: float = number("cell_voltage", "a cell low: cut-off")
    cell_full: float = number("cell_voltage", "a cell full: charge stops")
    coldest: float = number("temperature", "no charge below")
    warmest: float = number("temperature", "no charge above, regeneration included")
    hot_alarm: float = number("temperature", "a cell hot: alarm")
    hot: float = number("temperature", "a cell hot: cut-off")
    absent: Mapping[str, str] = field(
        default_factory=lambda: dict.fromkeys(
            ("cruise_warning", "peak_warning"), "current_not_given"
        )
    )


@record
class JoiningSettings:
    """When the contactors of several strings may close on one another."""

    SAID_BY: ClassVar[str] = "joining"
    SAID_IN: ClassVar[str] = IN_FILE
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("within",)
    device: str
    within: float = number("voltage", "strings joined within, most")


@record
class ChargerSettings:
    """Current, voltage and warmth of the charger from the shore."""

    SAID_BY: ClassVar[str] = "charger"
    SAID_IN: ClassVar[str] = IN_FILE
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("most", "ends", "warm")
    device: str
    most: float = number("current", "direct current, most")
    ends: float = number("voltage", "voltage, most")
    warm: float = number("temperature", "full current only with cells above")


@record
class ShoreSettings:
    """What the charger may take from the quay."""

    SAID_BY: ClassVar[str] = "shore_current"
    SAID_IN: ClassVar[str] = IN_FILE
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("most",)
    device: str
    most: float = number("current", "shore current, most")


@record
class SunSettings:
    """Current and voltage of the panels' charger."""

    SAID_BY: ClassVar[str] = "sun_charger"
    SAID_IN: ClassVar[str] = IN_FILE
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("most", "ends")
    device: str
    most: float = number("current", "direct current, most")
    ends: float = number("voltage", "voltage, most")


@record
class ContactorSettings:
    """When the drive contactor closes, and when that is given up."""

    SAID_BY: ClassVar[str] = "contactor"
    SAID_IN: ClassVar[str] = IN_FILE
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("difference", "reached", "given_up")
    device: str
    difference: float = number("voltage", "closes at a difference of, most")
    reached: float = number("seconds", "reached by pre-charge after")
    given_up: float = number("seconds", "pre-charge given up after")


@record
class Settings:
    """All values to be set, device by device, in the order of the list."""

    controller: ControllerSettings
    one_out: OneOutSettings | None  # of a bank with several strings
    management: ManagementSettings
    joining: JoiningSettings | None  # likewise
    charger: ChargerSettings
    shore: ShoreSettings | None  # where the breaker of the berth is known
    sun: SunSettings | None  # where she has panels
    contactor: ContactorSettings
