"""Until which year of the bank does the word on an option hold?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import ClassVar

from generator.analyses.verdict.criteria.catalogue import criteria
from generator.answer.desk import FAILS, Desk, Look
from generator.records import number, record


@record
class Until:
    """The word is that of a bank of ``at`` years; ``year`` is the last in which it holds.

    ``for_good``: it holds through the horizon, as long as the bank lasts.
    """

    SAID_BY: ClassVar[str] = "until"
    SAID_IN: ClassVar[str] = "advice"
    for_good: bool
    ends: str  # name of the row that ends it; empty where it holds
    at: float = number("years", "age of the bank at which the word is given")
    year: float = number("years", "last year of the bank in which the word holds")
    absent: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True)
class _Year:
    """How bad the worst row is at an age, and which row that is."""

    worst: int
    row: int | None


def until(few: Desk, place: int, at: float, word: str) -> Until | None:
    """Halving the years between the word's own age and the end of the horizon, on few draws.

    None of an option that fails, and where few draws do not give the ``word`` that is told.
    """
    horizon = float(few.ground.case.prices.horizon)
    look = few.look(place)  # the word is that of this age
    own = _year(look)
    if own.worst == FAILS or look.word != word:
        return None
    low, high, ends = int(at), int(horizon), None
    if at >= horizon or _at(few, place, horizon).worst <= own.worst:
        return Until(True, "", at, horizon)
    while high - low > 1:
        middle = (low + high) // 2
        found = _at(few, place, float(middle))
        if found.worst <= own.worst:
            low = middle
        else:
            high, ends = middle, found.row
    if ends is None:
        ends = _at(few, place, float(high)).row
    names = {row.id: row.name for row in criteria()}
    return Until(False, names.get(ends or 0, ""), at, float(low))


def _at(few: Desk, place: int, age: float) -> _Year:
    return _year(few.look(place, age=age))


def _year(look: Look) -> _Year:
    worst = look.worst
    rows = sorted(row for row, rank in look.ranks.items() if rank == worst and rank)
    return _Year(worst, rows[0] if rows else None)
