"""What does the battery give at a crawl, and what have owners of other boats read there?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, ClassVar

import numpy as np

from generator.analyses.motion.plant import battery_power
from generator.analyses.motion.power import Power, at_speed
from generator.analyses.percentiles import best, side_by_side
from generator.arrays import Array
from generator.case.case import Case
from generator.case.option import Motor, Option
from generator.physics.drive.gear import input_power
from generator.physics.drive.motor import published_losses
from generator.records import number, numbers_of, record
from generator.tables.load import read_table

KNOT = 1852.0 / 3600.0
SPEEDS = (2.0, 2.5, 3.0, 3.5)  # kn
READINGS = "drive/owners_readings"


@record
class CrawlRows:
    """In a calm in service. What the drive takes to turn without thrust: seal, standby, idle."""

    ALONG: ClassVar[str] = "speed"
    speed: Array = number("speed", "speed through the water")
    shaft: Array = number("watts", "shaft power", expected=True)
    standing: Array = number("watts", "power without thrust", expected=True)
    battery: Array = number("watts", "power from the battery", cautious="high")
    best_curve: Array = number("watts", "by a large drive's curve", expected=True)
    worst_curve: Array = number("watts", "by a small drive's curve", expected=True)
    absent: Mapping[str, str] = field(default_factory=lambda: _lacking(CrawlRows))


@record
class ReadingRows:
    """What owners have read on other boats, and this boat by the study."""

    ALONG: ClassVar[str] = "speed"
    boat: tuple[str, ...]
    note: tuple[str, ...]
    speed: Array = number("speed", "speed of the other boat")
    read: Array = number("watts", "power that its owner read")
    here: Array = number("watts", "power here by the study", cautious="high")
    absent: Mapping[str, str] = field(default_factory=lambda: _lacking(ReadingRows))


@dataclass(frozen=True)
class LowSpeed:
    """The crawl of one option, and the readings beside it."""

    rows: CrawlRows
    readings: ReadingRows


def _lacking(kind: Any) -> dict[str, str]:
    return dict.fromkeys(numbers_of(kind), "beyond_formulas")


def low_speed(case: Case, option: Option, found: Power) -> LowSpeed | None:
    """Watts at low speed; none without a motor."""
    if option.motor is None:
        return None
    table, drain = read_table(READINGS), found.curves["calm"].output.drain
    speed = table.column("speed") * KNOT
    readings = ReadingRows(
        boat=table.text("boat"),
        note=table.text("note"),
        speed=speed,
        read=table.column("power"),
        here=_at(drain, found, speed),
    )
    return LowSpeed(_crawl(case, option.motor, found, np.array(SPEEDS) * KNOT), readings)


def _crawl(case: Case, motor: Motor, found: Power, speed: Array) -> CrawlRows:
    curve = found.curves["calm"]
    shaft = _at(curve.demand.shaft_power, found, speed)[:1]
    turns = best(_at(curve.output.turns, found, speed))
    power = best(input_power(shaft, motor.gear_efficiency) + motor.seal_and_bearings)
    rated = float(best(motor.continuous_power)[0])
    cable = float(best(motor.cable_efficiency)[0])
    low, high = published_losses(power / rated)
    idle = float(best(motor.seal_and_bearings)[0])
    standing = [float(best(battery_power(motor, idle, each, case.factors))[0]) for each in turns]
    return CrawlRows(
        speed=speed,
        shaft=shaft,
        standing=np.array(standing),
        battery=_at(curve.output.drain, found, speed),
        best_curve=(power + rated * np.asarray(low)) / cable,
        worst_curve=(power + rated * np.asarray(high)) / cable,
    )


def _at(values: Array, found: Power, speeds: Array) -> Array:
    """Between the tabulated speeds, a column for each of the wanted ones."""
    table = np.atleast_2d(values)
    return side_by_side(*(at_speed(table, found.speed, float(each)) for each in speeds))
