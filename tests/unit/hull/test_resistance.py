"""The sum of the parts, and the bottom's share."""

from __future__ import annotations

import numpy as np
import pytest

from generator.errors import TableError
from generator.physics.hull.resistance import CalmResistance
from generator.physics.hull.roughness import friction_increase, states


def test_total_is_the_sum() -> None:
    assert CalmResistance(1.0, 2.0, 3.0, 4.0).total == 10.0
    assert np.isnan(CalmResistance(1.0, 2.0, 3.0, float("nan")).total)


@pytest.mark.parametrize(
    ("state", "share"),
    [("smooth", 0.0), ("fresh antifouling", 0.09), ("light slime", 0.23), ("heavy shell", 2.32)],
)
def test_friction_increase_is_the_friction_column(state: str, share: float) -> None:
    assert friction_increase(state) == pytest.approx(share)


def test_friction_increase_refuses_an_unknown_state() -> None:
    with pytest.raises(TableError, match="coral"):
        friction_increase("coral")


def test_friction_increase_grows_down_the_table() -> None:
    shares = [friction_increase(state) for state in states()]
    assert shares == sorted(shares)
    assert len(set(shares)) == 7
