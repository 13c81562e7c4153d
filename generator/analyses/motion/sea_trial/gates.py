"""Which rows of a sea trial count, and why do the others not?"""

from __future__ import annotations

import numpy as np

from generator.analyses.motion.hull import Vessel
from generator.analyses.percentiles import best, scalar
from generator.arrays import Numbers
from generator.case.trial import SeaTrial, TrialRow
from generator.physics.hull.confined import depth_froude_number
from generator.physics.hull.residuary import froude_number
from generator.tables.method import method

KNOT = 1852.0 / 3600.0
WIND_LIMIT = method("trial.wind_limit")
SHALLOW, SHALLOW_SPEED = method("trial.shallow_depth"), method("trial.shallow_speed")
DEPTH_FROUDE = method("trial.depth_froude")
SAME_TURNS = method("trial.same_turns")
ONE_COURSE = "one course only, so stream and wind remain in it"


def first(value: Numbers) -> float:
    """The best estimate."""
    return scalar(best(value))


def mean_speed(row: TrialRow) -> Numbers | None:
    """Speed through the water [m/s], of two opposite courses."""
    return None if row.speed_back is None else (row.speed_out + row.speed_back) / 2.0


def refusal(trial: SeaTrial, row: TrialRow, vessel: Vessel) -> str:
    """Why a row does not count by itself; empty where it does."""
    mean = mean_speed(row)
    if mean is None:
        return ONE_COURSE
    speed = first(mean)
    back = row.engine_speed if row.engine_speed_back is None else row.engine_speed_back
    if abs(first(back) / first(row.engine_speed) - 1.0) > SAME_TURNS:
        return "different rpm on the two courses"
    if first(row.wind) > WIND_LIMIT:
        return "wind above 12 kn"
    if row.depth is not None:
        if first(row.depth) < SHALLOW and speed > SHALLOW_SPEED:
            return "less than 4 m of water above 5 kn"
        if first(depth_froude_number(speed, first(row.depth))) > DEPTH_FROUDE:
            return "water too shallow for this speed"
    if first(froude_number(speed, vessel.form.waterline_length)) > first(vessel.waves.highest):
        return "faster than the hull curve reaches"
    full = trial.full_throttle_speed
    if (
        full is not None
        and row.battery_power is None
        and first(row.engine_speed) > 1.001 * first(full)
    ):
        return "rpm above that given for full throttle"
    return ""


def out_of_order(turns: list[float], speeds: list[float]) -> set[int]:
    """Places that must go so that speed rises with turns: the fewest, by the longest chain."""
    order = sorted(range(len(turns)), key=lambda place: (turns[place], speeds[place]))
    longest: list[int] = []
    back: list[int | None] = []
    for here, place in enumerate(order):
        before = [
            earlier
            for earlier in range(here)
            if turns[order[earlier]] < turns[place] and speeds[order[earlier]] < speeds[place]
        ]
        link = max(before, key=lambda earlier: longest[earlier], default=None)
        longest.append(1 if link is None else longest[link] + 1)
        back.append(link)
    kept: set[int] = set()
    at: int | None = int(np.argmax(longest)) if longest else None
    while at is not None:
        kept.add(order[at])
        at = back[at]
    return set(range(len(turns))) - kept
