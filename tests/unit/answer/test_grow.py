"""Is a larger motor that another option of the case has, told and priced as that one?"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from pathlib import Path

import numpy as np
import pytest

from generator.analyses.findings import Findings
from generator.answer.grow import matched_motor, motor_offers
from generator.case.open import read_case
from generator.report.numbers import Display
from generator.report.tree import Telling, tree
from tests.alone import alone

CASE = Path(__file__).parents[3] / "cases" / "ketch_34_two_motors.yaml"
SMALL, LARGE = 2, 3  # places of the two motors in the case
SAID = Telling(Display("metric", "EUR"))


@lru_cache(maxsize=1)
def smaller() -> Findings:
    """The smaller motor, beside the whole case."""
    case = read_case(CASE)
    return replace(alone(case, SMALL, 0).findings, case=case)


def power(place: int) -> float:
    motor = smaller().case.options[place].motor
    assert motor is not None
    return float(np.ravel(motor.continuous_power)[0])


def paid(place: int) -> float:
    lines = smaller().case.options[place].costs
    return sum(float(np.ravel(row.amount)[0]) for row in lines if row.part == "motor")


def test_a_motor_of_another_option_is_named_and_priced_as_that_one() -> None:
    assert power(LARGE) > power(SMALL)
    offers = motor_offers(smaller(), SMALL)
    (told,) = (each.told for each in offers if each.told.power == pytest.approx(power(LARGE)))
    assert told.names == (smaller().case.options[LARGE].name,)
    assert told.price == pytest.approx(paid(LARGE) - paid(SMALL), rel=0.01)
    words = tree(told, "here", SAID)["words"]
    assert f"as in “{told.names[0]}”" in words


def test_a_motor_that_no_option_has_is_priced_at_the_rate_of_its_own_line() -> None:
    motor = smaller().option.motor
    assert motor is not None
    told = matched_motor(smaller(), SMALL, motor, 1.4 * power(SMALL)).told
    assert told.names == ()
    assert told.price == pytest.approx(0.4 * paid(SMALL), rel=0.01)
    assert "as in" not in tree(told, "here", SAID)["words"]
