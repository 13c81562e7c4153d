"""What does an option save against another one, and when is its extra cost repaid?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

import numpy as np

from generator.analyses.money.bill import Bill
from generator.analyses.money.cost import Cost
from generator.arrays import Array, Flags
from generator.case.case import Case
from generator.case.option import Option
from generator.money.present_value import discounted, recovery
from generator.records import number, record

NOT_MOTORED = "leg_beyond_the_forms"  # why an amount is absent


@record
class SavingResult:
    """What an option saves against the baseline, and when its extra cost is repaid."""

    baseline: str  # keep, new diesel
    present_value: Array = number(
        "money_whole", "saved over the horizon, present value", "low", expected=True
    )
    extra_first: Array = number("money_whole", "first cost above it", "high", expected=True)
    yearly: Array = number("money_whole", "saved each year", "low", expected=True)
    cheaper: float = number("share", "share of the draws in which it is the cheaper one")
    repaid: float = number("share", "share of the draws in which it is repaid")
    window: float = number("years", "years within which it is to be repaid")
    simple_payback: Array = number("years", "payback without interest", "high", expected=True)
    discounted_payback: Array = number("years", "payback with interest", "high", expected=True)
    absent: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True)
class Saving:
    """One option held against another one, per draw.

    Years are infinite where never repaid, nan where what is saved is not known.
    """

    present_value: Array  # saved over the horizon, positive where the option is cheaper
    extra_first: Array
    yearly: Array  # saved in energy, service and other yearly payments
    bills: tuple[Bill, Bill]  # of the option and of the other one: the expected case as printed
    simple_payback: Array
    discounted_payback: Array
    chance: float  # share of the draws in which the option is cheaper
    repaid: float  # share of the draws in which it is repaid within the window
    window: int  # years within which a payback counts: those of the horizon

    @property
    def extra(self) -> float:
        """Cost of ownership above the other one's in the expected case."""
        return self.bills[0].ownership - self.bills[1].ownership

    @property
    def first(self) -> float:
        """First cost above the other one's in the expected case."""
        return self.bills[0].first - self.bills[1].first

    @property
    def a_year(self) -> float:
        """Saved each year in the expected case."""
        return self.bills[1].yearly - self.bills[0].yearly

    def result(self, baseline: str) -> SavingResult:
        """The draws, with the expected case as the tables of the cost have it."""
        money = dict.fromkeys(("present_value", "extra_first", "yearly"), NOT_MOTORED)
        return SavingResult(
            baseline=baseline,
            present_value=Bill.printed(self.present_value, -self.extra),
            extra_first=Bill.printed(self.extra_first, self.first),
            yearly=Bill.printed(self.yearly, self.a_year),
            cheaper=self.chance,
            repaid=self.repaid,
            window=float(self.window),
            simple_payback=self.simple_payback,
            discounted_payback=self.discounted_payback,
            absent={
                **money,
                "simple_payback": _unpaid(self.simple_payback),
                "discounted_payback": _unpaid(self.discounted_payback),
            },
        )


@dataclass(frozen=True)
class Savings:
    """An option against both diesels, and which of them is the baseline."""

    keep: Saving | None
    new_diesel: Saving | None
    fair: str  # keep, new diesel, or nothing where the case has neither
    unpriced: bool = False  # no price is given for fitting it
    baseline_unpriced: bool = False

    @property
    def fairly(self) -> Saving | None:
        """Against the baseline."""
        return self.against(self.fair)

    def against(self, kind: str) -> Saving | None:
        """Against one of the diesels."""
        return self.new_diesel if kind == "new diesel" else self.keep


def fair_baseline(case: Case) -> str:
    """The present diesel with what it needs, whatever its state; a new one where none is kept."""
    kinds = {option.kind for option in case.options}
    return next((kind for kind in ("keep", "new diesel") if kind in kinds), "")


def savings(case: Case, option: Option, own: Cost, keep: Cost | None, new: Cost | None) -> Savings:
    """Against keeping and against a new diesel; an option is not held against its own kind.

    Nor is anything held against what no price is given for.
    """

    def against(kind: str, other: Cost | None) -> Saving | None:
        if other is None or option.kind == kind or not (own.priced and other.priced):
            return None
        return saving(case, own, other)

    fair = fair_baseline(case)
    baseline = new if fair == "new diesel" else keep
    return Savings(
        keep=against("keep", keep),
        new_diesel=against("new diesel", new),
        fair=fair,
        unpriced=not own.priced,
        baseline_unpriced=baseline is not None and not baseline.priced,
    )


def saving(case: Case, own: Cost, other: Cost) -> Saving:
    """Draw by draw, so that doubts which both share cancel."""
    window = case.prices.horizon
    flows = other.flows[:, : window + 1] - own.flows[:, : window + 1]
    worth = np.asarray(other.present_value - own.present_value)
    simple = _recovered(flows)
    with_interest = _recovered(discounted(flows, case.prices.discount_rate))
    return Saving(
        present_value=worth,
        extra_first=np.asarray(own.first - other.first),
        yearly=np.asarray(other.yearly - own.yearly),
        bills=(own.bill, other.bill),
        simple_payback=simple,
        discounted_payback=with_interest,
        chance=_share(worth > 0.0),
        repaid=_share(np.isfinite(with_interest)),
        window=window,
    )


def _unpaid(years: Array) -> str:
    """Why a payback has no number of years."""
    return "not_repaid_or_not_motored" if np.isnan(years).any() else "not_repaid"


def _recovered(flows: Array) -> Array:
    """Years until what was spent is back; nan where what is saved is not known."""
    return np.where(np.isnan(flows).any(axis=1), np.nan, recovery(flows)).reshape(-1, 1)


def _share(flags: Flags) -> float:
    """Of the draws; the first row is the best estimate and counts only where it is alone."""
    rows = flags[1:] if flags.shape[0] > 1 else flags
    return float(rows.mean())
