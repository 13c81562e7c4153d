"""Criterion: one row of the verdict, its limits, and how a value is judged against them."""

from __future__ import annotations

from dataclasses import dataclass
from math import isfinite
from typing import Any

import numpy as np

from generator.analyses.percentiles import held_share
from generator.arrays import Array, Flags, Numbers
from generator.tables.method import method

GO, CONDITIONAL, NO = "go", "conditional", "no"
NOT_ASSESSED, NOT_APPLICABLE, TOLD = "not assessed", "not applicable", "told"


SURE, HALF = method("judging.sure"), method("judging.half")  # shares of draws


@dataclass(frozen=True)
class Limits:
    """Where a measure passes, and where it passes with conditions."""

    go: float
    conditional: float


def by_chance(go: Flags, conditional: Flags) -> str:
    """Go where the go-limit holds in nine draws of ten.

    Conditional where it holds in half, or the conditional limit in nine of ten; else no.
    """
    if held_share(go) >= SURE:
        return GO
    if held_share(go) >= HALF or held_share(go | conditional) >= SURE:
        return CONDITIONAL
    return NO


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
    second: Limits | None = None  # of a second and a third measure of the same question
    third: Limits | None = None
    least: float = np.nan  # what must be reached at all before a share of the engine counts

    def reached(self, values: Numbers) -> tuple[Flags, Flags]:
        """Whether each draw reaches the go-limit, and the conditional one; none without a value."""
        sign = 1.0 if self.sense == "above" else -1.0
        table = sign * np.atleast_2d(np.asarray(values, dtype=np.float64))
        return table >= sign * self.go - 1e-9, table >= sign * self.conditional - 1e-9

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
    side; what is judged is the share of draws that reach a limit. Why, and what would mend it,
    is said of its ``facts``.
    """

    criterion: Criterion
    value: float | None
    pessimistic: float | None
    unit: str
    result: str
    per_draw: Array | None = None  # the value in each draw, (draws + 1, 1), where it has one
    grade: str = ""  # in words, where the value is a grade
    facts: Any = None  # a record whose words stand in the templates
    role: str = ""  # where it is another than the criterion's own

    @property
    def decides(self) -> bool:
        """Whether the word hangs on it."""
        return (self.role or self.criterion.role) == "decide"
