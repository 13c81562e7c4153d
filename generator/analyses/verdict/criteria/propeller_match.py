"""Criterion 23: does the motor reach its rated turns at full power on this propeller?"""

from __future__ import annotations

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.motion.match import TIP_CLEARANCE, Match
from generator.analyses.percentiles import scalar, spread
from generator.analyses.verdict.criteria.criterion import CONDITIONAL, GO, Criterion, Judgement

RPM = 30.0 / np.pi


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Turns at full continuous power against rated turns; the tips want a tenth of the disc."""
    fit = found.match
    told = spread(np.abs(fit.deviation))
    high = scalar(told.high)
    result = criterion.judge(high)
    tight = fit.clearance is not None and fit.clearance < TIP_CLEARANCE
    if tight and result == GO:
        result = CONDITIONAL
    numbers = {"turns_rpm": scalar(spread(fit.turns).middle) * RPM, "off_share": high}
    numbers |= _ways(fit)
    motor = found.option.motor
    plant = "motor" if motor is not None else "diesel"
    rated = f"options.{found.place}.particulars.{plant}.rated_speed_rpm"
    why = (
        f"{{here.turns_rpm|rpm}} at full power on this propeller, rated {{{rated}|rpm}}: off by "
        "{here.off_share|share} at the pessimistic end"
    )
    if tight:
        numbers["clearance_share"] = float(fit.clearance or 0.0)
        why += "; tips clear by {here.clearance_share|share} of the diameter, less than a tenth"
    return Judgement(
        criterion,
        scalar(told.middle),
        high,
        "-",
        result,
        why,
        "" if result == GO else _flip(fit),
        numbers=numbers,
    )


def _ways(fit: Match) -> dict[str, float]:
    ways = {"ratio": fit.ratio}
    if fit.pitch is not None:
        ways["pitch_mm"] = fit.pitch * 1e3
    return ways


def _flip(fit: Match) -> str:
    pitch = "" if fit.pitch is None else ", or a pitch of {here.pitch_mm|length_small}"
    return "a reduction of {here.ratio|ratio} on this propeller" + pitch
