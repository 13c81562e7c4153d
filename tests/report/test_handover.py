"""Is what is foretold at handover what the study computed, row by row?"""

from __future__ import annotations

import re
from typing import Any

import numpy as np
import pytest

from generator.case.open import read_case
from generator.draws import make_draws
from generator.report.page import Page
from generator.report.sections import handover
from generator.study import run
from tests.report.conftest import CASES, FEW, studied

BOATS = ("sloop_30_weekend", "ketch_34_two_motors", "every_key")
CELL = re.compile(r'<data data-key="(?P<key>[^"]*)"[^>]* value="(?P<value>[^"]*)"')
SPEED = re.compile(r"Battery power at (\d+) kn")


def rows_of(name: str) -> list[tuple[str, list[dict[str, str]]]]:
    """Each test and the numbers beside it, motor by motor."""
    part = handover.part(Page(studied(name)))
    assert part is not None
    (table,) = part.tables
    return [
        (str(row.head.striptags()), [m.groupdict() for c in row.cells if (m := CELL.search(c))])
        for row in table.rows
    ]


@pytest.mark.parametrize("name", BOATS)
def test_power_foretold_is_that_of_the_curve_at_the_speed_of_the_test(name: str) -> None:
    """The curve is taken from the analysis itself, between whose speeds none of these lies."""
    case = read_case(CASES / f"{name}.yaml")
    study = run(case, make_draws(case, FEW))
    motors = [item.findings for item in study.options if item.findings.bank is not None]
    found = [(int(m[1]), cells) for test, cells in rows_of(name) if (m := SPEED.search(test))]
    assert [speed for speed, _ in found] == [3, 4, 5]
    for speed, cells in found:
        assert len(cells) == len(motors)
        for own, cell in zip(motors, cells, strict=True):
            drain = np.atleast_2d(own.power.curves["calm"].output.drain)[1:]
            middle = np.median(drain, axis=0)
            expected = np.interp(speed * 1852.0 / 3600.0, own.power.speed, middle) / 1e3
            assert float(cell["value"]) == pytest.approx(expected, rel=1e-6), (speed, cell["key"])


@pytest.mark.parametrize("name", BOATS)
def test_every_row_of_the_sheet_names_a_number_of_its_motor(name: str) -> None:
    """A row with a key has a number for each motor, and it is the one at that key."""
    results = studied(name)
    page = Page(results)
    keyed = [row for row in results["handover"] if row["key"]]
    shown = [cells for test, cells in rows_of(name)
             if any(row["test"] == test for row in keyed)]  # fmt: skip
    assert len(shown) == len(keyed) > 5
    for row, cells in zip(keyed, shown, strict=True):
        assert [cell["key"].split(".")[1] for cell in cells] == [
            motor.split(".")[1] for motor in page.motors
        ]
        for cell in cells:
            value: Any = page.value(cell["key"])
            assert value is None or float(cell["value"]) == pytest.approx(value)
            last = row["key"].rpartition(".")[2]
            assert cell["key"].endswith(last)
