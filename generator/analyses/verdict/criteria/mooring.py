"""Criterion 12: does the sun carry her where there is no plug?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

from generator.analyses.findings import Findings
from generator.analyses.percentiles import scalar, spread
from generator.analyses.use.berth import Berthed
from generator.analyses.verdict.criteria.apart import apart
from generator.analyses.verdict.criteria.criterion import (
    CONDITIONAL,
    GO,
    NO,
    NOT_APPLICABLE,
    NOT_ASSESSED,
    Criterion,
    Judgement,
    by_chance,
    stated,
)
from generator.arrays import Array
from generator.records import number, record


@record
class Mooring:
    """What charges her between passages where no plug does.

    ``outcome``: plug (there is one), sun (panels, held against her use), source (no panels, but
    a genset or a wind generator), nothing (no way to charge at all), no_position (the sun there
    is not known), no_year (it was not looked at).
    """

    SAID_BY: ClassVar[str] = "mooring"
    SAID_IN: ClassVar[str] = "criteria_power"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend",)
    outcome: str
    result: str
    other_source: bool
    outings: Array | None = number("ratio", "usual days in a full, aged bank", cautious="low")
    sun: float | None = number("energy", "sun into the bank, dimmest quarter of her weeks")
    house: float | None = number("energy", "taken by the house in a week")
    use: Array | None = number("energy", "taken by her legs in a week", cautious="high")
    covered: Array | None = number("ratio", "sun less house, over use", cautious="low")
    panels: float | None = number("watts", "panels that carry her")
    absent: Mapping[str, str] = field(default_factory=dict)


ABSENT = dict.fromkeys(("outings", "use", "covered"), "leg_not_motored") | {
    "sun": "not_asked_for", "house": "not_asked_for", "panels": "does_not_help",
}  # fmt: skip


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Weekly sun less the house over weekly use, in the dimmest quarter; a plug needs none."""
    berth = found.use.berth
    if berth is None:
        return apart(criterion, "no_battery" if found.bank is None else "no_passage")
    supply, other = found.option.supply, other_source(found)
    if found.case.berth.shore_power:
        return _row(criterion, found, berth, "plug", NOT_APPLICABLE, None)
    if supply is None or not supply.panels:
        outcome, result = ("source", CONDITIONAL) if other else ("nothing", NO)
        return _row(criterion, found, berth, outcome, result, 0.0)
    if found.carried is None:
        outcome, result = ("no_year", NOT_ASSESSED) if _placed(found) else (
            "no_position", CONDITIONAL
        )  # fmt: skip
        return _row(criterion, found, berth, outcome, result, None)
    result = by_chance(*criterion.reached(found.carried.ratio))
    if result == NO and other:
        result = CONDITIONAL
    return _row(criterion, found, berth, "sun", result, None)


def _row(
    criterion: Criterion,
    found: Findings,
    berth: Berthed,
    outcome: str,
    result: str,
    value: float | None,
) -> Judgement:
    facts = _facts(found, berth, outcome, result)
    if outcome != "sun" or found.carried is None:
        return Judgement(criterion, value, value, "-", result, facts=facts)
    told = spread(found.carried.ratio, "low")
    return Judgement(
        criterion, stated(scalar(told.middle)), stated(scalar(told.low)), "-", result, facts=facts,
        per_draw=found.carried.ratio,
    )  # fmt: skip


def _facts(found: Findings, berth: Berthed, outcome: str, result: str) -> Mooring:
    carried, by_sun = found.carried, outcome == "sun"
    return Mooring(
        outcome=outcome,
        result=result,
        other_source=other_source(found),
        outings=berth.outings,
        sun=carried.sun if carried and by_sun else None,
        house=carried.house if carried and by_sun else None,
        use=carried.use if carried and by_sun else None,
        covered=carried.ratio if carried and by_sun else None,
        panels=carried.least if carried and result not in (GO, NOT_APPLICABLE) else None,
        absent=ABSENT if by_sun else ABSENT | {"use": "not_asked_for", "covered": "not_asked_for"},
    )


def _placed(found: Findings) -> bool:
    """Whether the sun at her waters can be known."""
    waters = found.case.waters
    return found.case.weather is not None or None not in (waters.latitude, waters.longitude)


def other_source(found: Findings) -> bool:
    """A genset or a wind generator aboard."""
    supply = found.option.supply
    return supply is not None and bool(supply.genset or supply.wind)
