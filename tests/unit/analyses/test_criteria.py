"""Can every assessed criterion go, be conditional and fail, each through a case?"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from pathlib import Path
from typing import Any

import pytest

from generator.analyses.criteria.criterion import CONDITIONAL, GO, NO, Judgement
from generator.case.case import Case
from generator.case.open import read_case
from generator.draws import make_draws
from generator.study import OptionStudy, run

CASES = Path(__file__).parents[3] / "cases"
KNOT = 1852 / 3600
ELECTRIC = 2  # place of the battery option in the case


@lru_cache(maxsize=1)
def sloop() -> Case:
    """The sloop with a warm locker, a second propulsor and a stronger management system."""
    case = read_case(CASES / "sloop_30_weekend.yaml")
    waters = replace(case.waters, coldest=8.0)
    plan = replace(case.planning, fallback="second propulsor", fallback_speed=3.5 * KNOT)
    option = case.options[ELECTRIC]
    assert option.bank is not None
    strong = replace(option, bank=replace(option.bank, discharge_limit=500.0))
    options = (*case.options[:ELECTRIC], strong)
    return replace(case, waters=waters, planning=plan, options=options)


def studied(case: Case) -> OptionStudy:
    return run(case, make_draws(case, 100)).options[ELECTRIC]


def judgement(case: Case, number: int) -> Judgement:
    rows = studied(case).verdict.judgements
    return next(row for row in rows if row.criterion.id == number)


def changed(part: str, **values: Any) -> Case:
    """The sloop with fields of her motor or bank set to other numbers."""
    option = sloop().options[ELECTRIC]
    other = replace(option, **{part: replace(getattr(option, part), **values)})
    options = (*sloop().options[:ELECTRIC], other)
    gone = tuple(f"options[{ELECTRIC}].{part}.{name}" for name in values)
    kept = tuple(item for item in sloop().assumptions if item.path not in gone)
    return replace(sloop(), options=options, assumptions=kept)


def with_bank(hours: float) -> Case:
    return changed("bank", charge=hours * 3600.0)


@pytest.mark.parametrize(("hours", "result"), [(400, GO), (310, CONDITIONAL), (120, NO)])
def test_must_make_leg_follows_the_bank(hours: float, result: str) -> None:
    assert judgement(with_bank(hours), 1).result == result


@pytest.mark.parametrize(("kilowatts", "result"), [(10, GO), (2.9, CONDITIONAL), (1.5, NO)])
def test_continuous_power_follows_the_rating(kilowatts: float, result: str) -> None:
    assert judgement(changed("motor", continuous_power=kilowatts * 1e3), 5).result == result


@pytest.mark.parametrize(("kilowatts", "result"), [(13, GO), (8, CONDITIONAL), (3, NO)])
def test_calm_speed_follows_the_peak(kilowatts: float, result: str) -> None:
    assert judgement(changed("motor", peak_power=kilowatts * 1e3), 7).result == result


@pytest.mark.parametrize(("amperes", "result"), [(500, GO), (400, CONDITIONAL), (200, NO)])
def test_battery_currents_follow_the_discharge_limit(amperes: float, result: str) -> None:
    assert judgement(changed("bank", discharge_limit=amperes), 14).result == result


def test_evidence_is_a_trial_then_builder_data_then_a_guess() -> None:
    without = tuple(item for item in sloop().assumptions if not item.path.startswith("trial."))
    guess = replace(sloop(), trial=None, assumptions=without)
    named = {"boat.hull.prismatic_coefficient", "boat.hull.lcb"}
    given = tuple(replace(item, origin="given") if item.path in named else item for item in without)
    grades = [
        judgement(case, 28).grade for case in (sloop(), replace(guess, assumptions=given), guess)
    ]
    assert grades == ["sea trial", "builder data", "hull guess"]
    assert studied(sloop()).verdict.word == "Go"
    assert studied(guess).verdict.word == "Go with conditions"


def test_one_failed_deciding_row_makes_the_word_dont() -> None:
    found = studied(with_bank(120)).verdict
    assert found.word == "Don't, as specified"
    assert found.conditions


def test_rows_that_are_not_assessed_do_not_cap_the_word() -> None:
    found = studied(sloop()).verdict
    assert found.word == "Go"
    assert sum(row.result == "not assessed" for row in found.judgements) > 0


def test_flip_of_the_must_make_leg_does_flip_it() -> None:
    """The bank that the failed row asks for, put aboard, passes."""
    row = judgement(with_bank(120), 1)
    wanted = row.numbers["flip_kwh"] * 3.6e6 / 51.2 / 3600.0
    assert judgement(with_bank(wanted * 1.02), 1).result == GO
