"""Criterion 3: is as much kept back, and is it there, as no plan may touch?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.motion.demand import Weather
from generator.analyses.motion.power import at_points
from generator.analyses.percentiles import best, scalar, side_by_side, spread
from generator.analyses.store.bank_state import taken
from generator.analyses.verdict.criteria.criterion import CONDITIONAL, GO, Criterion, Judgement
from generator.arrays import Array, Numbers
from generator.case.register import find_default
from generator.records import number, record

OWN = {f"planning.{name}" for name in ("manoeuvring_speed", "hold_speed", "hold_wind")}


@record
class ReserveKept:
    """What is kept back and there, and what the usual rule keeps.

    ``outcome``: kept, short, cannot_hold (the plant cannot give what holding takes), or warm (the
    energy is there, the warm motor does not bear the holding for its time).
    """

    SAID_BY: ClassVar[str] = "reserve_kept"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend",)
    outcome: str
    kept_in: str
    kept: Array = number("stored", "kept in reserve and there", cautious="low")
    wanted: Array = number("stored", "kept by the usual rule", cautious="high")
    held: Array = number("minutes", "time that the warm motor holds her", cautious="low")
    hold_time: Numbers = number("minutes", "time that the reserve is kept for", cautious="high")
    hold_speed: Numbers = number("speed", "speed at which she is held", cautious="high")
    hold_wind: Numbers = number("wind", "wind against which she is held", cautious="high")
    absent: Mapping[str, str] = field(default_factory=dict)


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """What is kept and there over what is usual.

    Energy alone does not hold her: a warm motor that does not bear the holding on for its time,
    in the middle of the draws, makes it conditional.
    """
    kept, plan = found.reserve, found.case.planning
    usable = np.asarray(found.store.usable_aged)
    demand = _demand(found)
    # lacking: what cannot be held is never kept, so that it needs more than any store
    demand = np.where(np.isnan(demand), np.inf, demand)
    wanted = np.maximum(usable * _usual("reserve_share"), demand)
    there = np.minimum(kept.of_aged, usable)
    told = spread(np.round(there / np.maximum(wanted, 1e-9), 9), "low")
    low, holding = scalar(told.low), _held_for(found)
    result = criterion.judge(low)
    outcome = "kept" if result == GO else "short"
    if not np.isfinite(scalar(spread(wanted).middle)):
        outcome = "cannot_hold"
    elif result == GO and scalar(spread(holding, "low").middle) < 1.0:
        result, outcome = CONDITIONAL, "warm"
    facts = ReserveKept(
        outcome=outcome,
        kept_in=kept.kept_in,
        kept=there,
        wanted=wanted,
        held=holding * scalar(best(plan.hold_time)),
        hold_time=plan.hold_time,
        hold_speed=plan.hold_speed,
        hold_wind=plan.hold_wind,
        absent=dict.fromkeys(("kept", "wanted", "held"), "cannot_hold"),
    )
    return Judgement(criterion, scalar(told.middle), low, "-", result, facts=facts)


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
