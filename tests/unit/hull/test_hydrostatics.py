"""Hydrostatics and trim worked by hand."""

from __future__ import annotations

import pytest

from generator.physics.hull.hydrostatics import (
    LONGITUDINAL,
    TRANSVERSE,
    inertia_coefficient,
    longitudinal_metacentric_radius,
    mass_per_immersion,
    moment_to_trim,
    transverse_metacentric_radius,
    yacht_correction,
)
from generator.physics.hull.trim import end_draughts, sinkage, trim_angle


def test_mass_per_immersion() -> None:
    assert mass_per_immersion(20.0, 1000.0) == 20000.0


def test_inertia_coefficients() -> None:
    # 0.1216 x 0.7 - 0.0410 = 0.04412; 0.350 x 0.49 - 0.405 x 0.7 + 0.146 = 0.034
    assert inertia_coefficient(TRANSVERSE, 0.7) == pytest.approx(0.04412)
    assert inertia_coefficient(LONGITUDINAL, 0.7) == pytest.approx(0.034)


def test_yacht_corrections_point_opposite_ways() -> None:
    assert yacht_correction(TRANSVERSE) == 0.93
    assert yacht_correction(LONGITUDINAL) == 1.10


def test_metacentric_radii() -> None:
    # L 10, B 2, Aw 14 (Cwp 0.7), V 4: 0.93 x 0.04412 x 10 x 8 / 4 = 0.820632;
    # 1.10 x 0.034 x 1000 x 2 / 4 = 18.7
    assert transverse_metacentric_radius(14.0, 10.0, 2.0, 4.0) == pytest.approx(0.820632)
    assert longitudinal_metacentric_radius(14.0, 10.0, 2.0, 4.0) == pytest.approx(18.7)


def test_sinkage_and_trim() -> None:
    assert sinkage(-100.0, 20000.0) == pytest.approx(-0.005)
    # 4000 kg on 18.7 m: 74800 kg m/rad; 748 kg m forward is 0.01 rad
    assert trim_angle(748.0, moment_to_trim(4000.0, 18.7)) == pytest.approx(0.01)


def test_end_draughts_turn_about_the_centre_of_flotation() -> None:
    # 10 m, LCF 0.5 m aft: the bow is 5.5 m from it, the stern 4.5 m
    forward, aft = end_draughts(0.01, -0.05, 10.0)
    assert forward == pytest.approx(0.055)
    assert aft == pytest.approx(-0.045)
