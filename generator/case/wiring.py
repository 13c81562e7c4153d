"""How is an option installed, and which keys say so?"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from generator.arrays import Numbers
from generator.case.key_kinds import (
    NEEDED,
    Area,
    Capacitance,
    CRate,
    Current,
    Group,
    Length,
    Power,
    Resistance,
    Share,
    SpaceTemperature,
    TemperatureClass,
    Time,
    Voltage,
    Words,
    YesNo,
)
from generator.case.leaf import Whole, Word

CIRCUITS = ("string", "motor", "charger", "converter", "panel", "house feed", "inverter", "sun")
TEMPERATURE_CLASSES = (60, 75, 80, 90, 105, 125, 200)  # degC, of the table of allowable currents


@dataclass(frozen=True)
class CircuitPlan:
    """One circuit as planned; what is not said is chosen. m, m2, A, V."""

    name: str  # one of CIRCUITS
    run: Numbers  # one way, along the route of the cable
    current: Numbers | None  # continuous
    area: Numbers | None  # of one conductor
    conductors: int | None  # side by side in each pole
    fuse: Numbers | None  # rating
    fuse_voltage: Numbers | None
    fuse_breaking: Numbers | None
    fuse_distance: Numbers  # from the source


@dataclass(frozen=True)
class Wiring:
    """What all circuits share. degC, F, ohm, s, V, W."""

    temperature_class: Numbers  # of the insulation
    space_temperature: Numbers
    bundled: int | None  # conductors in one bundle; a pair counts as alone
    sheathed: bool | None  # from source to fuse
    circuits: tuple[CircuitPlan, ...]
    controller_capacitance: Numbers
    precharge_resistance: Numbers
    instant_resistance: Numbers  # of a cell, in the first instant, over that under load
    string_links: Numbers
    trunk_links: Numbers
    short_circuit_current: Numbers | None  # of one string, by its maker
    charge_rate: Numbers  # 1/s, charger over capacity, where the shore gives as much
    house_peak: Numbers  # W through the converter
    house_voltage: Numbers
    ramp_time: Numbers  # from nothing to full torque
    insulation_monitor: bool | None
    specialist_design: bool | None
    said: bool  # the case has such a section
    line: int


@dataclass(frozen=True)
class Compartment:
    """Where the bank stands, as seen aboard; none: not looked at."""

    dry: bool | None
    above_bilge: bool | None
    ventable: bool | None
    not_a_berth: bool | None
    escape_clear: bool | None
    works: str  # that cure what is not so


@dataclass(frozen=True)
class Papers:
    """What insurer and authorities have said."""

    insurer: str  # accepted, applied, refused, not asked
    conversion: str  # not in scope, assessed, enquired, refused, not asked


class CircuitKeys(Group):
    """One circuit as planned."""

    name: Annotated[str | None, Word(CIRCUITS)] = NEEDED
    run: Length = None
    current: Current = None
    area: Area = None
    conductors: Annotated[int | None, Whole(1, 4)] = None
    fuse: Current = None
    fuse_voltage: Voltage = None
    fuse_breaking: Current = None
    fuse_distance: Length = None


class WiringKeys(Group):
    """What all circuits share."""

    temperature_class: TemperatureClass = None
    space_temperature: SpaceTemperature = None
    bundled: Annotated[int | None, Whole(2, 24)] = None
    sheathed: YesNo = None
    circuits: tuple[CircuitKeys, ...] = ()
    controller_capacitance: Capacitance = None
    precharge_resistance: Resistance = None
    instant_resistance: Share = None
    string_links: Resistance = None
    trunk_links: Resistance = None
    short_circuit_current: Current = None
    charge_rate: CRate = None
    house_peak: Power = None
    house_voltage: Voltage = None
    ramp_time: Time = None
    insulation_monitor: YesNo = None
    specialist_design: YesNo = None


class CompartmentKeys(Group):
    """Where the bank stands, as seen aboard."""

    dry: YesNo = None
    above_bilge: YesNo = None
    ventable: YesNo = None
    not_a_berth: YesNo = None
    escape_clear: YesNo = None
    works: Words = None


INSURERS = (
    "accepted", "applied", "another asked", "refused", "no cover wanted", "not asked",
)  # fmt: skip


class PapersKeys(Group):
    """What insurer and authorities have said."""

    insurer: Annotated[str | None, Word(INSURERS)] = None
    conversion: Annotated[
        str | None, Word(("not in scope", "assessed", "enquired", "refused", "not asked"))
    ] = None
