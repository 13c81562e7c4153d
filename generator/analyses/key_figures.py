"""Which single numbers of an option do criteria, sentences and the comparison rest on?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.legs import LegResult, Legs
from generator.analyses.power import Power, at_speed
from generator.analyses.spread import scalar, spread
from generator.arrays import Array, Flags
from generator.case.case import Case
from generator.case.option import Option


@dataclass(frozen=True)
class KeyFigures:
    """Powers W, drain W or m3/s, per draw; nan where the hull form does not reach the cruise."""

    continuous_shaft_power: Array
    clean_need: Array  # shaft power of the clean hull at planned cruise
    cruise_shaft_power: Array  # in service
    cruise_drain: Array
    service_share: Array  # shaft power in service over clean, at planned cruise
    worst_leg: int | None  # place of the must-make leg with the least in hand


def key_figures(case: Case, option: Option, power: Power, legs: Legs) -> KeyFigures:
    """Read the curves at planned cruise and find the worst leg."""
    cruise = float(np.asarray(case.planning.cruise_speed).flat[0])
    curve = power.curves["calm"]
    clean = at_speed(_known(power.clean.shaft_power, power.clean.feasible), power.speed, cruise)
    usable = curve.demand.feasible
    shaft = at_speed(_known(curve.demand.shaft_power, usable), power.speed, cruise)
    return KeyFigures(
        continuous_shaft_power=_continuous_shaft_power(option),
        clean_need=clean,
        cruise_shaft_power=shaft,
        cruise_drain=at_speed(_known(curve.output.drain, usable), power.speed, cruise),
        service_share=shaft / clean,
        worst_leg=_worst_leg(legs.results),
    )


def _known(values: Array, usable: Flags) -> Array:
    return np.atleast_2d(np.where(usable, values, np.nan))


def _continuous_shaft_power(option: Option) -> Array:
    """Power at the shaft coupling that the plant gives for good [W]."""
    if option.motor is not None:
        motor = option.motor
        power = (motor.continuous_power - motor.seal_and_bearings) * motor.gear_efficiency
        return np.atleast_2d(np.asarray(power))
    assert option.diesel is not None
    diesel = option.diesel
    power = (diesel.rated_power - diesel.alternator_power) * diesel.gear_efficiency
    return np.atleast_2d(np.asarray(power))


def _worst_leg(legs: tuple[LegResult, ...]) -> int | None:
    must = [place for place, leg in enumerate(legs) if leg.must_make]
    return min(must, key=lambda place: scalar(spread(legs[place].ratio).low), default=None)
