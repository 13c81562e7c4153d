"""Do row, reason and first remedy name the one part that a boat is short of?

The boat and what is taken from her are built for this test: she passes in every row, and then one
thing at a time is too small, unasked, unseen or not there.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import pytest

from generator.analyses.verdict.criteria.criterion import CONDITIONAL, NO
from generator.analyses.verdict.verdict import WORD_GO
from generator.answer.answer import answer
from generator.case.open import read_case
from generator.draws import make_draws
from generator.report.results_file import build
from generator.study import run
from tests.once import once, shared_folder
from tests.trade.shortages.reader import Shortage, shortages, write_boat

DRAWS, PLACE = 200, 1  # place of the battery option
SHORT = shortages()


@dataclass(frozen=True)
class Said:
    """What is said of the option; each remedy set by its kinds, and in words."""

    word: str
    binding: frozenset[int]  # rows that fail, or where none does those with conditions
    first: int  # row of the first reason
    reason: str
    mend: str
    kinds: tuple[tuple[str, ...], ...]
    remedies: tuple[str, ...]


@once
def said(name: str) -> Said:
    """The study of the base boat, changed, with what it leads to."""
    folder = Path(shared_folder()) / "shortages"
    folder.mkdir(exist_ok=True)
    changes = SHORT[name].changes if name in SHORT else ""
    case = read_case(write_boat(folder, name, changes))
    study = run(case, make_draws(case, DRAWS), year=not case.berth.shore_power)
    led = answer(case, study, maps=False)
    option = study.options[PLACE].verdict
    tree = build(case, study, led=led)["options"][PLACE]
    first = option.reasons[0]
    by_result = {
        result: frozenset(
            row.criterion.id
            for row in option.judgements
            if row.decides and row.result == result
        )
        for result in (NO, CONDITIONAL)
    }  # fmt: skip
    return Said(
        word=option.word,
        binding=by_result[NO] or by_result[CONDITIONAL],
        first=option.judgements[first].criterion.id,
        reason=tree["verdict"]["reasons"][0],
        mend=tree["verdict"]["criteria"][first]["words_mend"],
        kinds=tuple(
            tuple(each.kind for each in found.remedies) for found in led.sets.get(PLACE, ())
        ),
        remedies=tuple(row["words"] for row in tree.get("remedies") or ()),
    )


def test_base_boat_is_suitable_in_every_row() -> None:
    found = said("base")
    assert found.word == WORD_GO
    assert not found.binding
    assert not found.kinds


@pytest.mark.parametrize("short", SHORT.values(), ids=SHORT)
def test_row_reason_and_first_remedy_name_the_part(short: Shortage) -> None:
    found = said(short.name)
    assert found.word != WORD_GO
    assert int(short.row) == found.first, found
    assert found.first in found.binding
    assert short.reason in found.reason, found.reason
    assert found.kinds[0] == (short.remedy,)
    assert short.says in found.remedies[0]


def test_each_shortage_has_one_remedy_of_its_own() -> None:
    assert len({short.remedy for short in SHORT.values()}) >= 12
