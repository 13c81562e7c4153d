"""What does the propeller cost under sail, what does a little motor add, what comes back?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

import numpy as np

from generator.analyses.motion.demand import (
    Scale,
    calm_parts,
    calm_resistance,
    shaft_demand,
)
from generator.analyses.motion.plant import plant_output
from generator.analyses.motion.power import KNOT, Power
from generator.arrays import Array
from generator.case.case import Case
from generator.case.option import Option
from generator.physics.drive.interaction import advance_speed
from generator.physics.drive.regeneration import turbine_coefficients
from generator.physics.drive.sailing_drag import drag_coefficient, propeller_drag
from generator.records import number, record
from generator.tables.load import read_table

STATES = ("locked", "free", "feathered", "folded")
CARRIED = {"fixed": "locked", "folding": "folded", "feathering": "feathered"}
BEYOND = "beyond_in_draws"
SAILING = np.array([4.0, 5.0, 6.0]) * KNOT
SLOW_SAILING = np.array([2.0, 2.5, 3.0]) * KNOT
ONE_MORE = 1.0 * KNOT
SLOPE_STEP = 0.1 * KNOT
BEST_RATIO = 1.37  # J at which power over drag is greatest, from the four-quadrant curve


@record
class SailingRows:
    """At each of SAILING, per draw: drag and speed lost by the state of the propeller.

    What comes back goes into the bank; it costs speed beyond the screw turning freely.
    """

    ALONG: ClassVar[str] = "sailing"
    sailing: Array = number("speed", "speed under sail")
    locked: Array = number("force", "drag, propeller locked", cautious="high")
    free: Array = number("force", "drag, propeller turning freely", cautious="high")
    feathered: Array = number("force", "drag, propeller feathered", cautious="high")
    folded: Array = number("force", "drag, propeller folded", cautious="high")
    locked_lost: Array = number("speed_small", "speed lost, locked", cautious="high")
    free_lost: Array = number("speed_small", "speed lost, turning freely", cautious="high")
    feathered_lost: Array = number("speed_small", "speed lost, feathered", cautious="high")
    folded_lost: Array = number("speed_small", "speed lost, folded", cautious="high")
    returned: Array = number("watts", "power given back", cautious="low")
    returned_lost: Array = number("speed_small", "speed that giving back costs", cautious="high")
    absent: Mapping[str, str] = field(default_factory=dict)


@record
class OneMoreRows:
    """What adds a knot at each of SLOW_SAILING, the pull of the sails held; per draw."""

    ALONG: ClassVar[str] = "sailing"
    kept_in: str
    sailing: Array = number("speed", "speed under sail")
    shaft: Array = number("watts", "shaft power for a knot more", cautious="high")
    drain: Array = number("small_drain", "drawn for a knot more", cautious="high")
    absent: Mapping[str, str] = field(
        default_factory=lambda: dict.fromkeys(("shaft", "drain"), BEYOND)
    )


@record
class UnderSail:
    """The propeller while she sails. ``state``: how her own is carried then."""

    state: str
    rows: SailingRows
    one_more: OneMoreRows


def under_sail(case: Case, option: Option, found: Power, scale: Scale) -> UnderSail:
    """The pull of the sails is held: what drags the propeller takes off speed, and thrust adds."""
    slope = _slope(case, found, scale, SAILING)
    drag = {state: _drag(option, found, state) for state in STATES}
    back, cost = _returned(option, found)
    lost = {f"{state}_lost": np.atleast_2d(force / slope) for state, force in drag.items()}
    lacking = dict.fromkeys((*drag, *lost, "returned", "returned_lost"), BEYOND)
    if not back.any():
        why = "diesel_gives_nothing_back" if option.motor is None else "screw_gives_nothing_back"
        back, cost = np.full_like(back, np.nan), np.full_like(cost, np.nan)
        lacking |= dict.fromkeys(("returned", "returned_lost"), why)
    return UnderSail(
        state=CARRIED[option.propeller.kind],
        rows=SailingRows(
            sailing=SAILING,
            **drag,
            **lost,
            returned=back,
            returned_lost=np.atleast_2d(cost / slope),
            absent=lacking,
        ),
        one_more=_one_more(case, option, found, scale),
    )


def _water(case: Case, found: Power, scale: Scale, speed: Array) -> Array:
    parts = calm_parts(found.vessel, case.factors, speed)
    return calm_resistance(parts, case.factors, case.boat, scale.at(speed))


def _slope(case: Case, found: Power, scale: Scale, speed: Array) -> Array:
    """Resistance gained with speed [N s/m]."""
    pair = np.concatenate([speed - SLOPE_STEP, speed + SLOPE_STEP])
    low, high = np.split(np.atleast_2d(_water(case, found, scale, pair)), 2, axis=1)
    return np.asarray((high - low) / (2.0 * SLOPE_STEP))


def _drag(option: Option, found: Power, state: str) -> Array:
    screw = option.propeller
    water = advance_speed(SAILING, screw.wake_fraction)
    coefficient, _, _ = drag_coefficient(state)
    force = propeller_drag(
        coefficient, screw.diameter, screw.area_ratio, water, found.vessel.water_density
    )
    return np.atleast_2d(force)


def _one_more(case: Case, option: Option, found: Power, scale: Scale) -> OneMoreRows:
    """Shaft power and drain that add a knot to what the sails give."""
    faster = SLOW_SAILING + ONE_MORE
    pair = _water(case, found, scale, np.concatenate([SLOW_SAILING, faster]))
    sails, asked = np.split(np.atleast_2d(pair), 2, axis=1)
    condition = case.factors.propeller_condition
    demand = shaft_demand(found.vessel, option.propeller, condition, faster, asked - sails)
    output = plant_output(option, demand, case.factors)
    return OneMoreRows(
        "tank" if option.motor is None else "bank",
        SLOW_SAILING,
        np.atleast_2d(demand.shaft_power),
        np.atleast_2d(output.drain),
    )


def _returned(option: Option, found: Power) -> tuple[Array, Array]:
    """Power into the bank and the drag that it costs, a fixed screw turned by the water."""
    screw = option.propeller
    none = np.zeros((1, SAILING.size))
    if option.motor is None or screw.kind != "fixed":
        return none, none
    power, drag = (float(value) for value in turbine_coefficients(BEST_RATIO))
    kept = np.prod(read_table("drive/regeneration").column("share"))
    water = np.asarray(advance_speed(SAILING, screw.wake_fraction))
    disc = 0.25 * np.pi * np.asarray(screw.diameter) ** 2
    dynamic = 0.5 * np.asarray(found.vessel.water_density) * water**2 * disc
    free = _drag(option, found, "free")
    extra = np.maximum(drag * dynamic - free, 0.0)
    return np.atleast_2d(power * kept * dynamic * water), np.atleast_2d(extra)
