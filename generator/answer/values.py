"""How does a field that a remedy changes stand among the draws of a case?"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np

from generator.arrays import Array, Numbers
from generator.case.assumption import Assumption
from generator.case.case import Case
from generator.draws import put, quantile, strata

Steps = tuple[str, ...]


@dataclass(frozen=True)
class Drawn:
    """A value that is made from what stands there and from how many draws the case has."""

    made: Callable[[Any, int], Any]


def scaled(factor: float) -> Drawn:
    """The same with its doubt, so many times as large."""
    return Drawn(lambda own, _: np.asarray(own) * factor)


def redrawn(item: Assumption) -> Drawn:
    """What the study draws for a default."""
    return Drawn(lambda _, count: draws_of(item, count))


def draws_of(item: Assumption, count: int) -> Numbers:
    """The best estimate and then the draws of one number, as ``make_draws`` makes them."""
    if count == 0 or item.shape == "fixed" or item.high == item.low:
        return item.value
    drawn: Array = quantile(item, strata(item.draw_key, count))
    return np.concatenate(([item.value], drawn))[:, np.newaxis]


def changed(case: Case, fields: Mapping[Steps, Any], count: int) -> Case:
    """The case with other values in some fields, each as it stands among so many draws."""
    return put(
        case,
        {
            steps: value.made(_at(case, steps), count) if isinstance(value, Drawn) else value
            for steps, value in fields.items()
        },
    )


def _at(node: Any, steps: Steps) -> Any:
    for step in steps:
        node = node[int(step)] if isinstance(node, tuple) else getattr(node, step)
    return node
