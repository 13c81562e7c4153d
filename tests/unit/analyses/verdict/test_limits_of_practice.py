"""Limits that pages name are those that analyses and criteria judge by."""

from __future__ import annotations

import pytest

from generator.analyses.handling import docking, headwind, stream
from generator.analyses.motion.power import KNOT
from generator.analyses.verdict.criteria.catalogue import criteria
from generator.analyses.verdict.limits_of_practice import LimitsOfPractice


def test_limits_are_the_rows_that_are_judged_by() -> None:
    """From the tables: 2, 3, 5, 2.5 and 1 kn; rows 24 and 9 pass at 1 length, 1.5 and 0.5 kn."""
    told, rows = LimitsOfPractice.told(), {row.id: row for row in criteria()}
    assert told.least_way == headwind.LEAST_WAY == pytest.approx(2.0 * KNOT)
    assert (told.stop_from, told.stop_from_more) == docking.STOPS
    assert pytest.approx((3.0 * KNOT, 5.0 * KNOT)) == docking.STOPS
    assert told.least_through == stream.LEAST_THROUGH == pytest.approx(2.5 * KNOT)
    assert told.least_over == stream.LEAST_OVER == pytest.approx(1.0 * KNOT)
    assert told.stop_lengths == rows[24].go == 1.0
    assert told.gate_go == rows[9].go * KNOT == pytest.approx(1.5 * KNOT)
    assert told.gate_tide == rows[9].conditional * KNOT == pytest.approx(0.5 * KNOT)
