"""Does one changed fact lead from each line of the advice to the next, and back?

Every line through whole cases: the boat of the shortages, in which every row passes.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path

import pytest

from generator.analyses.verdict.criteria.criterion import GO, NO
from generator.analyses.verdict.verdict import WORD_NO
from generator.answer.advice import Choice, advice
from generator.answer.answer import answer
from generator.case.open import read_case
from generator.draws import make_draws
from generator.report.numbers import Display
from generator.report.tree import Telling, tree
from generator.study import OptionStudy, Study, run
from tests.once import once, shared_folder
from tests.trade.shortages.reader import write_boat

DRAWS = 60
NARROW = "\N{NO-BREAK SPACE}"  # between a number and its unit
NAMES = {"the present diesel", "the electric motor", "the new diesel"}  # one of each kind

# what is changed in the boat
SMALL_BANK = (
    "options.a.bank.blocks.parallel=1; options.a.bank.blocks.charge=160 Ah;"
    " options.a.bank.mass=70 kg; options.a.added.2.mass=70 kg"
)
HEAVY = "options.a.added.2.mass=500 kg"  # nothing mends it
WORN, DYING = "engine.condition=worn", "engine.condition=dying"
REFUSED, ASKED = "papers.insurer=refused", "papers.insurer=another asked"
NOT_ASKED = "papers.insurer=not asked"
COST = "study.reasons=[{text: It shall cost less, subject: cost}]"
OTHER = "study.reasons=[{text: My neighbour has one, subject: other}]"
UNPRICED = "-options.a.costs"
ESTIMATE = "options.a.costs.0.from=estimate"
LACKING = "options.a.costs.5.name=Paint"  # which was the survey
WEAK_CHARGER = "options.a.supply.charger.power=0.4 kW; berth.days_between_use=1 d"
NO_NEW = "-options.new"
LATER = "options.keep.costs=[{name: Overhaul, amount: 4000 EUR, when: once, year: 3, from: quote}]"
OVERHAUL = "options.keep.costs=[{name: Overhaul, amount: 4000 EUR, when: first, from: quote}]"
NO_LEGS = "-legs"

# the line of the advice, a fact more, and the line that it leads to
TURNS = (
    ("", "KEEP_OR", NO_LEGS, "ASK"),
    (ASKED, "KEEP_OR", REFUSED, "STOP"),
    ("", "KEEP_OR", COST, "KEEP"),
    ("", "KEEP_OR", SMALL_BANK, "KEEP_R"),
    (SMALL_BANK, "KEEP_R", WORN, "QUOTE_R"),
    (SMALL_BANK, "KEEP_R", HEAVY, "KEEP_N"),
    (f"{HEAVY}; {DYING}", "NEW", OVERHAUL, "KEEP_N"),
    (f"{HEAVY}; {DYING}", "NEW", NO_NEW, "NONE"),
    ("", "KEEP_OR", WORN, "ORDER"),
    (WORN, "ORDER", ESTIMATE, "PRICE"),
    (WORN, "ORDER", NOT_ASKED, "FIRST"),
    (f"{WORN}; {NOT_ASKED}", "FIRST", WEAK_CHARGER, "QUOTE"),
    (WORN, "ORDER", COST, "KEEP"),
)

WORDS = {
    NO_LEGS: "Write down your passages, then ask again.",
    REFUSED: "Order nothing before another insurer has agreed in writing.",
    "papers.conversion=refused": (
        "Order nothing before the notified or approved body has agreed in writing."
    ),
    COST: (
        "Keep your diesel. No conversion studied here is cheaper, and cost is what you asked about."
    ),
    UNPRICED: "Keep your diesel until the electric motor is priced.",
    SMALL_BANK: (
        "Keep your diesel. If you convert for quiet, have the electric motor quoted"
        " with a battery of 16.4 kWh in 2 strings."
    ),
    f"{SMALL_BANK}; {WORN}": (
        "Have the electric motor quoted with a battery of 16.4 kWh in 2 strings."
        " As specified it fails on “Leg that must be made”."
    ),
    f"{SMALL_BANK}; {OTHER}": (
        "Keep your diesel. If you convert for your own reasons, have the electric motor quoted"
        " with a battery of 16.4 kWh in 2 strings."
    ),
    HEAVY: (
        "Keep your diesel. No change studied here makes the electric motor pass"
        " “Net change of mass”."
    ),
    f"{HEAVY}; {WORN}": (
        "Keep your diesel, and have its overhaul priced. No change studied here makes"
        " the electric motor pass “Net change of mass”."
    ),
    f"{HEAVY}; {WORN}; {OVERHAUL}": (
        "Keep your diesel (overhaul now, €4,000). No change studied here makes"
        " the electric motor pass “Net change of mass”."
    ),
    f"{HEAVY}; {WORN}; {LATER}": (
        "Keep your diesel (overhaul in year 3, €4,000). No change studied here makes"
        " the electric motor pass “Net change of mass”."
    ),
    f"{HEAVY}; {DYING}": "Have a new diesel of 11 kW quoted.",
    f"{HEAVY}; {DYING}; {NO_NEW}": (
        "Order nothing. No change studied here makes any option pass “Net change of mass”."
    ),
    WORN: "Order the electric motor.",
    f"{WORN}; {ESTIMATE}": "Have the electric motor quoted.",
    f"{WORN}; {NOT_ASKED}; -options.a.compartment": (
        "Have the electric motor quoted. First obtain the insurer's written acceptance,"
        " then an inspection of the battery space."
    ),
    f"{WORN}; {WEAK_CHARGER}": (
        "Have the electric motor quoted. It is suitable on the conditions listed with it."
    ),
}


@once
def _studied(changes: str) -> Study:
    folder = Path(shared_folder()) / "advice-studied"
    folder.mkdir(exist_ok=True)
    case = read_case(write_boat(folder, "boat", changes))
    return run(case, make_draws(case, DRAWS), year=False)


@dataclass(frozen=True)
class Said:
    """The advice: its line, the option and subject that it names, and in words."""

    rule: str
    option: str
    subject: str
    extra: float | None
    confirmed: bool  # the set that it names is one of the study's
    words: str
    rests: str


@once
def _said(number: int) -> Said:
    folder = Path(shared_folder()) / "advice"
    folder.mkdir(exist_ok=True)
    case = read_case(write_boat(folder, f"boat {number}", CASES[number]))
    study = run(case, make_draws(case, DRAWS), year=False)
    led = answer(case, study, maps=False)
    telling = Telling(Display(case.study.units, case.study.currency))
    said, told = led.advice, tree(led.advice, "answer.advice", telling)
    every = [each for sets in led.sets.values() for each in sets]
    return Said(
        said.rule, said.option, said.subject, said.extra,
        said.remedies is None or any(said.remedies is each for each in every),
        told["words"].replace(NARROW, " "), told["words_rests"],
    )  # fmt: skip


def _joined(*changes: str) -> str:
    return "; ".join(each for each in changes if each)


CASES = tuple(
    dict.fromkeys(
        (*(_joined(each[0]) for each in TURNS), *(_joined(each[0], each[2]) for each in TURNS),
         *WORDS, OTHER, f"{WORN}; {LACKING}", f"{WORN}; {ESTIMATE}; {LACKING}")
    )
)  # fmt: skip


def said(changes: str) -> Said:
    """The advice to the boat so changed."""
    return _said(CASES.index(changes))


@pytest.mark.parametrize(("changes", "rule", "fact", "following"), TURNS)
def test_a_fact_leads_to_another_line_and_back(
    changes: str, rule: str, fact: str, following: str
) -> None:
    assert said(changes).rule == rule
    assert said(_joined(changes, fact)).rule == following


def test_every_line_of_the_advice_is_reached() -> None:
    reached = {line for _, rule, _, following in TURNS for line in (rule, following)}
    assert reached == {
        "ASK", "STOP", "KEEP", "KEEP_R", "QUOTE_R", "KEEP_N", "NEW", "NONE", "KEEP_OR", "ORDER",
        "PRICE", "FIRST", "QUOTE",
    }  # fmt: skip


@pytest.mark.parametrize(("changes", "words"), WORDS.items())
def test_advice_is_one_plain_sentence(changes: str, words: str) -> None:
    assert said(changes).words == words


@pytest.mark.parametrize("changes", CASES)
def test_advice_names_only_what_was_computed(changes: str) -> None:
    found = said(changes)
    assert found.option in NAMES | {""}
    assert found.confirmed
    assert found.subject not in ("cost", "which motor", "other")
    if NO_NEW in changes:
        assert "new diesel" not in found.words
    if UNPRICED in changes:
        assert found.extra is None
        assert "€" not in found.words


def test_what_the_boat_costs_more_is_held_against_the_subject() -> None:
    found = said("")
    assert found.extra is not None
    assert found.extra > 0.0
    assert found.words.startswith("Keep your diesel, unless quiet is worth €")
    assert "your own reasons are worth €" in said(OTHER).words


def test_advice_tells_what_it_rests_on() -> None:
    assert said("").rests == "her present engine is in good health"
    assert said(_joined(WORN, COST)).rests == "her present engine is worn"
    line = "Motor and controller"
    assert said(_joined(WORN, ESTIMATE)).rests == f"the price of “{line}” is no quote yet"
    assert said(_joined(WORN, LACKING)).rests == "no line of its prices names survey"
    both = said(_joined(WORN, ESTIMATE, LACKING)).rests
    assert both == f"the price of “{line}” is no quote yet; no line of its prices names survey"


def test_advice_names_the_conversion_that_is_nearest_to_suitable() -> None:
    """Of two that fail, the one with fewer failing rows; of as many, the one less short of them."""
    study = _studied(f"{HEAVY}; {WORN}")
    option = next(each for each in study.options if each.findings.option.bank is not None)
    row = next(each for each in option.verdict.judgements if each.result == NO and each.value)

    def like(name: str, failing: int, value: float) -> OptionStudy:
        rows = tuple(replace(each, result=GO) for each in option.verdict.judgements if each != row)
        bad = tuple(replace(row, value=value) for _ in range(failing))
        named = replace(option.findings, option=replace(option.findings.option, name=name))
        verdict = replace(option.verdict, judgements=(*bad, *rows), reasons=(0,), word=WORD_NO)
        return replace(option, findings=named, verdict=verdict)

    far, near, short = like("Far", 2, 0.051), like("Near", 1, 0.060), like("Short", 1, 0.052)
    keep = [each for each in study.options if each.findings.option.bank is None]
    for conversions, name in (
        ((far, near), "Near"),
        ((near, short), "Short"),
        ((far,), "the electric motor"),
    ):
        moved = replace(study, options=(*keep, *conversions))
        assert advice(Choice(moved, {})).stopped == name
