"""Reading a spread must leave the draws as they were."""

from __future__ import annotations

import numpy as np
import pytest

from generator.analyses.percentiles import lacking_share, spread


def test_spread_leaves_the_draws_in_their_order() -> None:
    """One column is a view of itself turned over, which sorting in place would shuffle."""
    values = np.array([[5.0], [3.0], [9.0], [1.0], [7.0], [2.0]])
    before = values.copy()
    told = spread(values)
    np.testing.assert_array_equal(values, before)
    assert told.middle[0] == 3.0


def test_spread_of_values_without_end_stays_without_end() -> None:
    values = np.array([[1.0], [np.inf], [np.inf], [1.0], [2.0]])
    assert spread(values).high[0] == np.inf


def test_a_draw_without_a_value_lies_beyond_the_cautious_end() -> None:
    """Ten draws, three without a value: by hand the middle is the 5.5th of them in order."""
    draws = [np.nan, np.nan, np.nan, 10.0, 20.0, 30.0, 40.0, 50.0, 60.0, 70.0]
    values = np.array([[40.0], *([draw] for draw in draws)])
    high = spread(values, "high")  # 10 20 30 40 50 60 70 inf inf inf
    assert (high.middle[0], high.high[0]) == (55.0, np.inf)
    assert high.low[0] == pytest.approx(19.0)
    low = spread(values, "low")  # -inf -inf -inf 10 20 30 40 50 60 70
    assert (low.middle[0], low.low[0]) == (25.0, -np.inf)
    assert low.high[0] == pytest.approx(61.0)
    assert lacking_share(values) == pytest.approx(0.3)


def test_a_number_is_absent_where_too_many_draws_have_no_value() -> None:
    values = np.array([[1.0], [np.nan], [np.nan], [np.nan], [1.0], [1.0]])
    assert np.isnan([spread(values).low[0], spread(values).middle[0], spread(values).high[0]]).all()
    assert spread(values, most_lacking=0.6).low[0] == 1.0
    assert np.isnan(spread(np.array([[np.nan]])).middle[0])  # without draws: the best estimate


def test_nothing_lies_between_a_number_and_infinity() -> None:
    values = np.array([[0.0], [-np.inf], [5.0], [6.0]])
    assert spread(values).low[0] == -np.inf
