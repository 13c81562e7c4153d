"""How hard does she pull at the quay, how soon does she stop, and what does a cross-wind do?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.motion.demand import Scale, calm_parts, calm_resistance, still_air
from generator.analyses.motion.hull import Vessel
from generator.analyses.motion.power import KNOT, Power
from generator.analyses.motion.pull import greatest_pull
from generator.arrays import Array
from generator.case.boat import Boat
from generator.case.case import Case
from generator.case.option import Option
from generator.physics.hull.windage import drag_area, wind_force
from generator.tables.method import method

ADDED_MASS = method("docking.added_mass")
STEP = 0.25 * KNOT
STOPS = (method("docking.stop_from"), method("docking.stop_from_more"))
SLOWEST = 1e-3  # m/s, in place of standstill
CROSS_WINDS = np.array([10.0, 15.0, 20.0, 25.0]) * KNOT
BOW_LEVER, SAIL_LEVER, RUDDER_LEVER = 0.25, 0.45, 0.45  # of length, from midships: our sketch
RUDDER_LIFT = method("docking.rudder_lift")


@dataclass(frozen=True)
class Stop:
    """From a speed [m/s] to standstill: m, s, per draw."""

    speed: float
    distance: Array
    time: Array


@dataclass(frozen=True)
class Docking:
    """Pull tied up [N], what the screw takes there [W at the shaft], stops, and the wind."""

    ahead: Array  # for good
    ahead_peak: Array
    astern: Array  # at peak
    power: Array  # W at the shaft, for good, tied up
    binding: int  # place in LIMITS, best estimate
    stops: tuple[Stop, ...]
    bow_force: Array  # N across the bow in CROSS_WINDS
    steerage: Array  # m/s at which the rudder holds the bow there


def docking(case: Case, option: Option, found: Power, scale: Scale) -> Docking:
    """The screw at standstill, and the boat stopped by it from 3 and 5 kn."""
    hull, still = found.vessel, np.array([0.0])
    steady = greatest_pull(option, found, case.factors, still, peak=False)
    peak = greatest_pull(option, found, case.factors, still, peak=True)
    astern = np.atleast_2d(peak.thrust * option.propeller.astern_share)
    bow, steerage = _cross_wind(case.boat, hull)
    return Docking(
        ahead=np.atleast_2d(steady.thrust),
        ahead_peak=np.atleast_2d(peak.thrust),
        astern=astern,
        power=np.atleast_2d(steady.shaft_power),
        binding=int(np.atleast_2d(steady.binding)[0, 0]),
        stops=_stops(case, option, hull, scale, astern),
        bow_force=bow,
        steerage=steerage,
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
    plant = option.motor or option.diesel
    assert plant is not None
    wait = np.asarray(plant.reversal_time)
    stops = []
    for start in STOPS:
        upto = round(start / STEP) + 1
        slower = np.asarray(mass / braking)[:, :upto]
        time = np.asarray(np.trapezoid(slower, dx=STEP, axis=1))[:, np.newaxis]
        way = np.asarray(np.trapezoid(slower * speed[:upto], dx=STEP, axis=1))[:, np.newaxis]
        stops.append(Stop(start, way + wait * start, time + wait))
    return tuple(stops)


def _cross_wind(boat: Boat, hull: Vessel) -> tuple[Array, Array]:
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
    return np.atleast_2d(on_hull + on_sail), np.atleast_2d(np.sqrt(moment / per_speed))
