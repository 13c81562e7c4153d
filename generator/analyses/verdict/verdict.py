"""Suitable, suitable with conditions, or not as specified; and why?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, ClassVar

from generator.analyses.findings import Findings
from generator.analyses.verdict.criteria.criterion import (
    CONDITIONAL,
    GO,
    NO,
    NOT_APPLICABLE,
    NOT_ASSESSED,
    Judgement,
)
from generator.analyses.verdict.criteria.evaluate import evaluate
from generator.records import number, record

WORD_GO, WORD_CONDITIONS = "Suitable", "Suitable with conditions"
WORD_NO = "Not suitable as specified"
RESERVE, MOORING = 3, 12


@dataclass(frozen=True)
class Verdict:
    """The word, the rows behind it in the order of their weight, and what page 1 asks for."""

    word: str
    judgements: tuple[Judgement, ...]
    reasons: tuple[int, ...]  # places among the judgements
    conditions: tuple[int, ...]  # likewise, of those whose mend is asked for


@record
class CriterionRow:
    """One row of the verdict as it is told; ``facts`` are those of the criterion."""

    SAID_BY: ClassVar[str] = "row"
    SAID_IN: ClassVar[str] = "verdict"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend", "condition")
    id: int
    name: str
    unit: str  # of its values and its limits, as the criterion counts
    limit: str
    sense: str  # above: more is better; below: less is better
    result: str
    role: str  # decide, condition, tell
    facts: Any
    value: float | None = number("plain", "middle of the draws")
    pessimistic: float | None = number("plain", "value in nine draws of ten")
    limit_go: float | None = number("plain", "limit for a pass")
    limit_conditional: float | None = number("plain", "limit for a conditional pass")
    absent: Mapping[str, str] = field(
        default_factory=lambda: {
            **dict.fromkeys(("value", "pessimistic"), "no_value"),
            **dict.fromkeys(("limit_go", "limit_conditional"), "no_limit"),
        }
    )


@record
class VerdictTold:
    """The word and the rows behind it, with how many were judged and what became of the others."""

    SAID_BY: ClassVar[str] = "judged"
    SAID_IN: ClassVar[str] = "verdict"
    word: str
    some_open: bool
    some_apart: bool
    criteria: tuple[CriterionRow, ...]
    assessed: int = number("count", "criteria assessed")
    judged: int = number("count", "criteria judged")
    not_applicable: int = number("count", "criteria not applicable")
    open: int = number("count", "criteria left to the signatory")
    total: int = number("count", "criteria")


def verdict(found: Findings) -> Verdict:
    """Judge every criterion by the rule of chance and let the deciding rows set the word."""
    judgements = evaluate(found)
    return Verdict(
        word=word_of(judgements),
        judgements=judgements,
        reasons=_reasons(judgements),
        conditions=_conditions(judgements),
    )


def word_of(judgements: tuple[Judgement, ...]) -> str:
    """The worst of the rows that decide."""
    results = {row.result for row in judgements if row.decides}
    if NO in results:
        return WORD_NO
    return WORD_CONDITIONS if CONDITIONAL in results else WORD_GO


def _reasons(judgements: tuple[Judgement, ...]) -> tuple[int, ...]:
    """Three sentences for page 1: the rows that failed first, then those that carry it."""
    order = {NO: 0, CONDITIONAL: 1, GO: 2}
    rows = sorted(
        (order[row.result], not _never_charged(row), row.criterion.id, place)
        for place, row in enumerate(judgements)
        if row.decides and row.result in order
        and not (row.criterion.id == RESERVE and row.result == GO)  # kept by construction
    )  # fmt: skip
    return tuple(place for *_, place in rows[:3])


def _never_charged(row: Judgement) -> bool:
    """Nothing puts back what she uses: before that no other reason matters."""
    return row.criterion.id == MOORING and row.result == NO and row.value == 0.0


def _conditions(judgements: tuple[Judgement, ...]) -> tuple[int, ...]:
    """The rows that fail, then those that pass with conditions: what would mend them is asked."""
    failed, open_ones = (
        [place for place, row in enumerate(judgements) if row.decides and row.result == result]
        for result in (NO, CONDITIONAL)
    )
    return (*failed, *open_ones)


def told(found: Verdict) -> VerdictTold:
    """The verdict as it stands in the results."""
    results = [row.result for row in found.judgements]
    left, apart = results.count(NOT_ASSESSED), results.count(NOT_APPLICABLE)
    return VerdictTold(
        word=found.word,
        some_open=left > 0,
        some_apart=apart > 0,
        criteria=tuple(_row(item) for item in found.judgements),
        assessed=len(results) - left,
        judged=len(results) - left - apart,
        not_applicable=apart,
        open=left,
        total=len(results),
    )


def _row(item: Judgement) -> CriterionRow:
    criterion = item.criterion
    return CriterionRow(
        id=criterion.id,
        name=criterion.name,
        unit=item.unit,
        limit=criterion.limit,
        sense=criterion.sense,
        result=item.result,
        role=item.role or criterion.role,
        facts=item.facts,
        value=item.value,
        pessimistic=item.pessimistic,
        limit_go=criterion.go,
        limit_conditional=criterion.conditional,
    )
