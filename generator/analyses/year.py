"""How does a year go, hour by hour: is there charge when she wants to leave, and from where?"""

from __future__ import annotations

from dataclasses import dataclass

from generator.arrays import Array

SOURCES = ("sun", "wind", "screw", "shore", "genset")
USES = ("legs", "house", "charging losses")


@dataclass(frozen=True)
class LegYear:
    """How often a leg was wanted and made in a year, (years,) each."""

    name: str
    wanted: int
    made: Array  # at the owner's speed
    slowed: Array  # at a slower speed, for want of charge
    refused: Array


@dataclass(frozen=True)
class Year:
    """One option over many years of weather; energy J at the terminals of the bank.

    ``sources`` and ``uses`` are (12, years) by name; ``state`` is charge over capacity at every
    hour, (8760, years). Sun that found the bank full is ``spilled``, load that found it empty
    ``unserved``. ``weekly_sun`` and ``weekly_house`` are (52, years): what the panels can give
    and what the house takes; ``weekly_legs`` is (52,): what the legs would take.
    """

    capacity: float  # J, of the bank at the middle of its life
    floor: float  # J, below which nothing is drawn
    reserve: float  # J above the floor that is never planned for
    state: Array
    sources: dict[str, Array]
    uses: dict[str, Array]
    spilled: Array
    unserved: Array
    legs: tuple[LegYear, ...]
    hours_below_reserve: Array  # (years,)
    hours_cold: Array  # in which the bank may not be charged
    shore_wall: Array  # J from the wall
    fuel: Array  # m3 of the genset
    cycles: Array  # charge through the bank over its capacity
    governing_month: int  # 0 to 11, that with the least charge left
    months_alone: tuple[int, ...]  # in which the panels cover house and legs, three years in four
    weekly_sun: Array
    weekly_house: Array
    weekly_legs: Array
    away_weeks: Array  # (52,) flags as 0 or 1: weeks in which she is used
    imbalance: float  # greatest error of the energy balance of an hour, over capacity


@dataclass(frozen=True)
class OptionYear:
    """What one option brings to the year, its best estimate. J, W, s.

    ``leg_energy`` and ``leg_time`` are (legs, speeds): at the owner's speed first, then at
    slower ones; nan where it cannot be done.
    """

    capacity: float
    floor: float
    reserve: float
    leg_energy: Array
    leg_time: Array
