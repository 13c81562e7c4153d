"""Criterion 5: does she hold the owner's cruise for good, in service and in her warm space?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.motion.plant import ceiling
from generator.analyses.motion.power import KNOT, speed_at_limit
from generator.analyses.percentiles import best, scalar, spread
from generator.analyses.verdict.criteria.criterion import (
    GO,
    Criterion,
    Judgement,
    by_chance,
)
from generator.arrays import Array, Numbers
from generator.records import number, record


@record
class HeldCruise:
    """Speed held for good in a calm, in service, beside the owner's cruise.

    ``outcome``: go, conditional, no. ``by_screw``: the power is there, and torque or turns on this
    propeller keep it back. ``limit`` is the first of the plate's limits on her propeller.
    """

    SAID_BY: ClassVar[str] = "held_cruise"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend",)
    outcome: str
    diesel: bool
    by_screw: bool
    limit: str
    held: Array = number("speed", "speed held for good in a calm", cautious="low")
    cruise: Numbers = number("speed", "planned cruise")
    need: Array = number("power", "shaft power in service at planned cruise", cautious="high")
    there: Array = number("power", "shaft power that lasts, warm", cautious="low")
    ratio: float | None = number("ratio", "reduction that frees the power")
    absent: Mapping[str, str] = field(default_factory=dict)


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """By the motor in its warm space alone: what the battery gives stands in its own row."""
    calm = found.power.curves["calm"]
    held = speed_at_limit(calm.output.motor_load, calm.demand.feasible, found.power.speed)
    cruise = np.asarray(found.case.planning.cruise_speed)
    assert criterion.second is not None
    slower = held >= cruise - criterion.second.conditional * KNOT - 1e-9
    shares = np.atleast_2d(held / cruise)
    fast, _ = criterion.reached(shares)
    result = by_chance(fast, slower)
    told = spread(shares, "low")
    return Judgement(
        criterion, scalar(told.middle), scalar(told.low), "-", result,
        facts=_facts(found, held, result), per_draw=shares,
    )  # fmt: skip


def _facts(found: Findings, held: Array, result: str) -> HeldCruise:
    need = found.key.cruise_shaft_power
    top = ceiling(found.option, found.case.factors, False)
    there = np.atleast_2d(np.maximum(top.power - top.standing, 0.0) * np.asarray(top.share))
    wanted = scalar(spread(need).high)
    by_screw = result != GO and np.isfinite(wanted) and wanted <= scalar(spread(there, "low").low)
    return HeldCruise(
        outcome=result,
        diesel=found.option.motor is None,
        by_screw=bool(by_screw),
        limit=found.key.reached.limit,
        held=held,
        cruise=best(found.case.planning.cruise_speed),
        need=need,
        there=there,
        ratio=found.match.advised if by_screw else None,
        absent={"need": "stopped_by_hull", "ratio": "not_asked_for"},
    )
