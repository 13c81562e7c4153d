"""Which payments does an option bring, and when, in money of the year of the study?"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np

from generator.arrays import Array
from generator.case.case import Case
from generator.case.option import Option
from generator.case.prices import CostItem, parts_by_name, sources_without

FIRST_DIRECTIVE = "1998-06-16"  # boats placed on the market after that day are in scope
MARKETS = ("EEA", "GB", "NI")
BY_PAPER = {"not in scope": "not in scope", "assessed": "done"}  # what a body has answered
USUAL = ("labour", "haul-out", "survey")  # parts of a conversion that a ledger easily forgets


@dataclass(frozen=True)
class Payment:
    """One line of the ledger as it counts; credits are negative."""

    name: str
    part: str
    amount: Array  # (draws, 1), with tax, in money of the year of the study
    when: str  # first, yearly, once
    year: Array | None  # whole years from now, for once
    source: str  # quote, estimate, register
    price_year: int | None
    line: int
    contingency: Array  # on top of the amount; none on a quote, nor on money that comes in


@dataclass(frozen=True)
class Ledger:
    """All payments of one option beside energy and service."""

    payments: tuple[Payment, ...]
    priced: bool  # False where the case gives no first cost
    lacking: tuple[str, ...]  # usual parts and sources of energy that no line names
    assessment: str  # owed, in the ledger, released, done, out of scope, not in scope, not asked

    def sum(self, when: str) -> Array:
        """What is paid now, or each year, contingency and all."""
        return self.amounts(when) + self.contingency(when)

    def amounts(self, when: str) -> Array:
        """The same without contingency."""
        return _total(row.amount for row in self.payments if row.when == when)

    def contingency(self, when: str) -> Array:
        """Contingency of what is paid now, or each year."""
        return _total(row.contingency for row in self.payments if row.when == when)


def ledger(case: Case, option: Option) -> Ledger:
    """The owner's lines, the assessment where it is owed, and the banks to come."""
    given = tuple(_payment(case, item) for item in option.costs)
    status = _assessment(case, option)
    owed = (_owed(case),) if status == "owed" else ()
    firsts = [row for row in given if row.when == "first"]
    parts = {row.part for row in given} | {
        part for row in given for part in parts_by_name(row.name)
    }
    names = [item.name for item in option.costs]
    sources = () if option.supply is None else sources_without(option.supply.extra, names)
    return Ledger(
        payments=(*given, *owed, *_banks(case, option, given)),
        priced=bool(firsts),
        lacking=(*(part for part in USUAL if part not in parts), *sources) if option.bank else (),
        assessment=status,
    )


def _total(amounts: Iterable[Array]) -> Array:
    """The sum of columns of draws."""
    found = np.zeros((1, 1))
    for amount in amounts:
        found = found + amount
    return found


def _contingency(case: Case, amount: Array, source: str) -> Array:
    """On everything that is to be paid and is not quoted, whenever that is."""
    if source == "quote" or amount.flat[0] <= 0.0:
        return np.zeros((1, 1))
    return np.asarray(amount * np.asarray(case.prices.contingency))


def _payment(case: Case, item: CostItem) -> Payment:
    """Tax put on, an older price raised to the year of the study, contingency on no quote."""
    prices = case.prices
    amount = np.atleast_2d(np.asarray(item.amount, dtype=np.float64))
    if item.vat == "to add":
        amount = amount * (1.0 + np.asarray(prices.vat_rate))
    if item.price_year is not None:
        age = int(case.study.date[:4]) - item.price_year
        amount = amount * (1.0 + np.asarray(prices.inflation)) ** age
    if item.source == "quote" and not item.doubted and amount.flat[0] > 0.0:
        amount = amount * np.asarray(prices.quote_scale)
    year = None if item.year is None else np.round(np.atleast_2d(np.asarray(item.year)))
    return Payment(
        item.name, item.part, np.asarray(amount), item.when, year, item.source, item.price_year,
        item.line, _contingency(case, amount, item.source),
    )  # fmt: skip


def _of_register(
    case: Case, name: str, part: str, amount: Array, year: Array | None = None
) -> Payment:
    """A payment that no line of the owner names."""
    when, margin = "first" if year is None else "once", _contingency(case, amount, "register")
    return Payment(name, part, amount, when, year, "register", None, 0, margin)


def _assessment(case: Case, option: Option) -> str:
    """Is a post-construction assessment owed? Presumed so until a body says otherwise."""
    boat = case.boat
    if option.bank is None:
        return "not asked"
    if any(item.part == "assessment" for item in option.costs):
        return "in the ledger"
    if case.papers.conversion in BY_PAPER:
        return BY_PAPER[case.papers.conversion]
    if boat.market not in MARKETS and boat.import_date is None:
        return "out of scope"
    if boat.import_date is not None:
        late = boat.import_date > FIRST_DIRECTIVE
    else:  # the year alone: that of the directive itself is presumed to be after its day
        late = boat.year_on_market is None or boat.year_on_market >= int(FIRST_DIRECTIVE[:4])
    if not late:
        return "out of scope"
    return {"not required": "released", "done": "done"}.get(boat.assessment, "owed")


def _owed(case: Case) -> Payment:
    amount = np.atleast_2d(np.asarray(case.prices.assessment, dtype=np.float64))
    name = "Post-construction assessment, presumed required"
    return _of_register(case, name, "assessment", amount)


def _banks(case: Case, option: Option, given: tuple[Payment, ...]) -> tuple[Payment, ...]:
    """Replacements of the bank at the end of each life, unless the owner's ledger has its own."""
    bought = [row for row in given if row.part == "battery" and row.when == "first"]
    own = any(row.part == "battery" and row.when == "once" for row in given)
    if option.bank is None or own or not bought:
        return ()
    price = _total(row.amount for row in bought) * np.asarray(case.prices.battery_later)
    life = np.atleast_2d(np.asarray(option.bank.lasts, dtype=np.float64))
    found = []
    lives = case.prices.horizon / max(float(life.min()), 1.0)
    for turn in range(1, int(np.ceil(lives))):
        name = "New bank" if turn == 1 else "New bank again"
        year = np.floor(turn * life) + 1.0  # in the year after its life has ended
        found.append(_of_register(case, name, "battery", price, year))
    return tuple(found)
