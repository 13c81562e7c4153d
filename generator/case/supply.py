"""What charges the bank of an option, and which keys say so?"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from generator.arrays import Numbers
from generator.case.key_kinds import (
    NEEDED,
    Bearing,
    Group,
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


@dataclass(frozen=True)
class PanelGroup:
    """Panels of one kind in one place. W, degrees, shares."""

    name: str
    mounting: str  # free: air behind them; glued: on the deck
    power: Numbers  # of the group, at standard conditions
    tilt: Numbers  # degrees from level
    heading: Numbers | None  # degrees from north; none: she swings, all headings alike
    shading: Numbers  # share of the light that rig, boom and people leave
    salt: Numbers  # share that dirt and salt leave
    under_way: Numbers  # share of that at anchor, heeled and with sails up
    conversion: Numbers  # panel to battery: controller, wires, unequal panels
    heat_loss: Numbers  # share of power lost per K above 25 degC
    line: int


@dataclass(frozen=True)
class Charger:
    """The charger on shore power. W into the bank; from the wall to the bank."""

    power: Numbers | None  # none: by the current of its circuit, else by charge_rate
    efficiency: Numbers


@dataclass(frozen=True)
class Genset:
    """A charging machine that burns diesel. W into the bank; shares of charge."""

    power: Numbers
    start: Numbers  # charge above the reserve, of what is above it when full, at which it starts
    stop: Numbers


@dataclass(frozen=True)
class WindGenerator:
    """A wind generator. m, m/s, W."""

    rotor_diameter: Numbers
    efficiency: Numbers  # of the wind's power through the rotor, into the bank
    rated_power: Numbers  # where it is held
    cut_in: Numbers


@dataclass(frozen=True)
class Supply:
    """Every source of one option; what is none is not there."""

    charger: Charger
    panels: tuple[PanelGroup, ...]
    genset: Genset | None
    wind: WindGenerator | None
    regeneration: bool  # is the screw left turning under sail?

    @property
    def extra(self) -> tuple[str, ...]:
        """What charges beside the plug and has a mass and a price: words of prices.SOURCES."""
        there = (
            ("panels", bool(self.panels)),
            ("genset", self.genset is not None),
            ("wind generator", self.wind is not None),
        )
        return tuple(name for name, has in there if has)


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
