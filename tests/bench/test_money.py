"""How long does money take for ten thousand draws? Run on a quiet machine: pytest tests/bench."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
from pytest_benchmark.fixture import BenchmarkFixture

from generator.analyses.money.cost import Cost, cost
from generator.analyses.money.cost_ledger import ledger
from generator.analyses.money.savings import savings
from generator.analyses.use.legs import Legs
from generator.case.case import Case
from generator.case.open import read_case
from generator.draws import drawn, make_draws
from tests.bench.floor import CASE

MANY, ALTERNATIVES, YEARS = 10_000, 5, 25
LIMIT = 0.1  # s


def five(case: Case) -> Case:
    """The demo with its electric option three times."""
    moved = drawn(case, make_draws(case, MANY))
    return replace(
        moved,
        options=(*moved.options, moved.options[-1], moved.options[-1]),
        prices=replace(moved.prices, horizon=YEARS),
    )


def test_ten_thousand_draws_of_five_alternatives_over_25_years(
    benchmark: BenchmarkFixture,
) -> None:
    case = five(read_case(CASE))
    yearly = np.linspace(0.9, 1.1, MANY + 1)[:, np.newaxis]
    electric, diesel = (Legs((), yearly * each, yearly * 1.6e5) for each in (5e8, 0.06))

    def money() -> list[Cost]:
        found = [
            cost(case, option, electric if option.bank else diesel, ledger(case, option))
            for option in case.options
        ]
        for option, own in zip(case.options, found, strict=True):
            savings(case, option, own, found[0], found[1])
        return found

    found = benchmark.pedantic(money, rounds=7, warmup_rounds=1)
    assert len(found) == ALTERNATIVES
    assert found[-1].flows.shape == (MANY + 1, YEARS + 1)
    assert benchmark.stats is not None
    assert benchmark.stats.stats.median < LIMIT
