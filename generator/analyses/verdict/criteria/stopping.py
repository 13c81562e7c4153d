"""Criterion 24: how many boat lengths does she need to stop from 3 kn, and her engine?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import held_share, scalar, spread
from generator.analyses.verdict.criteria.criterion import (
    CONDITIONAL,
    GO,
    HALF,
    Criterion,
    Judgement,
    by_chance,
)
from generator.arrays import Array, Flags
from generator.records import number, record


@record
class Stopping:
    """Way from 3 kn to standstill in still air, in boat lengths and beside her engine.

    ``outcome``: go, conditional, no. ``by_engine``: it rests on the present engine's way alone.
    """

    SAID_BY: ClassVar[str] = "stopping"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend",)
    outcome: str
    folding: bool
    yardstick: bool
    by_engine: bool
    way: Array = number("height", "way from 3 kn to standstill", cautious="high")
    time: Array = number("seconds", "time for it", cautious="high")
    lengths: Array = number("lengths", "way over length overall", cautious="high")
    astern: Array = number("force", "pull astern", cautious="low")
    engine: Array = number("height", "way of the present engine", cautious="high")
    share: Array = number("ratio", "way over that of the present engine", cautious="high")
    wanted: float = number("lengths", "way that passes, over length overall")
    absent: Mapping[str, str] = field(default_factory=dict)


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """In boat lengths, or over the way of the present engine, by the rule of chance."""
    stop = found.docking.stops[0]
    lengths = np.atleast_2d(stop.distance / np.asarray(found.case.boat.hull.length_overall))
    share = np.atleast_2d(stop.distance / found.yard.stop)
    soon, enough = criterion.reached(lengths)
    equal, near = _by_engine(criterion, found, share)
    result, alone = by_chance(soon | equal, enough | near), by_chance(soon, enough)
    if result == GO and alone != GO and held_share(enough) < HALF:
        result = CONDITIONAL
    told = spread(lengths)
    facts = Stopping(
        outcome=result,
        folding=found.option.propeller.kind == "folding",
        yardstick=found.yard.counts,
        by_engine=alone != result,
        way=stop.distance,
        time=stop.time,
        lengths=lengths,
        astern=found.docking.astern,
        engine=found.yard.stop,
        share=share,
        wanted=criterion.go,
    )
    return Judgement(criterion, scalar(told.middle), scalar(told.high), "-", result, facts=facts)


def _by_engine(criterion: Criterion, found: Findings, share: Array) -> tuple[Flags, Flags]:
    """Draws that stop as soon as the present engine does, or nearly, where that counts."""
    none = np.zeros_like(share, dtype=bool)
    if not found.yard.counts or criterion.second is None:
        return none, none
    return share <= criterion.second.go + 1e-9, share <= criterion.second.conditional + 1e-9
