"""How long does the ladder take: 41 winds, three plants, two thousand draws, one core?"""

from __future__ import annotations

from typing import Any

from pytest_benchmark.fixture import BenchmarkFixture

from generator.analyses.handling.headwind import WINDS, headwind
from generator.case.open import read_case
from generator.cli import DRAWS
from generator.draws import make_draws
from generator.study import run
from tests.bench.floor import CASE

LIMIT = 0.4  # s


def test_ladder_of_three_plants_with_all_draws(benchmark: BenchmarkFixture) -> None:
    case = read_case(CASE)
    options = [option.findings for option in run(case, make_draws(case, DRAWS)).options][:3]

    def climb() -> Any:
        return [headwind(of.case, of.option, of.power, of.trial.scale) for of in options]

    found = benchmark.pedantic(climb, rounds=5, warmup_rounds=1)
    assert len(found) == 3
    assert found[0].continuous.speed.shape == (DRAWS + 1, WINDS.size)
    assert benchmark.stats is not None
    assert benchmark.stats.stats.median < LIMIT
