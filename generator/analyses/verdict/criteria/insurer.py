"""Criterion 20: has the insurer accepted the conversion in writing?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

from generator.analyses.findings import Findings
from generator.analyses.verdict.criteria.apart import apart
from generator.analyses.verdict.criteria.criterion import Criterion, Judgement
from generator.records import number, record

# A refusal stops, a doubt is a condition: another insurer asked is a doubt again.
VALUES = {
    "accepted": 1.0, "no cover wanted": 1.0, "applied": 0.0, "another asked": 0.0,
    "not asked": 0.0, "": 0.0, "refused": -1.0,
}  # fmt: skip


@record
class Insurer:
    """What the insurer says of bank and motor; ``outcome`` is his answer, or "not said"."""

    SAID_BY: ClassVar[str] = "insurer"
    SAID_IN: ClassVar[str] = "criteria_papers"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend",)
    outcome: str
    nominal: float | None = number("energy", "energy of the bank")
    ceiling: float | None = number("voltage", "voltage at the end of charge")
    absent: Mapping[str, str] = field(default_factory=dict)


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """The answer to bank and motor as they are specified here."""
    if found.option.bank is None:
        return apart(criterion, "drive_stays")
    answer = found.case.papers.insurer
    facts = Insurer(
        outcome=answer or "not said",
        nominal=None if found.bank is None else found.bank.nominal,
        ceiling=None if found.installation is None else found.installation.voltages.ceiling,
        absent={"nominal": "not_said", "ceiling": "not_said"},
    )
    value = VALUES[answer]
    return Judgement(criterion, value, value, "-", criterion.judge(value), facts=facts)
