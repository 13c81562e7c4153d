"""What would the word on an option be, were one thing otherwise?"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace

from generator.analyses.findings import Findings
from generator.analyses.verdict.criteria.criterion import CONDITIONAL, NO, Judgement
from generator.analyses.verdict.criteria.evaluate import evaluate
from generator.analyses.verdict.verdict import Verdict, word_of
from generator.analyses.year.weather import Sky
from generator.answer.remedy import Change
from generator.one_option import Ground, technical
from generator.study import lived

FAILS = 2
RANK = {NO: FAILS, CONDITIONAL: 1}  # of a row that decides; all else is 0
BY_THE_YEAR = (12,)  # rows that read the year by the sun, which a brief look leaves out


@dataclass(frozen=True)
class Look:
    """The rows of one option as they would be."""

    findings: Findings
    rows: tuple[Judgement, ...]

    @property
    def word(self) -> str:
        """The word that they make."""
        return word_of(self.rows)

    @property
    def ranks(self) -> dict[int, int]:
        """How bad each deciding row is: 0 passes, 1 with conditions, 2 fails."""
        return {row.criterion.id: RANK.get(row.result, 0) for row in self.rows if row.decides}

    @property
    def worst(self) -> int:
        """The worst of them."""
        return max(self.ranks.values(), default=0)


@dataclass(frozen=True)
class Desk:
    """Few or all draws of a case, on which single options are looked at again."""

    ground: Ground
    known: Mapping[int, Mapping[int, Judgement]]  # rows of the whole study, by option and id
    count: int  # draws
    sky: Sky | None = None  # by which the year is followed again where a change moves it
    unchanged: dict[int, Look] = field(default_factory=dict, compare=False)  # asked for often

    def look(self, place: int, changes: Sequence[Change] = (), age: float | None = None) -> Look:
        """One option with some changes made; the rows of the year as the study found them.

        As it is, it is looked at once.
        """
        if changes or age is not None:
            return self.anew(place, changes, age)
        if place not in self.unchanged:
            self.unchanged[place] = self.anew(place, changes, age)
        return self.unchanged[place]

    def anew(self, place: int, changes: Sequence[Change], age: float | None) -> Look:
        """The same, computed, whatever was looked at before."""
        case = self.ground.case
        for change in changes:
            case = change.applied(case, self.count)
        ground = replace(self.ground, case=case, age=age)
        found = technical(ground, case.options[place], place, brief=True)
        kept = self.known.get(place, {})
        if self.sky is not None and any(_of_the_year(change) for change in changes):
            found, kept = lived(found, self.sky), {}
        rows = tuple(kept.get(row.criterion.id, row) for row in evaluate(found))
        return Look(found, rows)


def _of_the_year(change: Change) -> bool:
    return any("panels" in path for path in change.fields)


def known_rows(verdicts: Sequence[Verdict]) -> dict[int, dict[int, Judgement]]:
    """The rows of the year of every option's verdict."""
    return {
        place: {
            row.criterion.id: row for row in verdict.judgements if row.criterion.id in BY_THE_YEAR
        }
        for place, verdict in enumerate(verdicts)
    }
