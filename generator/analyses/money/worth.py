"""Is an option worth its money against the baseline, apart from whether it serves the boat?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

import numpy as np

from generator.analyses.money.bill import Bill
from generator.analyses.money.cost import DYING, Cost
from generator.analyses.money.savings import Saving, Savings
from generator.analyses.percentiles import scalar, spread
from generator.analyses.verdict.criteria.catalogue import criteria
from generator.arrays import Array, Numbers
from generator.case.case import Case
from generator.case.option import Option
from generator.records import number, record

OVER_WORTH = 26  # id of the criterion whose conditional limit is the share that is warned of
HEALTHY = "good"
ANSWERS = ("pays_back", "never_behind", "worth_at_end", "costs_more")


@record
class Worth:
    """The second word on an option: what it costs or brings beside the baseline.

    ``outcome``: pays_back; never_behind (dearer at no time); worth_at_end (dearer as paid, cheaper
    by what is left at the end); costs_more; reference (it is the baseline); unpriced; no_diesel;
    not_motored.
    ``needs`` of a present diesel that is kept: ledger (its overhaul is a payment of the case),
    now (it is dying), chance (counted by its wear); nothing for a new diesel.
    """

    SAID_BY: ClassVar[str] = "worth"
    SAID_IN: ClassVar[str] = "worth"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("against", "warning")
    outcome: str
    baseline: str
    needs: str
    baseline_itself: bool
    lacks_own: bool  # no price is given for what has to be fitted, or overhauled at once
    lacks_baseline: bool
    other_reasons: bool  # does the owner name any beside money?
    over_half: bool  # is the first cost above half of what she is worth?
    beside_healthy: bool  # does it replace an engine in good health?
    horizon: float = number("years", "years over which money is compared")
    payback: Numbers | None = number(
        "years", "years until the extra first cost is repaid with interest", "high", expected=True
    )
    extra: Numbers | None = number(
        "money", "cost above the baseline, present value", "high", expected=True
    )
    cheaper: float | None = number("share", "share of the draws in which it is the cheaper one")
    ownership: Numbers | None = number(
        "money", "cost of ownership, present value", "high", expected=True
    )
    first: Numbers | None = number("money", "first cost", "high", expected=True)
    boat: Numbers | None = number("money", "worth of the boat as she lies", expected=True)
    share: Numbers | None = number(
        "share", "first cost over the worth of the boat", "high", expected=True
    )
    overhaul: Numbers | None = number(
        "money",
        "price of the overhaul that no line of the case names, with contingency",
        expected=True,
    )
    chance: Numbers | None = number(
        "share", "chance of that overhaul within these years", expected=True
    )
    absent: Mapping[str, str] = field(default_factory=dict)


def worth(case: Case, option: Option, own: Cost, held: Savings, baseline: Cost | None) -> Worth:
    """From what the option saves against the baseline; every number that of the expected case."""
    saving, outcome = held.fairly, _outcome(option, own, held, baseline)
    answered = outcome in ANSWERS
    itself = option.kind == held.fair
    boat = None if case.boat.worth is None else np.asarray(case.boat.worth, dtype=np.float64)
    share = None if boat is None or not own.priced else own.first / boat
    needs, risk = "", None
    if held.fair == "keep" and baseline is not None:
        needs, risk = _needs(case, baseline), baseline.overhaul
    counted = needs in ("now", "chance")
    return Worth(
        outcome=outcome,
        baseline=held.fair,
        needs=needs,
        baseline_itself=itself,
        lacks_own=not own.priced,
        lacks_baseline=not itself and baseline is not None and not baseline.priced,
        other_reasons=bool(case.study.reasons),
        over_half=share is not None and scalar(share) > _warned(),
        beside_healthy=option.kind != "keep" and case.engine.condition == HEALTHY,
        horizon=float(case.prices.horizon),
        payback=saving.discounted_payback if saving and answered else None,
        extra=Bill.printed(-saving.present_value, saving.extra) if saving and answered else None,
        cheaper=saving.chance if saving and answered else None,
        ownership=Bill.printed(own.present_value, own.bill.ownership) if own.priced else None,
        first=Bill.printed(own.first, own.bill.first) if own.priced else None,
        boat=boat,
        share=share,
        overhaul=risk.price if counted and risk else None,
        chance=risk.chance[:, [case.prices.horizon]] if counted and risk else None,
        absent=_reasons(own, boat, outcome),
    )


def _outcome(option: Option, own: Cost, held: Savings, baseline: Cost | None) -> str:
    """Sign of what is saved first: worth at the end may say otherwise than what is paid."""
    saving = held.fairly
    if not held.fair:
        return "no_diesel"
    if not own.priced or baseline is None or not baseline.priced:
        return "unpriced"
    if option.kind == held.fair or saving is None:
        return "reference" if _known(own.present_value) else "not_motored"
    if not _known(saving.present_value):
        return "not_motored"
    return _answer(saving)


def _answer(saving: Saving) -> str:
    if saving.extra > 0.0:
        return "costs_more"
    years = scalar(saving.discounted_payback)
    if years == 0.0:
        return "never_behind"
    return "pays_back" if np.isfinite(years) else "worth_at_end"


def _known(values: Array) -> bool:
    """Has it a number in the expected case and in half of the draws?"""
    return bool(np.isfinite(scalar(values)) and np.isfinite(scalar(spread(values).middle)))


def _needs(case: Case, keep: Cost) -> str:
    """What the present diesel asks for if it stays."""
    if keep.overhaul is None or not keep.overhaul.counted:
        return "ledger"
    return "now" if case.engine.condition == DYING else "chance"


def _warned() -> float:
    return next(row.conditional for row in criteria() if row.id == OVER_WORTH)


def _reasons(own: Cost, boat: Array | None, outcome: str) -> dict[str, str]:
    """Why a number is absent, by its field."""
    unanswered = {
        "reference": "held_against_itself", "unpriced": "price_missing", "no_diesel": "no_diesel",
        "not_motored": "energy_not_known",
    }.get(outcome, "not_repaid")  # fmt: skip
    unpriced = "energy_not_known" if own.priced else "price_missing"
    return {
        "payback": unanswered, "extra": unanswered, "cheaper": unanswered,
        "ownership": unpriced, "first": unpriced,
        "boat": "worth_not_given", "share": "worth_not_given" if boat is None else unpriced,
        "overhaul": "no_overhaul_by_chance", "chance": "no_overhaul_by_chance",
    }  # fmt: skip
