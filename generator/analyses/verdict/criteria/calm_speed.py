"""Criterion 7: how near to hull speed does peak power bring her in a calm?"""

from __future__ import annotations

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.motion.power import at_speed
from generator.analyses.percentiles import best, scalar, spread
from generator.analyses.verdict.criteria.criterion import GO, Criterion, Judgement


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Calm speed at peak power, in service, over hull speed."""
    hull_speed = found.power.vessel.hull_speed
    shares = np.asarray(found.power.top.peak / hull_speed)
    ratio = spread(shares, "low")
    low = scalar(ratio.low)
    result = criterion.judge(low)
    key = f"options.{found.place}.top_speed"
    why = f"{{{key}.peak_kn|speed}} at peak in a calm; hull speed is {{boat.hull_speed_kn|speed}}"
    flip, numbers = ("", {}) if result == GO else _flip(criterion, found)
    return Judgement(
        criterion, scalar(ratio.middle), low, "-", result, why, flip, "", numbers, shares
    )


def _flip(criterion: Criterion, found: Findings) -> tuple[str, dict[str, float]]:
    """Shaft power that reaches the limit in nine draws of ten."""
    demand = found.power.curves["calm"].demand
    wanted_speed = criterion.go * scalar(best(found.power.vessel.hull_speed))
    power = np.atleast_2d(np.where(demand.feasible, demand.shaft_power, np.nan))
    need = at_speed(power, found.power.speed, wanted_speed)
    high = scalar(spread(need).high)
    if not np.isfinite(high):
        return "a propeller that carries more thrust, or a lower claim on speed", {}
    text = "{here.flip_kw|power} at the shaft at peak, with a propeller that takes it up"
    return text, {"flip_kw": high / 1e3}
