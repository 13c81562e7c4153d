"""Wiring: what the case says of the direct-current installation and of the place of the bank."""

from __future__ import annotations

from dataclasses import dataclass

from generator.arrays import Numbers

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
