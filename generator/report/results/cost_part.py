"""What does results.json say of money: ledgers, years and savings?"""

from __future__ import annotations

from typing import Any

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.money.bill import Bill
from generator.analyses.money.cost import Cost, Overhaul
from generator.analyses.money.cost_ledger import FIRST_DIRECTIVE, Payment
from generator.analyses.percentiles import best, scalar, spread
from generator.case.case import Case
from generator.report.results.saving_part import expected_of, saving_part
from generator.report.results.suffix import (
    NEVER_CHARGED,
    NOT_MOTORED,
    PER_SI,
    excused,
    put,
    told_of,
)
from generator.report.results.turning_part import turning_part
from generator.sensitivity import Tornado
from generator.study import Study

Row = dict[str, Any]
NO_PRICE = "no price is given for fitting it"
NO_OVERHAUL = "no price is given for the overhaul that a dying engine needs"
WHOLE = (
    "first", "present_value", "equal_yearly", "contingency", "per_mile", "per_hour", "yearly_worth",
    "later_worth", "end_worth",
)  # fmt: skip


def money_frame(case: Case, study: Study) -> Row:
    """What holds for the money of all options."""
    prices = case.prices
    named = study.options[0].findings.savings
    return {
        "terms": prices.terms,
        "price_year": int(case.study.date[:4]),
        "discount_rate_pct": put(prices.discount_rate, "pct"),
        "inflation_pct": put(prices.inflation, "pct"),
        "diesel_money_per_l": put(prices.diesel, "money_per_l"),
        "electricity_money_per_kwh": put(prices.electricity, "money_per_kwh"),
        "correlation": put(prices.energy_correlation, "1"),
        "fair_baseline": (named.fair if named else "") or None,
        "directive_date": FIRST_DIRECTIVE,
        "contingency_pct": put(prices.contingency, "pct"),
        "quote_share": scalar(prices.quote_scale),
        "reasons": list(case.study.reasons),
    }


def cost_part(found: Findings, moved: Tornado | None = None) -> Row:
    """Money of the option, and what it saves against keeping and against a new diesel."""
    cost, lines, bill = found.cost, found.ledger, found.cost.bill
    row: Row = {
        **expected_of("first", cost.first, bill.first),
        "contingency_money": bill.contingency,
        **expected_of("present_value", cost.present_value, bill.ownership),
        **expected_of("equal_yearly", cost.equal_yearly, scalar(cost.equal_yearly)),
        "yearly_money": bill.yearly,
        **_energy(cost),
        "service_yearly_money": bill.service,
        "other_yearly_money": bill.other,
        "residual_money": scalar(cost.residual),
        "yearly_worth_money": bill.yearly_worth,
        "later_worth_money": bill.later_worth,
        "end_worth_money": -bill.end_worth,
        **_wall(found),
        **_per_use(cost),
        "priced": cost.priced,
        "lacking": list(lines.lacking),
        "assessment": lines.assessment,
        "bank_life_years": _life(found),
        "bank_again_share": _again(found),
        "overhaul": _overhaul(found, cost.overhaul),
        "items": [_item(item) for item in cost.payments if _counts(found, item)],
        "cumulative": _cumulative(cost),
    }
    if not cost.priced:
        why = NO_OVERHAUL if found.option.kind == "keep" else NO_PRICE
        row |= dict.fromkeys(_of_the_whole(row)) | {f"{key}_why": why for key in WHOLE}
        row["cumulative"] = []
    return excused(row | saving_part(found), NOT_MOTORED) | turning_part(found, moved)


def _energy(cost: Cost) -> Row:
    """What is paid for energy in a year, and by what it is charged."""
    row: Row = {"charged_by": cost.charged_by, "energy_yearly_money": cost.bill.energy}
    if cost.charged_by == "nothing":
        row |= {"energy_yearly_money": None, "energy_yearly_money_why": NEVER_CHARGED}
    return row


def _of_the_whole(row: Row) -> list[str]:
    """Keys that no number can stand behind while a part of the cost is not known."""
    return [key for key in row if key.startswith(WHOLE)]


def _life(found: Findings) -> float | None:
    """Years until the bank is replaced."""
    bank = found.option.bank
    return None if bank is None else scalar(spread(bank.lasts).middle)


def _again(found: Findings) -> float | None:
    """Share of the draws in which the first bank is replaced within the horizon."""
    bank = found.option.bank
    if bank is None:
        return None
    lives = np.atleast_2d(np.asarray(bank.lasts, dtype=np.float64))
    rows = lives[1:] if lives.shape[0] > 1 else lives
    return float((rows < found.case.prices.horizon).mean())


def _counts(found: Findings, item: Payment) -> bool:
    """Payments made by themselves after the horizon are not shown."""
    if item.source != "register" or item.year is None:
        return True
    return scalar(spread(item.year).middle) <= found.case.prices.horizon


def _wall(found: Findings) -> Row:
    """What the plug gives in a year, motor and house, at the price of today; best estimate."""
    year, price = found.year, found.case.prices.electricity
    if year is None:
        return {"wall_yearly_kwh": None, "wall_yearly_money": None}
    taken = float(year.shore_wall.mean())
    return {"wall_yearly_kwh": taken * PER_SI["kwh"], "wall_yearly_money": taken * scalar(price)}


def _per_use(cost: Cost) -> Row:
    """Equal yearly cost over what a year of use is."""
    row: Row = {}
    for name, use, suffix in (("mile", cost.use.distance, "nm"), ("hour", cost.use.time, "h")):
        if scalar(use) <= 0.0:
            row |= {f"per_{name}_money": None, f"per_{name}_money_why": "no leg is motored"}
            continue
        each = cost.equal_yearly / (use * PER_SI[suffix])
        row |= expected_of(f"per_{name}", each, scalar(each))
    return row


def _overhaul(found: Findings, risk: Overhaul | None) -> Row | None:
    """How worn the engine is, and how soon an overhaul is as likely as not."""
    if risk is None:
        return None
    horizon = found.case.prices.horizon
    years = sorted({1, min(5, horizon), horizon})
    return {
        "wear_share": scalar(spread(risk.wear).middle),
        **told_of("left", risk.years_left, "1", "years"),
        "counted": risk.counted,
        "price_money": scalar(risk.price) if risk.counted else None,
        "price_money_why": None if risk.counted else "the owner's ledger holds the overhaul",
        "chance": [
            {"within_years": year, "chance_share": scalar(spread(risk.chance[:, [year]]).middle)}
            for year in years
        ],
    }


def _item(item: Payment) -> Row:
    """A payment as its owner gave it, with tax and in money of the study, and its band."""
    return {
        "name": item.name,
        "part": item.part,
        **expected_of("amount", item.amount, Bill.whole(item.amount)),
        "contingency_money": Bill.whole(item.contingency),
        "when": item.when,
        "year": None if item.year is None else scalar(spread(item.year).middle),
        "source": item.source,
        "price_year": item.price_year,
    }


def _cumulative(cost: Cost) -> list[Row]:
    told = spread(cost.cumulative)
    expected = np.where(np.isnan(told.middle), np.nan, best(cost.cumulative))
    return [
        {
            "year": int(year),
            **excused(
                {
                    "low_money": float(told.low[year]),
                    "middle_money": float(expected[year]),
                    "high_money": float(told.high[year]),
                },
                NOT_MOTORED,
            ),
        }
        for year in np.arange(cost.cumulative.shape[1])
    ]
