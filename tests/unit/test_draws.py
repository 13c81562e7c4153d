"""Streams of draws: stratified, named, apart from one another, and tied only where that is said."""

from __future__ import annotations

import itertools
from pathlib import Path

import numpy as np
import pytest

from generator.case.open import read_case
from generator.draws import TIED, make_draws, quantile, strata

CASES = Path(__file__).parents[2] / "cases"
FIRST = (0.45252283542993943, 0.6316281505731369, 0.1377069724206644, 0.764847915934085)
NAMES = ("boat.hull.beam", "legs[Home].speed", "options[a].bank.charge", "factors.hull_model@fin")


@pytest.mark.parametrize("count", [1, 7, 2000])
@pytest.mark.parametrize("name", NAMES)
def test_one_number_lies_in_each_stratum(name: str, count: int) -> None:
    found = np.sort(strata(name, count))
    assert np.array_equal(np.floor(found * count), np.arange(count))


def test_a_stream_is_named_and_nothing_else_moves_it() -> None:
    """First numbers as they were when the streams were made: a library that deals others shows."""
    assert strata(NAMES[0], 4) == pytest.approx(FIRST, abs=1e-15)
    assert not np.array_equal(strata(NAMES[0], 4), strata(NAMES[0], 4, seed=21))


def test_streams_do_not_follow_one_another() -> None:
    """Of 2000 independent numbers 0.1 is four and a half standard deviations of a correlation."""
    for one, other in itertools.combinations(NAMES, 2):
        assert abs(np.corrcoef(strata(one, 2000), strata(other, 2000))[0, 1]) < 0.1


def test_trends_of_energy_follow_one_another_as_far_as_is_said_and_keep_their_strata() -> None:
    case = read_case(CASES / "sloop_30_weekend.yaml")
    draws = make_draws(case, 2000)
    first, second = (draws.values[path][1:, 0] for path in TIED)
    said = float(np.asarray(case.prices.energy_correlation).flat[0])
    one, other = (np.argsort(np.argsort(values)) * 1.0 for values in (first, second))
    # Rank correlation of a normal copula: 6 / pi asin(r / 2).
    assert np.corrcoef(one, other)[0, 1] == pytest.approx(6 / np.pi * np.arcsin(said / 2), abs=0.05)
    alone = next(item for item in case.assumptions if item.path == TIED[1])
    own = quantile(alone, strata(alone.draw_key, 2000))
    assert np.sort(second) == pytest.approx(np.sort(own))
