"""Does a light wind weigh as much on the readings of owners as is said of it?

Source: practice, readings of owners; the table is printed by
``python -m tests.published.light_air``.
"""

from __future__ import annotations

import numpy as np

from tests.published.light_air import WINDS, ahead, both_ways, in_light_air
from tests.published.measured_boats import Foretold


def added(rows: list[list[Foretold]], place: int) -> float:
    return float(np.median([row[place].middle / row[0].middle - 1.0 for row in rows]))


def test_light_air_is_larger_than_what_the_calm_curve_lacks() -> None:
    """Why readings without a wind cannot judge the calm curve to a fifth.

    Median over the readings: 5 kn ahead add about two fifths, the mean of two passes about half of
    that; 8 kn add about twice as much.
    """
    into, mean = list(in_light_air(ahead)), list(in_light_air(both_ways))
    assert WINDS == (0.0, 5.0, 8.0)
    assert 0.30 < added(into, 1) < 0.60 < added(into, 2)
    assert 0.10 < added(mean, 1) < added(mean, 2) < added(into, 2)


def test_without_wind_it_is_the_calm_curve_both_ways() -> None:
    into, mean = list(in_light_air(ahead, (0.0,))), list(in_light_air(both_ways, (0.0,)))
    for (one,), (two,) in zip(into, mean, strict=True):
        assert one.middle > 0.0
        assert abs(two.middle / one.middle - 1.0) < 1e-9
