"""Which inputs move the verdict, and so are worth measuring before anything is ordered?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.arrays import Array
from generator.case.assumption import Assumption
from generator.case.case import Case
from generator.case.measuring import how_to_measure
from generator.draws import Draws, quantile
from generator.study import Study, run

ENDS = (0.1, 0.9)
DECIDE = "decide"


@dataclass(frozen=True)
class Swing:
    """One input at its 10 % and 90 % point, and the criterion's value there."""

    path: str
    what: str
    how: str
    low: float  # of the input, SI
    high: float
    unit: str
    at_low: float
    at_high: float

    @property
    def width(self) -> float:
        """How far the value moves between the two ends."""
        return abs(self.at_high - self.at_low)


@dataclass(frozen=True)
class Tornado:
    """The tightest deciding criterion of an option, and what moves it, widest first."""

    option: int
    criterion: int
    best: float
    swings: tuple[Swing, ...]


def tornadoes(case: Case, study: Study) -> tuple[Tornado, ...]:
    """For every battery option; one run with a row for each end of each input."""
    groups = _groups(case)
    rows = run(case, _rows(groups))
    places = (place for place, option in enumerate(case.options) if option.motor is not None)
    found = (_tornado(study, rows, groups, place) for place in places)
    return tuple(item for item in found if item is not None)


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


def _tornado(
    study: Study, rows: Study, groups: list[list[Assumption]], place: int
) -> Tornado | None:
    tightest = _tightest(study, place)
    if tightest is None:
        return None
    values = rows.options[place].verdict.judgements[tightest].per_draw
    if values is None:
        return None
    column = np.atleast_2d(values)[:, 0]
    if column.size == 1:
        return None
    swings = [_swing(group, column, number) for number, group in enumerate(groups)]
    return Tornado(
        option=place,
        criterion=rows.options[place].verdict.judgements[tightest].criterion.id,
        best=float(column[0]),
        swings=tuple(
            sorted((s for s in swings if s.width > 0.0), key=lambda s: s.width, reverse=True)
        ),
    )


def _name(item: Assumption) -> str:
    """What an input is called: by its own row, its meaning, or its section."""
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


def _swing(group: list[Assumption], column: Array, number: int) -> Swing:
    first = group[0]
    known = how_to_measure(first.path)
    low, high = quantile(first, np.array(ENDS)).tolist()
    at_low, at_high = column[2 * number + 1 : 2 * number + 3].tolist()
    return Swing(
        path=first.path,
        what=_name(first),
        how=known.how if known else "",
        low=low,
        high=high,
        unit=first.unit,
        at_low=at_low,
        at_high=at_high,
    )
