"""Criterion 24: how many boat lengths does she need to stop from 3 kn?"""

from __future__ import annotations

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import scalar, spread
from generator.analyses.verdict.criteria.criterion import GO, Criterion, Judgement


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Way from 3 kn to standstill in still air, in boat lengths."""
    stop = found.docking.stops[0]
    length = np.asarray(found.case.boat.hull.length_overall)
    told = spread(stop.distance / length)
    high = scalar(told.high)
    result = criterion.judge(high)
    numbers = {
        "way_m": scalar(spread(stop.distance).middle),
        "time_s": scalar(spread(stop.time).middle),
        "lengths": scalar(told.middle),
        "lengths_high": high,
        "astern_n": scalar(spread(found.docking.astern).middle),
    }
    why = (
        "stops from 3 kn in {here.way_m|height} and {here.time_s|seconds}, "
        "{here.lengths|ratio} boat lengths, {here.lengths_high|ratio} at the pessimistic end, "
        "with {here.astern_n|force} astern"
    )
    flip = "" if result == GO else _flip(criterion, found, high)
    return Judgement(criterion, scalar(told.middle), high, "-", result, why, flip, numbers=numbers)


def _flip(criterion: Criterion, found: Findings, high: float) -> str:
    if found.option.propeller.kind == "folding":
        return "a feathering propeller, which pulls better astern"
    return "more torque astern, or a quicker change from ahead to astern"
