"""SeaTrial: rows of rpm, speeds, wind, depth and fuel with the present engine."""

from __future__ import annotations

from dataclasses import dataclass

from generator.arrays import Numbers


@dataclass(frozen=True)
class TrialRow:
    """One step of the trial: one throttle setting, run on two opposite courses."""

    engine_speed: Numbers  # rad/s
    speed_out: Numbers  # m/s
    speed_back: Numbers | None  # m/s
    wind: Numbers  # m/s
    depth: Numbers | None  # m
    fuel_rate: Numbers | None  # m3/s
    line: int


@dataclass(frozen=True)
class SeaTrial:
    """The rows, and at what engine speed full throttle was reached."""

    rows: tuple[TrialRow, ...]
    full_throttle_speed: Numbers | None  # rad/s
    propeller_law_exponent: Numbers
