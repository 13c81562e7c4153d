"""What does results.json say of money: ledgers, years and savings?"""

from __future__ import annotations

import math
from typing import Any

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.money.cost import Cost, Overhaul
from generator.analyses.money.cost_ledger import FIRST_DIRECTIVE, Payment
from generator.analyses.money.savings import Saving, Savings
from generator.analyses.percentiles import scalar, spread
from generator.arrays import Array
from generator.case.case import Case
from generator.report.results.option_part import told_of
from generator.report.results.suffix import NOT_MOTORED, PER_SI, excused, put
from generator.report.results.turning_part import turning_part
from generator.sensitivity import Tornado
from generator.study import Study

Row = dict[str, Any]
NO_SUCH = "the case has no such option"
ITSELF = "held against itself"
NOT_REPAID = "will not pay back"
NO_PRICE = "no price is given for fitting it"
NO_OVERHAUL = "no price is given for the overhaul that a dying engine needs"
NO_PRICE_THERE = "no price is given for one of the two"
WHOLE = ("first", "present_value", "equal_yearly", "contingency", "per_mile", "per_hour")


def money_frame(case: Case, study: Study) -> Row:
    """What holds for the money of all options."""
    prices = case.prices
    named, moved = study.options[0].findings.savings, study.options[0].findings.case.prices
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
        "contingency_middle_pct": scalar(spread(moved.contingency).middle) * PER_SI["pct"],
        "quote_middle_share": scalar(spread(moved.quote_scale).middle),
        "reasons": list(case.study.reasons),
    }


def cost_part(found: Findings, moved: Tornado | None = None) -> Row:
    """Money of the option, and what it saves against keeping and against a new diesel."""
    cost, lines = found.cost, found.ledger
    row: Row = {
        **told_of("first", cost.first, "1", "money"),
        "contingency_money": scalar(spread(cost.contingency).middle),
        **told_of("present_value", cost.present_value, "1", "money"),
        **told_of("equal_yearly", cost.equal_yearly, "1", "money"),
        "yearly_money": scalar(spread(cost.yearly).middle),
        "energy_yearly_money": scalar(spread(cost.energy).middle),
        "service_yearly_money": scalar(spread(cost.service).middle),
        "other_yearly_money": scalar(spread(cost.other).middle),
        "residual_money": scalar(spread(cost.residual).middle),
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
    return excused(row | _savings(found), NOT_MOTORED) | turning_part(found, moved)


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
        row |= told_of(f"per_{name}", cost.equal_yearly / (use * PER_SI[suffix]), "1", "money")
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
        "price_money": scalar(found.case.prices.overhaul) if risk.counted else None,
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
        **told_of("amount", item.amount, "1", "money"),
        "amount_money": scalar(item.amount),  # as given; the middle of the draws is another
        "when": item.when,
        "year": None if item.year is None else scalar(spread(item.year).middle),
        "source": item.source,
        "price_year": item.price_year,
    }


def _cumulative(cost: Cost) -> list[Row]:
    told = spread(cost.cumulative)
    return [
        {
            "year": int(year),
            **excused(
                {
                    "low_money": float(told.low[year]),
                    "middle_money": float(told.middle[year]),
                    "high_money": float(told.high[year]),
                },
                NOT_MOTORED,
            ),
        }
        for year in np.arange(cost.cumulative.shape[1])
    ]


def _savings(found: Findings) -> Row:
    """Against both diesels, each with its payback, and the sentence for page 1."""
    held = found.savings
    row: Row = {}
    named = {"keep": held.keep if held else None, "new_diesel": held.new_diesel if held else None}
    kinds = {option.kind.replace(" ", "_") for option in found.case.options}
    for name, saving in named.items():
        why = NO_PRICE_THERE if name in kinds else NO_SUCH
        row |= _against(name, saving, found.option.kind.replace(" ", "_") == name, why)
    fair = held.fairly if held else None
    key = f"options.{found.place}.cost.saving.window_years"
    row["saving"] = None if held is None or fair is None else _saving(fair, held.fair, key)
    known = fair is not None and np.isfinite(scalar(spread(fair.yearly, "low").middle))
    row["sentence"] = _sentence(found, fair) if fair and known and found.bank else None
    if held is not None and found.bank and (held.unpriced or held.baseline_unpriced):
        row["sentence"] = _without_price(found, held)
    return row


def _without_price(found: Findings, held: Savings) -> str:
    """Which price is missing for a word on money."""
    name = f"{{options.{found.place}.name|given}}"
    lacking = [f"fitting {name}"] if held.unpriced else []
    if held.baseline_unpriced and held.fair == "keep":
        lacking.append("the overhaul that the dying engine needs")
    elif held.baseline_unpriced:
        lacking.append("the new diesel that it is held against")
    return f"No word on money: no price is given for {' or for '.join(lacking)}."


def _against(name: str, saving: Saving | None, itself: bool, why: str) -> Row:
    """How much dearer the option is; negative where it is cheaper."""
    if saving is None:
        if itself:
            return {f"against_{name}_money": 0.0}
        return {f"against_{name}_money": None, f"against_{name}_money_why": why}
    return told_of(f"against_{name}", -saving.present_value, "1", "money")


def _saving(saving: Saving, other: str, window: str) -> Row:
    row: Row = {
        "baseline": other,
        **told_of("present_value", saving.present_value, "1", "money", "low"),
        **told_of("extra_first", saving.extra_first, "1", "money"),
        **told_of("yearly", saving.yearly, "1", "money", "low"),
        "cheaper_share": saving.chance,
        "repaid_share": saving.repaid,
        "window_years": saving.window,
    }
    for name, years in (("simple", saving.simple_payback),
                        ("discounted", saving.discounted_payback)):  # fmt: skip
        told = spread(years)
        for end, value in (("", told.middle), ("_low", told.low), ("_high", told.high)):
            key = f"{name}_payback{end}_years"
            row |= excused({key: scalar(value)}, _why_not_repaid(years, window))
    return excused(row, NOT_MOTORED)


def _why_not_repaid(years: Array, window: str) -> str:
    """Why a payback has no number of years."""
    why = f"{NOT_REPAID} within {{{window}|years}}"
    return f"{why}, or {NOT_MOTORED}" if np.isnan(years).any() else why


def _sentence(found: Findings, saving: Saving) -> str:
    """Money in one sentence: what it costs more, what it saves, and whether it comes back."""
    key = f"options.{found.place}.cost"
    other = "a new diesel" if found.savings and found.savings.fair == "new diesel" else (
        "keeping the diesel"
    )  # fmt: skip
    extra = scalar(spread(saving.extra_first).middle)
    yearly = scalar(spread(saving.yearly, "low").middle)
    first = "more" if extra >= 0.0 else "less"
    a_year = "saves" if yearly >= 0.0 else "costs"
    again = "a year" if yearly >= 0.0 else "more a year"
    return (
        f"Money: {{{key}.saving.extra_first_money|money:size}} {first} to fit than {other}; "
        f"{a_year} {{{key}.saving.yearly_money|money:size}} {again}; {_repaid(saving, key)}."
    )


def _repaid(saving: Saving, key: str) -> str:
    window = f"{{{key}.saving.window_years|years}}"
    middle = scalar(spread(saving.discounted_payback).middle)
    if not math.isfinite(middle):
        return f"will not pay back within {window}"
    if middle == 0.0:
        return "nothing has to be paid back"
    years = f"{{{key}.saving.discounted_payback_years|years}}"
    return f"pays back in {years} (in {{{key}.saving.repaid_share|share}} of the draws)"
