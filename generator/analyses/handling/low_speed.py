"""What does the battery give at a crawl, and what have owners of other boats read there?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.motion.plant import battery_power
from generator.analyses.motion.power import Power, at_speed
from generator.analyses.percentiles import Spread, best, scalar, spread
from generator.arrays import Array
from generator.case.case import Case
from generator.case.option import Motor, Option
from generator.physics.drive.gear import input_power
from generator.physics.drive.motor import published_losses
from generator.tables.load import read_table

KNOT = 1852.0 / 3600.0
SPEEDS = (2.0, 2.5, 3.0, 3.5)  # kn
READINGS = "drive/owners_readings"


@dataclass(frozen=True)
class Crawl:
    """At one speed [m/s], in a calm in service: W. ``best`` and ``worst`` by published curves."""

    speed: float
    shaft: float
    standing: float  # what the drive takes to turn without thrust: seal, standby, idle losses
    battery: Spread
    best: float
    worst: float


@dataclass(frozen=True)
class Reading:
    """What an owner has read on another boat [m/s, W], and this boat by the study."""

    boat: str
    note: str
    speed: float
    power: float
    here: Spread


@dataclass(frozen=True)
class LowSpeed:
    """The crawl of one option, and the readings beside it."""

    rows: tuple[Crawl, ...]
    readings: tuple[Reading, ...]


def low_speed(case: Case, option: Option, found: Power) -> LowSpeed | None:
    """Watts at low speed; none without a motor."""
    if option.motor is None:
        return None
    rows = tuple(_crawl(case, option.motor, found, knots * KNOT) for knots in SPEEDS)
    table = read_table(READINGS)
    readings = tuple(
        Reading(boat, note, speed * KNOT, power, _told(_drain(found), found, speed * KNOT))
        for boat, note, speed, power in zip(
            table.text("boat"), table.text("note"), table.column("speed").tolist(),
            table.column("power").tolist(), strict=True,
        )
    )  # fmt: skip
    return LowSpeed(rows, readings)


def _crawl(case: Case, motor: Motor, found: Power, speed: float) -> Crawl:
    curve = found.curves["calm"]
    shaft = _first(curve.demand.shaft_power, found, speed)
    turns = _first(curve.output.turns, found, speed)
    power = float(best(input_power(shaft, motor.gear_efficiency) + motor.seal_and_bearings)[0])
    rated = float(best(motor.continuous_power)[0])
    cable = float(best(motor.cable_efficiency)[0])
    low, high = published_losses(np.asarray(power / rated))
    idle = float(best(motor.seal_and_bearings)[0])
    return Crawl(
        speed=speed,
        shaft=shaft,
        standing=float(best(battery_power(motor, idle, turns, case.factors))[0]),
        battery=_told(curve.output.drain, found, speed),
        best=(power + rated * float(low)) / cable,
        worst=(power + rated * float(high)) / cable,
    )


def _drain(found: Power) -> Array:
    return found.curves["calm"].output.drain


def _told(values: Array, found: Power, speed: float) -> Spread:
    return spread(at_speed(np.atleast_2d(values), found.speed, speed))


def _first(values: Array, found: Power, speed: float) -> float:
    return scalar(best(at_speed(np.atleast_2d(values), found.speed, speed)))
