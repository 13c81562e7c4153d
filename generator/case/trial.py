"""SeaTrial: rows of rpm, speeds, wind, depth and fuel with the present engine."""

from __future__ import annotations

from dataclasses import dataclass

from generator.arrays import Numbers


@dataclass(frozen=True)
class TrialRow:
    """One step of the trial: one throttle setting, run on two opposite courses."""

    engine_speed: Numbers  # rad/s, of the motor in a converted boat
    engine_speed_back: Numbers | None  # rad/s on the opposite course, where it was read again
    speed_out: Numbers  # m/s
    speed_back: Numbers | None  # m/s
    wind: Numbers  # m/s
    depth: Numbers | None  # m
    fuel_rate: Numbers | None  # m3/s
    alternator_power: Numbers | None  # W; none: as of the engine
    curve_power: Numbers | None  # W off the maker's full-load curve: true at full throttle only
    battery_power: Numbers | None  # W at the terminals, of a converted boat
    line: int


@dataclass(frozen=True)
class SeaTrial:
    """The rows, and at what engine speed full throttle was reached."""

    with_option: (
        str | None
    )  # id of the battery option whose motor drove the rows with battery power
    rows: tuple[TrialRow, ...]
    full_throttle_speed: Numbers | None  # rad/s
    propeller_law_exponent: Numbers
