"""What does results.json say of what an option saves, and when is its extra cost repaid?"""

from __future__ import annotations

from typing import Any

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.money.savings import Saving
from generator.analyses.percentiles import best, scalar, spread
from generator.arrays import Array
from generator.report.results.suffix import NOT_MOTORED, excused, told_of

Row = dict[str, Any]
NOT_REPAID = "will not pay back"
NO_SUCH = "the case has no such option"
NO_PRICE_THERE = "no price is given for one of the two"


def saving_part(found: Findings) -> Row:
    """Against both diesels, each with its payback."""
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
    return row


def _against(name: str, saving: Saving | None, itself: bool, why: str) -> Row:
    """How much dearer the option is; negative where it is cheaper."""
    if saving is None:
        if itself:
            return {f"against_{name}_money": 0.0}
        return {f"against_{name}_money": None, f"against_{name}_money_why": why}
    return expected_of(f"against_{name}", -saving.present_value, saving.extra)


def _saving(saving: Saving, other: str, window: str) -> Row:
    row: Row = {
        "baseline": other,
        **_careful("present_value", saving.present_value, -saving.extra),
        **expected_of("extra_first", saving.extra_first, saving.first),
        **_careful("yearly", saving.yearly, saving.a_year),
        "cheaper_share": saving.chance,
        "repaid_share": saving.repaid,
        "window_years": saving.window,
    }
    for name, years in (("simple", saving.simple_payback),
                        ("discounted", saving.discounted_payback)):  # fmt: skip
        told = spread(years)
        for end, value in (("", _expected(years)), ("_low", told.low), ("_high", told.high)):
            key = f"{name}_payback{end}_years"
            row |= excused({key: scalar(value)}, _why_not_repaid(years, window))
    return excused(row, NOT_MOTORED)


def _careful(name: str, values: Array, expected: float) -> Row:
    """As expected_of, for what is the worse the less it is."""
    row = told_of(name, values, "1", "money", "low")
    return row | ({f"{name}_money": expected} if np.isfinite(row[f"{name}_money"]) else {})


def _expected(years: Array) -> Array:
    """The best estimate; nothing where most draws have no number."""
    return best(years) if not np.isnan(spread(years).middle).any() else spread(years).middle


def _why_not_repaid(years: Array, window: str) -> str:
    """Why a payback has no number of years."""
    why = f"{NOT_REPAID} within {{{window}|years}}"
    return f"{why}, or {NOT_MOTORED}" if np.isnan(years).any() else why


def expected_of(name: str, values: Array, expected: float) -> Row:
    """The best estimate, which adds to sums, and its spread; nothing where most draws have none."""
    row = told_of(name, values, "1", "money")
    if np.isfinite(row[f"{name}_money"]):
        row[f"{name}_money"] = expected
    return row
