"""Are few, small, minimal sets found, and is nothing asked twice?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path

import pytest

from generator.analyses.verdict.verdict import WORD_CONDITIONS, WORD_GO, WORD_NO
from generator.answer import sets
from generator.answer.answer import FEW, Answer, answer
from generator.answer.desk import Desk, Look
from generator.answer.remedy import Change, Offer
from generator.case.case import Case
from generator.case.open import read_case
from generator.draws import make_draws
from generator.study import Study, run, stand
from tests.trade.shortages.reader import shortages, write_boat

KETCH = Path(__file__).parents[3] / "cases" / "ketch_34_two_motors.yaml"
DRAWS = 60
TWO_SHORT = ("motor power", "space")  # of two things at once


def _study(case: Case, draws: int = DRAWS) -> Study:
    return run(case, make_draws(case, draws), year=False)


def _boat(folder: Path, *names: str) -> Case:
    changes = "; ".join(shortages()[name].changes for name in names)
    return read_case(write_boat(folder, "boat", changes))


def _led(case: Case) -> Answer:
    return answer(case, _study(case), maps=False)


@pytest.mark.parametrize("boat", ["ketch", "base"])
def test_brief_look_judges_every_deciding_row_as_the_study_does(boat: str, tmp_path: Path) -> None:
    case = read_case(KETCH) if boat == "ketch" else _boat(tmp_path)
    study = _study(case)
    desk = Desk(stand(case, study.draws), {}, DRAWS)
    for place, option in enumerate(study.options):
        brief = {row.criterion.id: row for row in desk.look(place).rows if row.decides}
        whole = {row.criterion.id: row for row in option.verdict.judgements if row.decides}
        assert brief.keys() == whole.keys()
        for number, row in whole.items():
            assert brief[number].result == row.result, (place, number)
            assert brief[number].value == pytest.approx(row.value), (place, number)
            assert brief[number].pessimistic == pytest.approx(row.pessimistic), (place, number)


def test_sets_keep_what_was_good_and_reach_the_word_beside_them(tmp_path: Path) -> None:
    case = _boat(tmp_path, *TWO_SHORT)
    study = _study(case)
    before = Look(study.options[1].findings, study.options[1].verdict.judgements)
    assert before.word == WORD_NO
    printed = answer(case, study, maps=False).sets[1]
    assert 1 <= len(printed) <= 3
    assert printed[0].word == WORD_CONDITIONS
    for found in printed:
        assert len(found.remedies) <= 3
        ranks = before.ranks
        assert all(rank <= ranks.get(row, 0) for row, rank in found.look.ranks.items())
        assert found.word == found.look.word
        assert found.word in (WORD_GO, WORD_CONDITIONS)
        assert not found.asks


def test_two_shortages_take_one_remedy_each(tmp_path: Path) -> None:
    (first, *_) = _led(_boat(tmp_path, *TWO_SHORT)).sets[1]
    assert {each.kind for each in first.remedies} == {"motor", "works"}
    assert {4, 19} <= set(first.mends)
    assert first.price is None  # works have none


def test_the_cheaper_stage_comes_first_and_one_set_is_suitable(tmp_path: Path) -> None:
    printed = _led(_boat(tmp_path, "speed of the legs")).sets[1]
    stages = [max(each.stage for each in found.remedies) for found in printed]
    assert stages[0] == min(stages)
    assert printed[0].free
    assert printed[-1].word == WORD_GO
    assert len({found.typed for found in printed}) == len(printed)


def test_set_with_an_idle_member_is_no_set(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The plug alone does it, so that it makes no set with a slower leg."""

    def plug_and(lifts: Mapping[Offer, set[int]], *_: object) -> Iterator[tuple[Offer, ...]]:
        named = {offer.kind: offer for offer in lifts}
        yield named["plug"], named["slower"]

    case = _boat(tmp_path, "speed of the legs")
    assert any([each.kind for each in found.remedies] == ["plug"] for found in _led(case).sets[1])
    monkeypatch.setattr(sets, "_combinations", plug_and)
    assert _led(case).sets[1] == ()


def test_weakest_level_that_does_it_is_taken(tmp_path: Path) -> None:
    """The next motor of the ladder gives conditions, and the one after it makes it suitable."""
    first, second = _led(_boat(tmp_path, "motor power")).sets[1]
    assert [each.power for each in first.remedies] == [pytest.approx(6e3)]
    assert [each.power for each in second.remedies] == [pytest.approx(8e3)]
    assert first.price == pytest.approx(9700.0 * (6.0 / 4.0 - 1.0))


def test_what_no_offer_mends_has_no_set(tmp_path: Path) -> None:
    path = write_boat(tmp_path, "heavy", "options.a.added.2.mass=500 kg")
    assert _led(read_case(path)).sets[1] == ()


def test_bank_grows_no_further_than_its_space_carries(tmp_path: Path) -> None:
    spaces = "boat.spaces=[{{name: Locker, x: 2.1 m, z: -0.1 m, volume: 400 l, max_mass: {}}}]"
    short = shortages()["bank energy"].changes
    inside = "options.a.added.2.space=Locker"
    kinds = []
    for most in ("100 kg", "400 kg"):
        changes = f"{short}; {spaces.format(most)}; {inside}"
        printed = _led(read_case(write_boat(tmp_path, "boat", changes))).sets[1]
        kinds.append({each.kind for found in printed for each in found.remedies})
    assert "bank" not in kinds[0]
    assert "bank" in kinds[1]


def test_nothing_is_looked_at_twice(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Neither a set on few draws, nor one on all, nor on all the option as the study has it."""
    asked: list[tuple[int, int, tuple[int, ...], float | None]] = []
    held: list[Change] = []  # so that no other gets the same id
    own = Desk.anew

    def anew(desk: Desk, place: int, changes: Sequence[Change], age: float | None) -> Look:
        held.extend(changes)
        asked.append((desk.count, place, tuple(sorted(map(id, changes))), age))
        return own(desk, place, changes, age)

    monkeypatch.setattr(Desk, "anew", anew)
    case = _boat(tmp_path, "speed of the legs")
    study = _study(case, FEW + 1)
    answer(case, study)
    bank = study.options[1].findings.bank
    assert bank is not None
    assert len(asked) == len(set(asked))
    assert not [each for each in asked if each[0] == FEW + 1 and not each[2]]
    assert not [each for each in asked if each[3] == bank.ages[1].after]  # the word's own age
