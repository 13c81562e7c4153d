"""How does she float and stand in one condition of loading?"""

from __future__ import annotations

from dataclasses import dataclass, replace
from operator import attrgetter

import numpy as np

from generator.analyses.motion.hull import freeboard, hull_form, mast_height
from generator.analyses.weight.mass_ledger import Ledger
from generator.arrays import Numbers
from generator.case.boat import DATUMS, Boat, Offsets
from generator.case.case import Case
from generator.physics.hull import stability
from generator.physics.hull.form import HullForm, block_coefficient, waterplane_coefficient
from generator.physics.hull.hydrostatics import (
    longitudinal_metacentric_radius,
    mass_per_immersion,
    metacentric_radius,
    moment_to_trim,
    transverse_metacentric_radius,
    vertical_centre_of_buoyancy,
)
from generator.physics.hull.offsets import Immersed, Station, immersed
from generator.physics.hull.trim import end_draughts, sinkage, trim_angle
from generator.physics.hull.windage import drag_area, wind_force
from generator.physics.water import density


@dataclass(frozen=True)
class Floating:
    """One condition. kg, m, m2, m4, rad, s; x from the datum, heights above today's waterline."""

    displacement: Numbers
    water_density: Numbers
    waterline_length: Numbers
    waterplane_area: Numbers
    flotation: Numbers  # x of the centre of flotation
    flotation_share: Numbers  # the same from midships, over waterline length
    gravity: tuple[Numbers, Numbers, Numbers]  # x, y, z of the centre of gravity
    buoyancy_height: Numbers
    transverse_inertia: Numbers
    longitudinal_inertia: Numbers
    gyration_radius: Numbers
    wind_moment: Numbers  # N m, of the wind to hold on the beam, sails down
    source: str  # of the hydrostatics: given, offsets, dimensions
    stands_by: str  # inclining test, timed roll, height of gravity

    @property
    def volume(self) -> Numbers:
        """Displaced volume [m3]."""
        return self.displacement / np.asarray(self.water_density)

    @property
    def transverse_radius(self) -> Numbers:
        """BM [m]."""
        return metacentric_radius(self.transverse_inertia, self.volume)

    @property
    def longitudinal_radius(self) -> Numbers:
        """BML [m]."""
        return metacentric_radius(self.longitudinal_inertia, self.volume)

    @property
    def metacentric_height(self) -> Numbers:
        """GM [m]."""
        return self.buoyancy_height + self.transverse_radius - np.asarray(self.gravity[2])

    @property
    def roll_period(self) -> Numbers:
        """Of a full roll [s]; NaN without stability."""
        stiff = np.where(np.asarray(self.metacentric_height) > 0, self.metacentric_height, np.nan)
        return stability.roll_period(self.gyration_radius, stiff)

    @property
    def wind_heel(self) -> Numbers:
        """Heel under bare poles with the planned wind on the beam [rad]."""
        return stability.wind_heel(self.wind_moment, self.displacement, self.metacentric_height)


@dataclass(frozen=True)
class Change:
    """What one ledger does to one condition. m, rad; deeper, bow down, starboard positive."""

    before: Floating
    after: Floating
    sinkage: Numbers
    trim: Numbers
    fore: Numbers  # at the fore end of the waterline
    aft: Numbers
    list: Numbers
    gravity_shift: tuple[Numbers, Numbers, Numbers]  # of the centre of gravity, x, y, z


def afloat(case: Case) -> Floating:
    """Today: hydrostatics as given, else from the offsets, else from few dimensions."""
    boat, given = case.boat, case.boat.floatation
    water = density(case.waters.kind, case.waters.temperature)
    form = hull_form(boat, water)
    lines = None if boat.offsets is None else _lines(boat.offsets)
    mass = boat.hull.displacement
    volume = mass / np.asarray(water)
    area = _first(given.waterplane_area, _of(lines, "waterplane.area"), form.waterplane_area)
    transverse, longitudinal = _inertias(form, lines, area, volume, boat)
    start = DATUMS[boat.datum] * form.waterline_length
    flotation, centre = _centres(form, lines)
    buoyancy = _first(given.buoyancy_height, _of(lines, "height"), _keel_and_hull(form, boat))
    gyration = given.gyration_share * boat.hull.beam
    height, stands_by = _gravity_height(case, buoyancy + transverse / volume, gyration)
    names = ("waterplane_area", "buoyancy_height", "transverse_radius", "longitudinal_radius")
    told = any(getattr(given, name) is not None for name in names)
    return Floating(
        displacement=mass,
        water_density=water,
        waterline_length=form.waterline_length,
        waterplane_area=area,
        flotation=flotation - start,
        flotation_share=flotation / form.waterline_length - 0.5,
        gravity=(centre - start, 0.0, height),
        buoyancy_height=buoyancy,
        transverse_inertia=transverse,
        longitudinal_inertia=longitudinal,
        gyration_radius=gyration,
        wind_moment=_wind_moment(case),
        source="given" if told else "dimensions" if lines is None else "offsets",
        stands_by=stands_by,
    )


def _first(given: Numbers | None, lines: Numbers | None, formula: Numbers) -> Numbers:
    """The owner's figure, else that of the lines, else that of the formula."""
    return given if given is not None else formula if lines is None else lines


def _of(lines: Immersed | None, name: str) -> float | None:
    """One figure of the lines; None where there are none."""
    return None if lines is None else float(attrgetter(name)(lines))


def _lines(offsets: Offsets) -> Immersed:
    """The immersed hull of an offsets table; x from the aft end of the waterline."""
    x, z, y = (np.array(values) for values in (offsets.x, offsets.z, offsets.half_breadth))
    return immersed(tuple(Station(float(at), z[x == at], y[x == at]) for at in np.unique(x)))


def _inertias(
    form: HullForm, lines: Immersed | None, area: Numbers, volume: Numbers, boat: Boat
) -> tuple[Numbers, Numbers]:
    """Inertias of the waterplane, across and along [m4]."""
    sides = (form.waterline_length, form.waterline_beam)
    given = boat.floatation
    across, along = given.transverse_radius, given.longitudinal_radius
    return (
        _first(
            None if across is None else across * volume,
            _of(lines, "waterplane.transverse_inertia"),
            transverse_metacentric_radius(area, *sides, volume) * volume,
        ),
        _first(
            None if along is None else along * volume,
            _of(lines, "waterplane.longitudinal_inertia"),
            longitudinal_metacentric_radius(area, *sides, volume) * volume,
        ),
    )


def _centres(form: HullForm, lines: Immersed | None) -> tuple[Numbers, Numbers]:
    """Centres of flotation and of buoyancy from the aft end of the waterline [m]."""
    if lines is not None:
        return lines.waterplane.centre, lines.centre
    return (
        form.waterline_length * (0.5 + form.lcf),
        form.waterline_length * (0.5 + form.lcb),
    )


def _keel_and_hull(form: HullForm, boat: Boat) -> Numbers:
    """Height of the centre of buoyancy; the keel's volume sits midway down the keel."""
    hull = boat.hull
    body = vertical_centre_of_buoyancy(
        form.canoe_draught, block_coefficient(form), waterplane_coefficient(form)
    )
    keel = -0.5 * (form.canoe_draught + hull.draught)
    return hull.canoe_share * (body - form.canoe_draught) + (1.0 - hull.canoe_share) * keel


def _gravity_height(case: Case, metacentre: Numbers, gyration: Numbers) -> tuple[Numbers, str]:
    """Height of the centre of gravity [m], and what it rests on."""
    given = case.boat.floatation
    if given.metacentric_height is not None:
        return metacentre - given.metacentric_height, "inclining test"
    if given.roll_period is not None:
        height = stability.height_from_roll(gyration, given.roll_period)
        return metacentre - height, "timed roll"
    return given.gravity_height, "height of gravity"


def _wind_moment(case: Case) -> Numbers:
    """Moment of the planned wind on the beam, sails down, about half the draught [N m]."""
    boat, windage = case.boat, case.boat.windage
    board, mast = freeboard(boat), mast_height(boat)
    diameter = windage.mast_diameter
    rig = drag_area(
        0.0,
        0.0,
        mast,
        windage.mast_diameter_share * mast if diameter is None else diameter,
        windage.wire_width,
        windage.furled_sail_width,
        0.0,
    )
    side = drag_area(boat.hull.length_overall, board, 0.0, 0.0, 0.0, 0.0, 0.0)
    half = 0.5 * boat.hull.draught
    levers = (board + 0.5 * mast + half, 0.5 * board + half)
    wind = case.planning.hold_wind
    return wind_force(rig, wind, 0.0) * levers[0] + wind_force(side, wind, 0.0) * levers[1]


def loaded(floating: Floating, displacement: Numbers) -> Floating:
    """The same boat at another displacement: a slice at the waterline, gravity unmoved."""
    change = np.asarray(displacement) - floating.displacement
    return replace(floating, displacement=displacement, buoyancy_height=_buoyancy(floating, change))


def _buoyancy(floating: Floating, change: Numbers) -> Numbers:
    rise = sinkage(change, mass_per_immersion(floating.waterplane_area, floating.water_density))
    volume = change / np.asarray(floating.water_density)
    return stability.buoyancy_after(floating.volume, floating.buoyancy_height, volume, rise)


def changed(before: Floating, ledger: Ledger) -> Change:
    """Take out and put in, and let her settle; every item of the ledger must have a place."""
    net, moments, inertia = _sums(before, ledger)
    gravity = tuple(
        stability.moved_centre(before.displacement, centre, net, moment)
        for centre, moment in zip(before.gravity, moments, strict=True)
    )
    after = replace(
        before,
        displacement=before.displacement + np.asarray(net),
        gravity=(gravity[0], gravity[1], gravity[2]),
        buoyancy_height=_buoyancy(before, net),
        gyration_radius=stability.moved_gyration(
            before.displacement, before.gyration_radius, net, inertia
        ),
    )
    down = sinkage(net, mass_per_immersion(before.waterplane_area, before.water_density))
    resist = moment_to_trim(before.displacement, before.longitudinal_radius)
    angle = trim_angle(moments[0] - before.flotation * np.asarray(net), resist)
    fore, aft = end_draughts(angle, before.flotation_share, before.waterline_length)
    return Change(
        before=before,
        after=after,
        sinkage=down,
        trim=angle,
        fore=down + fore,
        aft=down + aft,
        list=stability.list_angle(moments[1], after.displacement, after.metacentric_height),
        gravity_shift=(
            gravity[0] - before.gravity[0],
            gravity[1] - before.gravity[1],
            gravity[2] - before.gravity[2],
        ),
    )


def _sums(
    before: Floating, ledger: Ledger
) -> tuple[Numbers, tuple[Numbers, Numbers, Numbers], Numbers]:
    """Sum of masses, their moments along x, y, z, and their inertia about the axis of roll."""
    net: Numbers = 0.0
    moments: list[Numbers] = [0.0, 0.0, 0.0]
    inertia: Numbers = 0.0
    across, up = before.gravity[1], before.gravity[2]
    for sign, item in ledger.items:
        mass = sign * np.asarray(item.mass)
        net = net + mass
        spot = (0.0 if item.x is None else item.x, item.y, item.z)
        moments = [moment + mass * at for moment, at in zip(moments, spot, strict=True)]
        inertia = inertia + mass * ((item.y - across) ** 2 + (item.z - up) ** 2)
    return net, (moments[0], moments[1], moments[2]), inertia
