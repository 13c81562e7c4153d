"""At which hours, fuel price, bank price or bank life does the answer on money turn?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import ClassVar

import numpy as np

from generator.analyses.money.cost import Cost
from generator.analyses.percentiles import scalar
from generator.arrays import Array
from generator.case.case import Case
from generator.case.option import Option
from generator.records import number, record

HOURS_SHARES = tuple(np.linspace(0.25, 5.0, 20))  # of today's engine hours
FUEL_SHARES = tuple(np.linspace(0.5, 3.0, 11))  # of today's price of diesel
BANK_SHARES = tuple(np.linspace(0.2, 1.4, 13))  # of the bank's price
LIVES = tuple(np.arange(6.0, 21.0))  # years of the bank


@dataclass(frozen=True)
class Grid:
    """Saving over two things moved together; rows follow ``down``, columns ``across``."""

    across: Array
    down: Array
    saving: Array


@record
class Turn:
    """Where the saving passes zero; nothing where it does not within what was tried."""

    hours: float | None = number("hours", "hours a year at which it breaks even")
    most_hours: float = number("hours", "most hours a year that were tried")
    bank: float | None = number("money", "price of the battery at which it breaks even")
    least_bank: float = number("money", "least price of the battery that was tried")
    today_bank: float | None = number("money", "price of the battery in the ledger")
    today_life: float | None = number("years", "life of the battery, best estimate")
    absent: Mapping[str, str] = field(default_factory=dict)


@record
class HoursAndFuel:
    """Saved over the horizon by engine hours a year and price of diesel, point by point."""

    ALONG: ClassVar[str] = "hours"
    fuel: Array = number("diesel_price", "price of diesel")
    hours: Array = number("hours", "engine hours a year")
    saving: Array = number("money", "saved over the horizon, present value")


@record
class PriceAndLife:
    """Saved over the horizon by price and life of the battery, point by point."""

    ALONG: ClassVar[str] = "life"
    bank: Array = number("money", "price of the battery")
    life: Array = number("years", "life of the battery")
    saving: Array = number("money", "saved over the horizon, present value")


@record
class Maps:
    """The two maps; one without points where there is nothing to move."""

    hours_and_fuel: HoursAndFuel
    price_and_life: PriceAndLife


@dataclass(frozen=True)
class BreakEven:
    """The two maps on which the answer may turn, and where it does."""

    hours_and_fuel: Grid | None
    price_and_life: Grid | None
    turn: Turn

    @property
    def maps(self) -> Maps:
        """Both grids, point by point."""
        return Maps(
            HoursAndFuel(*_points(self.hours_and_fuel)), PriceAndLife(*_points(self.price_and_life))
        )


def _points(grid: Grid | None) -> tuple[Array, Array, Array]:
    """Across, down and what is saved there, line by line."""
    if grid is None:
        return np.zeros(0), np.zeros(0), np.zeros(0)
    across, down = np.meshgrid(grid.across, grid.down)
    return across.reshape(-1), down.reshape(-1), grid.saving.reshape(-1)


def _saved(own: Cost, other: Cost) -> Array:
    return np.asarray(other.present_value - own.present_value)[:, 0]


def case_of_hours_and_fuel(case: Case) -> Case:
    """The case with engine hours and the price of diesel moved together, a draw for each pair."""
    fuel, hours = np.meshgrid(FUEL_SHARES, HOURS_SHARES)
    prices = replace(
        case.prices,
        use_scale=_column(hours) * scalar(case.prices.use_scale),
        diesel=_column(fuel) * scalar(case.prices.diesel),
    )
    return replace(case, prices=prices)


def option_of_price_and_life(option: Option) -> Option:
    """The option with the price of its bank and its life moved together."""
    assert option.bank is not None
    price, life = np.meshgrid(BANK_SHARES, LIVES)
    costs = tuple(
        replace(item, amount=scalar(item.amount) * _column(price))
        if item.part == "battery"
        else item
        for item in option.costs
    )
    return replace(option, costs=costs, bank=replace(option.bank, life=_column(life)))


def _column(values: Array) -> Array:
    return values.reshape(-1, 1)


def hours_and_fuel(case: Case, hours: float, own: Cost, other: Cost) -> Grid:
    """Saving by engine hours a year and price of diesel."""
    return Grid(
        np.asarray(FUEL_SHARES) * scalar(case.prices.diesel),
        np.asarray(HOURS_SHARES) * hours,
        _saved(own, other).reshape(len(HOURS_SHARES), len(FUEL_SHARES)),
    )


def price_and_life(option: Option, own: Cost, other: Cost) -> Grid | None:
    """Saving by price of the bank and its life; nothing where the ledger names no bank."""
    price = _price(option)
    if price <= 0.0:
        return None
    saved = np.broadcast_to(_saved(own, other), (len(LIVES) * len(BANK_SHARES),))
    return Grid(
        np.asarray(BANK_SHARES) * price,
        np.asarray(LIVES),
        saved.reshape(len(LIVES), len(BANK_SHARES)),
    )


def _price(option: Option) -> float:
    """What the ledger asks for the bank, added up."""
    asked = (row for row in option.costs if row.part == "battery" and row.when == "first")
    return float(sum(scalar(row.amount) for row in asked))


def turning(case: Case, option: Option, hours: Grid | None, price: Grid | None) -> Turn:
    """Read both maps along the line on which she lies today."""
    at_hours = most = at_price = least = None
    if hours is not None:
        today = int(np.argmin(np.abs(hours.across - scalar(case.prices.diesel))))
        at_hours, most = _zero(hours.down, hours.saving[:, today]), float(hours.down[-1])
    if price is not None and option.bank is not None:
        life = int(np.argmin(np.abs(price.down - scalar(option.bank.lasts))))
        at_price, least = _zero(price.across, price.saving[life]), float(price.across[0])
    bank = option.bank
    return Turn(
        hours=at_hours,
        most_hours=most or 0.0,
        bank=at_price,
        least_bank=least or 0.0,
        today_bank=None if price is None else _price(option),
        today_life=None if bank is None else scalar(bank.lasts),
        absent={
            "hours": "never_turns", "bank": "never_turns", "today_bank": "no_price_of_bank",
            "today_life": "no_propulsion_bank",
        },
    )  # fmt: skip


def _zero(along: Array, saving: Array) -> float | None:
    """The first place where the sign changes, straight between the neighbours."""
    signs = np.sign(saving)
    place = int(np.argmax(signs[1:] * signs[:-1] <= 0.0))
    before, after = saving[place], saving[place + 1]
    if signs[place] * signs[place + 1] > 0.0 or before == after:
        return None
    share = before / (before - after)
    return float(along[place] + share * (along[place + 1] - along[place]))
