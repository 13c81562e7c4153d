"""Do list, righting levers, trim and integrated waterplanes meet the examples of the books?"""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy.integrate import quad

from generator.analyses.verdict.criteria.catalogue import criteria
from generator.analyses.verdict.criteria.mass_change import CENTRE_LIMIT
from generator.case.register import find_default
from generator.physics.hull.hydrostatics import metacentric_radius
from generator.physics.hull.offsets import Station, immersed, waterplane
from generator.physics.hull.stability import list_angle, moved_centre, wall_sided_lever
from generator.physics.hull.trim import end_draughts, sinkage, trim_angle
from generator.tables.load import read_table


def test_wall_sided_ship_rights_as_the_book_says() -> None:
    """Source: derrett, 6000 t, KB 3, KM 6, KG 5.5 m: GZ 0.35 m and 2100 t m at 25 degrees.

    GZ is printed to two places, and the moment is that rounded lever times 6000 t.
    """
    lever = float(wall_sided_lever(6.0 - 5.5, 6.0 - 3.0, math.radians(25.0)))
    assert lever == pytest.approx(0.35, abs=0.005)
    assert 6000.0 * lever == pytest.approx(2100.0, abs=6000.0 * 0.005)


def test_ship_lists_after_loading_and_shifting() -> None:
    """Source: derrett, page 116, ship of 8000 t, KG 7.6 m, KM 8.7 m: KG 7.35, GG1 0.035 m.

    250 t (KG 6.1 m) loaded 7.6 m to starboard, 300 t (KG 0.6 m) 6.1 m to port, 50 t (KG 1.2 m)
    discharged from 4.6 m to port. Half of the last digit.
    """
    height = moved_centre(8000.0, 7.6, 500.0, 250.0 * 6.1 + 300.0 * 0.6 - 50.0 * 1.2)
    across = 250.0 * 7.6 - 300.0 * 6.1 + 50.0 * 4.6
    side = moved_centre(8000.0, 0.0, 500.0, across)
    assert height == pytest.approx(7.35, abs=0.005)
    assert side == pytest.approx(0.035, abs=0.0005)


def test_ship_lists_by_a_weight_across_the_deck() -> None:
    """Source: derrett, exercise 14.4: 1500 t, KG 2.7, KM 3.1 m, 10 t over 10 m: 9 deg 27'.

    The printed working rounds GG1 to 0.0667 m; one minute.
    """
    found = math.degrees(float(list_angle(10.0 * 10.0, 1500.0, 3.1 - 2.7)))
    assert found == pytest.approx(9 + 27 / 60, abs=1.5 / 60)


def brought_back() -> tuple[float, ...]:
    """Draughts of the ship of the next two tests: fore, aft, then both after shifting."""
    per_angle = 250e3 * 100.0 * 120.0
    rise = sinkage(-220e3, 10e3 * 100.0)
    fore, aft = end_draughts(trim_angle(-220e3 * 24.0, per_angle), 0.0, 120.0)
    first = 6.7 + float(rise + fore), 7.3 + float(rise + aft)
    fore_back, aft_back = end_draughts(trim_angle(380e3 * 25.0, per_angle), 0.0, 120.0)
    return (*first, first[0] + float(fore_back), first[1] + float(aft_back))


def test_ship_trims_after_discharging_and_is_brought_back() -> None:
    """Source: derrett, 120 m, TPC 10 t, MCT 250 t m, F 6.7 A 7.3 m, LCF amidships.

    220 t discharged 24 m forward: F 6.37, A 7.19 m; 380 t shifted 25 m forward then bring her
    aft draught to 7.00 m. The printed working rounds each step to a centimetre.
    """
    fore, aft, _, aft_back = brought_back()
    assert fore == pytest.approx(6.37, abs=0.01)
    assert aft == pytest.approx(7.19, abs=0.01)
    assert aft_back == pytest.approx(7.00, abs=0.01)


@pytest.mark.xfail(strict=True, reason="the printed working adds the whole trim forward, not half")
def test_ship_brought_back_has_the_printed_draught_forward() -> None:
    """Source: derrett, the same ship in a working read as a page: F 6.75 m. We find 6.56 m."""
    assert brought_back()[2] == pytest.approx(6.75, abs=0.01)


def test_waterplane_of_a_ship_by_simpson() -> None:
    """Source: derrett, page 74, 120 m, seven half ordinates: 1207 m2, TPC 12.37 t. Half a digit."""
    ordinates = np.array([0.1, 4.6, 7.5, 7.6, 5.9, 3.7, 0.0])  # from aft
    area = waterplane(np.linspace(0.0, 120.0, 7), ordinates).area
    assert area == pytest.approx(1207.0, abs=0.5)
    assert area * 1.025 / 100.0 == pytest.approx(12.37, abs=0.005)


def box() -> tuple[Station, ...]:
    heights = np.array([-4.0, -3.9999999, 0.0, 4.0])
    breadths = np.array([0.0, 6.0, 6.0, 6.0])
    return tuple(Station(float(x), heights, breadths) for x in np.linspace(0.0, 65.0, 11))


def test_box_as_offsets_floats_as_the_book_says() -> None:
    """Source: derrett, box 65 x 12 m, draught 4 m: 3120 m3, KB 2, BM 3 m. Exact."""
    found = immersed(box())
    assert found.volume == pytest.approx(3120.0, rel=1e-6)
    assert found.height + 4.0 == pytest.approx(2.0, rel=1e-6)
    assert found.centre == pytest.approx(32.5)
    plane = found.waterplane
    assert metacentric_radius(plane.transverse_inertia, found.volume) == pytest.approx(3.0)
    assert plane.longitudinal_inertia == pytest.approx(12.0 * 65.0**3 / 12.0)


@pytest.mark.parametrize(("power", "fullest"), [(2.0, 0.45), (1.6, 0.40), (3.0, 0.5)])
def test_waterplane_integrals_meet_quadrature(power: float, fullest: float) -> None:
    """Source: derrett, integrals of a waterplane; yacht-like ones by adaptive quadrature.

    41 stations by Simpson's rule; the kink at the fullest section costs up to a thousandth.
    """
    length, half = 9.0, 1.4

    def breadth(x: float) -> float:
        share = x / length
        part = fullest if share < fullest else 1.0 - fullest
        return float(half * (1.0 - (abs(share - fullest) / part) ** power))

    def integral(weight: float, order: int) -> float:
        def part(low: float, high: float) -> float:
            return float(quad(lambda x: x**order * breadth(x) ** weight, low, high)[0])

        return part(0.0, length * fullest) + part(length * fullest, length)

    x = np.linspace(0.0, length, 41)
    found = waterplane(x, np.array([breadth(float(at)) for at in x]))
    area = 2.0 * integral(1.0, 0)
    centre = 2.0 * integral(1.0, 1) / area
    assert found.area == pytest.approx(area, rel=1e-3)
    assert found.centre == pytest.approx(centre, rel=1e-3)
    assert found.transverse_inertia == pytest.approx(2.0 / 3.0 * integral(3.0, 0), rel=2e-3)
    along = 2.0 * integral(1.0, 2) - area * centre**2
    assert found.longitudinal_inertia == pytest.approx(along, rel=3e-3)


@pytest.mark.parametrize(("kilowatts", "mass"), [(10, 108), (20, 151), (30, 194), (40, 237)])
def test_diesel_mass_meets_the_catalogue_aggregate(kilowatts: float, mass: float) -> None:
    """Source: practice, aggregate of catalogues, dry with gear, 15 per cent either way.

    The register's line is held to the printed aggregate within half a kilogram.
    """
    fixed = find_default("masses.diesel_fixed", ())
    slope = find_default("masses.diesel_per_kilowatt", ())
    assert fixed is not None
    assert slope is not None
    assert fixed.value + slope.value * kilowatts * 1e3 == pytest.approx(mass, abs=0.5)


def test_limits_of_mass_are_those_of_the_borrowed_rule() -> None:
    """Source: cfr_144_315, paragraph (b): 2 per cent of lightweight, 1 per cent of length."""
    row = next(item for item in criteria() if item.id == 16)
    assert row.go == 0.02
    assert CENTRE_LIMIT == 0.01
    assert row.third is not None
    assert row.third.go == row.conditional == 0.05  # two of the crew and some share more: practice
    source = read_table("rules/criteria").source
    assert "cfr_144_315, limits of row 16, borrowed from towing vessels" in source
