"""Money over years against a textbook, an interest table and a library of its own."""

from __future__ import annotations

import numpy as np
import numpy_financial
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.money.present_value import (
    annuity,
    cumulative,
    discounted,
    present_value,
    recovery,
)

RATES = st.floats(0.001, 0.15)
FLOWS = st.lists(st.floats(-1e5, 1e5), min_size=2, max_size=31)
EXACT = 1e-9  # two orders of summing the same numbers


def test_present_value_of_the_textbook_example() -> None:
    """Source: gitman2003, page 346, example carried in the manual of numpy.

    Tolerance 1e-12: printed in full.
    """
    flows = np.array([-100.0, 39.0, 59.0, 55.0, 20.0])
    assert float(present_value(flows, 0.281)) == pytest.approx(-0.0084785916384548798, abs=1e-12)


def test_annuity_is_the_capital_recovery_of_interest_tables() -> None:
    """Source: gitman2003, annuity; interest tables, 6 per cent over 10 years 0.135868.

    Tolerance half a unit of the last printed digit.
    """
    assert float(annuity(1.0, 0.06, 10)) == pytest.approx(0.135868, abs=5e-7)


@given(FLOWS, RATES)
def test_present_value_agrees_with_the_library(flows: list[float], rate: float) -> None:
    """Source: numpy_financial, npv: its first value is not discounted either."""
    theirs = numpy_financial.npv(rate, flows)
    scale = 1.0 + float(np.abs(flows).sum())
    assert float(present_value(np.array(flows), rate)) == pytest.approx(theirs, abs=EXACT * scale)


@given(st.floats(1.0, 1e6), RATES, st.integers(1, 40))
def test_annuity_agrees_with_the_library(principal: float, rate: float, years: int) -> None:
    """Source: numpy_financial, pmt: a payment is negative there."""
    theirs = -numpy_financial.pmt(rate, years, principal)
    assert float(annuity(principal, rate, years)) == pytest.approx(theirs, rel=EXACT)


@given(st.floats(1.0, 1e6), RATES, st.integers(1, 40))
def test_annuity_is_worth_its_principal(principal: float, rate: float, years: int) -> None:
    """Source: gitman2003, annuity and net present value cancel."""
    payment = float(annuity(principal, rate, years))
    flows = np.array([-principal] + [payment] * years)
    assert float(present_value(flows, rate)) == pytest.approx(0.0, abs=EXACT * principal)


def test_internal_rate_of_the_textbook_example() -> None:
    """Source: gitman2003, page 346, in the manual of numpy: 28.095 per cent.

    Tolerance half a unit of the last digit printed there (0.28095).
    """
    flows = np.array([-100.0, 39.0, 59.0, 55.0, 20.0])
    assert numpy_financial.irr(flows) == pytest.approx(0.28095, abs=5e-6)
    assert float(present_value(flows, numpy_financial.irr(flows))) == pytest.approx(0.0, abs=1e-9)


def test_annuity_to_the_cent() -> None:
    """Source: numpy_financial, manual of pmt: 200,000 at 7.5 per cent over 15 years, monthly.

    The manual prints -1854.0247200054619; a cent is the least that is paid.
    """
    assert round(float(annuity(200_000.0, 0.075 / 12, 15 * 12)), 2) == 1854.02


def test_present_value_to_the_cent() -> None:
    """Source: numpy_financial, manual of npv: 3065.22 for these flows at 8 per cent.

    The manual prints 3065.22267; a cent is the least that is paid.
    """
    flows = np.array([-40_000.0, 5_000.0, 8_000.0, 12_000.0, 30_000.0])
    assert round(float(present_value(flows, 0.08)), 2) == 3065.22


@given(FLOWS, RATES)
def test_years_of_draws_are_those_of_single_rows(flows: list[float], rate: float) -> None:
    """Source: numpy_financial, npv, row by row of a table of draws with a rate each."""
    table = np.array([flows, [2.0 * each for each in flows]])
    rates = np.array([[rate], [rate / 2.0]])
    theirs = [numpy_financial.npv(rates[row, 0], table[row]) for row in (0, 1)]
    scale = 1.0 + float(np.abs(table).sum())
    np.testing.assert_allclose(present_value(table, rates), theirs, atol=EXACT * scale)
    np.testing.assert_allclose(cumulative(table, rates)[:, -1], theirs, atol=EXACT * scale)


@given(st.floats(1e3, 1e5), st.floats(1.3, 20.0), RATES)
def test_recovery_of_equal_savings_is_within_the_year_of_the_library(
    first: float, multiple: float, rate: float
) -> None:
    """Source: numpy_financial, nper; within a year ours is straight, theirs is a power."""
    saving = multiple * first * rate
    theirs = float(numpy_financial.nper(rate, saving, -first))
    flows = np.array([-first] + [saving] * (int(theirs) + 2))
    ours = float(recovery(discounted(flows, rate)))
    assert np.floor(theirs) - 1e-6 <= ours <= np.ceil(theirs) + 1e-6
