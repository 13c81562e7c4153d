"""How is a number with its doubt told? As the 10th, 50th and 90th percentile of its draws."""

from __future__ import annotations

from dataclasses import dataclass, fields, is_dataclass, replace
from typing import TypeVar

import numpy as np

from generator.arrays import Array, Numbers

SHARES = (0.1, 0.5, 0.9)
T = TypeVar("T")


@dataclass(frozen=True)
class Spread:
    """Low (10 %), middle (50 %) and high (90 %) of the draws, one entry per column."""

    low: Array
    middle: Array
    high: Array


def spread(values: Numbers) -> Spread:
    """Percentiles over the draw axis; the first row, the best estimate, is left out.

    ``values`` is (draws + 1, columns), (1, columns), or a plain number or row without draws.
    Linear between neighbouring draws. Draws without a number must be filled in before.
    """
    table = np.atleast_2d(np.asarray(values, dtype=np.float64))
    if table.shape[0] == 1:
        return Spread(table[0], table[0], table[0])
    last = table.shape[0] - 2
    places = [share * last for share in SHARES]
    lower = [int(place) for place in places]
    upper = [min(place + 1, last) for place in lower]
    columns = np.array(table[1:].T, order="C")  # a copy: it is sorted in place
    columns.partition(sorted({*lower, *upper}), axis=1)
    low, middle, high = (
        _between(columns[:, down], columns[:, up], place - down)
        for place, down, up in zip(places, lower, upper, strict=True)
    )
    return Spread(low, middle, high)


def _between(low: Array, high: Array, share: float) -> Array:
    """Linear between two draws; infinite neighbours stay infinite."""
    gap = np.where(np.isfinite(high), high, 0.0) - np.where(np.isfinite(low), low, 0.0)
    middle = np.where(np.isfinite(low), low, 0.0) + share * gap
    return np.asarray(np.where(np.isfinite(low) & np.isfinite(high), middle, high))


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
