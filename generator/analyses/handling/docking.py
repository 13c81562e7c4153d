"""How hard does she pull at the quay, how soon does she stop, and what does a cross-wind do?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

import numpy as np

from generator.analyses.motion.bench import at_shaft, full_power, plant_of
from generator.analyses.motion.demand import Scale, calm_parts, calm_resistance, still_air
from generator.analyses.motion.hull import Vessel
from generator.analyses.motion.plant import LIMITS
from generator.analyses.motion.power import KNOT, Power
from generator.analyses.motion.pull import greatest_pull
from generator.arrays import Array
from generator.case.boat import Boat
from generator.case.case import Case
from generator.case.option import Option
from generator.physics.hull.windage import drag_area, wind_force
from generator.records import number, record
from generator.tables.method import method

ADDED_MASS = method("docking.added_mass")
STEP = 0.25 * KNOT
STOPS = (method("docking.stop_from"), method("docking.stop_from_more"))
SLOWEST = 1e-3  # m/s, in place of standstill
CROSS_WINDS = np.array([10.0, 15.0, 20.0, 25.0]) * KNOT
BOW_LEVER, SAIL_LEVER, RUDDER_LEVER = 0.25, 0.45, 0.45  # of length, from midships: our sketch
RUDDER_LIFT = method("docking.rudder_lift")


@record
class Stop:
    """From a speed to standstill in still air; per draw."""

    speed: float = number("speed", "speed before she stops")
    distance: Array = number("height", "way to standstill", cautious="high")
    lengths: Array = number("ratio", "way over length overall", cautious="high")
    time: Array = number("seconds", "time to standstill", cautious="high")


@record
class CrossWind:
    """The wind across her bow in CROSS_WINDS."""

    ALONG: ClassVar[str] = "wind"
    wind: Array = number("wind", "wind across her")
    bow_force: Array = number("force", "force across the bow", cautious="high")
    steerage: Array = number("speed", "speed at which the rudder holds", cautious="high")


@record
class Docking:
    """Pull tied up, what the screw takes there, stops, and the wind; per draw.

    ``bollard_limit``: which of LIMITS binds tied up, for the best estimate.
    """

    bollard_limit: str
    stops: tuple[Stop, ...]
    cross_wind: CrossWind
    ahead: Array = number("force", "pull ahead, continuous rating", cautious="low")
    ahead_peak: Array = number("force", "pull ahead at peak", cautious="low")
    astern: Array = number("force", "pull astern at peak", cautious="low")
    bollard_power: Array = number("power", "shaft power, tied up", cautious="high")
    of_rated: Array = number("share", "shaft power over rated, tied up", cautious="high")
    absent: Mapping[str, str] = field(
        default_factory=lambda: dict.fromkeys(
            ("ahead", "ahead_peak", "astern", "bollard_power", "of_rated"), "nothing_at_shaft"
        )
    )


def docking(case: Case, option: Option, found: Power, scale: Scale) -> Docking:
    """The screw at standstill, and the boat stopped by it from 3 and 5 kn."""
    hull, still = found.vessel, np.array([0.0])
    steady = greatest_pull(option, found, case.factors, still, peak=False)
    peak = greatest_pull(option, found, case.factors, still, peak=True)
    astern = np.atleast_2d(peak.thrust * option.propeller.astern_share)
    plant, taken = plant_of(option), np.atleast_2d(steady.shaft_power)
    return Docking(
        bollard_limit=LIMITS[int(np.atleast_2d(steady.binding)[0, 0])],
        stops=_stops(case, option, hull, scale, astern),
        cross_wind=_cross_wind(case.boat, hull),
        ahead=np.atleast_2d(steady.thrust),
        ahead_peak=np.atleast_2d(peak.thrust),
        astern=astern,
        bollard_power=taken,
        of_rated=taken / at_shaft(plant, full_power(plant)),
    )


def _stops(
    case: Case, option: Option, hull: Vessel, scale: Scale, astern: Array
) -> tuple[Stop, ...]:
    """Way lost under thrust astern and her own resistance, after the time to reverse."""
    steps = round(max(STOPS) / STEP)
    speed = np.maximum(np.arange(steps + 1) * STEP, SLOWEST)
    parts = calm_parts(hull, case.factors, speed)
    drag = calm_resistance(parts, case.factors, case.boat, scale.at(speed))
    braking = drag + still_air(hull, speed) + astern
    mass = np.asarray(hull.displacement) * (1.0 + ADDED_MASS)
    wait = np.asarray(plant_of(option).reversal_time)
    length, stops = np.asarray(case.boat.hull.length_overall), []
    for start in STOPS:
        upto = round(start / STEP) + 1
        slower = np.asarray(mass / braking)[:, :upto]
        time = np.asarray(np.trapezoid(slower, dx=STEP, axis=1))[:, np.newaxis]
        way = np.asarray(np.trapezoid(slower * speed[:upto], dx=STEP, axis=1))[:, np.newaxis]
        whole = way + wait * start
        stops.append(Stop(start, whole, np.atleast_2d(whole / length), time + wait))
    return tuple(stops)


def _cross_wind(boat: Boat, hull: Vessel) -> CrossWind:
    """Wind across the forward half and the furled headsail, and the way that balances it.

    The wind on the after half, which helps, is left out.
    """
    length = boat.hull.length_overall
    half = drag_area(0.5 * length, hull.freeboard, 0.0, 0.0, 0.0, 0.0, 0.0)
    rolled = drag_area(0.0, 0.0, hull.mast_height, 0.0, 0.0, boat.windage.furled_sail_width, 0.0)
    on_hull, on_sail = (wind_force(area, CROSS_WINDS, 0.0) for area in (half, rolled))
    moment = (on_hull * BOW_LEVER + on_sail * SAIL_LEVER) * length
    area = 0.5 * np.asarray(hull.rudder.wetted_area)
    arm = RUDDER_LEVER * np.asarray(hull.form.waterline_length)
    per_speed = 0.5 * hull.water_density * area * RUDDER_LIFT * arm
    return CrossWind(
        CROSS_WINDS,
        np.atleast_2d(on_hull + on_sail),
        np.atleast_2d(np.sqrt(moment / per_speed)),
    )
