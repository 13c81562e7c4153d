"""Diesel: engine, tank, consumption, gear, condition; and the propeller that it turns."""

from __future__ import annotations

from dataclasses import dataclass

from generator.arrays import Numbers


@dataclass(frozen=True)
class Diesel:
    """A diesel auxiliary, present or new. W, rad/s, m3, kg."""

    rated_power: Numbers  # W at the flywheel
    rated_speed: Numbers  # rad/s
    gear_ratio: Numbers  # engine turns per shaft turn
    gear_efficiency: Numbers
    fuel_scale: Numbers  # on the fuel curve
    tank: Numbers  # m3
    usable_tank_share: Numbers
    year: int | None
    hours: Numbers | None  # s
    hours_per_year: Numbers | None  # s per year, hour meter
    life: Numbers  # s of running until an overhaul
    calendar_life: Numbers  # years until an overhaul, however little she runs
    wear_shape: Numbers  # how steeply the chance of an overhaul grows with wear
    enough: bool | None  # whether the engine ever was enough; none: nobody said
    condition: str  # good, worn, dying
    alternator_power: Numbers  # W taken while motoring
    reversal_time: Numbers  # s from ahead to full thrust astern


@dataclass(frozen=True)
class Propeller:
    """The screw and how it stands behind the hull. m, [-]."""

    kind: str  # fixed, folding, feathering
    blades: int
    diameter: Numbers
    pitch: Numbers
    area_ratio: Numbers
    thrust_scale: Numbers  # on KT: two blades, folding
    torque_scale: Numbers  # on KQ: feathering
    wake_fraction: Numbers
    thrust_deduction: Numbers
    rotative_efficiency: Numbers
    shaft_efficiency: Numbers  # bearings, seal under load
    installation: str  # shaft, saildrive
    astern_share: Numbers  # pull astern over pull ahead at the same torque [-]
    aperture_height: Numbers | None  # m clear for the disc and its clearance above and below
    shaft_diameter: Numbers | None  # m
    shaft_depth: Numbers  # m below the surface
    shaft_diameter_share: Numbers  # of diameter, used when shaft_diameter is absent
    shaft_run: Numbers | None  # m of shaft in open water between hull and screw
    shaft_run_share: Numbers  # of diameter, used when shaft_run is absent
    shaft_slope: Numbers  # degrees between shaft and flow
    stern_gear_area: Numbers | None  # m2 from ahead: bracket, boss and anodes, or the leg
    stern_gear_share: Numbers  # of the disc, used when stern_gear_area is absent
    stern_gear_drag: Numbers  # drag coefficient on that area
