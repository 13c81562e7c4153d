"""Criterion 7: how fast is she in a calm for ten minutes, by hull, by plan and by her engine?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.motion.bench import TOP_TIME
from generator.analyses.motion.plant import peak_lasts
from generator.analyses.motion.power import KNOT, at_speed
from generator.analyses.percentiles import best, held_share, scalar, spread
from generator.analyses.verdict.criteria.criterion import (
    CONDITIONAL,
    GO,
    HALF,
    Criterion,
    Judgement,
    by_chance,
)
from generator.arrays import Array, Flags, Numbers
from generator.records import number, record


@record
class CalmSpeed:
    """Top speed in a calm beside hull speed, planned cruise and the engine that is in her.

    ``outcome``: go, conditional, no. ``at_peak``: the peak rating lasts for the ten minutes.
    ``by_engine``: the outcome rests on her engine alone.
    """

    SAID_BY: ClassVar[str] = "calm_speed"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend",)
    outcome: str
    diesel: bool
    at_peak: bool
    yardstick: bool
    by_engine: bool
    top: Array = number("speed", "top speed in a calm for ten minutes", cautious="low")
    hull_speed: Array = number("speed", "hull speed")
    cruise: Numbers = number("speed", "planned cruise")
    engine: Array = number("speed", "top speed of the present engine", cautious="low")
    share: Array = number("share", "top speed over that of the present engine", cautious="low")
    wanted: float = number("speed", "lower of the speeds that pass")
    power_wanted: float | None = number("power", "shaft power that makes that speed")
    absent: Mapping[str, str] = field(default_factory=dict)


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Fast for her hull, or for her plan, or beside her engine, by the rule of chance."""
    peak = peak_lasts(found.option, TOP_TIME)
    top = found.power.top.peak if peak else found.power.top.continuous
    shares = np.atleast_2d(np.asarray(top / found.power.vessel.hull_speed))
    fast, some = _by_speed(criterion, found, shares, top)
    equal, near = _by_engine(criterion, found, top)
    result = by_chance(fast | equal, some | near)
    alone = by_chance(fast, some)
    if result == GO and alone != GO and held_share(some) < HALF:
        result = CONDITIONAL
    told = spread(shares, "low")
    facts = _facts(criterion, found, (top, peak), result, alone != result)
    return Judgement(
        criterion, scalar(told.middle), scalar(told.low), "-", result, facts=facts,
        per_draw=shares,
    )  # fmt: skip


def _by_speed(
    criterion: Criterion, found: Findings, shares: Array, top: Array
) -> tuple[Flags, Flags]:
    """Draws that are fast, and fast enough with conditions, for hull speed or for cruise."""
    second = criterion.second
    assert second is not None
    fast, some = criterion.reached(shares)
    above = np.atleast_2d((top - np.asarray(found.case.planning.cruise_speed)) / KNOT)
    return fast | (above >= second.go - 1e-9), some | (above >= second.conditional - 1e-9)


def _by_engine(criterion: Criterion, found: Findings, top: Array) -> tuple[Flags, Flags]:
    """The same beside the present engine, where that counts."""
    third = criterion.third
    share = _over(top, found.yard.top)
    none = np.zeros_like(share, dtype=bool)
    if not found.yard.counts or third is None:
        return none, none
    return share >= third.go - 1e-9, share >= third.conditional - 1e-9


def _facts(
    criterion: Criterion, found: Findings, top: tuple[Array, bool], result: str, by_engine: bool
) -> CalmSpeed:
    assert criterion.second is not None
    hull, cruise = found.power.vessel.hull_speed, found.case.planning.cruise_speed
    wanted = min(
        criterion.go * scalar(best(hull)), scalar(best(cruise)) + criterion.second.go * KNOT
    )
    need = None if result == GO else _power_for(found, wanted)
    return CalmSpeed(
        outcome=result,
        diesel=found.option.motor is None,
        at_peak=top[1],
        yardstick=found.yard.counts,
        by_engine=by_engine,
        top=top[0],
        hull_speed=np.atleast_2d(hull),
        cruise=best(cruise),
        engine=found.yard.top,
        share=_over(top[0], found.yard.top),
        wanted=wanted,
        power_wanted=need,
        absent={"power_wanted": "not_asked_for", "share": "no_speed_held"},
    )


def _power_for(found: Findings, wanted: float) -> float | None:
    """Shaft power [W] that makes a speed in nine draws of ten; none where no screw carries it."""
    demand = found.power.curves["calm"].demand
    power = np.atleast_2d(np.where(demand.feasible, demand.shaft_power, np.nan))
    high = scalar(spread(at_speed(power, found.power.speed, wanted)).high)
    return high if np.isfinite(high) else None


def _over(own: Array, engine: Array) -> Array:
    """Own speed over the engine's; without end where the engine holds no speed at all."""
    moves = np.atleast_2d(engine) > 0.0
    return np.where(moves, own / np.where(moves, engine, 1.0), np.inf)
