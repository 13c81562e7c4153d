"""Which inputs move the verdict and the money, and so are worth making sure before an order?"""

from __future__ import annotations

import re
from dataclasses import dataclass
from math import inf, isfinite

import numpy as np

from generator.arrays import Array, Numbers
from generator.case.assumption import Assumption
from generator.case.case import Case
from generator.case.measuring import how_to_measure
from generator.draws import Draws, quantile
from generator.study import Study, run

ENDS = (0.1, 0.9)
DECIDE = "decide"
PAYMENT = re.compile(r"options\[(\d+)\]\.costs\[(\d+)\]")


@dataclass(frozen=True)
class Swing:
    """One input at its 10 % and 90 % point, and what is looked at there."""

    path: str
    what: str
    how: str
    low: float  # of the input, SI
    high: float
    unit: str
    at_low: float  # nan or without end where there is no value
    at_high: float

    @property
    def width(self) -> float:
        """How far the value moves between the two ends; without end where one has no value."""
        gap = abs(self.at_high - self.at_low)
        return gap if isfinite(gap) else inf


@dataclass(frozen=True)
class Tornado:
    """One number of an option and what moves it, widest first.

    The number is the tightest deciding criterion, or the money saved against the fair baseline.
    """

    option: int
    criterion: int | None  # none: the money saved
    best: float
    swings: tuple[Swing, ...]


def tornadoes(case: Case, study: Study) -> tuple[Tornado, ...]:
    """For every battery option; one run with a row for each end of each input."""
    groups = _groups(case)
    rows = run(case, _rows(groups))
    found = []
    for place, option in enumerate(case.options):
        if option.motor is not None:
            for criterion, column in (_criterion(study, rows, place), _money(rows, place)):
                swings = _swings(case, groups, column)
                best = float(column[0]) if column.size else 0.0
                found.append(Tornado(place, criterion, best, swings))
    return tuple(item for item in found if item.swings)


def _groups(case: Case) -> list[list[Assumption]]:
    """The moving inputs, those together that move together."""
    groups: dict[str, list[Assumption]] = {}
    for item in case.assumptions:
        if item.shape != "fixed" and item.high > item.low:
            groups.setdefault(item.draw_key, []).append(item)
    return list(groups.values())


def _rows(groups: list[list[Assumption]]) -> Draws:
    """Row 0 the best estimate, then for each group its low and its high, all else kept."""
    count = 2 * len(groups)
    values: dict[str, Array] = {}
    for place, group in enumerate(groups):
        for item in group:
            column = np.full((count + 1, 1), item.value)
            column[2 * place + 1 : 2 * place + 3, 0] = quantile(item, np.array(ENDS))
            values[item.path] = column
    return Draws(count, 0, values)


def _criterion(study: Study, rows: Study, place: int) -> tuple[int | None, Array]:
    """The tightest criterion, and its value on every row; no value where it has none."""
    tightest = _tightest(study, place)
    if tightest is None:
        return None, np.empty(0)
    judged = rows.options[place].verdict.judgements[tightest]
    return judged.criterion.id, _column(judged.per_draw)


def _money(rows: Study, place: int) -> tuple[int | None, Array]:
    """The money saved over the horizon against the fair baseline, on every row."""
    held = rows.options[place].findings.savings
    fair = held.fairly if held else None
    return None, _column(fair.present_value if fair else None)


def _column(values: Numbers | None) -> Array:
    return np.empty(0) if values is None else np.atleast_2d(np.asarray(values))[:, 0]


def _swings(case: Case, groups: list[list[Assumption]], column: Array) -> tuple[Swing, ...]:
    """Those that move it at all, widest first; none where all rows share a value or lack one."""
    if column.size <= 1 or not isfinite(column[0]):
        return ()
    swings = (_swing(case, group, column, number) for number, group in enumerate(groups))
    return tuple(sorted((s for s in swings if s.width > 0.0), key=lambda s: s.width, reverse=True))


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
    for number, row in enumerate(study.options[place].verdict.judgements):
        if row.criterion.role != DECIDE or row.per_draw is None or row.pessimistic is None:
            continue
        sign = 1.0 if row.criterion.sense == "above" else -1.0
        left[number] = sign * (row.pessimistic / row.criterion.go - 1.0)
    return min(left, key=lambda number: left[number], default=None)


def _swing(case: Case, group: list[Assumption], column: Array, number: int) -> Swing:
    first = group[0]
    known = how_to_measure(first.path)
    low, high = quantile(first, np.array(ENDS)).tolist()
    at_low, at_high = column[2 * number + 1 : 2 * number + 3].tolist()
    return Swing(
        path=first.path,
        what=_name(case, first),
        how=known.how if known else "",
        low=low,
        high=high,
        unit=first.unit,
        at_low=at_low,
        at_high=at_high,
    )
