"""What do we know of this hull, at the displacement that an option gives it?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.arrays import Array, Numbers
from generator.case.boat import Boat, Keel, Rudder, Waters, Windage
from generator.case.diesel import Propeller
from generator.physics.hull.form import HullForm, immersed_deeper, make_form
from generator.physics.hull.polynomials import KeelBody, keel_cautions, keel_curve
from generator.physics.hull.regression import RegressionCurve, cautions, regression_curve
from generator.physics.hull.resistance import Appendage
from generator.physics.hull.stern_gear import SternGear
from generator.physics.hull.windage import drag_area
from generator.physics.validity import Caution
from generator.physics.water import density, kinematic_viscosity

SHORTEST_KEEL, SMALLEST_KEEL = 0.05, 1e-4  # m, m3: keep a drawn keel from vanishing
LONG = "long"  # of the kinds of keel: along most of the hull
HULL_SPEED = 2.43 * 1852 / 3600  # (m/s)/m^0.5: 1.34 kn per square root of a foot


@dataclass(frozen=True)
class Vessel:
    """The boat as the water and the wind see her. SI; forms may hold draws."""

    form: HullForm
    keel: Appendage
    rudder: Appendage
    keel_body: KeelBody
    waves: RegressionCurve  # of the canoe body
    keel_waves: Array  # of the keel: cubics of its polynomial
    stern_gear: SternGear
    bow_length: Numbers  # stem to 95 % of waterline beam
    drag_area: Numbers
    freeboard: Numbers
    mast_height: Numbers
    water_density: Numbers
    water_viscosity: Numbers
    displacement: Numbers
    hull_speed: Numbers


def vessel(boat: Boat, waters: Waters, added_mass: Numbers, screw: Propeller) -> Vessel:
    """The boat in her waters with ``added_mass`` [kg] more aboard than today, on that screw."""
    water = density(waters.kind, waters.temperature)
    today = hull_form(boat, water)
    form = immersed_deeper(today, np.asarray(added_mass) / water)
    keel_body = _keel_body(boat, today, form, water)
    return Vessel(
        form=form,
        keel=_appendage(boat.keel, form),
        rudder=_appendage(boat.rudder, form),
        keel_body=keel_body,
        waves=regression_curve(form),
        keel_waves=keel_curve(form, keel_body),
        stern_gear=stern_gear(screw),
        bow_length=boat.hull.bow_share * form.waterline_length,
        drag_area=wind_drag_area(boat),
        freeboard=freeboard(boat),
        mast_height=mast_height(boat),
        water_density=water,
        water_viscosity=kinematic_viscosity(waters.kind, waters.temperature),
        displacement=boat.hull.displacement + added_mass,
        hull_speed=HULL_SPEED * np.sqrt(form.waterline_length),
    )


def hull_form(boat: Boat, water_density: Numbers) -> HullForm:
    """The canoe body as she floats today."""
    hull = boat.hull
    beam = hull.waterline_beam
    return make_form(
        waterline_length=hull.waterline_length,
        waterline_beam=hull.beam * hull.waterline_beam_share if beam is None else beam,
        canoe_draught=hull.canoe_draught,
        canoe_volume=hull.canoe_share * hull.displacement / water_density,
        prismatic_coefficient=hull.prismatic_coefficient,
        midship_coefficient=hull.midship_coefficient,
        waterplane_coefficient=hull.waterplane_coefficient,
        lcb=hull.lcb,
        lcf=hull.lcf,
    )


def _appendage(part: Keel | Rudder, form: HullForm) -> Appendage:
    area, chord = part.wetted_area, part.chord
    return Appendage(
        part.wetted_area_share * form.canoe_wetted_area if area is None else area,
        part.chord_share * form.waterline_length if chord is None else chord,
        part.thickness_ratio,
    )


def stern_gear(screw: Propeller) -> SternGear:
    """What stands between hull and screw, given or by the register's shares."""
    size, run, area = screw.diameter, screw.shaft_run, screw.stern_gear_area
    thick = screw.shaft_diameter
    disc = np.pi * np.square(size) / 4.0
    return SternGear(
        shaft_run=screw.shaft_run_share * size if run is None else run,
        shaft_diameter=screw.shaft_diameter_share * size if thick is None else thick,
        shaft_slope=np.radians(screw.shaft_slope),
        frontal_area=screw.stern_gear_share * disc if area is None else area,
        drag_coefficient=screw.stern_gear_drag,
    )


def _keel_body(boat: Boat, today: HullForm, form: HullForm, water: Numbers) -> KeelBody:
    """The keel's displacement is what canoe body and rudder leave of the whole."""
    keel, hull = boat.keel, boat.hull
    volume, depth = keel.volume, keel.centre_depth
    if volume is None:
        volume = keel.volume_share * (1.0 - hull.canoe_share) * hull.displacement / water
    if depth is None:
        depth = keel.centre_share * np.maximum(hull.draught - today.canoe_draught, SHORTEST_KEEL)
    return KeelBody(
        volume=np.maximum(volume, SMALLEST_KEEL),
        centre_depth=depth,
        total_draught=hull.draught + form.canoe_draught - today.canoe_draught,
        along=hull.keel_type == LONG,
    )


def mast_height(boat: Boat) -> Numbers:
    """Height of the mast [m], given or by the register's share of length overall."""
    windage = boat.windage
    if windage.mast_height is not None:
        return windage.mast_height
    return windage.mast_height_share * boat.hull.length_overall


def freeboard(boat: Boat) -> Numbers:
    """Mean freeboard [m], given or by the register's share of length overall."""
    windage = boat.windage
    if windage.freeboard is not None:
        return windage.freeboard
    return windage.freeboard_share * boat.hull.length_overall


def wind_drag_area(boat: Boat) -> Numbers:
    """Drag area seen from ahead [m2], given or by hull, rig and canvas."""
    windage: Windage = boat.windage
    if windage.drag_area is not None:
        return windage.drag_area
    height = mast_height(boat)
    diameter = windage.mast_diameter
    masts = 1.0 + windage.second_mast_share
    mast = windage.mast_diameter_share * height if diameter is None else diameter
    return drag_area(
        beam=boat.hull.beam,
        freeboard=freeboard(boat),
        mast_height=height,
        mast_diameter=mast * masts,
        wire_width=windage.wire_width * masts,
        furled_sail_width=windage.furled_sail_width,
        sprayhood_area=windage.sprayhood_area,
    )


def hull_cautions(vessel: Vessel) -> tuple[Caution, ...]:
    """Where hull and keel lie outside those that regression and polynomial were made on."""
    share = vessel.keel.chord / vessel.form.waterline_length
    return cautions(vessel.form) + keel_cautions(vessel.keel_body, share)
