"""What does results.json say of the verdict on one option?"""

from __future__ import annotations

from typing import Any

from generator.analyses.criteria.criterion import NOT_APPLICABLE, NOT_ASSESSED, Judgement
from generator.analyses.verdict import Verdict

Row = dict[str, Any]
OF_ALL = "{options.PLACE.verdict.judged|count} of {options.PLACE.verdict.total|count} criteria "
LEFT = "{options.PLACE.verdict.open|count} left to the signatory"
ELSEWHERE = "{options.PLACE.verdict.not_applicable|count} not applicable"
ALL_JUDGED = "All {options.PLACE.verdict.total|count} criteria judged."


def verdict_part(verdict: Verdict, place: int) -> Row:
    """The word, the reasons, the conditions, and every row."""
    rows = [_row(item, place, index) for index, item in enumerate(verdict.judgements)]
    results = [item.result for item in verdict.judgements]
    left, apart = results.count(NOT_ASSESSED), results.count(NOT_APPLICABLE)
    return {
        "word": verdict.word,
        "assessed": len(results) - left,
        "judged": len(results) - left - apart,
        "not_applicable": apart,
        "open": left,
        "total": len(results),
        "sentence": _count(left, apart).replace("PLACE", str(place)),
        "reasons": [_sentence(_placed(text, place, index)) for index, text in verdict.reasons],
        "conditions": [
            _sentence(_placed(text, place, index)) for index, text in verdict.conditions
        ],
        "criteria": rows,
    }


def _count(left: int, apart: int) -> str:
    """How many criteria were judged, and what became of the others."""
    others = [said for number, said in ((left, LEFT), (apart, ELSEWHERE)) if number]
    return f"{OF_ALL}judged; {', '.join(others)}." if others else ALL_JUDGED


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
