"""What moves the verdict, drawn and told also where the criterion has no value."""

from __future__ import annotations

import copy
from typing import Any

import pytest

from generator.report.page import MotorPage
from generator.report.sections import tornado

# which of best, low and high has no value; what the chart then says and how often
ABSENT = {
    (): {},
    ("at_high",): {"high: no value": 1},
    ("at_low",): {"low: no value": 1},
    ("best",): {},
    ("best", "at_low"): {"low: no value": 1},
    ("best", "at_high"): {"high: no value": 1},
    ("at_low", "at_high"): {"low: no value": 1, "high: no value": 1},
}


@pytest.mark.parametrize("absent", ABSENT)
def test_tornado_is_drawn_where_a_value_is_absent(
    absent: tuple[str, ...], results: dict[str, Any]
) -> None:
    page = MotorPage(copy.deepcopy(results))
    motor = page.motors[0]
    told = page.value(f"{motor}.tornado")
    for name in absent:
        (told if name == "best" else told["rows"][0])[name] = None
    part = tornado.part(page)
    assert part is not None
    figure = part.figures[0]
    svg = figure.draw().svg
    for words in ("low: no value", "high: no value"):
        assert svg.count(words) == ABSENT[absent].get(words, 0)
    ends = len(told["rows"]) * 2 - len(set(absent) - {"best"})
    assert svg.count("number:options.") == ends
    assert ("has no value at the best estimate" in figure.finding) == ("best" in absent)
    assert ("No value: " in figure.note) == bool(absent)
    first = part.tables[0].rows[0]
    assert ("no value" in "".join(first.cells)) == bool(set(absent) - {"best"})
