"""How is a number with its doubt told? As the 10th, 50th and 90th percentile of its draws."""

from __future__ import annotations

from dataclasses import dataclass, fields, is_dataclass, replace
from functools import lru_cache
from typing import TypeVar

import numpy as np

from generator.arrays import Array, Flags, Numbers, Places

SHARES = (0.1, 0.5, 0.9)
MOST_LACKING = 0.5  # share of draws without a value above which a number is absent
T = TypeVar("T")


@dataclass(frozen=True)
class Spread:
    """Low (10 %), middle (50 %) and high (90 %) of the draws, one entry per column.

    Infinite where that share of the draws lies there; nan where too many have no value. Neither
    is a number for a reader: it is told as absent, with its reason.
    """

    low: Array
    middle: Array
    high: Array


def spread(values: Numbers, cautious: str = "high", most_lacking: float = MOST_LACKING) -> Spread:
    """Percentiles over the draw axis; the first row, the best estimate, is left out.

    ``values`` is (draws + 1, columns), (1, columns), or a plain number or row without draws.
    Linear between neighbouring draws. A draw without a value (nan) lies beyond the ``cautious``
    end, "low" or "high": the one that a careful skipper plans with. An infinite one keeps its
    side. Where more than ``most_lacking`` of the draws have no value, there is no number at all.
    """
    table = np.atleast_2d(np.asarray(values, dtype=np.float64))
    rows = table[1:] if table.shape[0] > 1 else table
    columns = np.array(rows.T, order="C")  # a copy: it is sorted in place
    if np.isnan(columns.min(initial=np.inf)):  # the least is none where one is none
        lacking = np.isnan(columns)
        columns[lacking] = -np.inf if cautious == "low" else np.inf
        columns[lacking.mean(axis=1) > most_lacking] = np.nan
    last = rows.shape[0] - 1
    if last == 0:
        return Spread(columns[:, 0], columns[:, 0], columns[:, 0])
    lower, upper, every, between = _places(last)
    columns.partition(every, axis=1)
    low, middle, high = _between(columns[:, lower].T, columns[:, upper].T, between)
    return Spread(low, middle, high)


@lru_cache(maxsize=32)
def _places(last: int) -> tuple[Places, Places, list[int], Array]:
    """The draws below and above each share of the sorted draws, both, and how far from below."""
    places = [share * last for share in SHARES]
    lower = [int(place) for place in places]
    upper = [min(place + 1, last) for place in lower]
    every = sorted({*lower, *upper})
    return np.array(lower), np.array(upper), every, np.subtract(places, lower)[:, np.newaxis]


def lacking_share(values: Numbers) -> float:
    """The share of the draws of one number that have no finite value."""
    table = np.atleast_2d(np.asarray(values, dtype=np.float64))
    rows = table[1:] if table.shape[0] > 1 else table
    return float(1.0 - np.isfinite(rows).mean())


def held_share(values: Flags) -> float:
    """The share of the draws in which something holds."""
    table = np.atleast_2d(values)
    rows = table[1:] if table.shape[0] > 1 else table
    return float(rows.mean())


def _between(low: Array, high: Array, share: Array) -> Array:
    """Linear between two draws; between a number and infinity there is only infinity."""
    with np.errstate(invalid="ignore"):  # inf less inf
        mixed = np.asarray(low + share * (high - low))
    if np.isfinite(mixed).all():
        return mixed
    mixed = np.where(np.isfinite(low), mixed, np.where(np.isneginf(low), low, high))
    return np.where(share == 0.0, low, mixed)  # on a draw, whatever the next one is


def best(values: Numbers) -> Array:
    """The best estimate: the first row."""
    first: Array = np.atleast_2d(np.asarray(values, dtype=np.float64))[0]
    return first


def scalar(values: Numbers) -> float:
    """The one entry of an array of one, or the best estimate of a column of draws."""
    return float(np.asarray(values).reshape(-1)[0])


def side_by_side(*values: Numbers) -> Array:
    """Numbers of one draw each, or one for all draws, as the columns of one array."""
    columns = [np.atleast_2d(np.asarray(value, dtype=np.float64)) for value in values]
    draws = max(column.shape[0] for column in columns)
    return np.hstack([np.broadcast_to(column, (draws, column.shape[1])) for column in columns])


def first_row(item: T) -> T:
    """A frozen part of the case with the best estimate in place of every column of draws."""
    if not is_dataclass(item):
        return item
    changed = {
        part.name: float(value.flat[0])
        for part in fields(item)
        if isinstance(value := getattr(item, part.name), np.ndarray)
    }
    made: T = replace(item, **changed)  # type: ignore[type-var]
    return made
