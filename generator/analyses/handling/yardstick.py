"""What does the engine that is in her do at full throttle? The yardstick of pull and speed."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from generator.analyses.handling.docking import docking
from generator.analyses.handling.headwind import headwind
from generator.analyses.motion.demand import Scale
from generator.analyses.motion.hull import Vessel
from generator.analyses.motion.power import KNOT, power
from generator.analyses.motion.pull import greatest_pull
from generator.analyses.percentiles import best, scalar
from generator.arrays import Array, Numbers
from generator.case.case import Case
from generator.case.option import Option
from generator.tables.method import method

SPEEDS = np.array([3.0, 3.5]) * KNOT  # at which pull is compared: criteria 4 and 6
MISSED = method("judging.turns_missed")  # of rated turns; an engine short of more counts as it is


@dataclass(frozen=True)
class Yardstick:
    """The present engine in health, at full throttle, on its own propeller; per draw.

    Thrust is what is left of it behind the hull. ``counts`` is False where the owner says that
    the engine never was enough. ``turns`` rad/s is what it reaches, where that is short of rated
    by more than a tenth.
    """

    counts: bool
    turns: float | None
    pull: Array  # N, at SPEEDS
    top: Array  # m/s in a calm
    stop: Array  # m, from 3 kn to standstill
    made_good: Array  # m/s against each of WINDS


def yardstick(case: Case, hull: Vessel, scale: Scale) -> Yardstick:
    """Of the boat as she is, whatever her options are."""
    turns = _short_of_turns(case)
    option = _as_she_is(case, turns)
    found = power(case, option, hull, scale, None)
    return Yardstick(
        counts=case.engine.enough is not False,
        turns=turns,
        pull=effective(option, greatest_pull(option, found, case.factors, SPEEDS, False).thrust),
        top=found.top.peak,
        stop=docking(case, option, found, scale).stops[0].distance,
        made_good=headwind(case, option, found, scale).peak.speed,
    )


def effective(option: Option, thrust: Array) -> Array:
    """What of a screw's thrust moves the boat: less the suction on her own hull [N]."""
    return np.atleast_2d(thrust * (1.0 - np.asarray(option.propeller.thrust_deduction)))


def _as_she_is(case: Case, turns: float | None) -> Option:
    """The present engine and propeller as an option, with the turns that it reaches."""
    engine = case.engine
    if turns is not None:
        share = turns / scalar(best(engine.rated_speed))
        engine = replace(
            engine,
            rated_speed=np.asarray(engine.rated_speed) * share,
            rated_power=np.asarray(engine.rated_power) * share,
        )
    return replace(
        case.options[0],
        kind="keep",
        motor=None,
        bank=None,
        diesel=engine,
        propeller=case.propeller,
    )


def _short_of_turns(case: Case) -> float | None:
    """Turns at full throttle on the trial of the engine, where they miss the rated ones by far."""
    trial = case.trial
    if trial is None or trial.full_throttle_speed is None or trial.with_option is not None:
        return None
    reached, rated = _first(trial.full_throttle_speed), _first(case.engine.rated_speed)
    return reached if reached < (1.0 - MISSED) * rated else None


def _first(value: Numbers) -> float:
    return scalar(best(value))
