"""Charging worked by hand."""

from __future__ import annotations

import math

import numpy as np
import pytest

from generator.physics.energy.charging import acceptance, state_at_knee, time_to_full

HOUR = 3600.0
TAU, TAIL = 0.2 * HOUR, 0.05 / HOUR  # full at 1 - 0.2 x 0.05 = 0.99


def test_constant_current_alone_is_charge_over_current() -> None:
    """280 Ah from 20 % at 56 A: 0.75 x 280 / 56 = 3.75 h to 95 %."""
    rate = 56.0 / 280.0 / HOUR
    to_full = time_to_full(np.array([0.20, 0.95]), rate, TAU, TAIL, 1.0)
    assert to_full[0] - to_full[1] == pytest.approx(3.75 * HOUR)


def test_past_the_knee_the_current_falls() -> None:
    """0.5 C: knee at 1 - 0.2 x 0.5 = 0.90; then 0.2 h x ln(0.5 / 0.05) = 0.4605 h."""
    rate = 0.5 / HOUR
    assert state_at_knee(rate, TAU, TAIL) == pytest.approx(0.90)
    expected = (0.90 - 0.40) / 0.5 + 0.2 * math.log(10.0)
    assert time_to_full(0.40, rate, TAU, TAIL, 1.0) == pytest.approx(expected * HOUR)


def test_what_is_not_kept_is_charged_once_more() -> None:
    one, half = (time_to_full(0.3, 0.2 / HOUR, TAU, TAIL, kept) for kept in (1.0, 0.5))
    assert half == pytest.approx(2.0 * one)


def test_a_full_bank_is_full_and_no_current_never_fills_another() -> None:
    assert time_to_full(0.995, 0.2 / HOUR, TAU, TAIL, 1.0) == 0.0
    assert time_to_full(0.5, 0.0, TAU, TAIL, 1.0) == np.inf
    assert time_to_full(1.0, 0.0, TAU, TAIL, 1.0) == 0.0


def test_a_current_below_the_tail_fills_to_the_same_state() -> None:
    """0.04 C from 0.59 to 0.99: 10 h, with no falling part."""
    assert time_to_full(0.59, 0.04 / HOUR, TAU, TAIL, 1.0) == pytest.approx(10.0 * HOUR)


@pytest.mark.parametrize("chemistry", ["LFP", "NMC", "AGM", "flooded"])
def test_every_chemistry_has_its_row(chemistry: str) -> None:
    takes = acceptance(chemistry)
    assert 0.8 <= takes.kept < 1.0
    assert takes.tail < takes.rate
