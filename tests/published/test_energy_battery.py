"""Peukert's law against worked values in print."""

from __future__ import annotations

import pytest

from generator.physics.energy.battery import peukert_capacity, peukert_time

HOUR = 3600.0  # s


@pytest.mark.parametrize(
    ("ampere_hours", "current", "exponent", "hours", "digits"),
    [
        (100, 5, 1.2, 20.0, 5e-4),  # by definition of the rating
        (100, 10, 1.2, 8.706, 5e-4),
        (400, 80, 1.25, 3.536, 5e-4),
        (400, 80, 1.15, 4.061, 5e-4),
        (400, 80, 1.05, 4.665, 5e-4),
    ],
)
def test_peukert_time_in_rated_form(
    ampere_hours: float, current: float, exponent: float, hours: float, digits: float
) -> None:
    """Source: peukert, rated form, worked values of a capacity rated over 20 h.

    Tolerance half a unit of the last printed digit.
    """
    found = peukert_time(20 * HOUR, ampere_hours * HOUR, current, exponent) / HOUR
    assert float(found) == pytest.approx(hours, abs=digits)


@pytest.mark.parametrize(
    ("ampere_hours", "current", "exponent", "printed", "digits"),
    [
        (400, 80, 1.25, 283, 0.5),
        (400, 80, 1.15, 325, 0.5),
        (400, 80, 1.05, 373, 0.5),
        (100, 10, 1.1, 93.3, 0.05),
        (100, 20, 1.1, 87.1, 0.05),
        (100, 50, 1.1, 79.4, 0.05),
        (100, 100, 1.1, 74.1, 0.05),
    ],
)
def test_peukert_capacity_in_rated_form(
    ampere_hours: float, current: float, exponent: float, printed: float, digits: float
) -> None:
    """Source: peukert, rated form, worked values of a capacity rated over 20 h.

    Tolerance half a unit of the last printed digit.
    """
    found = peukert_capacity(20 * HOUR, ampere_hours * HOUR, current, exponent) / HOUR
    assert float(found) == pytest.approx(printed, abs=digits)


def test_peukert_time_differs_from_the_form_at_one_ampere() -> None:
    """Source: peukert_example, "100 Ah, k 1.2, 5 A: 14.5 hours".

    That page puts 100 into t = Cp / I^k, as if it were measured at 1 A (rated over 100 h).
    In our form that is a rated time of 100 h: 14.496 h. A 100 Ah battery rated over 20 h gives
    20 h at 5 A by definition. Tolerance half a unit of the printed digit, then of the third.
    """
    at_one_ampere = float(peukert_time(100 * HOUR, 100 * HOUR, 5.0, 1.2)) / HOUR
    rated = float(peukert_time(20 * HOUR, 100 * HOUR, 5.0, 1.2)) / HOUR
    assert at_one_ampere == pytest.approx(14.5, abs=0.05)
    assert at_one_ampere == pytest.approx(14.496, abs=5e-4)
    assert rated == pytest.approx(20.0, abs=1e-9)
