"""Criterion 4: does she make way off a lee shore?"""

from __future__ import annotations

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.verdict.criteria.against_wind import Question, judged
from generator.analyses.verdict.criteria.criterion import Criterion, Judgement
from generator.case.register import usual_value


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Against the wind of her waters, whatever the owner plans his reserve for, for half an hour.

    An owner who plans with more wind is judged by his own.
    """
    own = float(np.ravel(found.case.planning.hold_wind)[0])
    wind = max(usual_value("planning.hold_wind", (found.case.waters.exposure,)), own)
    held = found.holding
    return judged(criterion, found, Question(wind, held.ladder, held.at_peak, 0))
