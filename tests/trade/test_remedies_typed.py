"""Does each printed remedy set, typed into the case file, give the word printed beside it?

And is none of its members idle: leave one out and the word is worse.
"""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from generator.analyses.verdict.verdict import WORD_CONDITIONS, WORD_GO, WORD_NO
from generator.answer.answer import Answer, answer
from generator.answer.sets import RemedySet
from generator.case.case import Case
from generator.case.open import read_case
from generator.draws import make_draws
from generator.study import run
from tests.trade.shortages.reader import shortages, write_boat
from tests.trade.typed import write_typed

CASES = Path(__file__).parents[2] / "cases"
DEMOS = ("ketch_34_two_motors", "sloop_30_weekend")
SHORT = ("motor power", "speed of the legs", "panels", "charger", "heat of the motor")
DRAWS = 300
ORDER = (WORD_GO, WORD_CONDITIONS, WORD_NO)


def _led(case: Case) -> tuple[Answer, tuple[str, ...]]:
    study = run(case, make_draws(case, DRAWS), year=_year(case))
    return answer(case, study, maps=False), tuple(each.verdict.word for each in study.options)


def _year(case: Case) -> bool:
    """Only without a plug does a row read it."""
    return not case.berth.shore_power


def _word(path: Path, found: RemedySet, place: int, left_out: int | None = None) -> str:
    """The word of the study of the file with all members but one typed into it."""
    kept = [change for n, change in enumerate(found.changes) if n != left_out]
    case = read_case(write_typed(path, [each for change in kept for each in change.typed], "typed"))
    study = run(case, make_draws(case, DRAWS), year=_year(case))
    return study.options[place].verdict.word


def _hold(path: Path) -> int:
    """How many sets were printed; each of them and of its members is tried."""
    case = read_case(path)
    led, words = _led(case)
    for place, sets in led.sets.items():
        for found in sets:
            told = (place, [each.kind for each in found.remedies])
            assert ORDER.index(found.word) < ORDER.index(words[place]), told
            assert _word(path, found, place) == found.word, told
            for member in range(len(found.changes)):
                worse = _word(path, found, place, member)
                assert ORDER.index(worse) > ORDER.index(found.word), (told, member)
    return sum(map(len, led.sets.values()))


@pytest.mark.parametrize("name", DEMOS)
def test_sets_of_a_demo_give_the_word_beside_them(name: str, tmp_path: Path) -> None:
    printed = _hold(Path(shutil.copy(CASES / f"{name}.yaml", tmp_path)))
    assert printed or name != DEMOS[0]  # the sloop is suitable or next to it


@pytest.mark.parametrize("name", SHORT)
def test_sets_of_a_boat_with_a_shortage_give_the_word_beside_them(
    name: str, tmp_path: Path
) -> None:
    assert _hold(write_boat(tmp_path, name, shortages()[name].changes))
