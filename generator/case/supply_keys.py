"""Which keys describe what charges the bank?"""

from __future__ import annotations

from typing import Annotated

from generator.case.group import NEEDED, Group
from generator.case.key_kinds import (
    Bearing,
    Length,
    Power,
    Share,
    ShareOrNone,
    Speed,
    Tilt,
    Words,
    YesNo,
)
from generator.case.leaf import Word


class PanelKeys(Group):
    """Panels of one kind in one place."""

    name: Words = NEEDED
    mounting: Annotated[str | None, Word(("free", "glued"))] = None
    power: Power = NEEDED
    tilt: Tilt = None
    heading: Bearing = None
    shading: Share = None
    salt: Share = None
    under_way: Share = None
    conversion: Share = None
    heat_loss: ShareOrNone = None


class ChargerKeys(Group):
    """The charger on shore power."""

    power: Power = None
    efficiency: Share = None


class GensetKeys(Group):
    """A charging machine that burns diesel."""

    power: Power = NEEDED
    start: ShareOrNone = None
    stop: Share = None


class WindGeneratorKeys(Group):
    """A wind generator."""

    rotor_diameter: Length = NEEDED
    efficiency: Share = None
    rated_power: Power = None
    cut_in: Speed = None


class SupplyKeys(Group):
    """Every source of one option."""

    charger: ChargerKeys = ChargerKeys()
    panels: tuple[PanelKeys, ...] = ()
    genset: GensetKeys = GensetKeys()
    wind: WindGeneratorKeys = WindGeneratorKeys()
    regeneration: YesNo = None
