"""What does it cost to buy and to own, against keeping the diesel?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.legs import Legs
from generator.arrays import Array, Numbers
from generator.case.case import Case
from generator.case.option import Option
from generator.case.prices import CostItem
from generator.money.present_value import present_value


@dataclass(frozen=True)
class Cost:
    """Money of one option, currency of the case, costs positive; arrays are per draw."""

    items: tuple[CostItem, ...]
    first: Array
    contingency: Array
    energy: Array  # per year
    service: Array  # per year
    flows: Array  # (draws, years + 1)
    present_value: Array
    cumulative: Array  # (draws, years + 1), undiscounted
    priced: bool  # False where the case gives no first cost


def cost(case: Case, option: Option, legs: Legs) -> Cost:
    """First cost, yearly energy and service, later payments, and their present value."""
    prices, years = case.prices, case.prices.horizon
    firsts = [item for item in option.costs if item.when == "first"]
    guessed = _sum([item.amount for item in firsts if item.source != "quote"])
    contingency = np.maximum(np.asarray(guessed), 0.0) * np.asarray(prices.contingency)
    first = np.atleast_2d(np.asarray(_sum([item.amount for item in firsts])) + contingency)
    energy, service = _energy(case, option, legs), _service(case, option)
    yearly = energy + service
    draws = max(first.shape[0], yearly.shape[0])
    flows = np.zeros((draws, years + 1))
    flows[:, :1] += first
    flows[:, 1:] += yearly
    for item in option.costs:
        if item.when == "yearly":
            flows[:, 1:] += np.asarray(item.amount)
        elif item.when == "once" and item.year is not None:
            year = round(float(np.asarray(item.year).flat[0]))
            flows[:, year : year + 1] += np.asarray(item.amount)
    return Cost(
        items=option.costs,
        first=first,
        contingency=np.atleast_2d(contingency),
        energy=energy,
        service=service,
        flows=flows,
        present_value=np.asarray(present_value(flows, prices.discount_rate)).reshape(-1, 1),
        cumulative=np.cumsum(flows, axis=1),
        priced=bool(firsts),
    )


def _sum(amounts: list[Numbers]) -> Numbers:
    total: Numbers = 0.0
    for amount in amounts:
        total = total + amount
    return total


def _energy(case: Case, option: Option, legs: Legs) -> Array:
    prices = case.prices
    if option.bank is not None:
        return np.atleast_2d(legs.yearly / prices.charging_efficiency * prices.electricity)
    return np.atleast_2d(legs.yearly * np.asarray(prices.diesel))


def _service(case: Case, option: Option) -> Array:
    prices = case.prices
    price = prices.electric_service if option.kind == "battery" else prices.diesel_service
    return np.atleast_2d(np.asarray(price, dtype=np.float64))
