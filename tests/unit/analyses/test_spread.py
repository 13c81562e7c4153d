"""Reading a spread must leave the draws as they were."""

from __future__ import annotations

import numpy as np

from generator.analyses.spread import spread


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
