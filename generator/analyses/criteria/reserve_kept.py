"""Criterion 3: is as much kept back, and is it there, as no plan may touch?"""

from __future__ import annotations

import numpy as np

from generator.analyses.bank_state import taken
from generator.analyses.criteria.criterion import CONDITIONAL, GO, Criterion, Judgement
from generator.analyses.demand import Weather
from generator.analyses.findings import Findings
from generator.analyses.power import at_points
from generator.analyses.spread import best, scalar, side_by_side, spread
from generator.arrays import Array
from generator.case.register import find_default

KWH, LITRE, MINUTE = 3.6e6, 1e-3, 60.0
OWN = {f"planning.{name}" for name in ("manoeuvring_speed", "hold_speed", "hold_wind")}


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """What is kept and there over what is usual.

    Energy alone does not hold her: a warm motor that does not bear the holding on for its time,
    in the middle of the draws, makes it conditional.
    """
    kept, store = found.reserve, found.store
    usable = np.asarray(store.usable_aged)
    demand = _demand(found)
    demand = np.where(np.isnan(demand), np.inf, demand)  # what cannot be held is never kept
    wanted = np.maximum(usable * _usual("reserve_share"), demand)
    there = np.minimum(kept.of_aged, usable)
    ratio = np.nan_to_num(there / np.maximum(wanted, 1e-9), nan=0.0)
    holding = _held_for(found)
    told = spread(np.round(ratio, 9))
    low = scalar(told.low)
    result = criterion.judge(low)
    unit, scale = ("kwh|energy", KWH) if found.bank else ("l|fuel", LITRE)
    name = unit.partition("|")[0]
    numbers = {
        f"kept_{name}": scalar(spread(np.nan_to_num(there)).middle) / scale,
        f"wanted_{name}": scalar(spread(wanted).middle) / scale,
    }
    numbers = {key: value for key, value in numbers.items() if np.isfinite(value)}
    why = f"{{here.kept_{unit}}} stay in reserve; the usual rule asks for {{here.wanted_{unit}}}"
    flip = "" if result == GO else "the reserve of the register, and a store that holds it"
    if f"wanted_{name}" not in numbers:
        why = "the holding part of the reserve asks for more than the plant can give"
    elif result == GO and scalar(spread(holding).middle) < 1.0:
        result, plan = CONDITIONAL, found.case.planning
        numbers["held_min"] = scalar(spread(holding).middle) * scalar(best(plan.hold_time)) / MINUTE
        why = (
            "warm, the motor holds {planning.hold_speed_kn|speed} against "
            "{planning.hold_wind_kn|wind} for {here.held_min|minutes} of the "
            "{planning.hold_time_min|minutes} that the reserve is kept for"
        )
        flip = "a motor, a reduction or a cooler space that holds it so long"
    return Judgement(criterion, scalar(told.middle), low, "-", result, why, flip, numbers=numbers)


def _held_for(found: Findings) -> Array:
    """Time that the warm motor holds on, over the time that the reserve plans for, at most 1."""
    wanted = np.asarray(found.case.planning.hold_time, dtype=np.float64)
    if found.duty is None or float(np.min(wanted)) <= 0.0:
        return np.ones((1, 1))
    return np.minimum(found.duty.holding.after_cruise / wanted, 1.0)


def _usual(name: str) -> float:
    row = find_default(f"planning.{name}", ())
    assert row is not None
    return row.value


def _demand(found: Findings) -> Array:
    """The usual manoeuvres and holding; the owner's own only where they ask for more."""
    plan, kept = found.case.planning, found.reserve
    usual = _usual("manoeuvring_time"), _usual("hold_time")
    times = [float(np.asarray(time).flat[0]) for time in (plan.manoeuvring_time, plan.hold_time)]
    given = {item.path for item in found.case.assumptions if item.origin == "given"}
    if not given & OWN and min(times) > 0.0:
        parts = (kept.manoeuvring * usual[0] / times[0], kept.holding * usual[1] / times[1])
        return np.asarray(parts[0] + parts[1])
    speed = side_by_side(
        np.maximum(plan.manoeuvring_speed, _usual("manoeuvring_speed")),
        np.maximum(plan.hold_speed, _usual("hold_speed")),
    )
    wind = np.maximum(plan.hold_wind, _usual("hold_wind"))
    weather = Weather(side_by_side(0.0, wind), found.case.waters.fetch)
    curve = at_points(found.case, found.option, found.power, found.trial.scale, speed, weather)
    drain = np.atleast_2d(taken(found.option.bank, found.store.aged, curve.output.drain))
    return np.asarray((drain * np.array(usual)).sum(axis=1, keepdims=True))
