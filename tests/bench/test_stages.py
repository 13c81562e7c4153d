"""How long does each stage of a report take? Run on a quiet machine: pytest tests/bench."""

from __future__ import annotations

from typing import Any

import pytest
import yaml
from pytest_benchmark.fixture import BenchmarkFixture

from generator.case.case import Case
from generator.case.open import read_case
from generator.cli import DRAWS
from generator.draws import make_draws
from generator.report.pdf import make_pdf
from generator.report.render import Pages, make_pages
from generator.report.results_file import build
from generator.study import run
from tests.bench.floor import CASE

TWO_MOTORS = CASE.with_name("ketch_34_two_motors.yaml")
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
