"""Which criteria are there?"""

from __future__ import annotations

from functools import lru_cache

from generator.analyses.verdict.criteria.criterion import Criterion
from generator.tables.load import read_table


@lru_cache(maxsize=1)
def criteria() -> tuple[Criterion, ...]:
    """All 28 criteria in their order."""
    table = read_table("rules/criteria")
    rows = zip(
        table.columns["id"],
        table.text("name"),
        table.text("role"),
        table.columns["go"],
        table.columns["conditional"],
        table.text("sense"),
        table.text("limit"),
        table.text("assessed"),
        strict=True,
    )
    return tuple(
        Criterion(int(number), name, role, float(go), float(cond), sense, limit, yes == "yes")
        for number, name, role, go, cond, sense, limit, yes in rows
    )
