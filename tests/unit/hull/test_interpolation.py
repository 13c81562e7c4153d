"""The monotone cubic against scipy's and against a hand-worked one."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.interpolate import PchipInterpolator

from generator.arrays import Array
from generator.physics.hull.interpolation import between, cubics, node_slopes

NODES = np.concatenate([[0.0], np.arange(0.125, 0.4501, 0.025)])


def test_node_slopes_by_hand() -> None:
    # Steps of 1, chords 1 and 3: inside 6 / (3/1 + 3/3) = 1.5; ends (3 x 1 - 3)/2 = 0 and
    # (3 x 3 - 1)/2 = 4
    slopes = node_slopes(np.array([0.0, 1.0, 2.0]), np.array([0.0, 1.0, 4.0]))
    assert slopes == pytest.approx([0.0, 1.5, 4.0])


def test_node_slopes_are_flat_at_a_peak() -> None:
    # chords 2 and -2: none inside; ends (3 x 2 + 2)/2 = 4 and -4, within three times the chord
    slopes = node_slopes(np.array([0.0, 1.0, 2.0]), np.array([0.0, 2.0, 0.0]))
    assert slopes == pytest.approx([4.0, 0.0, -4.0])


def wild(seed: int) -> Array:
    """Rising, falling, flat and equal neighbours."""
    values = np.random.default_rng(seed).normal(size=(40, len(NODES)))
    values[5] = 0.0
    values[6, 3:6] = values[6, 3:4]
    values[7] = np.sort(values[7])
    return values


@pytest.mark.parametrize("seed", range(5))
def test_cubics_are_those_of_scipy(seed: int) -> None:
    values = wild(seed)
    places = np.linspace(0.0, 0.45, 301)
    scipys = PchipInterpolator(NODES, values, axis=-1)(places)
    ours = between(NODES, cubics(NODES, values[:, None, :]), places)
    assert ours.shape == (40, 301)
    assert np.max(np.abs(ours - scipys)) < 1e-12


def test_between_takes_places_of_their_own_for_each_draw() -> None:
    values = wild(9)
    places = np.random.default_rng(1).uniform(0.0, 0.45, (40, 7))
    ours = between(NODES, cubics(NODES, values[:, None, :]), places)
    for draw in range(40):
        scipys = PchipInterpolator(NODES, values[draw])(places[draw])
        assert np.max(np.abs(ours[draw] - scipys)) < 1e-12


def test_between_gives_the_nodes_and_holds_the_ends() -> None:
    values = wild(2)[0]
    curves = cubics(NODES, values)
    assert between(NODES, curves, NODES) == pytest.approx(values)
    assert between(NODES, curves, np.array([-1.0, 9.0])) == pytest.approx(values[[0, -1]])
