"""Overload times against worked examples, and the duty types in words."""

from __future__ import annotations

import math

import pytest

from generator.physics.drive.thermal import derating, overload_time, time_constant

MINUTE = 60.0


@pytest.mark.parametrize(
    ("load", "before", "minutes"),
    [
        (1.3, 0.0, 26.9), (1.5, 0.0, 17.6), (2.0, 0.0, 8.6),
        (1.3, 0.9, 7.3), (1.5, 0.9, 4.2), (2.0, 0.9, 1.8),
        (1.3, 1.0, 0.0), (2.0, 1.0, 0.0),
    ],
)  # fmt: skip
def test_first_order_overload_cold_and_warm(load: float, before: float, minutes: float) -> None:
    """Source: practice, t = tau ln((k2 - k02) / (k2 - 1)) with tau 30 min, worked examples.

    Half a unit of the printed digit.
    """
    found = float(overload_time(30 * MINUTE, load, before)) / MINUTE
    assert found == pytest.approx(minutes, abs=0.0501)


def test_duty_types_in_words() -> None:
    """Source: iec60034, duty types S1, S2 and S6.

    S1 runs to thermal equilibrium, S2 a stated time from cold and then full cooling, S6 runs on
    with intermittent load, so from warm.
    """
    assert math.isinf(float(overload_time(30 * MINUTE, 1.0, 0.0)))  # S1
    hour = float(overload_time(30 * MINUTE, 1.2, 0.0))  # S2: a time that can be stated
    assert 0.0 < hour < math.inf
    assert float(time_constant(hour, 1.2)) == pytest.approx(30 * MINUTE)
    assert float(overload_time(30 * MINUTE, 1.2, 0.7)) < hour  # S6


def test_ten_per_cent_for_ten_kelvin() -> None:
    """Source: practice, derating of 1 % per kelvin above rated ambient."""
    assert float(derating(50.0, 40.0, 0.01)) == pytest.approx(0.90)
    assert float(derating(30.0, 40.0, 0.01)) == 1.0
