"""Criterion 3: is as much kept back, and is it there, as no plan may touch?"""

from __future__ import annotations

import numpy as np

from generator.analyses.bank_state import taken
from generator.analyses.criteria.criterion import GO, Criterion, Judgement
from generator.analyses.demand import Weather
from generator.analyses.findings import Findings
from generator.analyses.power import at_points
from generator.analyses.spread import scalar, side_by_side, spread
from generator.arrays import Array
from generator.case.register import find_default

KWH, LITRE = 3.6e6, 1e-3
OWN = {f"planning.{name}" for name in ("manoeuvring_speed", "hold_speed", "hold_wind")}


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """What is kept and there, over the larger of the usual share and the usual demand."""
    kept, store = found.reserve, found.store
    usable = np.asarray(store.usable_aged)
    demand = _demand(found)
    demand = np.where(np.isnan(demand), np.inf, demand)  # what cannot be held is never kept
    wanted = np.maximum(usable * _usual("reserve_share"), demand)
    there = np.minimum(kept.of_aged, usable)
    ratio = np.nan_to_num(there / np.maximum(wanted, 1e-9), nan=0.0)
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
    if f"wanted_{name}" not in numbers:
        why = "the holding part of the reserve asks for more than the plant can give"
    flip = "" if result == GO else "the reserve of the register, and a store that holds it"
    return Judgement(criterion, scalar(told.middle), low, "-", result, why, flip, numbers=numbers)


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
