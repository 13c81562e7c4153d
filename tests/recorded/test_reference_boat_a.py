"""Does reference boat A still need what she needed?

The only values of our own making: the hull columns of the table of reference boat A.
"""

from __future__ import annotations

import pytest

from generator.physics.hull.form import HullForm, canoe_wetted_area, make_form
from generator.physics.hull.residuary import froude_number
from generator.physics.hull.resistance import Appendage, CalmResistance, calm_resistance

KNOT = 1852 / 3600
DENSITY, VISCOSITY = 1025.0, 1.19e-6
KEEL = Appendage(wetted_area=4.4, chord=1.45, thickness_ratio=0.12)
RUDDER = Appendage(wetted_area=1.6, chord=0.55, thickness_ratio=0.12)
TOLERANCE = 3e-3  # set for every recorded number of this boat

# kn: Fn, hull friction, keel, rudder, residuary, total [N], towing power [W]
RECORDED = {
    5: (0.2737, 188.5, 69.3, 30.7, 143.6, 432.1, 1111),
    6: (0.3285, 263.2, 96.4, 42.5, 287.8, 689.9, 2130),
    7: (0.3832, 349.2, 127.5, 56.1, 742.2, 1275.0, 4591),
}


def boat_a() -> HullForm:
    return make_form(
        waterline_length=9.0,
        waterline_beam=2.9,
        canoe_draught=0.52,
        canoe_volume=5.0,
        prismatic_coefficient=0.56,
        midship_coefficient=0.71,
        waterplane_coefficient=18.0 / (9.0 * 2.9),
        lcb=-0.03,
        lcf=-0.0375,
    )


def parts(knots: float) -> CalmResistance:
    return calm_resistance(boat_a(), KEEL, RUDDER, knots * KNOT, DENSITY, VISCOSITY)


@pytest.mark.parametrize("knots", RECORDED)
def test_boat_a_needs_what_she_needed(knots: int) -> None:
    found = parts(knots)
    speed = knots * KNOT
    columns = (
        froude_number(speed, 9.0),
        found.hull_friction,
        found.keel,
        found.rudder,
        found.residuary,
        found.total,
        found.total * speed,
    )
    assert columns == pytest.approx(RECORDED[knots], rel=TOLERANCE)


def test_boat_a_has_the_wetted_area_she_had() -> None:
    form = boat_a()
    area = canoe_wetted_area(9.0, 2.9, 0.52, form.midship_coefficient, 5.0)
    assert area == pytest.approx(19.53, rel=TOLERANCE)
    assert area == form.canoe_wetted_area
