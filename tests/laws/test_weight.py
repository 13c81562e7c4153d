"""What must hold for every ledger and every boat: moments, order, and nothing for nothing."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.analyses.weight.floating import Change, Floating, afloat, changed
from generator.analyses.weight.mass_ledger import Ledger
from generator.case.open import read_case
from generator.case.option import LedgerItem

CASES = Path(__file__).parents[2] / "cases"
FEW = settings(max_examples=40, deadline=None)
masses = st.floats(1.0, 400.0)
places = st.tuples(st.floats(0.0, 7.0), st.floats(-1.2, 1.2), st.floats(-0.4, 1.0))
items = st.lists(st.tuples(masses, places), min_size=1, max_size=6)


@lru_cache(maxsize=1)
def today() -> Floating:
    return afloat(read_case(CASES / "sloop_30_weekend.yaml"))


def item(mass: float, place: tuple[float, float, float]) -> LedgerItem:
    return LedgerItem("thing", mass, *place, "other", "", "estimate", 0)


def moved(
    out: list[tuple[float, tuple[float, float, float]]],
    into: list[tuple[float, tuple[float, float, float]]],
    before: Floating | None = None,
) -> Change:
    sides = [tuple(item(*each) for each in side) for side in (out, into)]
    return changed(before or today(), Ledger(sides[0], sides[1], (), (), None))


@FEW
@given(each=items)
def test_equal_mass_out_and_in_at_one_place_changes_nothing(
    each: list[tuple[float, tuple[float, float, float]]],
) -> None:
    change = moved(each, each)
    found = (change.sinkage, change.trim, change.list, *change.gravity_shift)
    assert np.allclose([float(value) for value in found], 0.0, atol=1e-12)
    assert change.after.metacentric_height == pytest.approx(change.before.metacentric_height)
    assert change.after.roll_period == pytest.approx(change.before.roll_period)


@FEW
@given(each=items, by=st.tuples(*[st.floats(-2.0, 2.0)] * 3))
def test_shifting_every_mass_by_a_vector_shifts_the_centre_by_it(
    each: list[tuple[float, tuple[float, float, float]]], by: tuple[float, float, float]
) -> None:
    before = today()
    shifted = [(m, (p[0] + by[0], p[1] + by[1], p[2] + by[2])) for m, p in each]
    g = before.gravity
    gravity = (g[0] + by[0], g[1] + by[1], g[2] + by[2])
    first = moved([], each).after.gravity
    second = moved([], shifted, replace(before, gravity=gravity)).after.gravity
    found = [float(b - a) for a, b in zip(first, second, strict=True)]
    assert found == pytest.approx(list(by), abs=1e-9)


@FEW
@given(each=items, other=items)
def test_the_order_of_the_lines_is_irrelevant(
    each: list[tuple[float, tuple[float, float, float]]],
    other: list[tuple[float, tuple[float, float, float]]],
) -> None:
    one, turned = moved(each, other), moved(each[::-1], other[::-1])
    assert turned.trim == pytest.approx(one.trim, abs=1e-12)
    assert turned.list == pytest.approx(one.list, abs=1e-12)
    assert turned.after.metacentric_height == pytest.approx(one.after.metacentric_height)


@FEW
@given(mass=masses, place=places, away=st.floats(0.1, 2.0))
def test_signs_of_trim_list_and_stability(
    mass: float, place: tuple[float, float, float], away: float
) -> None:
    x, y, z = place
    here = moved([], [(mass, place)])
    assert here.sinkage > 0
    assert moved([], [(mass, (x + away, y, z))]).trim > here.trim  # forward: by the bow
    assert moved([], [(mass, (x, y + away, z))]).list > here.list  # starboard
    higher = moved([], [(mass, (x, y, z + away))])
    assert higher.after.metacentric_height < here.after.metacentric_height
    assert higher.after.wind_heel > here.after.wind_heel


@FEW
@given(mass=masses)
def test_a_mass_at_the_centre_of_flotation_only_sinks_her(mass: float) -> None:
    change = moved([], [(mass, (float(today().flotation), 0.0, 0.0))])
    assert float(change.trim) == pytest.approx(0.0, abs=1e-12)
    assert float(change.fore) == pytest.approx(float(change.aft))
    water = float(today().water_density) * float(today().waterplane_area)
    assert float(change.sinkage) * water == pytest.approx(mass)
