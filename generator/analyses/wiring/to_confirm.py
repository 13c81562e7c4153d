"""What is to be confirmed aboard? One record for each subject; its words in words/earthing.html."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

from generator.records import number, record

IN_FILE = "earthing"


@record
class ShoreEarth:
    """Her metal joined to that of every boat at the quay."""

    SAID_BY: ClassVar[str] = "shore_earth"
    SAID_IN: ClassVar[str] = IN_FILE
    id: str
    title: str
    confirm: str
    berth: str
    shore_power: bool
    residual: float = number("milliamperes", "residual current that trips")
    breaker: float | None = number("current", "breaker of the berth")
    charge_power: float | None = number("power", "power of the shore supply")
    absent: Mapping[str, str] = field(
        default_factory=lambda: dict.fromkeys(("breaker", "charge_power"), "not_said")
    )


@record
class Isolation:
    """Both poles free of hull and water."""

    SAID_BY: ClassVar[str] = "isolation"
    SAID_IN: ClassVar[str] = IN_FILE
    id: str
    title: str
    confirm: str
    monitor: bool
    ceiling: float = number("voltage", "voltage at the end of charge")
    insulation: float = number("megohms", "least insulation of both poles")
    leak: float = number("milliamperes", "leak through that insulation")
    shift: float = number("millivolts", "shift of the hull, most")


@record
class Bonding:
    """What met at the engine block."""

    SAID_BY: ClassVar[str] = "bonding"
    SAID_IN: ClassVar[str] = IN_FILE
    id: str
    title: str
    confirm: str
    installation: str  # shaft or saildrive
    area: float = number("section", "section of the motor's conductor")
    diameter: float = number("length_small", "diameter of the propeller")


@record
class Anodes:
    """Metal for her water, and when to look at it."""

    SAID_BY: ClassVar[str] = "anodes"
    SAID_IN: ClassVar[str] = IN_FILE
    id: str
    title: str
    confirm: str
    water: str  # salt, brackish or fresh
    waters: str
    installation: str
    weeks: float = number("count", "weeks until anodes are seen")


@record
class Lightning:
    """A strike down the mast."""

    SAID_BY: ClassVar[str] = "lightning"
    SAID_IN: ClassVar[str] = IN_FILE
    id: str
    title: str
    confirm: str
    mast_height: float = number("height", "height of the mast")
    nominal: float = number("energy", "nominal energy")


@record
class OtherSources:
    """Sources of the case that the lists do not size: told, so that none is left live."""

    SAID_BY: ClassVar[str] = "other_sources"
    SAID_IN: ClassVar[str] = IN_FILE
    id: str
    title: str
    confirm: str
    genset: float | None = number("power", "power of the charging machine")
    wind: float | None = number("watts", "power of the wind generator")
    absent: Mapping[str, str] = field(
        default_factory=lambda: dict.fromkeys(("genset", "wind"), "not_aboard")
    )


@record
class Scope:
    """Documents that end at 50 V, told by the ceiling and not by the label."""

    SAID_BY: ClassVar[str] = "scope"
    SAID_IN: ClassVar[str] = IN_FILE
    id: str
    title: str
    confirm: str
    nominal: float = number("voltage", "voltage on the label")
    ceiling: float = number("voltage", "voltage at the end of charge")
    cells: int = number("count", "cells in series")


@record
class Touch:
    """Above what may be touched."""

    SAID_BY: ClassVar[str] = "touch"
    SAID_IN: ClassVar[str] = IN_FILE
    id: str
    title: str
    confirm: str
    ceiling: float = number("voltage", "voltage at the end of charge")
    limit: float = number("voltage", "limit of voltage that may be touched")


ToConfirm = ShoreEarth | Isolation | Bonding | Anodes | Lightning | OtherSources | Scope | Touch
