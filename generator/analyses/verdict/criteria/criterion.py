"""Criterion: one row of the verdict, its limits, and how a value is judged against them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from math import isfinite
from typing import Any

from generator.arrays import Array

GO, CONDITIONAL, NO = "go", "conditional", "no"
NOT_ASSESSED, NOT_APPLICABLE, TOLD = "not assessed", "not applicable", "told"


@dataclass(frozen=True)
class Criterion:
    """One row of tables/rules/criteria.csv."""

    id: int
    name: str
    role: str  # decide, condition, tell
    go: float
    conditional: float
    sense: str  # above: more is better; below: less is better
    limit: str
    assessed: bool

    def judge(self, value: float) -> str:
        """Go, conditional or no for a value at the pessimistic end."""
        sign = 1.0 if self.sense == "above" else -1.0
        if sign * value >= sign * self.go:
            return GO
        return CONDITIONAL if sign * value >= sign * self.conditional else NO


def stated(value: float) -> float | None:
    """A value that can be told: none where it is no number or has no end."""
    return value if isfinite(value) else None


@dataclass(frozen=True)
class Judgement:
    """A criterion applied to one option.

    ``value`` is the middle of the draws, ``pessimistic`` the tenth percentile of the margin's
    side, which is what is judged. Texts carry ``{results key|form}`` places for numbers;
    ``here`` in such a key stands for this judgement, whose own ``numbers`` it reaches.
    """

    criterion: Criterion
    value: float | None
    pessimistic: float | None
    unit: str
    result: str
    why: str = ""
    flip: str = ""
    condition: str = ""
    numbers: Mapping[str, float] = field(default_factory=dict)
    per_draw: Array | None = None  # the value in each draw, (draws + 1, 1), where it has one
    grade: str = ""  # in words, where the value is a grade
    facts: Any = None  # a record whose words stand in the templates, in place of the texts
