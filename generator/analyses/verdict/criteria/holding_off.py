"""Criterion 4: does she make way off a lee shore?"""

from __future__ import annotations

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.verdict.criteria.against_wind import held, judged
from generator.analyses.verdict.criteria.criterion import Criterion, Judgement
from generator.arrays import Array
from generator.tables.method import method

SHELTERED_WIND = method("lee_shore.sheltered_wind")
HOLDING_TIME = method("lee_shore.holding_time")


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Speed made good against 25 kn, or 20 kn in sheltered waters, held for half an hour."""
    sheltered = found.case.waters.exposure == "sheltered"
    wind = SHELTERED_WIND if sheltered else found.case.planning.hold_wind
    what = held(found, _lasting(found), float(np.asarray(wind).flat[0]))
    return judged(criterion, found, what, _rating(found))


def _lasting(found: Findings) -> Array:
    """The ladder that lasts half an hour: the peak only where it may be used for so long."""
    motor, ladders = found.option.motor, found.headwind
    if motor is None:
        return ladders.continuous.speed
    lasts = np.atleast_2d(np.asarray(motor.peak_time)) >= HOLDING_TIME
    return np.asarray(np.where(lasts, ladders.peak.speed, ladders.continuous.speed))


def _rating(found: Findings) -> str:
    motor = found.option.motor
    if motor is None:
        return "at full power"
    if float(np.asarray(motor.peak_time).flat[0]) >= HOLDING_TIME:
        return "at peak"
    key = f"options.{found.place}.particulars.motor"
    return f"on the continuous rating (peak lasts only {{{key}.peak_time_min|minutes}})"
