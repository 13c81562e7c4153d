"""Do motor, ratio and propeller belong together, and what would?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.handling.docking import Docking
from generator.analyses.motion.bench import Bench, Screw, full_power, plant_of, turns_at
from generator.analyses.motion.demand import Scale
from generator.analyses.motion.power import Power
from generator.analyses.percentiles import first_row, scalar
from generator.arrays import Array
from generator.case.case import Case
from generator.case.diesel import Diesel, Propeller
from generator.case.option import Motor, Option
from generator.physics.drive.cavitation import needed_area_ratio
from generator.physics.drive.shafting import shaft_diameter


@dataclass(frozen=True)
class Match:
    """Turns at full continuous power on the option's own propeller, and what would fit better."""

    turns: Array  # rad/s of the motor that full continuous power would take, per draw
    torque: Array  # N m of the motor that it would take there; key_figures has what comes about
    deviation: Array  # turns over rated, less 1
    beyond_curve: bool  # full power lies above the last speed of the hull form
    ratio: float  # with which she turns as rated in a calm, propeller kept
    advised: float  # that pulls hardest of those that match and keep her speed in a calm
    pitch: float | None  # m, with which she does, ratio kept; None if no pitch of the series does
    own: Screw
    best: Screw | None
    clearance: float | None  # at the tips over diameter, None without an aperture
    stall_torque: float  # N m at the shaft
    shaft_needed: float  # m
    blade_area_needed: float  # AE/A0 at the greatest pull


def match(
    case: Case,
    option: Option,
    found: Power,
    scale: Scale,
    docked: Docking,
    brief: bool = False,
) -> Match:
    """Full power on the calm-water curve; pitch, ratio and diameter for the best estimate.

    ``brief``: nothing is tried that would fit better, for a word that is asked many times.
    """
    calm, plant = found.curves["calm"], plant_of(option)
    rated, full = np.asarray(plant.rated_speed), np.asarray(full_power(plant))
    turns = turns_at(calm.output.power, calm.output.turns, calm.demand.feasible, full)
    propeller: Propeller = first_row(option.propeller)
    ratio = float(first_row(plant).gear_ratio)
    matched = ratio * scalar(np.atleast_2d(rated)) / scalar(turns)
    fit = (
        _kept(propeller, ratio, matched)
        if brief
        else _tried(Bench(case, option, found, scale, turns / scalar(turns)))
    )
    torque = scalar(np.asarray(docked.ahead_peak))
    stall = _stall_torque(first_row(plant))
    top = np.atleast_2d(np.where(calm.demand.feasible, calm.output.power, 0.0))[0].max()
    return Match(
        turns=turns,
        torque=np.atleast_2d(full / turns),
        deviation=np.atleast_2d(turns / rated - 1.0),
        beyond_curve=bool(top < scalar(full)),
        ratio=matched,
        advised=fit.advised,
        pitch=fit.pitch,
        own=fit.own,
        best=fit.best,
        clearance=_clearance(propeller),
        stall_torque=stall,
        shaft_needed=float(np.asarray(shaft_diameter(stall))),
        blade_area_needed=float(
            np.asarray(
                needed_area_ratio(
                    torque,
                    propeller.diameter,
                    propeller.blades,
                    propeller.shaft_depth,
                    scalar(np.asarray(found.vessel.water_density)),
                )
            )
        ),
    )


@dataclass(frozen=True)
class _Fit:
    """What would fit better, as in ``Match``."""

    advised: float
    pitch: float | None
    own: Screw
    best: Screw | None


def _tried(bench: Bench) -> _Fit:
    return _Fit(
        bench.serving(bench.propeller),
        bench.matching_pitch(),
        bench.screw(bench.propeller, bench.ratio),
        bench.best(),
    )


def _kept(propeller: Propeller, ratio: float, matched: float) -> _Fit:
    """Nothing tried: her own screw, and what it draws and pulls is not looked at."""
    own = Screw(float(propeller.diameter), float(propeller.pitch), ratio, np.nan, np.nan, np.nan)
    return _Fit(matched, None, own, None)


def _stall_torque(plant: Motor | Diesel) -> float:
    """Torque at the shaft when the motor pushes against a stopped propeller [N m]."""
    power = plant.peak_power if isinstance(plant, Motor) else plant.rated_power
    return float(power / plant.rated_speed * plant.gear_ratio * plant.gear_efficiency)


def _clearance(propeller: Propeller) -> float | None:
    if propeller.aperture_height is None:
        return None
    return float(0.5 * (propeller.aperture_height - propeller.diameter) / propeller.diameter)
