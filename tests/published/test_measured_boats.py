"""How do the predictions for measured boats lie, and do most readings fall in their bands?

Source: practice, readings of owners; the table is printed by
``python -m tests.published.measured_boats``.
"""

from __future__ import annotations

import hashlib
from pathlib import Path

import pytest

from tests.published.measured_boats import (
    SETS,
    hit_rate,
    median_error,
    median_width,
    predictions,
    readings,
)

HERE = Path(__file__).parent
# Of the inputs as they were written down before the first prediction.
INPUTS = {
    "measured_boats": "d4d46027c973afa1a33201b33eca197ebae0bbd28fc4a9a5d7bf6aeab411b97b",
    "measured_boats_more": "566202c8b7f53cac2c6550c806b5268beb09736ca34c90e3e8e78619624960e0",
}
MOST, WIDTH_BEFORE, ERROR = 0.80, 1.814, 0.20  # width: before the calm curve was mended
MISSED = (
    "Four of the ten readings lie above the bands: 6 of 10 inside, median width 1.80, median error "
    "0.25. Before stern gear and the long keel's waves 4 of 10 and 0.28; with steering and chop on "
    "the calm curve, slime on every bottom and the standing losses of 15 kW on every drive 8 of 10 "
    "and 0.12. The owners tell no wind, and 5 kn ahead add 29 to 63 % to a reading "
    "(tests.published.light_air): with it 9 of 10 lie inside. No reading says so, none is moved, "
    "and no default is fitted to them."
)


@pytest.mark.parametrize("name", SETS)
def test_inputs_are_those_written_down_before_the_first_prediction(name: str) -> None:
    content = (HERE / f"{name}_inputs.csv").read_bytes()
    assert hashlib.sha256(content).hexdigest() == INPUTS[name]


@pytest.mark.xfail(reason=MISSED, strict=True)
def test_most_readings_lie_in_a_band_no_wider_than_before() -> None:
    rows = predictions()
    assert median_width(rows) <= WIDTH_BEFORE
    assert hit_rate(rows) >= MOST
    assert median_error(rows) <= ERROR


def test_every_reading_has_a_prediction_with_a_band() -> None:
    rows = predictions()
    assert [(row.boat, row.knots) for row in rows] == [row[:2] for row in readings()]
    assert all(0.0 < row.low < row.middle < row.high for row in rows)


def test_band_is_no_wider_than_a_factor_of_two() -> None:
    """Bound set before the first prediction."""
    assert median_width(predictions()) <= 2.0
