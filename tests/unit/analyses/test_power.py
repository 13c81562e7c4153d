"""Top speeds, percentiles and the trial, against values worked by hand."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from generator.analyses.motion.power import at_speed, speed_at_limit
from generator.analyses.percentiles import side_by_side, spread
from generator.case.open import read_case
from generator.draws import make_draws
from generator.study import stand
from tests.alone import alone, case_of
from tests.unit.case.faulty import changed

SLOOP = Path(__file__).parents[3] / "cases" / "sloop_30_weekend.yaml"


def test_speed_at_limit_interpolates_between_the_tabulated_speeds() -> None:
    speed = np.array([1.0, 2.0, 3.0])
    load = np.array([[0.2, 0.8, 1.2], [1.1, 1.5, 2.0], [0.1, 0.2, 0.3], [0.5, 0.9, np.nan]])
    usable = np.isfinite(load)
    found = speed_at_limit(load, usable, speed)[:, 0]
    # 2 + (1 - 0.8)/(1.2 - 0.8) = 2.5; too much at the slowest: 0; power in hand: the last; an end
    np.testing.assert_allclose(found, [2.5, 0.0, 3.0, 2.0])


def test_at_speed_is_log_linear() -> None:
    values = np.array([[1.0, 4.0, 16.0]])
    speed = np.array([1.0, 2.0, 3.0])
    assert at_speed(values, speed, 2.5)[0, 0] == pytest.approx(8.0)  # sqrt(4 x 16)
    assert np.isnan(at_speed(values, speed, 3.5)[0, 0])


def test_spread_is_numpys_percentile_of_all_rows_but_the_first() -> None:
    values = np.random.default_rng(1).normal(size=(501, 7))
    told = spread(values)
    wanted = np.percentile(values[1:], [10, 50, 90], axis=0)
    np.testing.assert_allclose([told.low, told.middle, told.high], wanted, rtol=1e-12)


def test_spread_leaves_the_draws_in_their_order() -> None:
    values = np.random.default_rng(2).normal(size=(101, 1))
    before = values.copy()
    spread(values)
    np.testing.assert_array_equal(values, before)


def test_side_by_side_takes_drawn_and_plain_numbers() -> None:
    columns = side_by_side(2.0, np.array([[1.0], [3.0]]))
    np.testing.assert_array_equal(columns, [[2.0, 1.0], [2.0, 3.0]])


def test_trial_narrows_the_curve_to_what_the_two_doubts_leave() -> None:
    """1/sqrt(1/0.25^2 + 1/0.15^2) = 0.129, with what speed and mass add: 10 to 16 per cent."""
    case = read_case(SLOOP)
    kept = tuple(item for item in case.assumptions if not item.path.startswith("trial."))
    without = replace(case, trial=None, assumptions=kept)
    doubt = []
    for each in (case, without):
        power = alone(each, 0, 800).findings.key.cruise_shaft_power
        doubt.append(float(np.log(power[1:]).std()))
    assert 0.10 <= doubt[0] <= 0.16
    assert 0.22 <= doubt[1] <= 0.32  # a hull guess: 25 to 30 per cent by common practice


def test_one_way_row_is_refused_and_two_way_rows_are_used() -> None:
    row = "speed_out: 3.6 kn, speed_back: 3.3 kn"
    case = case_of(changed((row, "speed_out: 3.6 kn"), text=SLOOP.read_text(encoding="utf-8")))
    trial = stand(case, make_draws(case, 0)).trial
    assert [point.used for point in trial.points] == [False, True, True, True, True, True]
    assert "one course only" in trial.points[0].why
