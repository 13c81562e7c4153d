"""The money again with one assumption moved at a time, and over two moved together."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from generator.analyses.cost import Cost, cost
from generator.analyses.findings import Findings
from generator.analyses.ledger import ledger
from generator.analyses.legs import Legs
from generator.analyses.swing import (
    Grid,
    Swing,
    bars,
    case_of_hours_and_fuel,
    hours_and_fuel,
    money_paths,
    option_of_price_and_life,
    price_and_life,
    turning,
)
from generator.case.assumption import Assumption
from generator.case.case import Case
from generator.case.option import Option
from generator.draws import drawn, one_at_a_time


def swing_of(case: Case, own: Findings, other: Findings) -> Swing:
    """One option against its fair baseline; legs and their energy stay at the best estimate."""
    pair = (own, other)
    legs = tuple(_at_best(found.legs) for found in pair)
    unique = {item.draw_key: item for item in money_paths(case, own.place, other.place)}
    moved_items: tuple[Assumption, ...] = tuple(unique.values())
    moved = drawn(case, one_at_a_time(case, moved_items))
    ends = [
        _cost(moved, moved.options[found.place], each)
        for found, each in zip(pair, legs, strict=True)
    ]
    middle = ends[1].present_value[0, 0] - ends[0].present_value[0, 0]
    options = (case.options[own.place], case.options[other.place])
    hours, price = _hours_and_fuel(case, options, legs), _price_and_life(case, options, legs)
    turn = turning(case, options[0], hours, price)
    return Swing(float(middle), bars(moved_items, *ends), hours, price, turn)


def _at_best(legs: Legs) -> Legs:
    return replace(
        legs,
        yearly=np.nan_to_num(np.atleast_2d(legs.yearly)[:1]),
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
