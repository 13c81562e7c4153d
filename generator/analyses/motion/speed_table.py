"""What is told of power over speed, in a calm and against wind and sea?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from itertools import chain
from typing import Any, ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.motion.plant import LIMITS
from generator.analyses.motion.power import KNOT
from generator.analyses.percentiles import side_by_side, spread
from generator.arrays import Array, Flags, Places
from generator.records import facts_of, number, numbers_of, record

SLOWEST_SHOWN = 1.5 * KNOT
MOST_BEYOND = 0.1  # share of draws beyond the formulas above which a speed is not tabulated:
# the band of its power would have no upper end


@record
class SpeedPower:
    """A row for each tabulated speed, per draw; a draw beyond the formulas has no value.

    ``beyond_limit``: the sea is beyond the wave formula. ``limit``: which of LIMITS binds where
    the middle of the draws is not within the continuous rating.
    """

    ALONG: ClassVar[str] = "speed"
    sea: tuple[str, ...]
    beyond_limit: tuple[bool, ...]
    within_continuous: tuple[bool, ...]
    within_peak: tuple[bool, ...]
    limit: tuple[str | None, ...]
    speed: Array = number("speed", "speed through the water")
    resistance: Array = number("force", "resistance", "", MOST_BEYOND)
    thrust: Array = number("force", "thrust", "", MOST_BEYOND)
    shaft_speed: Array = number("rpm", "turns of the shaft", "", MOST_BEYOND)
    motor: Array = number("rpm", "turns of motor or engine", "", MOST_BEYOND)
    propeller_efficiency: Array = number("ratio", "propeller efficiency", "low", MOST_BEYOND)
    shaft_power: Array = number("power", "shaft power", "high", MOST_BEYOND)
    clean_shaft_power: Array = number("power", "shaft power, clean hull", "", MOST_BEYOND)
    battery_power: Array = number("power", "power from the battery", "high", MOST_BEYOND)
    fuel_rate: Array = number("fuel_rate", "fuel burnt", "", MOST_BEYOND)
    absent: Mapping[str, str] = field(default_factory=dict)

    @classmethod
    def calm(cls, found: Findings) -> SpeedPower:
        """In calm water."""
        return _in_sea(found, "calm")

    @classmethod
    def in_wind(cls, found: Findings) -> SpeedPower:
        """Against each of the winds, one behind the other."""
        pieces = [_in_sea(found, sea) for sea in found.power.curves if sea != "calm"]
        facts: dict[str, Any] = {
            name: tuple(chain.from_iterable(getattr(piece, name) for piece in pieces))
            for name in facts_of(SpeedPower)
        }
        numbers: dict[str, Any] = {
            name: side_by_side(*(getattr(piece, name) for piece in pieces))
            for name in numbers_of(SpeedPower)
        }
        return cls(**facts, **numbers, absent=pieces[0].absent)


def _in_sea(found: Findings, sea: str) -> SpeedPower:
    """The speeds at which the formulas hold in nine draws of ten."""
    curve, clean, electric = (
        found.power.curves[sea], found.power.clean, found.option.motor is not None
    )  # fmt: skip
    output, demand, good = curve.output, curve.demand, curve.demand.feasible
    shaft = _known(demand.shaft_power, good)
    shown = np.isfinite(spread(shaft, "high", MOST_BEYOND).middle)
    places = np.flatnonzero(shown & (found.power.speed >= SLOWEST_SHOWN - 1e-9))
    within = _within(_known(output.load, good), places)
    drain, none = _known(output.drain, good)[:, places], np.full((1, places.size), np.nan)
    binding = np.atleast_2d(output.binding)[0, places]
    beyond = bool(np.atleast_2d(found.power.seas[sea].beyond_limit)[0].any())
    return SpeedPower(
        sea=(sea,) * places.size,
        beyond_limit=(beyond,) * places.size,
        within_continuous=within,
        within_peak=_within(_known(output.peak_load, good), places),
        limit=tuple(
            None if held else LIMITS[int(place)]
            for held, place in zip(within, binding, strict=True)
        ),
        speed=found.power.speed[places],
        resistance=_known(demand.resistance, good)[:, places],
        thrust=_known(demand.thrust, good)[:, places],
        shaft_speed=_known(demand.shaft_speed, good)[:, places],
        motor=_known(output.turns, good)[:, places],
        propeller_efficiency=_known(demand.propeller_efficiency, good)[:, places],
        shaft_power=shaft[:, places],
        clean_shaft_power=_known(clean.shaft_power, clean.feasible)[:, places],
        battery_power=drain if electric else none,
        fuel_rate=none if electric else drain,
        absent=_reasons(electric),
    )


def _reasons(electric: bool) -> dict[str, str]:
    idle = ("fuel_rate", "burns_no_fuel") if electric else ("battery_power", "no_propulsion_bank")
    return dict.fromkeys(numbers_of(SpeedPower), "beyond_in_draws") | dict((idle,))


def _known(values: Array, good: Flags) -> Array:
    """One row a draw, nan where the formulas do not hold."""
    table = np.atleast_2d(values)
    return np.asarray(np.where(np.isfinite(table) & np.atleast_2d(good), table, np.nan))


def _within(load: Array, places: Places) -> tuple[bool, ...]:
    """Whether the middle of the draws is within a rating; not where too many have no value."""
    middle = spread(load, "high", MOST_BEYOND).middle[places]
    return tuple(bool(each) for each in middle <= 1.0)
