"""The better of two motors is told only where nine draws of ten agree, whatever they share."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from generator.analyses.differences import Difference
from generator.analyses.findings import Findings
from generator.arrays import Array
from tests.unit.report.lacking import found, study

SHARED = np.concatenate(([50.0], np.arange(1.0, 101.0)))[:, np.newaxis]  # doubt that both have


def motor(place: int, gain: Array, cost: float = 0.0) -> Findings:
    own = found(place=place)
    top = replace(own.power.top, continuous=SHARED + gain, peak=SHARED)
    return replace(
        own, power=replace(own.power, top=top), cost=replace(own.cost, first=SHARED + cost)
    )


def judged(*options: Findings) -> dict[str, Difference]:
    return {row.id: row for row in Difference.all(options)}


@pytest.mark.parametrize(("agree", "better"), [(95, 3), (85, None), (15, None), (5, 2)])
def test_nine_draws_of_ten_agree_on_the_better(agree: int, better: int | None) -> None:
    """Faster by 0.1 in so many of a hundred draws, slower by it in the rest."""
    gain = np.where(np.arange(101) <= agree, 0.1, -0.1)[:, np.newaxis]
    row = judged(motor(2, np.zeros((101, 1))), motor(3, gain))["top_continuous"]
    assert row.better == better
    assert row.even is (better is None)


def test_less_money_and_more_speed_are_better() -> None:
    rows = judged(motor(2, np.zeros((101, 1)), cost=1.0), motor(3, np.zeros((101, 1))))
    assert rows["first"].better == 3
    assert rows["first"].money
    assert rows["top_peak"].even
    assert not rows["top_peak"].money


def test_one_motor_is_judged_against_nothing() -> None:
    diesel = study().options[0].findings
    assert Difference.all((diesel, motor(2, np.zeros((101, 1))))) == ()


def test_a_draw_without_a_value_speaks_for_neither() -> None:
    """Slower in eighty draws of a hundred and without a speed in the rest: not judged."""
    gain = np.where(np.arange(101) <= 80, -0.1, np.nan)[:, np.newaxis]
    zero = np.zeros((101, 1))
    assert judged(motor(2, zero), motor(3, gain))["top_continuous"].even
    assert judged(motor(2, gain), motor(3, zero))["top_continuous"].even


def test_a_lighter_change_is_better_and_ranges_are_judged() -> None:
    rows = judged(motor(2, np.zeros((101, 1))), motor(3, np.zeros((101, 1))))
    assert {"continuous", "made", "calm_range", "calm_aged", "usable", "net"} <= set(rows)
    assert rows["net"].even
