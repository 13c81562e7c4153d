"""Where does each line of the tables of options find its number, and how is it dressed?"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from operator import attrgetter
from typing import Any

from markupsafe import Markup

from generator.report.view import Quantity, View


@dataclass(frozen=True)
class Option:
    """One option as the tables show it."""

    key: str
    name: Markup
    view: View
    key_numbers: View
    against: View | None
    propeller: Markup
    diameter: Markup
    pitch: Markup
    note: Markup
    look: str
    word: Markup

    @property
    def motor(self) -> Any:
        """The plate of the motor; none in a diesel option."""
        return self.view.particulars.motor

    @property
    def diesel(self) -> Any:
        """The plate of the diesel; none in a battery option."""
        return self.view.particulars.diesel

    @property
    def plate(self) -> Any:
        """Of whichever drives her."""
        return self.motor or self.diesel

    @property
    def bank(self) -> Any:
        """The propulsion battery, if there is one."""
        return self.view.bank


@dataclass(frozen=True)
class Cell:
    """A number of one option; ``better``: than that of the other motor, beyond their doubt."""

    number: Quantity | None
    better: bool


Get = Callable[[Option], Any]


def _bank(name: str) -> Get:
    return lambda option: getattr(option.bank, name) if option.bank else None


def _rounded(name: str) -> Get:
    """Money as page 1 rounds it; the account itself adds to the unit."""
    return lambda option: replace(getattr(option.view.cost, name), kind="money")


def _rating(option: Option) -> Quantity:
    power: Quantity = option.motor.continuous_power if option.motor else option.diesel.rated_power
    return power


# Name of a line in the template, and of the difference where one is judged: where its number stands
# in an option, and its dress.
LINES: dict[str, tuple[Get, str]] = {
    "power": (_rating, "whole"),
    "speed": (attrgetter("plate.rated_speed"), ""),
    "ratio": (attrgetter("plate.gear_ratio"), "whole"),
    "voltage": (_bank("nominal_voltage"), "whole"),
    "charge": (_bank("charge"), ""),
    "mass": (_bank("mass"), ""),
    "net": (attrgetter("view.weight.net"), "signed"),
    "continuous": (attrgetter("key_numbers.continuous_shaft"), ""),
    "top_continuous": (attrgetter("view.top_speed.continuous"), ""),
    "top_peak": (attrgetter("view.top_speed.peak"), ""),
    "peak_time": (
        lambda option: option.view.duty.peak_warm if option.view.duty else None, ""
    ),
    "made": (lambda option: option.against.made if option.against else None, ""),
    "calm_range": (attrgetter("key_numbers.calm_range"), ""),
    "calm_aged": (attrgetter("key_numbers.calm_aged"), ""),
    "wind_aged": (attrgetter("key_numbers.wind_aged"), ""),
    "usable": (_bank("usable"), ""),
    "available": (_bank("available_aged"), ""),
    "sinkage": (attrgetter("view.weight.sinkage"), "signed"),
    "trim": (attrgetter("view.weight.trim"), "signed"),
}  # fmt: skip
MONEY: dict[str, tuple[Get, str]] = {  # which a copy without prices leaves out
    "first": (_rounded("first"), ""),
    "yearly": (_rounded("yearly"), ""),
    "present": (_rounded("present_value"), ""),
    "keep": (_rounded("against_keep"), "signed"),
    "new": (_rounded("against_new_diesel"), "signed"),
}
