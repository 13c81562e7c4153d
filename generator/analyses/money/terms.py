"""In which money, at which interest and against what is everything counted?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field

from generator.analyses.money.cost_ledger import FIRST_DIRECTIVE
from generator.arrays import Numbers
from generator.case.case import Case
from generator.records import number, record


@record
class MoneyTerms:
    """What holds for the money of all options."""

    terms: str  # real, nominal
    fair_baseline: str | None  # keep, new diesel; none where the case has no diesel
    directive_date: str  # boats placed on the market after it are in scope
    reasons: tuple[str, ...]  # of the owner, beside money
    priced: int = number("year", "year of the money")
    discount_rate: Numbers = number("percent", "discount rate a year", expected=True)
    inflation: Numbers = number("percent", "inflation a year", expected=True)
    diesel: Numbers = number("diesel_price", "price of diesel", expected=True)
    electricity: Numbers = number("electricity_price", "price of electricity", expected=True)
    correlation: Numbers = number(
        "ratio", "correlation of the trends of diesel and electricity", expected=True
    )
    contingency: Numbers = number("percent", "contingency on what is not quoted", expected=True)
    quote: Numbers = number("share", "what is paid of a quote", expected=True)
    absent: Mapping[str, str] = field(default_factory=dict)


def money_terms(case: Case, fair: str) -> MoneyTerms:
    """From the prices of the case; ``fair`` is the baseline of all savings."""
    prices = case.prices
    return MoneyTerms(
        terms=prices.terms,
        fair_baseline=fair or None,
        directive_date=FIRST_DIRECTIVE,
        reasons=tuple(case.study.reasons),
        priced=int(case.study.date[:4]),
        discount_rate=prices.discount_rate,
        inflation=prices.inflation,
        diesel=prices.diesel,
        electricity=prices.electricity,
        correlation=prices.energy_correlation,
        contingency=prices.contingency,
        quote=prices.quote_scale,
    )
