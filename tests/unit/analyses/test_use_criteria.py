"""Can the criteria of legs, berth and mooring go, be conditional and fail, each through a case?"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from pathlib import Path
from typing import Any

import pytest

from generator.analyses.verdict.criteria.criterion import (
    CONDITIONAL,
    GO,
    NO,
    Judgement,
)
from generator.analyses.year.sun_carries import reference_panels
from generator.case.case import Case
from generator.case.open import read_case
from generator.case.supply import Genset
from tests.alone import alone

CASES = Path(__file__).parents[3] / "cases"
ELECTRIC = 2  # place of the battery option in the case
MILE = 1852.0
MOORING = 12  # the criterion of the year


@lru_cache(maxsize=1)
def sloop() -> Case:
    return read_case(CASES / "sloop_30_weekend.yaml")


def judgement(case: Case, number: int) -> Judgement:
    rows = alone(case, ELECTRIC, 100, year=number == MOORING).verdict.judgements
    return next(row for row in rows if row.criterion.id == number)


def at_berth(**values: Any) -> Case:
    gone = tuple(f"berth.{name}" for name in values)
    kept = tuple(item for item in sloop().assumptions if item.path not in gone)
    return replace(sloop(), berth=replace(sloop().berth, **values), assumptions=kept)


def with_third_leg(miles: float, times: float) -> Case:
    """Her calm Sunday made longer, or more often."""
    leg = replace(sloop().legs[2], distance=miles * MILE, times_per_year=times)
    kept = tuple(item for item in sloop().assumptions if not item.path.startswith("legs[2]"))
    return replace(sloop(), legs=(*sloop().legs[:2], leg), assumptions=kept)


def with_genset(case: Case) -> Case:
    option = case.options[ELECTRIC]
    assert option.supply is not None
    supply = replace(option.supply, genset=Genset(2000.0, 0.1, 0.6))
    options = (*case.options[:ELECTRIC], replace(option, supply=supply))
    return replace(case, options=options)


@pytest.mark.parametrize(
    ("miles", "times", "result"), [(9, 4, GO), (30, 4, CONDITIONAL), (30, 20, NO)]
)
def test_coverage_follows_the_legs(miles: float, times: float, result: str) -> None:
    found = judgement(with_third_leg(miles, times), 2)
    assert found.result == result
    if result != GO:
        assert found.facts.named == ("Calm Sunday, Pin Mill and back",)
        assert found.facts.outcome == {CONDITIONAL: "most", NO: "some"}[result]


def test_what_mends_a_slow_berth_mends_it() -> None:
    """The charger that the study names, on a breaker that carries it."""
    found = judgement(at_berth(breaker=3.0), 11)
    watts = found.facts.charger
    enough = watts / 0.8 / 230.0 * 1.15  # the breaker is derated by a drawn 0.70 to 0.80
    assert judgement(at_berth(breaker=enough), 11).result == GO
    assert judgement(at_berth(breaker=0.8 * enough), 11).result == CONDITIONAL


def under_the_sun(watts: float) -> Case:
    """The sloop on a buoy, with free-standing panels."""
    case = at_berth(shore_power=False)
    option = case.options[ELECTRIC]
    supply = reference_panels(option).supply
    assert option.supply is not None
    assert supply is not None
    panels = (replace(supply.panels[0], power=watts),) if watts else ()
    option = replace(option, supply=replace(option.supply, panels=panels))
    return replace(case, options=(*case.options[:ELECTRIC], option))


@pytest.mark.parametrize(("watts", "result"), [(900.0, GO), (650.0, CONDITIONAL), (200.0, NO)])
def test_mooring_follows_the_panels(watts: float, result: str) -> None:
    assert judgement(under_the_sun(watts), 12).result == result


def test_panels_that_the_mooring_asks_for_are_enough() -> None:
    watts = judgement(under_the_sun(200.0), 12).facts.panels
    assert judgement(under_the_sun(1.02 * watts), 12).result == GO
    assert judgement(under_the_sun(0.95 * watts), 12).result == CONDITIONAL
    assert judgement(under_the_sun(0.0), 12).facts.panels == pytest.approx(watts, rel=0.1)
