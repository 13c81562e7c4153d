"""Criterion 5: is continuous power enough for the calm need at planned cruise?"""

from __future__ import annotations

import numpy as np

from generator.analyses.criteria.criterion import GO, Criterion, Judgement
from generator.analyses.findings import Findings
from generator.analyses.spread import scalar, spread
from generator.arrays import Array


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Continuous shaft power over the clean-hull calm need; the limit holds foul and warm."""
    need = clean_need(found)
    ratio = spread(np.nan_to_num(continuous_shaft_power(found) / need, nan=0.0))
    low = scalar(ratio.low)
    result = criterion.judge(low)
    key = f"options.{found.place}"
    why = (
        f"{{{key}.continuous_shaft_kw|power}} at the shaft for good; the clean hull needs "
        f"{{{key}.clean_need_kw|power}} at {{planning.cruise_speed_kn|speed}} (clean, because "
        "the limit already holds a foul bottom and a warm engine space)"
    )
    wanted = criterion.go * scalar(spread(np.nan_to_num(need, nan=np.inf)).high)
    flip = "" if result == GO else "{here.flip_kw|power} continuous at the shaft, or less speed"
    numbers = {"flip_kw": wanted / 1e3} if flip and np.isfinite(wanted) else {}
    if flip and not numbers:
        flip = "a planned cruise that the hull form allows"
    return Judgement(criterion, scalar(ratio.middle), low, "-", result, why, flip, numbers=numbers)


def clean_need(found: Findings) -> Array:
    """Shaft power of the clean hull at planned cruise [W], per draw."""
    power = np.atleast_2d(
        np.where(found.power.clean.feasible, found.power.clean.shaft_power, np.nan)
    )
    cruise = float(np.asarray(found.case.planning.cruise_speed).flat[0])
    return at_speed(power, found.power.speed, cruise)


def at_speed(values: Array, speed: Array, wanted: float) -> Array:
    """Log-linear value at a speed between the tabulated ones; nan outside them."""
    if not speed[0] <= wanted <= speed[-1]:
        return np.full((values.shape[0], 1), np.nan)
    place = min(int(np.searchsorted(speed, wanted, side="right")) - 1, speed.size - 2)
    share = (wanted - speed[place]) / (speed[place + 1] - speed[place])
    low, high = np.log(values[:, place]), np.log(values[:, place + 1])
    result = np.exp(low + share * (high - low)) if share > 0 else values[:, place]
    return np.asarray(result)[:, np.newaxis]


def continuous_shaft_power(found: Findings) -> Array:
    """Power at the shaft coupling that the plant gives for good [W]."""
    option = found.option
    if option.motor is not None:
        motor = option.motor
        return np.atleast_2d(
            np.asarray((motor.continuous_power - motor.seal_and_bearings) * motor.gear_efficiency)
        )
    assert option.diesel is not None
    diesel = option.diesel
    return np.atleast_2d(
        np.asarray((diesel.rated_power - diesel.alternator_power) * diesel.gear_efficiency)
    )
