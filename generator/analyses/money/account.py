"""What do the results say of the money of one option?"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import field
from typing import Any, ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.money.bill import Bill
from generator.analyses.money.break_even import Maps, Turn
from generator.analyses.money.cost import Cost, Overhaul
from generator.analyses.money.cost_ledger import Payment
from generator.analyses.money.savings import NOT_MOTORED, Saving, SavingResult
from generator.analyses.percentiles import held_share, scalar, spread
from generator.arrays import Array, Numbers
from generator.records import number, record
from generator.units.kinds import HOUR, MILE

DIESELS = {"against_keep": "keep", "against_new_diesel": "new diesel"}  # kind, by its field


@record
class Item:
    """A payment as its owner gave it, with tax and in money of the study."""

    name: str
    part: str
    when: str  # first, yearly, once
    source: str  # quote, estimate, register
    amount: Array = number("money_whole", "amount", "high", expected=True)
    contingency: float = number("money_whole", "contingency of it")
    year: Array | None = number("count", "years from now until it is paid")
    priced: int | None = number("year", "year of its price")
    absent: Mapping[str, str] = field(default_factory=dict)


@record
class PaidByYear:
    """What has been paid up to and with each year, as paid."""

    ALONG: ClassVar[str] = "year"
    year: Array = number("count", "years from now")
    paid: Array = number("money", "paid until then, not discounted", "high", expected=True)
    absent: Mapping[str, str] = field(default_factory=dict)


@record
class OverhaulChance:
    """How likely an overhaul is within some years."""

    ALONG: ClassVar[str] = "within"
    within: Array = number("years", "years from now")
    chance: Array = number("share", "chance of an overhaul within them")
    absent: Mapping[str, str] = field(default_factory=dict)


@record
class OverhaulRisk:
    """How worn the engine is, and how soon an overhaul is as likely as not."""

    counted: bool  # by its chance; else the owner's ledger holds one
    chance: OverhaulChance
    wear: Array = number("share", "share used of the life until an overhaul")
    left: Array = number("years", "years until an overhaul is as likely as not", "high")
    price: Array | None = number("money", "price of it, with contingency", expected=True)
    absent: Mapping[str, str] = field(default_factory=dict)


@record
class Account:
    """First cost, years, later payments and what is left; every sum that of the best estimate.

    ``charged_by``: fuel, wall, genset, own (sun and wind), nothing. ``assessment`` as of Ledger.
    ``unmapped``: why there are no maps; no_bank, no_baseline, or nothing where there are some.
    """

    charged_by: str
    priced: bool
    lacking: tuple[str, ...]  # usual parts and sources of energy that no line names
    assessment: str
    overhaul: OverhaulRisk | None
    items: tuple[Item, ...]
    cumulative: PaidByYear
    saving: SavingResult | None  # against the baseline
    unmapped: str
    turn: Turn | None
    maps: Maps | None
    first: Array | None = number("money_whole", "first cost", "high", expected=True)
    contingency: float | None = number("money_whole", "contingency of first payments")
    present_value: Array | None = number(
        "money_whole", "cost of ownership, present value", "high", expected=True
    )
    equal_yearly: Array | None = number(
        "money", "the same as equal payments a year", "high", expected=True
    )
    yearly: float = number("money_whole", "running cost each year")
    energy_yearly: float | None = number("money_whole", "energy each year")
    service_yearly: float = number("money_whole", "service each year")
    other_yearly: float = number("money_whole", "insurance, winter and other each year")
    residual: Array = number("money", "worth at the end of the horizon", expected=True)
    yearly_worth: float | None = number(
        "money_whole", "running cost of all years, at today's worth"
    )
    later_worth: float | None = number("money_whole", "later payments, at today's worth")
    end_worth: float | None = number("money_whole", "left at the end, at today's worth")
    wall_yearly: float | None = number("energy", "what the plug gives each year, house included")
    wall_bill: float | None = number("money", "price of what the plug gives each year")
    per_mile: Array | None = number("money", "cost per mile motored", "high", expected=True)
    per_hour: Array | None = number("money", "cost per engine hour", "high", expected=True)
    bank_life: Numbers | None = number("years", "years until the battery is replaced")
    bank_again: float | None = number("share", "chance of a new battery within the horizon")
    against_keep: Numbers | None = number(
        "money_whole", "dearer than to keep the diesel", "high", expected=True
    )
    against_new_diesel: Numbers | None = number(
        "money_whole", "dearer than a new diesel", "high", expected=True
    )
    absent: Mapping[str, str] = field(default_factory=dict)


def account(found: Findings) -> Account:
    """From the cost and what is saved; sums are absent where a first price is missing."""
    cost, lines, bank = found.cost, found.ledger, found.option.bank
    held, turned = found.savings, found.break_even
    fair = held.fairly if held else None
    paid = cost.cumulative if cost.priced else np.zeros((1, 0))
    sums = _sums(cost)
    return Account(
        charged_by=cost.charged_by,
        priced=cost.priced,
        lacking=lines.lacking,
        assessment=lines.assessment,
        overhaul=None if cost.overhaul is None else _risk(found, cost.overhaul),
        items=tuple(_item(item) for item in cost.payments if _counts(found, item)),
        cumulative=PaidByYear(np.arange(float(paid.shape[1])), paid, {"paid": NOT_MOTORED}),
        saving=None if held is None or fair is None else fair.result(held.fair),
        unmapped="" if turned else "no_baseline" if bank else "no_bank",
        turn=turned.turn if turned else None,
        maps=turned.maps if turned else None,
        **(sums if cost.priced else dict.fromkeys(sums)),
        **_yearly(found),
        **_bank(found),
        **_against(found),
        absent=_absent(found, sums),
    )


def _sums(cost: Cost) -> dict[str, Any]:
    """What no number can stand behind while a part of the cost is not known."""
    bill = cost.bill
    return {
        "first": Bill.printed(cost.first, bill.first),
        "contingency": bill.contingency,
        "present_value": Bill.printed(cost.present_value, bill.ownership),
        "equal_yearly": cost.equal_yearly,
        "yearly_worth": bill.yearly_worth,
        "later_worth": bill.later_worth,
        "end_worth": -bill.end_worth,
        "per_mile": _per(cost, cost.use.distance / MILE),
        "per_hour": _per(cost, cost.use.time / HOUR),
    }


def _per(cost: Cost, use: Array) -> Array | None:
    """Equal yearly cost over what a year of use is."""
    return None if scalar(use) <= 0.0 else np.asarray(cost.equal_yearly / use)


def _yearly(found: Findings) -> dict[str, Any]:
    """What each year takes; what the plug gives, motor and house, at the price of today."""
    bill, year, price = found.cost.bill, found.year, found.case.prices.electricity
    wall = None if year is None else float(year.shore_wall.mean())
    return {
        "yearly": bill.yearly,
        "energy_yearly": None if found.cost.charged_by == "nothing" else bill.energy,
        "service_yearly": bill.service,
        "other_yearly": bill.other,
        "residual": found.cost.residual,
        "wall_yearly": wall,
        "wall_bill": None if wall is None else wall * scalar(price),
    }


def _bank(found: Findings) -> dict[str, Any]:
    """When the bank is replaced, and in which share of the draws within the horizon."""
    bank = found.option.bank
    if bank is None:
        return {"bank_life": None, "bank_again": None}
    lives = np.atleast_2d(np.asarray(bank.lasts, dtype=np.float64))
    return {"bank_life": lives, "bank_again": held_share(lives < found.case.prices.horizon)}


def _against(found: Findings) -> dict[str, Any]:
    """How much dearer than both diesels; negative where it is cheaper."""
    return {name: _dearer(found, kind, _saving(found, kind)) for name, kind in DIESELS.items()}


def _saving(found: Findings, kind: str) -> Saving | None:
    held = found.savings
    return held.against(kind) if held else None


def _dearer(found: Findings, kind: str, saving: Saving | None) -> Numbers | None:
    if saving is not None:
        return Bill.printed(-saving.present_value, saving.extra)
    return 0.0 if found.option.kind == kind else None


def _absent(found: Findings, sums: Iterable[str]) -> dict[str, str]:
    """Why a number is absent, by its field."""
    cost, kinds = found.cost, {option.kind for option in found.case.options}
    unpriced = "no_price_of_overhaul" if found.option.kind == "keep" else "no_price_of_fitting"
    whys = dict.fromkeys(sums, NOT_MOTORED if cost.priced else unpriced)
    for name, use in (("per_mile", cost.use.distance), ("per_hour", cost.use.time)):
        if cost.priced and scalar(use) <= 0.0:
            whys[name] = "no_leg_motored"
    for name, kind in DIESELS.items():
        unheld = "one_has_no_price" if kind in kinds else "no_such_option"
        whys[name] = NOT_MOTORED if _saving(found, kind) else unheld
    return {
        **whys,
        "yearly": NOT_MOTORED,
        "energy_yearly": "never_charged" if cost.charged_by == "nothing" else NOT_MOTORED,
        "wall_yearly": "no_year", "wall_bill": "no_year",
        "bank_life": "no_propulsion_bank", "bank_again": "no_propulsion_bank",
    }  # fmt: skip


def _risk(found: Findings, risk: Overhaul) -> OverhaulRisk:
    """Within one year, five and the horizon."""
    horizon = found.case.prices.horizon
    years = np.array(sorted({1, min(5, horizon), horizon}))
    return OverhaulRisk(
        counted=risk.counted,
        chance=OverhaulChance(years, risk.chance[:, years]),
        wear=risk.wear,
        left=risk.years_left,
        price=risk.price if risk.counted else None,
        absent={"price": "overhaul_in_ledger"},
    )


def _counts(found: Findings, item: Payment) -> bool:
    """Payments made by themselves after the horizon are not shown."""
    if item.source != "register" or item.year is None:
        return True
    return scalar(spread(item.year).middle) <= found.case.prices.horizon


def _item(item: Payment) -> Item:
    return Item(
        name=item.name,
        part=item.part,
        when=item.when,
        source=item.source,
        amount=Bill.printed(item.amount, Bill.whole(item.amount)),
        contingency=Bill.whole(item.contingency),
        year=item.year,
        priced=item.price_year,
        absent={"year": "first_or_every_year", "priced": "no_year_of_price"},
    )
