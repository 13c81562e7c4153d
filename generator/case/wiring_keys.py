"""Which keys describe the direct-current installation, the place of the bank and the papers?"""

from __future__ import annotations

from typing import Annotated

from generator.case.group import NEEDED, Group
from generator.case.key_kinds import (
    Area,
    Capacitance,
    CRate,
    Current,
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
from generator.case.wiring import CIRCUITS


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


class PapersKeys(Group):
    """What insurer and authorities have said."""

    insurer: Annotated[str | None, Word(("accepted", "applied", "refused", "not asked"))] = None
    conversion: Annotated[
        str | None, Word(("not in scope", "assessed", "enquired", "refused", "not asked"))
    ] = None
