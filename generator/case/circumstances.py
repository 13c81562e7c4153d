"""Which of several defaults fits this boat, this propeller, this bank?"""

from __future__ import annotations

import re
from dataclasses import replace

from generator.case.boat import RIGS
from generator.case.boat_keys import BoatKeys, WatersKeys
from generator.case.leaf import Given
from generator.case.plant_keys import MotorKeys, PropellerKeys
from generator.case.schema import CaseKeys
from generator.units.grammar import from_si

MODERN_FROM = 1985  # hulls on the market since then have their centre of flotation further aft
HEAVY_BELOW = 4.34  # waterline length over cube root of canoe volume: end of the tested series
FETCH_DOUBT = 0.2  # of a fetch that is given without its own doubt
_SEA_WATER = 1025.0  # kg/m3; only to tell on which side of that end a boat lies
CLEAN = ("smooth", "fresh antifouling", "light slime")  # of BOTTOMS; what is worse fouls the screw


def boat_words(boat: BoatKeys) -> tuple[str, ...]:
    """The kind of keel, and whether the hull is an older one."""
    year = boat.year_on_market
    age = () if year is None else ("older",) if year < MODERN_FROM else ("modern",)
    return (boat.hull.keel_type or "", *age)


def waters_words(waters: WatersKeys) -> tuple[str, ...]:
    """How far the waters lie open to wind and sea."""
    return (waters.exposure or "",)


def read_off(fetch: Given | None) -> Given | None:
    """A fetch read off a chart, drawn a fifth either way unless the owner says how sure it is."""
    if fetch is None or fetch.plus_minus:
        return fetch
    low, high = (1.0 - FETCH_DOUBT) * fetch.value, (1.0 + FETCH_DOUBT) * fetch.value
    return replace(
        fetch,
        low=low,
        high=high,
        shown_low=f"{from_si(low, fetch.unit):.4g} {fetch.unit}",
        shown_high=f"{from_si(high, fetch.unit):.4g} {fetch.unit}",
        plus_minus=f"{FETCH_DOUBT:.0%}",
    )


def rig(boat: BoatKeys) -> str:
    """Her rig as told, else as named in the words of her type, else a sloop."""
    named = (word for word in RIGS if word in re.split(r"[^a-z]+", (boat.type or "").lower()))
    return boat.windage.rig or next(named, RIGS[0])


def boat_sizes(boat: BoatKeys) -> dict[str, float]:
    """What her defaults grow with [m]."""
    return {"length overall": _size(boat.hull.length_overall)}


def motor_sizes(motor: MotorKeys) -> dict[str, float]:
    """What the defaults of her drive grow with [W]."""
    return {"continuous power": _size(motor.continuous_power)}


def _size(given: Given | None) -> float:
    return 0.0 if given is None else given.value


def model_words(boat: BoatKeys, canoe_share: float) -> tuple[str, ...]:
    """How far the resistance series is to be trusted: heavy boats count as long-keeled.

    And whether what grows on the bottom grows on the blades.
    """
    hull = boat.hull
    fouled = ("fouled",) if boat.bottom and boat.bottom not in CLEAN else ()
    if hull.waterline_length and hull.displacement:
        volume = hull.displacement.value / _SEA_WATER * canoe_share
        if hull.waterline_length.value / volume ** (1 / 3) < HEAVY_BELOW:
            return (*fouled, "long")
    return (*fouled, hull.keel_type or "")


def motor_words(motor: MotorKeys) -> tuple[str, ...]:
    """Whether it turns the shaft itself, for no gear loses nothing; and what takes its heat."""
    direct = motor.gear_ratio is not None and motor.gear_ratio.value == 1.0
    return (*(("direct",) if direct else ()), *((motor.cooling,) if motor.cooling else ()))


def propeller_words(case: CaseKeys, screw: PropellerKeys) -> tuple[str, ...]:
    """The kind of propeller, narrower first, the keel it stands behind, what carries it."""
    kind = screw.kind or ""
    two = (f"{kind} two-blade",) if screw.blades == 2 else ()
    keel = case.boat.hull.keel_type or ""
    return (*two, kind, keel, _stern(screw.installation or "", keel))


def _stern(installation: str, keel: str) -> str:
    """What stands in the water before the screw: a long keel has it in its aperture."""
    if installation != "shaft":
        return installation
    return "shaft in an aperture" if keel == "long" else "open shaft"
