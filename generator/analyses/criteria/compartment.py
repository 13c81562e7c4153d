"""Criterion 19: can the battery live where it is to stand?"""

from __future__ import annotations

from generator.analyses.criteria.criterion import NOT_APPLICABLE, Criterion, Judgement
from generator.analyses.findings import Findings

ASKED = {
    "dry": "dry",
    "above_bilge": "above the bilge water",
    "ventable": "ventable",
    "not_a_berth": "no sleeping place",
    "escape_clear": "off the way out of the cabin",
}


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Five things seen aboard; what is not so wants works, what was not seen a look."""
    if found.option.bank is None:
        return Judgement(criterion, None, None, "-", NOT_APPLICABLE, "no propulsion battery", "")
    place = found.option.compartment
    seen = {said: getattr(place, name) for name, said in ASKED.items()}
    wrong = [said for said, so in seen.items() if so is False]
    unseen = [said for said, so in seen.items() if so is None]
    value = 1.0 if not wrong and not unseen else 0.0 if place.works or not wrong else -1.0
    numbers = {"held": float(len(ASKED) - len(wrong) - len(unseen)), "asked": float(len(ASKED))}
    why = "the battery's space holds {here.held|count} of {here.asked|count} points"
    if wrong:
        why += f"; it is not {', not '.join(wrong)}"
    if unseen:
        why += f"; not looked at: {', '.join(unseen)}"
    flip, condition = _mending(wrong, unseen, place.works)
    return Judgement(
        criterion, value, value, "-", criterion.judge(value), why, flip, condition, numbers
    )


def _mending(wrong: list[str], unseen: list[str], works: str) -> tuple[str, str]:
    """What would mend it, and what page 1 asks for."""
    if wrong and not works:
        return f"works that make it {' and '.join(wrong)}, or another place", ""
    if wrong:
        return works, ""
    if unseen:
        return "a look at the battery's space, dry and wet", ""
    return "", ""
