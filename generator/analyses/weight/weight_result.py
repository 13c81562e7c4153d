"""What is told of the masses of one option, and of how she floats and stands with them?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field

import numpy as np

from generator.analyses.percentiles import best, scalar, spread
from generator.analyses.weight.floating import Change, Floating
from generator.analyses.weight.weight import Condition, Restraint, Weight
from generator.arrays import Numbers
from generator.case.case import Case
from generator.case.option import LedgerItem
from generator.records import number, record

TRIM_LIMIT = 0.005  # of waterline length: the go limit of criterion 17
AXES = ("x", "y", "z")
NO_PLACE, UNSTABLE = "mass_without_place", "no_stability"


@record
class LedgerLine:
    """One mass of the yard's list: what leaves is negative, its place is from the datum.

    A mass that nobody placed stands nowhere, least of all amidships.
    """

    way: str
    name: str
    part: str | None
    datum: str
    space: str | None
    source: str
    mass: Numbers = number("mass", "mass, aboard positive", cautious="high")
    x: Numbers | None = number("length", "place forward of the datum", expected=True)
    y: Numbers | None = number("length", "place to starboard", expected=True)
    z: Numbers | None = number("length", "place above the waterline", expected=True)
    moment_x: float | None = number("mass_moment", "moment about the datum, forward")
    moment_y: float | None = number("mass_moment", "moment to starboard")
    moment_z: float | None = number("mass_moment", "moment above the waterline")
    absent: Mapping[str, str] = field(default_factory=dict)


@record
class Afloat:
    """Hydrostatics and stability of one condition; heights are above the waterline of today."""

    displacement: Numbers = number("mass", "displacement", expected=True)
    per_cm: Numbers = number("mass", "mass that sinks her a centimetre")
    trim_per_cm: Numbers = number("mass", "mass that trims her a centimetre, moved a metre")
    gravity: Numbers = number("length", "centre of gravity from the datum")
    flotation: Numbers = number("length", "centre of flotation from the datum")
    buoyancy_height: Numbers = number("length", "height of the centre of buoyancy")
    transverse_radius: Numbers = number("length", "metacentric radius BM")
    longitudinal_radius: Numbers = number("length", "metacentric radius BM, lengthwise")
    gravity_height: Numbers = number("length", "height of the centre of gravity")
    metacentric_height: Numbers = number("length", "metacentric height GM")
    roll_period: Numbers = number("seconds", "time of a full roll")
    wind_heel: Numbers = number("angle", "heel under bare poles, wind abeam")
    absent: Mapping[str, str] = field(default_factory=dict)


@record
class Loading:
    """One condition of loading, before and after the change."""

    name: str
    fill: Numbers | None = number("percent", "fill of the tank that leaves", expected=True)
    displacement_before: Numbers = number("mass", "displacement before the change")
    net: Numbers = number("mass", "net mass in that condition")
    sinkage: Numbers = number("length_small", "sinkage in that condition")
    trim: Numbers | None = number("length_small", "trim by the bow in that condition")
    list: Numbers | None = number("angle", "list to starboard in that condition")
    metacentric_before: Numbers = number("length", "GM before the change")
    metacentric_after: Numbers = number("length", "GM after the change")
    absent: Mapping[str, str] = field(default_factory=dict)


@record
class WeightResult:
    """As she was weighed; trim is positive by the bow, list and shifts to starboard."""

    hydrostatics: str  # given, offsets, dimensions
    stands_by: str  # inclining test, timed roll, height of gravity
    unplaced: str | None  # names of the masses without a place along her
    filled: str | None  # names of what came from the register
    not_counted: str | None
    before: Afloat
    after: Afloat
    conditions: tuple[Loading, ...]
    ledger: tuple[LedgerLine, ...]
    restraints: tuple[Restraint, ...]
    removed: Numbers = number("mass", "mass that leaves")
    added: Numbers = number("mass", "mass that comes aboard")
    net: Numbers = number("mass", "net mass", cautious="high")
    absolute: Numbers = number("mass", "mass out and in together")
    net_share: Numbers = number("percent", "net mass, of lightship")
    absolute_share: Numbers = number("percent", "out and in together, of lightship")
    light_displacement: Numbers = number("mass", "lightship")
    displacement_before: Numbers = number("mass", "displacement as weighed", expected=True)
    displacement_after: Numbers = number("mass", "displacement after the change", expected=True)
    plate_left: Numbers | None = number("mass", "left of the builder’s plate when cruising")
    sinkage: Numbers = number("length_small", "sinkage")
    trim_angle: float | None = number("angle", "angle of trim, by the bow")
    trim: float | None = number("length_small", "trim, by the bow")
    trim_share: float | None = number("percent", "trim, of waterline length")
    trim_limit: Numbers = number("length_small", "trim that still passes", expected=True)
    fore: Numbers | None = number("length_small", "draught at the fore end, deeper")
    aft: Numbers | None = number("length_small", "draught at the aft end, deeper")
    list: Numbers | None = number("angle", "list, to starboard")
    centre_shift: Numbers | None = number("percent", "centre of gravity, of length, forward")
    gravity_forward: Numbers | None = number("length_small", "centre of gravity, forward")
    gravity_starboard: Numbers | None = number("length_small", "centre of gravity, to starboard")
    gravity_up: Numbers | None = number("length_small", "centre of gravity, up")
    level_trim: float | None = number("mass", "mass that levels trim, moved a metre")
    level_list: float | None = number("mass", "mass that levels list, moved a metre")
    drain_before: Numbers | None = number("length_small", "lowest drain, today", expected=True)
    drain_after: Numbers | None = number("length_small", "lowest drain above water")
    freeboard_aft_before: Numbers | None = number("length", "freeboard aft, today", expected=True)
    freeboard_aft_after: Numbers | None = number("length", "freeboard aft, after the change")
    absent: Mapping[str, str] = field(default_factory=dict)


TRIMMED = (
    "trim_angle", "trim", "trim_share", "fore", "aft", "list", "centre_shift", "gravity_forward",
    "gravity_starboard", "gravity_up", "level_trim", "level_list",
)  # fmt: skip


def weight_result(case: Case, weight: Weight) -> WeightResult:
    """Ledgers, floating and stability of one option."""
    change, given, light = (
        weight.change,
        case.boat.floatation,
        np.asarray(weight.light_displacement),
    )
    return WeightResult(
        hydrostatics=change.before.source,
        stands_by=change.before.stands_by,
        unplaced=", ".join(weight.ledger.unplaced) or None,
        filled=", ".join(weight.ledger.filled) or None,
        not_counted=", ".join(weight.ledger.not_counted) or None,
        before=_afloat(change.before),
        after=_afloat(change.after),
        conditions=tuple(_loading(item, weight.placed) for item in weight.conditions),
        ledger=tuple(_line(sign, item, case.boat.datum) for sign, item in weight.ledger.items),
        restraints=weight.restraints,
        removed=weight.removed_mass,
        added=weight.added_mass,
        net=weight.net,
        absolute=weight.absolute,
        net_share=weight.net / light,
        absolute_share=weight.absolute / light,
        light_displacement=light,
        displacement_before=case.boat.hull.displacement,
        displacement_after=weight.displacement,
        plate_left=weight.plate_left,
        sinkage=change.sinkage,
        trim_limit=TRIM_LIMIT * np.asarray(change.before.waterline_length),
        **(_trimmed(change) if weight.placed else dict.fromkeys(TRIMMED)),
        drain_before=given.drain_height,
        drain_after=_height_left(given.drain_height, weight),
        freeboard_aft_before=given.freeboard_aft,
        freeboard_aft_after=_height_left(given.freeboard_aft, weight),
        absent=_reasons(case, weight.placed),
    )


def _reasons(case: Case, placed: bool) -> dict[str, str]:
    """Why a number is absent, by its field."""
    given = case.boat.floatation
    drain = "no_drain" if given.drain_height is None else NO_PLACE
    aft = "no_freeboard_aft" if given.freeboard_aft is None else NO_PLACE
    return dict.fromkeys(TRIMMED, UNSTABLE if placed else NO_PLACE) | {
        "plate_left": "no_plate",
        "drain_before": drain,
        "drain_after": drain,
        "freeboard_aft_before": aft,
        "freeboard_aft_after": aft,
    }


def _middle(value: Numbers) -> float:
    return scalar(spread(np.asarray(value, dtype=np.float64)).middle)


def _trimmed(change: Change) -> dict[str, Numbers]:
    """What needs the place of every mass."""
    before, shift = change.before, change.gravity_shift
    angle, length = _middle(change.trim), scalar(best(before.waterline_length))
    moment = before.displacement * np.asarray(before.longitudinal_radius) * change.trim
    return {
        "trim_angle": angle,
        "trim": float(np.tan(angle)) * length,
        "trim_share": float(np.tan(angle)),
        "fore": change.fore,
        "aft": change.aft,
        "list": change.list,
        "centre_shift": shift[0] / np.asarray(before.waterline_length),
        "gravity_forward": shift[0],
        "gravity_starboard": shift[1],
        "gravity_up": shift[2],
        "level_trim": abs(_middle(moment)),
        "level_list": abs(_middle(shift[1] * np.asarray(change.after.displacement))),
    }


def _height_left(height: Numbers | None, weight: Weight) -> Numbers | None:
    """Height above water of a point at the aft end, after the change."""
    if height is None or not weight.placed:
        return None
    return height - np.asarray(weight.change.aft)


def _afloat(it: Floating) -> Afloat:
    radius = np.asarray(it.longitudinal_radius)
    return Afloat(
        displacement=it.displacement,
        per_cm=it.waterplane_area * np.asarray(it.water_density) / 100.0,
        trim_per_cm=it.displacement * radius / it.waterline_length / 100.0,
        gravity=it.gravity[0],
        flotation=it.flotation,
        buoyancy_height=it.buoyancy_height,
        transverse_radius=it.transverse_radius,
        longitudinal_radius=it.longitudinal_radius,
        gravity_height=it.gravity[2],
        metacentric_height=it.metacentric_height,
        roll_period=it.roll_period,
        wind_heel=it.wind_heel,
        absent=dict.fromkeys(("roll_period", "wind_heel"), UNSTABLE),
    )


def _loading(item: Condition, placed: bool) -> Loading:
    before, after = item.change.before, item.change.after
    length, why = before.waterline_length, UNSTABLE if placed else NO_PLACE
    return Loading(
        name=item.name,
        fill=item.fill,
        displacement_before=before.displacement,
        net=after.displacement - np.asarray(before.displacement),
        sinkage=item.change.sinkage,
        trim=np.tan(np.asarray(item.change.trim)) * length if placed else None,
        list=item.change.list if placed else None,
        metacentric_before=before.metacentric_height,
        metacentric_after=after.metacentric_height,
        absent={"fill": "tank_stays", "trim": why, "list": why},
    )


def _line(sign: float, item: LedgerItem, datum: str) -> LedgerLine:
    """Mass, doubt, place and moments of one line; the middle mass at the best place."""
    mass, placed = sign * np.asarray(item.mass), item.x is not None
    x, y, z = (item.x, item.y, item.z) if placed else (None, None, None)
    moments = [None if at is None else _middle(mass) * scalar(best(at)) for at in (x, y, z)]
    names = (*AXES, *(f"moment_{axis}" for axis in AXES))
    return LedgerLine(
        way="in" if sign > 0 else "out",
        name=item.name,
        part=item.part or None,
        datum=datum,
        space=item.space or None,
        source=item.source,
        mass=mass,
        x=x,
        y=y,
        z=z,
        moment_x=moments[0],
        moment_y=moments[1],
        moment_z=moments[2],
        absent=dict.fromkeys(names, "place_not_given"),
    )
