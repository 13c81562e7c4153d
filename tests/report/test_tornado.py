"""What moves the verdict, drawn also where the criterion has no value."""

from __future__ import annotations

import copy
from typing import Any

import pytest

from generator.report.page import MotorPage
from generator.report.sections import certainty

# which end has no value, and what the chart then says once
ABSENT = {
    (): "",
    ("at_high",): ">high: no value<",
    ("at_low",): ">low: no value<",
    ("at_low", "at_high"): ">low and high: no value<",
}


@pytest.mark.parametrize("absent", ABSENT)
def test_tornado_says_where_a_value_is_absent(
    absent: tuple[str, ...], results: dict[str, Any]
) -> None:
    page = MotorPage(copy.deepcopy(results))
    motor = certainty.in_order(page)[0]
    rows = page.value(f"{motor}.tornado.rows")
    for name in absent:
        rows[0][name] = None
    part = certainty.measuring(page)
    assert part is not None
    svg = part.figures[0].draw().svg
    assert svg.count("no value") == svg.count(ABSENT[absent] or "no value")
    assert svg.count("no value") == bool(absent)
    assert svg.count("number:options.") == len(rows) * 2 - len(absent)
