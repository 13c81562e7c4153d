"""Do motor, ratio and propeller belong together, and what would?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

import numpy as np

from generator.analyses.handling.docking import Docking
from generator.analyses.motion.bench import (
    TIP_CLEARANCE,
    Bench,
    Screw,
    full_power,
    plant_of,
    turns_at,
)
from generator.analyses.motion.demand import Scale
from generator.analyses.motion.power import Power
from generator.analyses.percentiles import first_row, scalar
from generator.arrays import Array, Numbers
from generator.case.case import Case
from generator.case.diesel import Diesel, Propeller
from generator.case.option import Motor, Option
from generator.physics.drive.cavitation import needed_area_ratio
from generator.physics.drive.shafting import shaft_diameter
from generator.records import number, record, working


@record
class BestScrew:
    """The propeller that asks for least at cruise, with the ratio that serves it."""

    kept_in: str
    diameter: float = number("length_small", "best diameter")
    pitch: float = number("length_small", "best pitch")
    ratio: float = number("ratio", "reduction for the best propeller")
    aperture_needed: float = number("length_small", "aperture of the best propeller")
    pull: float = number("force", "lasting pull of the best propeller")
    efficiency: float = number("ratio", "efficiency of the best propeller")
    cruise: float = number("drain", "drawn at cruise with it")
    saving: float = number("drain", "saved at cruise by it")
    saved: float = number("share", "share saved at cruise by it")
    absent: Mapping[str, str] = field(
        default_factory=lambda: dict.fromkeys(("saving", "saved"), "screw_cannot_hold")
    )


@record
class Match:
    """Turns at full continuous power on the option's own propeller, and what would fit better.

    Turns and torque are those that full power would take; key_figures has what comes about.
    ``beyond_curve``: full power lies above the last speed of the hull form. ``shaft_holds`` is
    nothing where nobody measured the shaft. ``clearance`` is that of the tips over the diameter.
    """

    beyond_curve: bool
    shaft_holds: bool | None
    cavitates: bool  # tied up at peak, by the area that her blades have
    best: BestScrew | None
    turns: Array = number("rpm", "motor turns at full power")
    torque: Array = number("torque", "motor torque at full power")
    deviation: Array = number("share", "turns off the rated ones")
    ratio: float = number("ratio", "reduction that matches")
    advised: float = number("ratio", "reduction advised")  # pulls hardest and keeps calm speed
    pitch: float | None = number("length_small", "pitch that matches")
    own_efficiency: float = number("ratio", "efficiency of her own propeller")
    aperture_height: Numbers | None = number("length_small", "height of the aperture")
    clearance: float | None = number("share", "tip clearance over diameter")
    stall_torque: float = number("torque", "torque at the shaft, stalled")
    shaft_needed: float = number("length_small", "shaft diameter needed")
    shaft_diameter: Numbers | None = number("length_small", "shaft diameter aboard")
    blade_area_needed: float = number("ratio", "blade area needed over disc")
    own: Screw = working()
    absent: Mapping[str, str] = field(default_factory=lambda: ABSENT)


ABSENT: Mapping[str, str] = {
    **dict.fromkeys(("turns", "torque", "deviation", "ratio", "advised"), "beyond_formulas"),
    "pitch": "no_pitch_does",
    "own_efficiency": "cruise_beyond_formulas",
    "aperture_height": "no_aperture",
    "clearance": "no_aperture",
    "shaft_diameter": "shaft_not_measured",
}


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
    stall = _stall_torque(first_row(plant))
    shaft = float(np.asarray(shaft_diameter(stall)))
    area = _area_needed(scalar(docked.ahead_peak), propeller, found)
    top = np.atleast_2d(np.where(calm.demand.feasible, calm.output.power, 0.0))[0].max()
    own = propeller.shaft_diameter
    return Match(
        beyond_curve=bool(top < scalar(full)),
        shaft_holds=None if own is None else bool(own >= shaft),
        cavitates=area > float(propeller.area_ratio),
        best=_offered(fit, option),
        turns=turns,
        torque=np.atleast_2d(full / turns),
        deviation=np.atleast_2d(turns / rated - 1.0),
        ratio=matched,
        advised=fit.advised,
        pitch=fit.pitch,
        own_efficiency=fit.own.efficiency,
        aperture_height=propeller.aperture_height,
        clearance=_clearance(propeller),
        stall_torque=stall,
        shaft_needed=shaft,
        shaft_diameter=own,
        blade_area_needed=area,
        own=fit.own,
    )


@dataclass(frozen=True)
class _Fit:
    """What would fit better, as in ``Match``."""

    advised: float
    pitch: float | None
    own: Screw
    best: Screw | None


def _offered(fit: _Fit, option: Option) -> BestScrew | None:
    """The best propeller beside her own."""
    best, own = fit.best, fit.own
    if best is None:
        return None
    return BestScrew(
        kept_in="tank" if option.motor is None else "bank",
        diameter=best.diameter,
        pitch=best.pitch,
        ratio=best.ratio,
        aperture_needed=best.diameter * (1.0 + 2.0 * TIP_CLEARANCE),
        pull=best.pull,
        efficiency=best.efficiency,
        cruise=best.drain,
        saving=own.drain - best.drain,
        saved=1.0 - best.drain / own.drain,
    )


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


def _area_needed(thrust: float, propeller: Propeller, found: Power) -> float:
    """Blade area over disc that carries a thrust [N] tied up."""
    water = scalar(np.asarray(found.vessel.water_density))
    needed = needed_area_ratio(
        thrust, propeller.diameter, propeller.blades, propeller.shaft_depth, water
    )
    return float(np.asarray(needed))


def _clearance(propeller: Propeller) -> float | None:
    if propeller.aperture_height is None:
        return None
    return float(0.5 * (propeller.aperture_height - propeller.diameter) / propeller.diameter)
