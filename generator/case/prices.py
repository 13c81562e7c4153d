"""Prices: currency, energy, interest, years, and one line of a cost ledger."""

from __future__ import annotations

from dataclasses import dataclass

from generator.arrays import Numbers


@dataclass(frozen=True)
class CostItem:
    """One payment: ``first`` now, ``yearly``, or ``once`` in a year; credits are negative."""

    name: str
    amount: Numbers  # currency of the case
    when: str  # first, yearly, once
    year: Numbers | None  # for once
    source: str  # quote, estimate
    line: int


@dataclass(frozen=True)
class Prices:
    """What energy and money cost. Currency of the case per J or m3; years."""

    currency: str
    diesel: Numbers  # per m3
    electricity: Numbers  # per J at the wall
    discount_rate: Numbers  # real, per year
    horizon: int  # years
    charging_efficiency: Numbers  # wall to battery terminals, and the battery's own loss
    diesel_service: Numbers  # per year
    electric_service: Numbers  # per year
    contingency: Numbers  # share of estimated first costs
