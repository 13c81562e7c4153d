"""A number typed a hundredfold or as a hundredth is asked about, but for a listed few.

A slip of the point or of the unit (pounds for tonnes, millimetres for metres) is the likeliest
fault of a case file. What may pass is listed here with its reason, and is no more than one
slip in twenty.
"""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

import pytest

from tests.hostile.slips import NUMBER, silent, slipped

CASES = Path(__file__).parents[2] / "cases"
DEMOS = sorted(path.stem for path in CASES.glob("*.yaml"))
MOST = 0.05

MUCH, LITTLE = 100.0, 0.01
POSITION = "another place on the globe, and no table of coasts is shipped to hold it against"
PLACE = "a height within the boat as well"
COLD = "water near freezing"
SUN = "a winter's sun in high latitudes"
MONEY = "such a payment is met in practice"
MASS = "of a part that has no word of its own: heavy or light ones are met"
EXPLAINED = {
    (LITTLE, "waters.latitude"): POSITION,
    (LITTLE, "waters.longitude"): POSITION,
    (MUCH, "waters.longitude"): POSITION,
    (LITTLE, "waters.coldest"): COLD,
    (LITTLE, "waters.sun"): SUN,
    (LITTLE, "options.supply.panels.heading"): "another heading of the panel",
    (LITTLE, "options.added.z"): PLACE,
    (MUCH, "options.added.z"): PLACE,
    (MUCH, "options.removed.z"): PLACE,
    (LITTLE, "options.added.mass"): MASS,
    (LITTLE, "options.removed.mass"): MASS,
    (MUCH, "options.removed.mass"): MASS,
    (LITTLE, "options.costs.amount"): MONEY,
}


@cache
def passed(name: str, factor: float) -> tuple[tuple[str, ...], int]:
    """Keys of the numbers of a demo whose slip nobody asks about, and how many there are."""
    found, count = silent(CASES / f"{name}.yaml", factor)
    return tuple(re.sub(r"\[[0-9]+\]", "", place) for place in found), count


@pytest.mark.parametrize("factor", [MUCH, LITTLE])
@pytest.mark.parametrize("name", DEMOS)
def test_slip_of_the_point_is_asked_about(name: str, factor: float) -> None:
    found, _ = passed(name, factor)
    assert [key for key in found if (factor, key) not in EXPLAINED] == []


def test_slips_that_pass_are_few_in_all_demos_together() -> None:
    all_of_them = [passed(name, factor) for name in DEMOS for factor in (MUCH, LITTLE)]
    count = sum(numbers for _, numbers in all_of_them)
    assert count > 1000
    assert sum(len(found) for found, _ in all_of_them) <= MOST * count


def test_every_explained_slip_does_pass_somewhere() -> None:
    passing = {
        (factor, key)
        for name in DEMOS
        for factor in (MUCH, LITTLE)
        for key in passed(name, factor)[0]
    }
    assert set(EXPLAINED) - passing == set()


def test_slipped_multiplies_the_number_and_keeps_the_unit() -> None:
    assert slipped("-3.5 %", 100.0) == "-350 %"
    assert slipped("16 in", 0.01) == "0.16 in"
    assert NUMBER.fullmatch("2026-05-17") is None
