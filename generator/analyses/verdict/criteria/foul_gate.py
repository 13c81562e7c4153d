"""Criterion 9: does she get through the gate of a leg that must be made?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.handling.stream import Gate
from generator.analyses.motion.plant import peak_lasts
from generator.analyses.motion.power import KNOT
from generator.analyses.percentiles import best, scalar, spread
from generator.analyses.verdict.criteria.criterion import (
    CONDITIONAL,
    GO,
    NO,
    NOT_APPLICABLE,
    Criterion,
    Judgement,
    by_chance,
)
from generator.arrays import Array
from generator.records import number, record

ORDER = (NO, CONDITIONAL, GO)


@record
class FoulGate:
    """Speed over the ground at the gate of the worst must-make leg, beside the present engine.

    ``outcome``: none (no such gate), go, conditional, no. ``worked``: the owner works the tide
    there. ``springs``: the spring stream is known. ``by_engine``: it rests on the engine's speed.
    """

    SAID_BY: ClassVar[str] = "foul_gate"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend",)
    outcome: str
    leg: str
    worked: bool
    springs: bool
    at_peak: bool
    diesel: bool
    yardstick: bool
    by_engine: bool
    stream: float | None = number("speed", "stream against her at the gate")
    top: Array | None = number("speed", "speed that lasts through the gate", cautious="low")
    over: Array | None = number("speed", "speed over the ground at the gate", cautious="low")
    share: Array | None = number(
        "share", "speed through the water over that of the present engine", cautious="low"
    )
    engine: Array | None = number("speed", "speed of the present engine", cautious="low")
    wanted: float | None = number("speed", "speed through the water that passes")
    absent: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True)
class _Passage:
    """One gate as it is judged; m/s."""

    gate: Gate
    result: str
    by_engine: bool
    at_peak: bool
    top: Array
    over: Array


NUMBERS = ("stream", "top", "over", "share", "engine", "wanted")


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """The worst gate of the legs that must be made, on the rating that lasts through it."""
    tried = [_passage(criterion, found, gate) for gate in found.stream.gates if gate.must_make]
    if not tried:
        none = FoulGate(
            "none", "", False, False, False, found.option.motor is None, False, False,
            None, None, None, None, None, None, dict.fromkeys(NUMBERS, "no_gate"),
        )  # fmt: skip
        return Judgement(criterion, None, None, "kn", NOT_APPLICABLE, facts=none)
    worst = min(
        tried, key=lambda each: (ORDER.index(each.result), scalar(spread(each.over, "low").low))
    )
    told = spread(worst.over / KNOT, "low")
    return Judgement(
        criterion, scalar(told.middle), scalar(told.low), "kn", worst.result,
        facts=_facts(criterion, found, worst),
    )  # fmt: skip


def _passage(criterion: Criterion, found: Findings, gate: Gate) -> _Passage:
    """By speed over the ground, or by the engine's speed where the ground is made at all.

    A spring stream that nobody read gives no plain pass; a tide that is worked asks for no more
    than the owner's word, and where she cannot stem it, for the time of slack water.
    """
    top, peak = _lasting(found, gate)
    over = np.atleast_2d(top - np.asarray(gate.stream))
    fast, some = criterion.reached(over / KNOT)
    equal = np.zeros_like(fast)
    if found.yard.counts and criterion.second is not None:
        equal = (top / found.yard.top >= criterion.second.go - 1e-9) & (
            over / KNOT >= criterion.least - 1e-9
        )
    result, alone = by_chance(fast | equal, some), by_chance(fast, some)
    if gate.leg.tide_worked:
        result = CONDITIONAL if result == NO else GO
    elif result == GO and not gate.at_springs:
        result = CONDITIONAL
    return _Passage(gate, result, result == GO and alone != GO, peak, top, over)


def _lasting(found: Findings, gate: Gate) -> tuple[Array, bool]:
    """Calm speed [m/s] that lasts through the gate; the leg is all that is known of its length."""
    top = found.power.top
    over = scalar(best(np.atleast_2d(top.peak - np.asarray(gate.stream))))
    time = scalar(best(np.asarray(gate.leg.distance))) / over if over > 0.0 else np.inf
    peak = peak_lasts(found.option, time)
    return (top.peak if peak else top.continuous), peak


def _facts(criterion: Criterion, found: Findings, worst: _Passage) -> FoulGate:
    against = scalar(best(worst.gate.stream))
    return FoulGate(
        outcome=worst.result,
        leg=worst.gate.leg.name,
        worked=worst.gate.leg.tide_worked,
        springs=worst.gate.at_springs,
        at_peak=worst.at_peak,
        diesel=found.option.motor is None,
        yardstick=found.yard.counts,
        by_engine=worst.by_engine,
        stream=against,
        top=worst.top,
        over=worst.over,
        share=np.atleast_2d(worst.top / found.yard.top),
        engine=found.yard.top,
        wanted=against + criterion.go * KNOT,
        absent=dict.fromkeys(NUMBERS, "no_speed_held"),
    )
