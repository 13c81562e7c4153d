"""Criterion 5: is continuous power enough for the calm need at planned cruise?"""

from __future__ import annotations

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import scalar, spread
from generator.analyses.verdict.criteria.criterion import GO, Criterion, Judgement, stated
from generator.arrays import Array


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Continuous shaft power over the clean-hull calm need; the limit holds foul and warm.

    The power is the plate's, S1, as far as torque and turns on her own propeller let it come
    about in a calm.
    """
    need = found.key.clean_need
    shares = found.key.continuous_shaft_power / need
    ratio = spread(shares, "low")
    low = scalar(ratio.low)
    result = criterion.judge(low)
    key = f"options.{found.place}"
    stopped = found.key.reached.limit
    why = (
        f"{{{key}.continuous_shaft_kw|power}} continuous at the shaft, where {stopped} "
        f"meets her propeller in a calm; the clean hull needs {_need(need, key)} at "
        "{planning.cruise_speed_kn|speed} (clean, because the limit already holds a foul bottom "
        "and a warm engine space)"
    )
    wanted = criterion.go * scalar(spread(need).high)
    flip = "" if result == GO else "{here.flip_kw|power} continuous at the shaft, or less speed"
    numbers = {"flip_kw": wanted / 1e3} if flip and np.isfinite(wanted) else {}
    if flip and not numbers:
        flip = "a planned cruise that the hull form allows"
    elif flip and _matched(criterion, found, need):
        flip = f"a reduction of {{{key}.match.ratio|ratio}}, which frees the plate's power"
        numbers = {}
    return Judgement(
        criterion, stated(scalar(ratio.middle)), stated(low), "-", result, why, flip, "",
        numbers, shares,
    )  # fmt: skip


def _need(need: Array, key: str) -> str:
    """The need of the clean hull, or that the formulas give none."""
    if np.isfinite(scalar(spread(need).middle)):
        return f"{{{key}.clean_need_kw|power}}"
    return "more than the hull form or the propeller series can tell"


def _matched(criterion: Criterion, found: Findings, need: Array) -> bool:
    """Would the same motor do, if the reduction let it turn as rated?"""
    shares = found.key.rated_shaft_power / need
    return criterion.judge(scalar(spread(shares, "low").low)) == GO
