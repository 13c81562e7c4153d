"""Suitable, suitable with conditions, or not as specified; and why?"""

from __future__ import annotations

from dataclasses import dataclass

from generator.analyses.findings import Findings
from generator.analyses.verdict.criteria.criterion import CONDITIONAL, GO, NO, Judgement
from generator.analyses.verdict.criteria.evaluate import evaluate

WORD_GO, WORD_CONDITIONS = "Suitable", "Suitable with conditions"
WORD_NO = "Not suitable as specified"
RESERVE, MOORING = 3, 12


@dataclass(frozen=True)
class Verdict:
    """The word, the rows behind it in the order of their weight, and what page 1 asks for."""

    word: str
    judgements: tuple[Judgement, ...]
    reasons: tuple[int, ...]  # places among the judgements
    conditions: tuple[tuple[int, bool], ...]  # place, and whether its mend is meant


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


def _conditions(judgements: tuple[Judgement, ...]) -> tuple[tuple[int, bool], ...]:
    """What would mend the rows that fail, then what others ask for, then what would mend those."""
    asked = [(place, False) for place, row in enumerate(judgements) if row.condition]
    failed, open_ones = (
        [
            (place, True)
            for place, row in enumerate(judgements)
            if row.decides
            and row.result == result
            and (row.flip or row.facts is not None)
            and not row.condition
        ]
        for result in (NO, CONDITIONAL)
    )
    return (*failed, *asked, *open_ones)
