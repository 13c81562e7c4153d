"""Which criteria are there?"""

from __future__ import annotations

import math
from functools import lru_cache

from generator.analyses.verdict.criteria.criterion import Criterion, Limits
from generator.records import record
from generator.tables.load import read_table

NUMBERS = (
    "id", "go", "conditional", "second_go", "second_conditional", "third_go",
    "third_conditional", "least",
)  # fmt: skip


@record
class ListedCriterion:
    """One criterion as it is listed, apart from any option."""

    id: int
    name: str
    role: str
    limit: str
    assessed: bool


def listed() -> tuple[ListedCriterion, ...]:
    """All criteria as they are listed."""
    return tuple(
        ListedCriterion(each.id, each.name, each.role, each.limit, each.assessed)
        for each in criteria()
    )


@lru_cache(maxsize=1)
def criteria() -> tuple[Criterion, ...]:
    """All 28 criteria in their order."""
    table = read_table("rules/criteria")
    texts = zip(
        *(table.text(name) for name in ("name", "role", "sense", "limit", "assessed")), strict=True
    )
    numbers = zip(*(table.columns[name] for name in NUMBERS), strict=True)
    return tuple(
        _criterion(*text, *map(float, row)) for text, row in zip(texts, numbers, strict=True)
    )


def _criterion(
    name: str,
    role: str,
    sense: str,
    limit: str,
    assessed: str,
    number: float,
    *limits: float,
) -> Criterion:
    """One row; a second and a third limit where the table has them."""
    go, conditional, *others, least = limits
    second, third = (
        None if math.isnan(pair[0]) else Limits(*pair) for pair in (others[:2], others[2:])
    )
    return Criterion(
        id=int(number),
        name=name,
        role=role,
        go=go,
        conditional=conditional,
        sense=sense,
        limit=limit,
        assessed=assessed == "yes",
        second=second,
        third=third,
        least=least,
    )
