"""The series' polynomial, collapsed to a cubic, worked by hand where that can be done."""

from __future__ import annotations

import numpy as np
import pytest

from generator.physics.drive.propeller import (
    THRUST,
    TORQUE,
    cubic,
    cubic_in_advance,
    thrust_coefficient,
    torque_coefficient,
    zero_of_cubic,
)
from generator.tables.load import read_table


def term_by_term(name: str, j: float, p: float, a: float, z: float) -> float:
    table = read_table(name)
    rows = table.matrix("coefficient", "advance_power", "pitch_power", "area_power", "blades_power")
    return float(sum(c * j**s * p**t * a**u * z**v for c, s, t, u, v in rows))


@pytest.mark.parametrize("advance", [0.0, 0.37, 0.9])
def test_coefficients_equal_the_sum_of_their_terms(advance: float) -> None:
    screw = (0.83, 0.47, 3.0)
    thrust = term_by_term("drive/bseries_kt", advance, *screw)
    torque = term_by_term("drive/bseries_kq", advance, *screw)
    assert thrust_coefficient(advance, *screw) == pytest.approx(thrust, abs=1e-14)
    assert torque_coefficient(advance, *screw) == pytest.approx(torque, abs=1e-14)


def test_tables_hold_every_term() -> None:
    # 39 terms of KT and 47 of KQ in the publication.
    assert len(read_table("drive/bseries_kt").column("coefficient")) == 39
    assert len(read_table("drive/bseries_kq").column("coefficient")) == 47


@pytest.mark.parametrize("which", [THRUST, TORQUE])
def test_cubic_in_advance_broadcasts_over_draws(which: str) -> None:
    pitch = np.array([[0.6], [0.9]])
    together = cubic(cubic_in_advance(which, pitch, 0.5, 3), np.array([0.1, 0.2, 0.3]))
    single = cubic(cubic_in_advance(which, 0.9, 0.5, 3), 0.2)
    assert np.shape(together) == (2, 3)
    assert np.asarray(together)[1, 1] == pytest.approx(single, abs=1e-15)


def test_zero_of_cubic_finds_the_first_fall() -> None:
    # (0.5 - J) (J - 1) (J - 2) = 1 - 3.5 J + 3.5 J² - J³, above zero from 0 to 0.5.
    assert float(zero_of_cubic((1.0, -3.5, 3.5, -1.0))) == pytest.approx(0.5, abs=1e-14)


def test_zero_of_cubic_is_absent_without_pull() -> None:
    assert np.isnan(zero_of_cubic((-0.1, -0.3, 0.0, 0.0)))  # brakes from the start
    assert np.isnan(zero_of_cubic((0.3, 0.1, 0.0, 0.0)))  # pulls at any speed
