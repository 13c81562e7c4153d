"""Criterion 6: does continuous power hold 3.5 kn against 20 kn of wind?"""

from __future__ import annotations

from generator.analyses.findings import Findings
from generator.analyses.verdict.criteria.against_wind import held, judged
from generator.analyses.verdict.criteria.criterion import Criterion, Judgement
from generator.tables.method import method

WIND = method("headwind.hours_wind")


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Speed made good against 20 kn on the continuous rating."""
    what = held(found, found.headwind.continuous.speed, WIND)
    rating = "at full power" if found.option.motor is None else "on the continuous rating"
    return judged(criterion, found, what, rating)
