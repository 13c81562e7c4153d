"""Criterion 12: does the sun carry her where there is no plug?"""

from __future__ import annotations

from generator.analyses.findings import Findings
from generator.analyses.percentiles import scalar, spread
from generator.analyses.verdict.criteria.criterion import (
    CONDITIONAL,
    GO,
    NO,
    NOT_APPLICABLE,
    NOT_ASSESSED,
    Criterion,
    Judgement,
    stated,
)
from generator.analyses.year.sun_carries import SunCarries

KWH = 3.6e6


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Weekly sun less the house over weekly use, one week in four below; a plug needs none."""
    berth = found.use.berth
    if berth is None:
        why = "no propulsion battery" if found.bank is None else "no passage is motored"
        return Judgement(criterion, None, None, "-", NOT_APPLICABLE, why, "")
    outings = stated(scalar(spread(berth.outings, "low").low))
    numbers = {} if outings is None else {"outings": outings}
    if found.case.berth.shore_power:
        why = f"there is a plug; without it {_lasts(numbers, 'the')}"
        return Judgement(criterion, None, None, "-", NOT_APPLICABLE, why, "", numbers=numbers)
    supply = found.option.supply
    if supply is None or not supply.panels:
        return _without_panels(criterion, found, numbers)
    if found.carried is None:
        why = "the year by the sun is not there: latitude and longitude are not given"
        return Judgement(criterion, None, None, "-", NOT_ASSESSED, why, "", numbers=numbers)
    return _by_the_sun(criterion, found, found.carried)


def _by_the_sun(criterion: Criterion, found: Findings, carried: SunCarries) -> Judgement:
    told = spread(carried.ratio, "low")
    low = scalar(told.low)
    result = criterion.judge(low)
    if result == NO and other_source(found):
        result = CONDITIONAL
    numbers = {"sun_kwh": carried.sun / KWH, "house_kwh": carried.house / KWH}
    use = stated(scalar(spread(carried.use).middle))
    taken = "in too many draws one of her legs cannot be motored"
    if use is not None:
        numbers["use_kwh"] = use / KWH
        taken = "her legs take {here.use_kwh|energy} a week"
    why = (
        "in the dimmest quarter of her weeks the panels give {here.sun_kwh|energy} and the house "
        f"takes {{here.house_kwh|energy}}; {taken}"
    )
    flip = ""
    if result != GO:
        flip, more = _flip(carried)
        numbers |= more
    return Judgement(
        criterion, stated(scalar(told.middle)), stated(low), "-", result, why, flip,
        numbers=numbers, per_draw=carried.ratio,
    )  # fmt: skip


def _lasts(numbers: dict[str, float], article: str) -> str:
    """How long a bank lasts, where a usual day has a number."""
    if "outings" in numbers:
        return f"{article} bank lasts {{here.outings|ratio}} usual days"
    return f"nothing is said of how long {article} bank lasts: a leg of hers cannot be motored"


def _without_panels(criterion: Criterion, found: Findings, numbers: dict[str, float]) -> Judgement:
    result = CONDITIONAL if other_source(found) else NO
    why = f"no plug and no panel: {_lasts(numbers, 'a full')}"
    flip = "a berth with a plug, panels, or a genset"
    more: dict[str, float] = {}
    if found.carried is not None:
        flip, more = _flip(found.carried)
    return Judgement(criterion, 0.0, 0.0, "-", result, why, flip, numbers=numbers | more)


def _flip(carried: SunCarries) -> tuple[str, dict[str, float]]:
    if carried.least is None:
        return "a berth with a plug, or a genset; no panels that she can carry do it", {}
    return "{here.flip_w|watts} of panels", {"flip_w": carried.least}


def other_source(found: Findings) -> bool:
    """A genset or a wind generator aboard."""
    supply = found.option.supply
    return supply is not None and bool(supply.genset or supply.wind)
