"""Is a result given again for the same numbers only, and kept from being written to?"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
import pytest

from generator.arrays import Array, Numbers
from generator.remembered import LAST, remembered


@dataclass(frozen=True)
class Cell:
    """A record that is told from others by being the same one."""

    volts: float


def _counted() -> tuple[list[Numbers], Callable[..., Array]]:
    asked: list[Numbers] = []

    @remembered
    def doubled(number: Numbers, cell: Cell | None = None) -> Array:
        asked.append(number)
        return np.asarray(2.0 * np.asarray(number) + (cell.volts if cell else 0.0))

    return asked, doubled


def test_equal_numbers_are_computed_once() -> None:
    asked, doubled = _counted()
    for _ in range(2):
        assert doubled(np.array([1.0, 2.0])).tolist() == [2.0, 4.0]
    assert len(asked) == 1


def test_other_numbers_and_shapes_are_computed_anew() -> None:
    asked, doubled = _counted()
    doubled(np.array([1.0, 2.0]))
    assert doubled(np.array([1.0, 3.0])).tolist() == [2.0, 6.0]
    assert doubled(np.array([[1.0], [2.0]])).tolist() == [[2.0], [4.0]]
    assert doubled(1.0) == 2.0
    assert len(asked) == 4


def test_numbers_that_were_written_to_are_other_numbers() -> None:
    _, doubled = _counted()
    numbers = np.array([1.0])
    doubled(numbers)
    numbers[0] = 5.0
    assert doubled(numbers).tolist() == [10.0]


def test_equal_records_are_not_the_same_one() -> None:
    asked, doubled = _counted()
    cell = Cell(3.0)
    assert doubled(1.0, cell) == doubled(1.0, cell) == 5.0
    assert doubled(1.0, cell=Cell(3.0)) == 5.0
    assert doubled(1.0, Cell(4.0)) == 6.0
    assert len(asked) == 3


def test_a_result_cannot_be_written_to() -> None:
    _, doubled = _counted()
    with pytest.raises(ValueError, match="read-only"):
        doubled(np.array([1.0]))[0] = 0.0


def test_the_oldest_result_is_forgotten() -> None:
    asked, doubled = _counted()
    for number in range(LAST + 1):
        doubled(float(number))
    doubled(float(LAST))
    assert len(asked) == LAST + 1
    doubled(0.0)
    assert len(asked) == LAST + 2
