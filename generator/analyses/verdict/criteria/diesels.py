"""Which criteria can fail a diesel, kept or new? It is judged on what can fail it."""

from __future__ import annotations

from dataclasses import replace

from generator.analyses.findings import Findings
from generator.analyses.verdict.criteria.criterion import (
    CONDITIONAL,
    GO,
    NO,
    TOLD,
    Judgement,
)

BY_FUEL = (1, 2, 3)  # more than the tank holds: cans or a stop, never a failure
OF_THE_BOAT = (16, 17, 18)  # masses, where some change, and the rules of her waters
# Rows that decide of the engine that stays, and of a new one beside what she had.
KEPT = (*BY_FUEL, *OF_THE_BOAT, 27)
RENEWED = (*BY_FUEL, 4, 6, 7, 9, *OF_THE_BOAT, 23, 24)


def of_a_diesel(row: Judgement, found: Findings) -> Judgement:
    """The row as it counts for a diesel; what cannot fail one is told."""
    deciding = KEPT if found.option.kind == "keep" else RENEWED
    if row.criterion.id not in deciding or row.role == "tell":
        told = row.result in (GO, CONDITIONAL, NO) and row.decides
        return replace(row, result=TOLD if told else row.result, role="tell")
    if row.criterion.id in BY_FUEL and row.result == NO:
        row = replace(row, result=CONDITIONAL)
    return replace(row, role="decide")
