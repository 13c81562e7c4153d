"""Criterion 6: does she go on against the wind of a bad day, for as long as she must?"""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import best, scalar
from generator.analyses.verdict.criteria.against_wind import Question, bad_day, judged
from generator.analyses.verdict.criteria.criterion import TOLD, Criterion, Judgement
from generator.case.usage import OPEN_WATERS
from generator.tables.method import method

WITHOUT_A_LEG = method("lee_shore.holding_time")


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """On the rating that lasts through the exposed part of the leg that must be made.

    Decides along a coast and beyond; told on narrower waters.
    """
    peak = found.option.motor is not None and scalar(best(found.option.motor.peak_time)) >= _needed(
        found
    )
    ladder = found.headwind.peak if peak else found.headwind.continuous
    row = judged(criterion, found, Question(bad_day(found), ladder.speed, peak, 1))
    if found.case.waters.exposure in OPEN_WATERS:
        return row
    return replace(row, result=TOLD, role="tell")


def _needed(found: Findings) -> float:
    """Time that the exposed part of the worst must-make leg takes [s]; half an hour without."""
    place = found.key.worst_leg
    if place is None:
        return WITHOUT_A_LEG
    leg = found.legs.results[place]
    exposed = scalar(best(np.asarray(leg.leg.exposed_distance)))
    speed = scalar(best(np.asarray(leg.outside)))
    if exposed <= 0.0 or not np.isfinite(speed) or speed <= 0.0:
        return WITHOUT_A_LEG
    return exposed / speed
