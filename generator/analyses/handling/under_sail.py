"""What does the propeller cost under sail, what does a little motor add, what comes back?"""

from __future__ import annotations

from dataclasses import dataclass

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
from generator.tables.load import read_table

STATES = ("locked", "free", "feathered", "folded")
SAILING = np.array([4.0, 5.0, 6.0]) * KNOT
SLOW_SAILING = np.array([2.0, 2.5, 3.0]) * KNOT
ONE_MORE = 1.0 * KNOT
SLOPE_STEP = 0.1 * KNOT
BEST_RATIO = 1.37  # J at which power over drag is greatest, from the four-quadrant curve


@dataclass(frozen=True)
class UnderSail:
    """Drag [N] and speed lost [m/s] by state; power for a knot more [W]; what comes back [W].

    ``drag`` and ``lost`` are by state, (draws, speeds of SAILING); ``more_*`` by SLOW_SAILING.
    """

    drag: dict[str, Array]
    lost: dict[str, Array]
    more_shaft: Array
    more_drain: Array  # W of the bank or m3/s of fuel
    returned: Array  # W into the bank by SAILING; 0 for folding and feathering ones and diesels
    returned_lost: Array  # m/s that it costs, beyond the screw turning freely


def under_sail(case: Case, option: Option, found: Power, scale: Scale) -> UnderSail:
    """The pull of the sails is held: what drags the propeller takes off speed, and thrust adds."""
    slope = _slope(case, found, scale, SAILING)
    drag = {state: _drag(option, found, state) for state in STATES}
    shaft, drain = _one_more(case, option, found, scale)
    power, cost = _returned(option, found)
    return UnderSail(
        drag=drag,
        lost={state: np.atleast_2d(force / slope) for state, force in drag.items()},
        more_shaft=shaft,
        more_drain=drain,
        returned=power,
        returned_lost=np.atleast_2d(cost / slope),
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


def _one_more(case: Case, option: Option, found: Power, scale: Scale) -> tuple[Array, Array]:
    """Shaft power and drain that add a knot to what the sails give."""
    faster = SLOW_SAILING + ONE_MORE
    pair = _water(case, found, scale, np.concatenate([SLOW_SAILING, faster]))
    sails, asked = np.split(np.atleast_2d(pair), 2, axis=1)
    condition = case.factors.propeller_condition
    demand = shaft_demand(found.vessel, option.propeller, condition, faster, asked - sails)
    output = plant_output(option, demand, case.factors)
    return np.atleast_2d(demand.shaft_power), np.atleast_2d(output.drain)


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
