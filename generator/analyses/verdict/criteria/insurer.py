"""Criterion 20: has the insurer accepted the conversion in writing?"""

from __future__ import annotations

from generator.analyses.findings import Findings
from generator.analyses.verdict.criteria.criterion import NOT_APPLICABLE, Criterion, Judgement

VALUES = {"accepted": 1.0, "applied": 0.0, "not asked": 0.0, "": 0.0, "refused": -1.0}
SAID = {
    "accepted": "accepts in writing",
    "applied": "is asked and has not answered",
    "not asked": "is not asked yet",
    "": "is not asked yet, as far as the case says",
    "refused": "refuses",
}


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """The answer to bank and motor as they are specified here."""
    if found.option.bank is None:
        why = "the means of propulsion stays"
        return Judgement(criterion, None, None, "-", NOT_APPLICABLE, why, "")
    answer = found.case.papers.insurer
    value, key = VALUES[answer], f"options.{found.place}"
    why = (
        f"the insurer {SAID[answer]}: {{{key}.bank.nominal_kwh|energy}} at "
        f"{{{key}.installation.voltages.ceiling_v|voltage}} on charge"
    )
    flip = "" if value > 0 else "written acceptance of this bank and motor"
    condition = "" if value > 0 else "Written acceptance by the insurer before any deposit"
    if value < 0:
        condition = "Another insurer's written acceptance before any deposit: one has refused"
    return Judgement(criterion, value, value, "-", criterion.judge(value), why, flip, condition)
