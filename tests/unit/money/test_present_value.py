"""Payments over years worked by hand."""

from __future__ import annotations

import numpy as np
import pytest

from generator.money.present_value import (
    annuity,
    cumulative,
    discounted,
    present_value,
    recovery,
)


def test_the_first_payment_is_not_discounted() -> None:
    # 1, 1 / 1.1, 1 / 1.21
    np.testing.assert_allclose(discounted(np.ones(3), 0.10), [1.0, 0.909090909, 0.826446281])


def test_each_draw_has_its_rate() -> None:
    found = discounted(np.ones((3, 11)), np.array([[0.02], [0.03], [0.05]]))
    np.testing.assert_allclose(found[:, 10], [1.02**-10, 1.03**-10, 1.05**-10])


def test_present_value_leaves_the_first_payment_whole() -> None:
    # -1000 + 600 / 1.1 + 600 / 1.21 = 41.3223
    flows = np.array([-1000.0, 600.0, 600.0])
    assert float(present_value(flows, 0.10)) == pytest.approx(41.3223, abs=1e-4)
    assert float(present_value(flows, 0.0)) == pytest.approx(200.0)


def test_present_value_drops_the_years() -> None:
    flows = np.ones((4, 11))
    assert present_value(flows, np.full((4, 1), 0.03)).shape == (4,)


def test_cumulative_ends_at_the_present_value() -> None:
    flows = np.array([-1000.0, 600.0, 600.0])
    steps = cumulative(flows, 0.10)
    # -1000, then + 545.4545, then + 495.8678
    np.testing.assert_allclose(steps, [-1000.0, -454.5455, 41.3223], atol=1e-4)
    np.testing.assert_allclose(discounted(flows, 0.10), [-1000.0, 545.4545, 495.8678], atol=1e-4)


def test_annuity_without_interest_is_an_equal_share() -> None:
    assert float(annuity(1000.0, 0.0, 10)) == pytest.approx(100.0)
    assert float(annuity(1000.0, 1e-12, 10)) == pytest.approx(100.0, rel=1e-9)


def test_annuity_of_one_year() -> None:
    # 1000 x 1.05
    assert float(annuity(1000.0, 0.05, 1)) == pytest.approx(1050.0)


def test_payback_of_equal_savings() -> None:
    assert float(recovery(np.array([-1000.0, *[250.0] * 6]))) == pytest.approx(4.0)
    # 1000 = 550 / 1.1 + 605 / 1.21 would need unequal savings; equal ones of 576.19 take 2 years
    flows = np.array([-1000.0, *[1000.0 / (1 / 1.1 + 1 / 1.21)] * 3])
    assert float(recovery(discounted(flows, 0.10))) == pytest.approx(2.0)


def test_payback_never_and_at_once() -> None:
    # Interest of 5 % on 1000 is 50: savings of 50 only ever pay the interest.
    flows = np.array([[-1000.0], [-1000.0], [-1000.0]]) * np.array([1.0, *[0.0] * 60])
    flows[:, 1:] = np.array([[50.0], [0.0], [-10.0]])
    assert np.isinf(recovery(discounted(flows, 0.05))).all()
    assert float(recovery(np.array([0.0, 100.0]))) == 0.0
    assert float(recovery(np.array([500.0, -10.0]))) == 0.0
