"""Defaults that grow with boat or motor, ranges whose value is the median, and what is asked."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from generator.case.register import find_default, growths, read_register, sized
from generator.draws import quantile
from tests.unit.case.faulty import changed, doubts, read

ROOT = Path(__file__).parents[3]


def test_every_growing_default_is_a_row_of_the_register() -> None:
    assert set(growths()) <= set(read_register())


def test_value_range_and_spelling_grow_together() -> None:
    row = find_default("boat.windage.sprayhood_area", ())
    assert row is not None
    grown = sized(row, {"length overall": 20.0})
    assert [grown.value, grown.low, grown.high] == pytest.approx([5.2, 0.0, 8.8])
    assert (grown.shown, grown.shown_high, grown.size) == ("5.2 m2", "8.8 m2", "20 m")
    assert sized(row, {}) is row
    assert sized(row, {"continuous power": 5e3}) is row


def test_a_given_value_is_held_against_the_range_of_its_size(tmp_path: Path) -> None:
    """120 W are usual at 8 kW, where the range ends at 131 W, and not at 4 kW, where at 83 W."""
    text = changed(("cooling: air", "cooling: air, seal_and_bearings: 120 W"))
    assert [str(w.path) for w in doubts(tmp_path, text)] == []
    small = changed(("continuous_power: 8 kW", "continuous_power: 4 kW"), text=text)
    found = doubts(tmp_path, small)
    assert [w.path for w in found] == ["options[2].motor.seal_and_bearings"]


def test_the_middle_of_a_two_piece_range_is_its_value(tmp_path: Path) -> None:
    seal = next(
        item
        for item in read(tmp_path, changed()).assumptions
        if item.path == "options[2].motor.seal_and_bearings"
    )
    assert seal.shape == "two-piece"
    at = quantile(seal, np.array([0.0, 0.25, 0.5, 0.75, 1.0]))
    wide, share = (seal.low - seal.value, seal.high - seal.value), 1.0 - np.sqrt(0.5)
    wanted = [seal.low, seal.value + wide[0] * share, seal.value, seal.value + wide[1] * share,
              seal.high]  # fmt: skip
    assert at == pytest.approx(wanted)
    skewed = quantile(replace(seal, shape="triangular"), np.array([0.5]))
    assert skewed[0] > 1.4 * seal.value  # what the median of the draws was


def test_cooling_is_asked_where_neither_it_nor_the_share_is_told(tmp_path: Path) -> None:
    bare = changed(("cooling: air, ", ""))
    asked = doubts(tmp_path, bare)
    assert [w.path for w in asked] == [f"options[{n}].motor.cooling" for n in (2, 3)]
    assert "air or water" in str(asked[0])
    told = changed(("cooling: air", "heat_share: 0.9"))
    assert doubts(tmp_path, told) == ()


def test_the_state_of_the_bottom_is_asked(tmp_path: Path) -> None:
    untold = changed(("  bottom: smooth\n", ""))
    assert [w.path for w in doubts(tmp_path, untold)] == ["boat.bottom"]
    share = changed(("  bottom: smooth\n", "  bottom_share: 10 %\n"))
    assert doubts(tmp_path, share) == ()
    both = changed(("  bottom: smooth\n", "  bottom: smooth\n  bottom_share: 10 %\n"))
    assert [w.path for w in doubts(tmp_path, both)] == ["boat.bottom_share"]
