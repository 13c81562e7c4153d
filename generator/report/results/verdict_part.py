"""What does results.json say of the verdict on one option?"""

from __future__ import annotations

from typing import Any

from generator.analyses.criteria.criterion import NOT_ASSESSED, Judgement
from generator.analyses.verdict import Verdict

Row = dict[str, Any]
JUDGED = (
    "{options.PLACE.verdict.assessed|count} of {options.PLACE.verdict.total|count} criteria "
    "judged; the others are the signatory's."
)
ALL_JUDGED = "All {options.PLACE.verdict.total|count} criteria judged."


def verdict_part(verdict: Verdict, place: int) -> Row:
    """The word, the reasons, the conditions, and every row."""
    rows = [_row(item, place, index) for index, item in enumerate(verdict.judgements)]
    assessed = sum(item.result != NOT_ASSESSED for item in verdict.judgements)
    told = ALL_JUDGED if assessed == len(verdict.judgements) else JUDGED
    return {
        "word": verdict.word,
        "assessed": assessed,
        "total": len(verdict.judgements),
        "sentence": told.replace("PLACE", str(place)),
        "reasons": [_sentence(_placed(text, place, index)) for index, text in verdict.reasons],
        "conditions": [
            _sentence(_placed(text, place, index)) for index, text in verdict.conditions
        ],
        "criteria": rows,
    }


def _placed(text: str, place: int, index: int) -> str:
    return text.replace("{here.", f"{{options.{place}.verdict.criteria.{index}.")


def _sentence(text: str) -> str:
    """The text with a capital and a full stop."""
    return f"{text[0].upper()}{text[1:]}." if text else ""


def _row(item: Judgement, place: int, index: int) -> Row:
    criterion = item.criterion
    return {
        "id": criterion.id,
        "name": criterion.name,
        "value": item.value,
        "pessimistic": item.pessimistic,
        "unit": item.unit,
        "limit": criterion.limit,
        "limit_go": criterion.go,
        "limit_conditional": criterion.conditional,
        "sense": criterion.sense,
        "result": item.result,
        "role": criterion.role,
        "why": _sentence(_placed(item.why, place, index)),
        "flip": _sentence(_placed(item.flip, place, index)),
        **item.numbers,
    }
