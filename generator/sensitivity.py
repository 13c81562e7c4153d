"""Which inputs move the verdict and the money, and so are worth making sure before an order?"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import field
from math import inf, isfinite
from typing import TypeVar

import numpy as np

from generator.arrays import Array, Numbers
from generator.case.assumption import Assumption
from generator.case.case import Case
from generator.case.measuring import how_to_measure
from generator.draws import Draws, quantile
from generator.records import number, record, working
from generator.study import Study, run

ENDS = (0.1, 0.9)
MOST = 8  # inputs that are told of a criterion
T = TypeVar("T", "CriterionSwing", "MoneySwing")
Groups = list[list[Assumption]]
PAYMENT = re.compile(r"options\[(\d+)\]\.costs\[(\d+)\]")


@record
class CriterionSwing:
    """One input at its 10 % and 90 % point, and the criterion there, in the criterion's unit."""

    path: str
    what: str
    how: str  # it is measured
    unit: str  # of the input
    low: float = number("plain", "low end of the input")
    high: float = number("plain", "high end of the input")
    at_low: float = number("plain", "the criterion at the low end")
    at_high: float = number("plain", "the criterion at the high end")
    swing: float = number("plain", "the criterion from end to end")
    absent: Mapping[str, str] = field(default_factory=dict)


@record
class MoneySwing:
    """The same, and the money saved there."""

    path: str
    what: str
    how: str
    unit: str
    low: float = number("plain", "low end of the input")
    high: float = number("plain", "high end of the input")
    at_low: float = number("money", "saved at the low end")
    at_high: float = number("money", "saved at the high end")
    swing: float = number("money", "saved from end to end")
    absent: Mapping[str, str] = field(default_factory=dict)


@record
class Tornado:
    """The tightest deciding criterion of an option and what moves it, widest first."""

    option: int = working()
    criterion: int
    criterion_name: str
    sense: str
    rows: tuple[CriterionSwing, ...]
    limit_go: float = number("plain", "limit for go")
    limit_conditional: float | None = number("plain", "limit for conditional")
    best: float = number("plain", "the criterion, best estimate")
    absent: Mapping[str, str] = field(default_factory=dict)


@record
class MoneyTornado:
    """The money that an option saves against the baseline and what moves it, widest first."""

    option: int = working()
    swing: tuple[MoneySwing, ...]
    swing_middle: float = number("money", "saved over the horizon, best estimate")


Moved = tuple[Tornado | MoneyTornado, ...]


def tornadoes(case: Case, study: Study) -> Moved:
    """For every battery option; one run with a row for each end of each input."""
    groups = _groups(case)
    rows = run(case, _rows(groups))
    found: list[Tornado | MoneyTornado | None] = []
    for place, option in enumerate(case.options):
        if option.motor is not None:
            found += [
                _of_criterion(case, study, rows, groups, place),
                _of_money(case, study, rows, groups, place),
            ]
    return tuple(item for item in found if item is not None)


def _groups(case: Case) -> Groups:
    """The moving inputs, those together that move together."""
    groups: dict[str, list[Assumption]] = {}
    for item in case.assumptions:
        if item.shape != "fixed" and item.high > item.low:
            groups.setdefault(item.draw_key, []).append(item)
    return list(groups.values())


def _rows(groups: Groups) -> Draws:
    """Row 0 the best estimate, then for each group its low and its high, all else kept."""
    count = 2 * len(groups)
    values: dict[str, Array] = {}
    for place, group in enumerate(groups):
        for item in group:
            column = np.full((count + 1, 1), item.value)
            column[2 * place + 1 : 2 * place + 3, 0] = quantile(item, np.array(ENDS))
            values[item.path] = column
    return Draws(count, 0, values)


def _of_criterion(
    case: Case, study: Study, rows: Study, groups: Groups, place: int
) -> Tornado | None:
    """The tightest criterion on every row; none where it has no value or nothing moves it."""
    tightest = _tightest(study, place)
    if tightest is None:
        return None
    judged = rows.options[place].verdict.judgements[tightest]
    column, rule = _column(judged.per_draw), judged.criterion
    swings = _swings(CriterionSwing, case, groups, column)
    if not swings:
        return None
    return Tornado(
        option=place,
        criterion=rule.id,
        criterion_name=rule.name,
        sense=rule.sense,
        rows=swings[:MOST],
        limit_go=rule.go,
        limit_conditional=rule.conditional,
        best=float(column[0]),
        absent={"limit_conditional": "no_conditional_limit"},
    )


def _of_money(
    case: Case, study: Study, rows: Study, groups: Groups, place: int
) -> MoneyTornado | None:
    """The money saved over the horizon against the fair baseline, on every row."""
    held = rows.options[place].findings.savings
    fair = held.fairly if held else None
    column = _column(fair.present_value if fair else None)
    swings = _swings(MoneySwing, case, groups, column)
    return MoneyTornado(place, swings, _saved(study, place, column)) if swings else None


def _saved(study: Study, place: int, column: Array) -> float:
    """The saving of the best estimate as the tables of the cost have it."""
    held = study.options[place].findings.savings
    fair = held.fairly if held else None
    return float(column[0]) if fair is None else -fair.extra


def _column(values: Numbers | None) -> Array:
    return np.empty(0) if values is None else np.atleast_2d(np.asarray(values))[:, 0]


def _swings(kind: type[T], case: Case, groups: Groups, column: Array) -> tuple[T, ...]:
    """Those that move it at all, widest first; none where all rows share a value or lack one."""
    if column.size <= 1 or not isfinite(column[0]):
        return ()
    # Of each input: at its low and at its high end.
    ends: list[list[float]] = column[1:].reshape(-1, 2).tolist()
    widths = [_width(low, high) for low, high in ends]
    order = sorted(range(len(groups)), key=lambda place: widths[place], reverse=True)
    return tuple(
        _swing(kind, case, groups[place][0], (ends[place][0], ends[place][1], widths[place]))
        for place in order
        if widths[place] > 0.0
    )


def _width(low: float, high: float) -> float:
    """How far the value moves between the two ends; without end where one has no value."""
    gap = abs(high - low)
    return gap if isfinite(gap) else inf


def _name(case: Case, item: Assumption) -> str:
    """What an input is called: by its line of a ledger, its row, its meaning, or its section."""
    payment = PAYMENT.match(item.path)
    if payment is not None:
        option, line = (int(part) for part in payment.groups())
        return case.options[option].costs[line].name
    known = how_to_measure(item.path)
    if known is not None and known.exact:
        return known.what
    return item.meaning or (known.what if known else item.path)


def _tightest(study: Study, place: int) -> int | None:
    """Place of the deciding criterion with the least in hand at the pessimistic end."""
    left: dict[int, float] = {}
    for at, row in enumerate(study.options[place].verdict.judgements):
        if not row.decides or row.per_draw is None or row.pessimistic is None:
            continue
        sign = 1.0 if row.criterion.sense == "above" else -1.0
        left[at] = sign * (row.pessimistic / row.criterion.go - 1.0)
    return min(left, key=lambda at: left[at], default=None)


def _swing(kind: type[T], case: Case, item: Assumption, at: tuple[float, float, float]) -> T:
    """An input, and what is looked at: at its low end, at its high end, and between them."""
    known = how_to_measure(item.path)
    low, high = quantile(item, np.array(ENDS)).tolist()
    return kind(
        path=item.path,
        what=_name(case, item),
        how=known.how if known else "",
        unit=item.unit,
        low=low,
        high=high,
        at_low=at[0],
        at_high=at[1],
        swing=at[2],
        absent=dict.fromkeys(("at_low", "at_high", "swing"), "no_value_at_this_end"),
    )
