"""Which limits of the criteria do the smallest bank and the panels that carry her aim at?"""

from __future__ import annotations

from collections.abc import Iterable

from generator.analyses.verdict.criteria.criterion import Judgement
from generator.records import number, record

MUST, COVERAGE, MOORING = 1, 2, 12  # ids of the criteria


@record
class Goals:
    """The go-limits of three criteria [-]."""

    mooring_go: float = number("ratio", "sun less house over what her legs take, wanted")
    leg_go: float = number("ratio", "left over needed on the leg that must be made, wanted")
    coverage_go: float = number("share", "passages that fit, wanted")

    @classmethod
    def of(cls, judgements: Iterable[Judgement]) -> Goals:
        """As the rows of a verdict have them."""
        go = {row.criterion.id: row.criterion.go for row in judgements}
        return cls(go[MOORING], go[MUST], go[COVERAGE])
