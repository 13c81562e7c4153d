"""What does results.json say of the verdict on one option?"""

from __future__ import annotations

from typing import Any

from generator.analyses.verdict.criteria.criterion import NOT_APPLICABLE, NOT_ASSESSED, Judgement
from generator.analyses.verdict.verdict import Verdict
from generator.report.tree import Telling, tree

Row = dict[str, Any]
OF_ALL = "{options.PLACE.verdict.judged|count} of {options.PLACE.verdict.total|count} criteria "
LEFT = "{options.PLACE.verdict.open|count} left to the signatory"
ELSEWHERE = "{options.PLACE.verdict.not_applicable|count} not applicable"
ALL_JUDGED = "All {options.PLACE.verdict.total|count} criteria judged."


def verdict_part(verdict: Verdict, place: int, telling: Telling) -> Row:
    """The word, the reasons, the conditions, and every row."""
    rows = [_row(item, place, index, telling) for index, item in enumerate(verdict.judgements)]
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
        "reasons": [rows[index]["why"] for index in verdict.reasons],
        "conditions": [
            _condition(verdict.judgements[index], rows[index], mend, place, index)
            for index, mend in verdict.conditions
        ],
        "criteria": rows,
    }


def _count(left: int, apart: int) -> str:
    """How many criteria were judged, and what became of the others."""
    others = [said for number, said in ((left, LEFT), (apart, ELSEWHERE)) if number]
    return f"{OF_ALL}judged; {', '.join(others)}." if others else ALL_JUDGED


def _condition(item: Judgement, row: Row, mend: bool, place: int, index: int) -> str:
    """What would mend a row, under its name, or what it asks for by itself."""
    if not mend:
        return _sentence(_placed(item.condition, place, index))
    said: str = row["facts"]["words_mend"] if item.facts is not None else item.flip
    return _sentence(_placed(f"{item.criterion.name}: {said}", place, index))


def _placed(text: str, place: int, index: int) -> str:
    return text.replace("{here.", f"{{options.{place}.verdict.criteria.{index}.")


def _sentence(text: str) -> str:
    """The text with a capital and a full stop."""
    return f"{text[0].upper()}{text[1:]}." if text else ""


def _row(item: Judgement, place: int, index: int, telling: Telling) -> Row:
    criterion = item.criterion
    facts = tree(item.facts, f"options.{place}.verdict.criteria.{index}.facts", telling)
    why, flip = (item.why, item.flip) if facts is None else (facts["words"], facts["words_mend"])
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
        "role": item.role or criterion.role,
        "why": _sentence(_placed(why, place, index)),
        "flip": _sentence(_placed(flip, place, index)),
        **item.numbers,
        **({} if facts is None else {"facts": facts}),
    }
