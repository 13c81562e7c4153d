"""Money over years against a textbook, an interest table and a library of its own."""

from __future__ import annotations

import numpy as np
import numpy_financial
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.money.present_value import (
    annuity,
    discounted_payback,
    present_value,
    simple_payback,
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


@given(st.floats(1e3, 1e5), st.floats(1.2, 50.0), RATES)
def test_discounted_payback_agrees_with_the_library(
    first: float, multiple: float, rate: float
) -> None:
    """Source: numpy_financial, nper of equal savings; tolerance for two orders of logarithms."""
    saving = multiple * first * rate  # more than the interest, so that it is paid back
    theirs = float(numpy_financial.nper(rate, saving, -first))
    assert float(discounted_payback(first, saving, rate)) == pytest.approx(theirs, rel=1e-6)


@given(st.floats(1e3, 1e5), st.floats(10.0, 1e4))
def test_simple_payback_agrees_with_the_library(first: float, saving: float) -> None:
    """Source: numpy_financial, nper without interest, where version 1.0.0 loses the sign."""
    theirs = abs(float(numpy_financial.nper(0.0, saving, -first)))
    assert float(simple_payback(first, saving)) == pytest.approx(theirs, rel=EXACT)
