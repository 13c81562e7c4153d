"""Assumption: where does one number of the case come from, and how far is it to be trusted?"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Assumption:
    """One number that the study rests on, given by the owner or taken from the register.

    ``path`` names the field it fills in the frozen case (``options[1].motor.peak_power``);
    ``draw_key`` names the stream of its draws; it is shared by all fields that must move together
    (one register row, or one value of the case file that another option inherits). Value and
    range are SI; ``shown`` keeps the owner's or the register's own spelling, with its unit.
    """

    path: str
    draw_key: str
    value: float
    low: float
    high: float
    shape: str  # triangular, two-piece, normal (low and high: 5 and 95 %), lognormal (same), fixed
    unit: str
    shown: str
    shown_low: str
    shown_high: str
    origin: str  # given, default
    provenance: str  # weighed, measured, builder, estimate; for defaults "register"
    plus_minus: str  # as the owner wrote it, or ""
    source: str  # for defaults: key in tables/sources.csv
    mark: str  # published, common practice, memory; "" for given
    meaning: str
    line: int
    size: str = ""  # of boat or motor, where the register's row grows with it
