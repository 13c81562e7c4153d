"""The money again over two things moved together: hours and fuel, price and life of the bank."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.money.break_even import (
    BreakEven,
    Grid,
    case_of_hours_and_fuel,
    hours_and_fuel,
    option_of_price_and_life,
    price_and_life,
    turning,
)
from generator.analyses.money.cost import Cost, cost
from generator.analyses.money.cost_ledger import ledger
from generator.analyses.percentiles import scalar
from generator.analyses.use.legs import Legs
from generator.case.case import Case
from generator.case.option import Option


def break_even_of(case: Case, own: Findings, other: Findings) -> BreakEven | None:
    """One option against its fair baseline; legs and their energy stay at the best estimate.

    None where the best estimate cannot motor a leg: there is no energy to pay for.
    """
    legs = (_at_best(own.legs), _at_best(other.legs))
    if not all(np.isfinite(each.yearly).all() for each in legs):
        return None
    options = (_at_best_life(case.options[own.place], own.option), case.options[other.place])
    hours, price = _hours_and_fuel(case, options, legs), _price_and_life(case, options, legs)
    return BreakEven(hours, price, turning(case, options[0], hours, price))


def _at_best_life(option: Option, aged: Option) -> Option:
    """The option as the case has it, with the life that its bank was found to have."""
    if option.bank is None or aged.bank is None:
        return option
    return replace(option, bank=replace(option.bank, life=scalar(aged.bank.lasts)))


def _at_best(legs: Legs) -> Legs:
    return replace(
        legs,
        yearly=np.atleast_2d(legs.yearly)[:1],
        yearly_time=np.atleast_2d(legs.yearly_time)[:1],
    )


def _cost(case: Case, option: Option, legs: Legs) -> Cost:
    return cost(case, option, legs, ledger(case, option))


def _hours_and_fuel(
    case: Case, options: tuple[Option, Option], legs: tuple[Legs, ...]
) -> Grid | None:
    hours = float(np.asarray(legs[0].yearly_time).flat[0])
    if hours <= 0.0:
        return None
    moved = case_of_hours_and_fuel(case)
    own, other = (_cost(moved, option, each) for option, each in zip(options, legs, strict=True))
    return hours_and_fuel(case, hours, own, other)


def _price_and_life(
    case: Case, options: tuple[Option, Option], legs: tuple[Legs, ...]
) -> Grid | None:
    own = _cost(case, option_of_price_and_life(options[0]), legs[0])
    return price_and_life(options[0], own, _cost(case, options[1], legs[1]))
