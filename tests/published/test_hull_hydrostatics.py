"""Do hydrostatics meet the examples of the books?"""

from __future__ import annotations

import math

import pytest

from generator.physics.hull.hydrostatics import (
    LONGITUDINAL,
    TRANSVERSE,
    inertia_coefficient,
    mass_per_immersion,
    metacentric_radius,
    moment_to_trim,
    vertical_centre_of_buoyancy,
)
from generator.physics.hull.trim import end_draughts, sinkage, trim_angle

# Reference boat A: 9.0 x 2.9 m, canoe draught 0.52 m, 5.0 m3 (5.22 m3 with keel), 18.0 m2.
L, B, TC, V, V_TOTAL, AW, RHO = 9.0, 2.9, 0.52, 5.0, 5.22, 18.0, 1025.0
CWP = AW / (L * B)


def test_box_floats_as_the_book_says() -> None:
    """Source: derrett, box 65 x 12 x 8 m, draught 4 m, KG 4 m: 3198 t, KB 2, BM 3, GM 1 m.

    Exact figures; the moment at 5 degrees, 278.9 t m, stands on a sine rounded to four places.
    """
    mass = mass_per_immersion(65.0 * 12.0, 1025.0) * 4.0
    assert mass == pytest.approx(3198e3)
    buoyancy = vertical_centre_of_buoyancy(4.0, 1.0, 1.0)
    radius = metacentric_radius(65.0 * 12.0**3 / 12.0, 65.0 * 12.0 * 4.0)
    assert buoyancy == pytest.approx(2.0)
    assert radius == pytest.approx(3.0)
    assert buoyancy + radius - 4.0 == pytest.approx(1.0)
    moment = mass / 1e3 * (buoyancy + radius - 4.0) * math.sin(math.radians(5.0))
    assert moment == pytest.approx(278.9, rel=1e-3)


def test_box_of_the_seamanship_book() -> None:
    """Source: nicholls, box of 36 ft beam and 18 ft draught: BM 6 ft, KM 15 ft. Exact."""
    foot = 0.3048
    beam, draught = 36 * foot, 18 * foot
    radius = metacentric_radius(beam**3 / 12.0, beam * draught)
    assert radius == pytest.approx(6 * foot)
    assert radius + vertical_centre_of_buoyancy(draught, 1.0, 1.0) == pytest.approx(15 * foot)


def test_ship_trims_about_her_centre_of_flotation() -> None:
    """Source: derrett, ship of 126 m: F 5.5 A 6.5 becomes F 5.618 A 6.393.

    LCF 3 m aft, moment to change trim 240 t m/cm, 120 t shifted 45 m forward. Half a digit.
    """
    per_angle = 240e3 * 100.0 * 126.0  # kg m per metre of trim, times length: per radian
    angle = trim_angle(120e3 * 45.0, per_angle)
    forward, aft = end_draughts(angle, -3.0 / 126.0, 126.0)
    assert 5.5 + forward == pytest.approx(5.618, abs=0.0005)
    assert 6.5 + aft == pytest.approx(6.393, abs=0.0005)


def test_boat_a_per_immersion_and_trim_moment() -> None:
    """Source: darcangelo, raw formulas for boat A: 0.1845 t/cm, 0.0798 t m/cm, BMT 1.80, BML 13.4.

    Half of the last digit.
    """
    assert mass_per_immersion(AW, RHO) / 1e5 == pytest.approx(0.1845, abs=0.00005)
    transverse = metacentric_radius(inertia_coefficient(TRANSVERSE, CWP) * L * B**3, V_TOTAL)
    longitudinal = metacentric_radius(inertia_coefficient(LONGITUDINAL, CWP) * L**3 * B, V_TOTAL)
    assert transverse == pytest.approx(1.80, abs=0.005)
    assert longitudinal == pytest.approx(13.4, abs=0.05)
    mct = moment_to_trim(RHO * V_TOTAL, longitudinal) / L / 1e5
    assert mct == pytest.approx(0.0798, abs=0.00005)


def test_boat_a_centre_of_buoyancy() -> None:
    """Source: morrish, approximate rule for boat A: 0.341 m. Half of the last digit."""
    Cb = V / (L * B * TC)
    assert vertical_centre_of_buoyancy(TC, Cb, CWP) == pytest.approx(0.341, abs=0.0005)


def test_boat_a_sinks_and_trims_with_150_kg_aft() -> None:
    """Source: derrett, method; 150 kg one metre aft of LCF: sinks 0.8 cm, trims 1.9 cm.

    Raw formulas; half of the last digit.
    """
    assert sinkage(150.0, mass_per_immersion(AW, RHO)) == pytest.approx(0.008, abs=0.0005)
    longitudinal = metacentric_radius(inertia_coefficient(LONGITUDINAL, CWP) * L**3 * B, V_TOTAL)
    angle = trim_angle(-150.0 * 1.0, moment_to_trim(RHO * V_TOTAL, longitudinal))
    forward, aft = end_draughts(angle, -0.0375, L)
    assert aft - forward == pytest.approx(0.019, abs=0.0005)
