"""How long does the year take, and how much room: 25 years of weather, three options, one core?"""

from __future__ import annotations

import time
import tracemalloc
from dataclasses import replace
from functools import lru_cache

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from generator.analyses.use.departures import OptionYear
from generator.analyses.use.outings import Outings, outings
from generator.analyses.year.house import house
from generator.analyses.year.option_year import option_year
from generator.analyses.year.panel_yield import panel_yield
from generator.analyses.year.weather import YEARS, Sky, weather, weather_years
from generator.analyses.year.year import years
from generator.case.open import read_case
from generator.draws import make_draws
from generator.study import run
from tests.bench.floor import CASE

LIMIT, MACHINE_LIMIT = 0.3, 0.6  # s
ROOM = 200e6  # bytes
OPTIONS = 3


@lru_cache(maxsize=4)
def given(
    count: int, machine: bool, many: int = YEARS, times_the_legs: int = 1
) -> tuple[tuple[OptionYear, ...], Sky, Outings]:
    """Options of the demo case, the first motor as often as asked, on the sky of many years."""
    case = read_case(CASE)
    case = replace(case, legs=case.legs * times_the_legs)
    study = run(case, make_draws(case, 0))
    sky = weather(case)
    assert sky is not None
    sky = weather_years((sky.latitude, sky.longitude), (), None, many)
    times = outings(case, sky)
    found = next(option.findings for option in study.options if option.findings.year)
    sail = found.sail
    assert sail is not None
    option = option_year(
        found.outfit, found.place, sail,
        panel_yield(found.option, sky), house(case), sky, times,
    )  # fmt: skip
    assert option is not None
    if machine:
        option = replace(option, genset=(3000.0, 2e7, 4e7), plug=0.0)
    return (option,) * count, sky, times


@pytest.mark.benchmark(timer=time.process_time)  # of one core, whatever else the machine does
@pytest.mark.parametrize(("machine", "limit"), [(False, LIMIT), (True, MACHINE_LIMIT)])
def test_year_of_three_options(benchmark: BenchmarkFixture, machine: bool, limit: float) -> None:
    options, sky, times = given(OPTIONS, machine)
    found = benchmark.pedantic(years, args=(options, sky, times), rounds=5, warmup_rounds=1)
    assert len(found) == OPTIONS
    assert benchmark.stats is not None
    assert benchmark.stats.stats.median < limit


def test_room_of_the_year() -> None:
    options, sky, times = given(OPTIONS, False)
    tracemalloc.start()
    years(options, sky, times)
    _, peak = tracemalloc.get_traced_memory()
    tracemalloc.stop()
    assert peak < ROOM


@pytest.mark.parametrize(
    ("small", "large"),
    [((1, 50, 1), (3, 50, 1)), ((3, 25, 1), (3, 75, 1)), ((3, 25, 1), (3, 25, 3))],
    ids=["options", "years", "legs"],
)
def test_time_grows_no_faster_than_options_years_and_legs(
    small: tuple[int, int, int], large: tuple[int, int, int]
) -> None:
    """Three times as much of any takes no more than three times as long, and a fifth."""

    def spent(size: tuple[int, int, int]) -> float:
        options, sky, times = given(size[0], False, *size[1:])
        best = float("inf")
        for _ in range(3):
            start = time.process_time()
            years(options, sky, times)
            best = min(best, time.process_time() - start)
        return best

    assert spent(large) <= 3.0 * 1.2 * spent(small)
