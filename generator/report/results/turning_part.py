"""What does results.json say of what moves the money, and of where the answer turns?"""

from __future__ import annotations

from typing import Any

from generator.analyses.findings import Findings
from generator.report.results.tornado_part import swing_row
from generator.sensitivity import Tornado

Row = dict[str, Any]


def swing_part(found: Findings, moved: Tornado | None) -> Row:
    """The tornado of money; absent for the diesels themselves."""
    if moved is None:
        return {"swing": []}
    return {
        "swing_middle_money": _expected(found, moved),
        "swing": [swing_row(swing, "_money") for swing in moved.swings],
    }


def _expected(found: Findings, moved: Tornado) -> float:
    """The saving of the best estimate as the tables of the cost have it."""
    saving = found.savings.fairly if found.savings else None
    return moved.best if saving is None else -saving.extra


