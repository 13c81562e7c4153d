"""What does the study lead to? Advice, remedies, how long the word holds, A or B."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from generator.analyses.verdict.verdict import WORD_GO
from generator.answer.advice import Advice, Choice, advice
from generator.answer.compare import Comparison, compare
from generator.answer.desk import Desk, Look, known_rows
from generator.answer.names import called
from generator.answer.sets import RemedySet, remedy_sets
from generator.answer.staircase import Staircase, staircase
from generator.answer.subjects import Subject, subjects
from generator.answer.until import Until, until
from generator.case.case import Case
from generator.draws import make_draws
from generator.study import OptionStudy, Study, stand

FEW = 100  # draws of a search; what is printed is confirmed on all


@dataclass(frozen=True)
class Answer:
    """By the place of each option: sets of remedies, and until when its word holds."""

    advice: Advice
    subjects: tuple[Subject, ...]
    comparison: Comparison | None
    sets: Mapping[int, tuple[RemedySet, ...]]
    until: Mapping[int, Until]
    maps: Mapping[int, Staircase]  # of one option: the one that is advised, else the first battery


def answer(case: Case, study: Study, maps: bool = True) -> Answer:
    """Search on few draws, confirm on those of the study; without ``maps`` where none is shown."""
    known = known_rows([option.verdict for option in study.options])
    count = min(FEW, study.draws.count)
    few = Desk(stand(case, make_draws(case, count)), known, count, study.sky)
    full = Desk(stand(case, study.draws), known, study.draws.count, study.sky)
    sets, ends = {}, {}
    for place, option in enumerate(study.options):
        bank = option.findings.bank
        if bank is None:
            continue
        if option.verdict.word != WORD_GO:
            whole = Look(option.findings, option.verdict.judgements)
            sets[place] = remedy_sets(few, full, place, whole)
        found = until(few, place, bank.ages[1].after, option.verdict.word)
        if found is not None:
            ends[place] = found
    said = advice(Choice(study, sets))
    named = _named(study, said)
    shown = _maps(few, study, named) if maps else {}
    return Answer(said, subjects(study, named), compare(study), sets, ends, shown)


def _maps(few: Desk, study: Study, named: OptionStudy | None) -> dict[int, Staircase]:
    """The map of the option that is spoken of; one is enough, for all motors stand on it."""
    battery = [each for each in study.options if each.findings.bank is not None]
    option = named if named in battery else next(iter(battery), None)
    if option is None or not few.ground.case.legs:
        return {}  # no passage, so that nothing says what a motor or a battery must do
    place = option.findings.place
    found = staircase(few, place)
    return {} if found is None else {place: found}


def _named(study: Study, said: Advice) -> OptionStudy | None:
    """The option that the advice speaks of."""
    return next(
        (each for each in study.options if called(study, each.findings) == said.option), None
    )
