"""Criterion 21: is she outside the recreational craft rules, or assessed under them?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

from generator.analyses.findings import Findings
from generator.analyses.verdict.cautions import MARKET_DATE
from generator.analyses.verdict.criteria.apart import apart
from generator.analyses.verdict.criteria.criterion import Criterion, Judgement
from generator.records import number, record

MARKETS = ("EEA", "GB", "NI")
# A refusal stops, a doubt is a condition.
VALUES = {"not in scope": 1.0, "assessed": 1.0, "enquired": 0.0, "not asked": 0.0, "refused": -1.0}


@record
class Conversion:
    """Her standing under the craft rules.

    ``outcome``: no_rule (her market has none), older (than the rules, and not drawn in), unasked
    (nobody has said), or the answer of the body.
    """

    SAID_BY: ClassVar[str] = "conversion"
    SAID_IN: ClassVar[str] = "criteria_papers"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend",)
    outcome: str
    market: str
    first: int | None = number("year", "first on the market")
    absent: Mapping[str, str] = field(default_factory=dict)


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """What the body has said; else by market and by the year she was first put on it."""
    if found.option.bank is None:
        return apart(criterion, "drive_stays")
    boat, said = found.case.boat, found.case.papers.conversion
    year = boat.year_on_market
    older = year is not None and year < MARKET_DATE
    if boat.market not in MARKETS:
        outcome, value = "no_rule", 1.0
    elif said:
        outcome, value = said, VALUES[said]
    else:
        outcome, value = ("older", 1.0) if older else ("unasked", 0.0)
    facts = Conversion(outcome, boat.market, year, {"first": "not_said"})
    return Judgement(criterion, value, value, "-", criterion.judge(value), facts=facts)
