"""Criterion 21: is she outside the recreational craft rules, or assessed under them?"""

from __future__ import annotations

from generator.analyses.findings import Findings
from generator.analyses.verdict.cautions import MARKET_DATE
from generator.analyses.verdict.criteria.criterion import NOT_APPLICABLE, Criterion, Judgement

MARKETS = ("EEA", "GB", "NI")
VALUES = {"not in scope": 1.0, "assessed": 1.0, "enquired": 0.0, "not asked": 0.0, "refused": -1.0}


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """What the body has said; else by market and by the year she was first put on it."""
    if found.option.bank is None:
        why = "the means of propulsion stays"
        return Judgement(criterion, None, None, "-", NOT_APPLICABLE, why, "")
    boat, said = found.case.boat, found.case.papers.conversion
    if boat.market not in MARKETS:
        why = "her market of {boat.market|given} has no such rule for a private boat"
        return Judgement(criterion, 1.0, 1.0, "-", criterion.judge(1.0), why, "")
    year = boat.year_on_market
    older = year is not None and year < MARKET_DATE
    value = VALUES[said] if said else 1.0 if older else 0.0
    when = "no year on the market is given" if year is None else (
        "first on the market in {boat.year_on_market|year}"
    )  # fmt: skip
    why = f"{when}; notified or approved body: {said or 'no answer stated'}"
    if not said and older:
        why += ", and held not to be drawn in by a later change"
    body = "the answer of a notified or approved body"
    condition = "" if value > 0 else (
        "Written answer of a notified or approved body on the change of propulsion"
    )  # fmt: skip
    flip = "" if value > 0 else body
    return Judgement(criterion, value, value, "-", criterion.judge(value), why, flip, condition)
