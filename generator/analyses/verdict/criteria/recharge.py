"""Criterion 11: is a usual day put back at the berth before she is used again?"""

from __future__ import annotations

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import best, scalar, spread
from generator.analyses.use.berth import Berthed
from generator.analyses.verdict.criteria.criterion import (
    CONDITIONAL,
    GO,
    NO,
    NOT_APPLICABLE,
    Criterion,
    Judgement,
    stated,
)
from generator.case.option import Option

HOUR, KILO, KWH = 3600.0, 1e3, 3.6e6
NO_DAY = "one of her legs cannot be motored, so that a usual day has no number"
NO_CHARGE = "nothing charges the bank"


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Hours from a usual day's end to full, at the derated breaker, nine in ten below."""
    berth = found.use.berth
    if berth is None:
        why = "no propulsion battery" if found.bank is None else "no passage is motored"
        return Judgement(criterion, None, None, "h", NOT_APPLICABLE, why, "")
    if not found.case.berth.shore_power:
        why = "no plug at the berth; criterion 12 judges what the sun gives there"
        return Judgement(criterion, None, None, "h", NOT_APPLICABLE, why, "")
    if berth.hours_typical is None:
        why = "neither breaker nor voltage of the berth is given"
        flip = "read the breaker on the post and measure the voltage under load"
        return Judgement(criterion, None, None, "h", CONDITIONAL, why, flip)
    told = spread(berth.hours_typical / HOUR)
    high = scalar(told.high)
    result = _judged(criterion, high, found.option)
    breaker = found.case.berth.breaker
    worst = scalar(spread(berth.hours_worst if berth.hours_worst is not None else 0).high)
    numbers = {
        "day_kwh": scalar(spread(berth.typical).middle) / KWH,
        "breaker_a": 0.0 if breaker is None else scalar(best(breaker)),
        "hours_h": high,
        "worst_h": worst / HOUR,
    }
    numbers = {name: value for name, value in numbers.items() if np.isfinite(value)}
    why, flip = _why(berth, numbers), ""
    if result != GO:
        flip, numbers = _flip(berth, numbers)
    return Judgement(
        criterion,
        stated(scalar(told.middle)),
        stated(high),
        "h",
        result,
        why,
        flip,
        numbers=numbers,
        per_draw=berth.hours_typical / HOUR,
    )


def _why(berth: Berthed, numbers: dict[str, float]) -> str:
    """The hours of a usual day and of a bank drawn to its reserve, or why there are none."""
    if "hours_h" not in numbers:
        lacks = bool(np.isnan(berth.typical).any())
        return f"in more than one draw of ten {NO_DAY if lacks else NO_CHARGE}"
    why = (
        "a usual day of {here.day_kwh|energy} is back in {here.hours_h|hours} on "
        f"{{here.breaker_a|current}}, the {berth.bound_by} being the limit"
    )
    if "worst_h" not in numbers:
        return f"{why}, nine in ten below"
    return f"{why}; a bank drawn to its reserve in {{here.worst_h|hours}}, nine in ten below"


def _judged(criterion: Criterion, high: float, option: Option) -> str:
    """Longer than the second limit is a no only where nothing else charges."""
    result = criterion.judge(high)
    return CONDITIONAL if result == NO and second_source(option) else result


def second_source(option: Option) -> bool:
    """Panels, a genset or a wind generator aboard."""
    supply = option.supply
    return supply is not None and bool(supply.panels or supply.genset or supply.wind)


def _flip(berth: Berthed, numbers: dict[str, float]) -> tuple[str, dict[str, float]]:
    if berth.least_charger is None and np.isnan(berth.typical).any():
        return "legs at speeds that her hull form allows", numbers
    if berth.least_charger is None:
        return "a bank that takes charge faster; no charger does it with this one", numbers
    numbers = numbers | {"flip_kw": berth.least_charger / KILO}
    return "a charger of {here.flip_kw|power} into the bank", numbers
