"""How long does each stage of a report take? Run on a quiet machine: pytest tests/bench."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from time import process_time
from typing import Any

import numpy as np
import pytest
import yaml
from pytest_benchmark.fixture import BenchmarkFixture

from generator.analyses.handling.cruising_range import cruising_range
from generator.analyses.money.cost import Cost, cost
from generator.analyses.money.cost_ledger import ledger
from generator.analyses.motion.demand import Scale, Weather
from generator.analyses.motion.hull import vessel
from generator.analyses.motion.key_figures import key_figures
from generator.analyses.motion.plant import store
from generator.analyses.motion.power import at_points, power
from generator.analyses.motion.trial import TrialResult, read_trial
from generator.analyses.store.ageing import ageing
from generator.analyses.store.bank import bank_result
from generator.analyses.store.outfit import Outfit
from generator.analyses.store.reserve import reserve
from generator.analyses.use.legs import passages
from generator.analyses.weight.weight import weigh
from generator.answer.desk import Desk
from generator.answer.staircase import staircase
from generator.case.case import Case
from generator.case.open import read_case
from generator.cli import DRAWS
from generator.draws import drawn, make_draws
from generator.report.pdf import make_pdf
from generator.report.render import Pages, make_pages
from generator.report.results_file import build
from generator.sensitivity import tornadoes
from generator.study import run, stand
from tests.bench.floor import CASE

TWO_MOTORS = CASE.with_name("ketch_34_two_motors.yaml")
TRIAL_LIMIT = 0.1  # s
SPEEDS = 60
MAP_LIMIT = 0.6  # s, one option with its base look, at 100 draws
ANALYSES_LIMIT = 0.3  # s, two options with all draws in a warm process


@pytest.fixture(scope="module")
def two_options(tmp_path_factory: pytest.TempPathFactory) -> Case:
    """The demo of two motors with nothing else, as a case of its own."""
    content = yaml.safe_load(TWO_MOTORS.read_text(encoding="utf-8"))
    content["options"] = content["options"][-2:]
    content["study"]["date"] = str(content["study"]["date"])
    path = tmp_path_factory.mktemp("case") / "two_motors.yaml"
    path.write_text(yaml.safe_dump(content, sort_keys=False, allow_unicode=True), encoding="utf-8")
    return read_case(path)


@pytest.fixture(scope="module")
def results() -> dict[str, Any]:
    case = read_case(CASE)
    return build(case, run(case, make_draws(case, DRAWS)))


@pytest.fixture(scope="module")
def pages(results: dict[str, Any]) -> Pages:
    return make_pages(results)


def test_load_case(benchmark: BenchmarkFixture) -> None:
    case = benchmark.pedantic(read_case, (CASE,), rounds=5, warmup_rounds=1)
    assert case.options


def test_analyses_of_two_options_with_all_draws(
    benchmark: BenchmarkFixture, two_options: Case
) -> None:
    def analyse() -> Any:
        return run(two_options, make_draws(two_options, DRAWS))

    study = benchmark.pedantic(analyse, rounds=5, warmup_rounds=1)
    assert len(study.options) == 2
    assert benchmark.stats is not None
    assert benchmark.stats.stats.median < ANALYSES_LIMIT


def path_of_an_option(case: Case, place: int, trial: TrialResult) -> Cost:
    """Weight, hull and power, bank, legs, money: the questions that have no budget of their own."""
    option, scale = case.options[place], trial.scale
    weight = weigh(case, option)
    hull = vessel(case.boat, case.waters, weight.net, case.propeller)
    aged = ageing(case, option, hull, scale)
    held = store(case, option, None if aged is None else (aged.new, aged.aged, aged.aged))
    found = power(case, option, hull, scale, held.aged)
    kept = reserve(case, option, found, scale, held)
    outfit = Outfit(case, option, scale, found, held, kept)
    legs = passages(outfit)
    key_figures(case, option, found, legs)
    cruising_range(outfit)
    bank_result(outfit, weight, aged)
    return cost(case, option, legs, ledger(case, option))


def test_path_of_two_options_without_wind_ladder_and_screw(
    benchmark: BenchmarkFixture, two_options: Case
) -> None:
    """What the limit was set for; ladder, docking, match, stream and sailing have come since."""

    def analyse() -> list[Cost]:
        case = drawn(two_options, make_draws(two_options, DRAWS))
        trial = read_trial(case, vessel(case.boat, case.waters, 0.0, case.propeller))
        return [path_of_an_option(case, place, trial) for place in range(2)]

    costs = benchmark.pedantic(analyse, rounds=5, warmup_rounds=1)
    assert len(costs) == 2
    assert benchmark.stats is not None
    assert benchmark.stats.stats.median < ANALYSES_LIMIT


def test_results_file(benchmark: BenchmarkFixture) -> None:
    case = read_case(CASE)
    study = run(case, make_draws(case, DRAWS))
    benchmark.pedantic(build, (case, study), rounds=5, warmup_rounds=1)


def test_charts_and_html(benchmark: BenchmarkFixture, results: dict[str, Any]) -> None:
    made = benchmark.pedantic(make_pages, (results,), rounds=3, warmup_rounds=1)
    assert made.charts


def test_pdf(benchmark: BenchmarkFixture, pages: Pages) -> None:
    made = benchmark.pedantic(make_pdf, (pages.html_print, pages.charts), rounds=3, warmup_rounds=1)
    assert made.bytes.startswith(b"%PDF")


def test_hull_propeller_motor_and_range_of_two_options(
    benchmark: BenchmarkFixture, two_options: Case
) -> None:
    """All draws at 60 speeds, both options: from the hull to the range."""
    case = drawn(two_options, make_draws(two_options, DRAWS))
    speed = np.linspace(1.0, 6.5, SPEEDS) * 1852.0 / 3600.0
    hull = vessel(case.boat, case.waters, 0.0, case.propeller)
    studied = [(option, power(case, option, hull, Scale())) for option in case.options]

    def chain() -> list[Any]:
        found = []
        for option, known in studied:
            hull = vessel(case.boat, case.waters, 0.0, case.propeller)
            curve = at_points(
                case, option, replace(known, vessel=hull), Scale(), speed, Weather(0.0, 1.0)
            )
            aged = ageing(case, option, hull, Scale())
            assert aged is not None
            held = store(case, option, (aged.new, aged.aged, aged.aged))
            found.append(np.asarray(held.usable) / curve.output.drain * speed)
        return found

    ranges = benchmark.pedantic(chain, rounds=5, warmup_rounds=1)
    assert all(item.shape == (DRAWS + 1, SPEEDS) for item in ranges)
    assert benchmark.stats is not None
    assert benchmark.stats.stats.median < ANALYSES_LIMIT


def test_trial_fit_with_all_draws(benchmark: BenchmarkFixture, two_options: Case) -> None:
    case = drawn(two_options, make_draws(two_options, DRAWS))
    hull = vessel(case.boat, case.waters, 0.0, case.propeller)
    found = benchmark.pedantic(read_trial, (case, hull), rounds=5, warmup_rounds=1)
    assert found.used >= 2
    assert benchmark.stats is not None
    assert benchmark.stats.stats.median < TRIAL_LIMIT


def test_what_is_worth_measuring(benchmark: BenchmarkFixture, two_options: Case) -> None:
    study = run(two_options, make_draws(two_options, DRAWS))
    found = benchmark.pedantic(tornadoes, (two_options, study), rounds=5, warmup_rounds=1)
    assert found


@pytest.mark.benchmark(timer=process_time)
@pytest.mark.parametrize(("path", "place"), [(CASE, 2), (TWO_MOTORS, 3)])
def test_map_of_motor_against_bank(benchmark: BenchmarkFixture, path: Path, place: int) -> None:
    """The sloop is the dear one: every motor of its map is strong enough and asks all rows."""
    case = read_case(path)
    desk = Desk(stand(case, make_draws(case, 100)), {}, 100)
    found = benchmark.pedantic(staircase, (desk, place), rounds=5, warmup_rounds=1)
    assert found.cells
    assert benchmark.stats is not None
    assert benchmark.stats.stats.median < MAP_LIMIT  # of the processor's time
