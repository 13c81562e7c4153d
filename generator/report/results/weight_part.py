"""What does results.json say of the masses of one option, and of how she floats with them?"""

from __future__ import annotations

from typing import Any

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import best, scalar, spread
from generator.analyses.weight.floating import Change, Floating
from generator.analyses.weight.placement import Placement
from generator.analyses.weight.weight import Condition, Restraint, Weight
from generator.arrays import Numbers
from generator.case.option import LedgerItem
from generator.report.results.suffix import PER_SI, put

Row = dict[str, Any]
AXES = ("x", "y", "z")
NO_PLACE = "no place is given"
NO_SPACES = "the case names no spaces for batteries"


def _middle(value: Numbers | None, suffix: str) -> float | None:
    """The middle of the draws in the unit of a suffix; None where there is no number."""
    if value is None:
        return None
    found = scalar(spread(np.asarray(value, dtype=np.float64)).middle)
    return found * PER_SI[suffix] if np.isfinite(found) else None


def weight_part(found: Findings) -> Row:
    """Ledgers, floating and stability of one option."""
    weight = found.weight
    return {
        **_masses(found, weight),
        **_floating(found, weight),
        "before": _stands(weight.change.before),
        "after": _stands(weight.change.after),
        "conditions": [_condition(item, weight) for item in weight.conditions],
        "removed": [_item(item) for item in weight.removed],
        "added": [_item(item) for item in weight.added],
        "ledger": [_line(sign, item, found) for sign, item in weight.ledger.items],
        "filled": ", ".join(weight.ledger.filled) or None,
        "not_counted": ", ".join(weight.ledger.not_counted) or None,
        "restraints": [_restraint(item) for item in weight.restraints],
    }


def _masses(found: Findings, weight: Weight) -> Row:
    net = spread(weight.net)
    light = weight.light_displacement
    return {
        "removed_kg": _middle(weight.removed_mass, "kg"),
        "added_kg": _middle(weight.added_mass, "kg"),
        "net_kg": scalar(net.middle),
        "net_low_kg": scalar(net.low),
        "net_high_kg": scalar(net.high),
        "absolute_kg": _middle(weight.absolute, "kg"),
        "net_share_pct": _middle(weight.net / np.asarray(light), "pct"),
        "absolute_share_pct": _middle(weight.absolute / np.asarray(light), "pct"),
        "light_displacement_kg": _middle(light, "kg"),
        "displacement_before_kg": put(found.case.boat.hull.displacement, "kg"),
        "displacement_after_kg": put(weight.displacement, "kg"),
        "plate_left_kg": _middle(weight.plate_left, "kg"),
        "plate_left_why": "no builder's plate load given" if weight.plate_left is None else None,
    }


def _floating(found: Findings, weight: Weight) -> Row:
    change, length = weight.change, put(weight.change.before.waterline_length, "m")
    placed = weight.placed
    given = found.case.boat.floatation
    return {
        "sinkage_mm": _middle(change.sinkage, "mm"),
        **(_trimmed(change) if placed else _untrimmed()),
        "trim_limit_mm": None if length is None else 0.005 * length * 1e3,
        "trim_why": weight.trim_why or None,
        "drain_before_mm": put(given.drain_height, "mm"),
        "drain_after_mm": _height_left(given.drain_height, change, placed, "mm"),
        "drain_why": None if given.drain_height is not None else "no drain was measured",
        "freeboard_aft_before_m": put(given.freeboard_aft, "m"),
        "freeboard_aft_after_m": _height_left(given.freeboard_aft, change, placed, "m"),
        "freeboard_aft_before_why": None if given.freeboard_aft is not None else "not measured aft",
        "freeboard_aft_after_why": None if given.freeboard_aft is not None else "not measured aft",
        "hydrostatics": change.before.source,
        "stands_by": change.before.stands_by,
    }


def _trimmed(change: Change) -> Row:
    """What needs the place of every mass."""
    angle = scalar(spread(change.trim).middle)
    length = scalar(best(change.before.waterline_length))
    before, shift = change.before, change.gravity_shift
    moment = before.displacement * np.asarray(before.longitudinal_radius) * change.trim
    return {
        "trim_deg": angle * PER_SI["deg"],
        "trim_mm": float(np.tan(angle)) * length * 1e3,
        "trim_share_pct": float(np.tan(angle)) * 100.0,
        "fore_mm": _middle(change.fore, "mm"),
        "aft_mm": _middle(change.aft, "mm"),
        "list_deg": _middle(change.list, "deg"),
        "centre_shift_pct": _middle(shift[0] / before.waterline_length, "pct"),
        "gravity_forward_mm": _middle(shift[0], "mm"),
        "gravity_starboard_mm": _middle(shift[1], "mm"),
        "gravity_up_mm": _middle(shift[2], "mm"),
        "level_trim_kg": abs(_middle(moment, "kg") or 0.0),  # moved by one metre
        "level_list_kg": abs(_middle(shift[1] * change.after.displacement, "kg") or 0.0),
    }


def _untrimmed() -> Row:
    names = ("trim_deg", "trim_mm", "trim_share_pct", "fore_mm", "aft_mm", "list_deg",
             "centre_shift_pct", "gravity_forward_mm", "gravity_starboard_mm",
             "gravity_up_mm", "level_trim_kg", "level_list_kg")  # fmt: skip
    return dict.fromkeys(names)


def _height_left(height: Numbers | None, change: Change, placed: bool, suffix: str) -> float | None:
    """Height above water of a point at the aft end, after the change."""
    if height is None or not placed:
        return None
    return _middle(height - np.asarray(change.aft), suffix)


def _stands(floating: Floating) -> Row:
    """Hydrostatics and stability of one condition."""
    immersion = floating.waterplane_area * np.asarray(floating.water_density)
    trimming = (
        floating.displacement * np.asarray(floating.longitudinal_radius) / floating.waterline_length
    )
    return {
        "displacement_kg": put(floating.displacement, "kg"),
        "per_cm_kg": _middle(immersion / 100.0, "kg"),
        "trim_per_cm_kg": _middle(trimming / 100.0, "kg"),  # moved by one metre
        "gravity_m": _middle(floating.gravity[0], "m"),
        "flotation_m": _middle(floating.flotation, "m"),
        "buoyancy_height_m": _middle(floating.buoyancy_height, "m"),
        "transverse_radius_m": _middle(floating.transverse_radius, "m"),
        "longitudinal_radius_m": _middle(floating.longitudinal_radius, "m"),
        "gravity_height_m": _middle(floating.gravity[2], "m"),
        "metacentric_height_m": _middle(floating.metacentric_height, "m"),
        "roll_period_s": _middle(floating.roll_period, "s"),
        "wind_heel_deg": _middle(floating.wind_heel, "deg"),
    }


def _condition(item: Condition, weight: Weight) -> Row:
    change, placed = item.change, weight.placed
    length = change.before.waterline_length
    return {
        "name": item.name,
        "fill_pct": put(item.fill, "pct"),
        "displacement_before_kg": _middle(change.before.displacement, "kg"),
        "net_kg": _middle(change.after.displacement - np.asarray(change.before.displacement), "kg"),
        "sinkage_mm": _middle(change.sinkage, "mm"),
        "trim_mm": _middle(np.tan(np.asarray(change.trim)) * length, "mm") if placed else None,
        "list_deg": _middle(change.list, "deg") if placed else None,
        "metacentric_before_m": _middle(change.before.metacentric_height, "m"),
        "metacentric_after_m": _middle(change.after.metacentric_height, "m"),
        "trim_why": weight.trim_why or None,
    }


def _place(item: LedgerItem) -> Row:
    """Where it stands; a mass that nobody placed stands nowhere, least of all amidships."""
    placed = item.x is not None
    at = {f"{axis}_m": put(getattr(item, axis), "m") if placed else None for axis in AXES}
    return at | {f"{axis}_why": None if placed else NO_PLACE for axis in AXES}


def _item(item: LedgerItem) -> Row:
    return {
        "name": item.name,
        "mass_kg": _middle(item.mass, "kg"),
        **_place(item),
        "part": item.part or None,
        "space": item.space or None,
        "source": item.source,
    }


def _line(sign: float, item: LedgerItem, found: Findings) -> Row:
    """One line of the yard's list: signed mass, its doubt, place from the datum, moments."""
    mass = spread(sign * np.asarray(item.mass))
    middle = scalar(mass.middle)
    place = _place(item)
    moments = {axis: place[f"{axis}_m"] for axis in AXES}
    return {
        "way": "in" if sign > 0 else "out",
        "name": item.name,
        "part": item.part or None,
        "mass_kg": middle,
        "mass_low_kg": scalar(mass.low),
        "mass_high_kg": scalar(mass.high),
        "datum": found.case.boat.datum,
        **place,
        **{
            f"moment_{axis}_kgm": None if at is None else middle * at
            for axis, at in moments.items()
        },
        **{f"moment_{axis}_why": why for axis in AXES if (why := place[f"{axis}_why"])},
        "space": item.space or None,
        "source": item.source,
    }


def _restraint(item: Restraint) -> Row:
    return {
        "name": item.name,
        "mass_kg": _middle(item.mass, "kg"),
        "sideways_n": _middle(item.sideways, "n"),
        "upwards_n": _middle(item.upwards, "n"),
        "upwards_why": "not asked for in sheltered waters" if item.upwards is None else None,
    }


def placement_part(found: Findings) -> Row:
    """Where the blocks of the bank may stand."""
    placed = found.placement
    if placed is None:
        why = NO_SPACES if found.option.bank is not None else "no propulsion battery"
        return {"placement": None, "placement_why": why}
    return {
        "placement": _placement(placed, scalar(best(found.weight.change.before.waterline_length)))
    }


def _placement(placed: Placement, length: float) -> Row:
    forward, starboard = placed.to_shift()
    return {
        "fits": placed.fits,
        "level": placed.level,
        "blocks": placed.blocks,
        "block_mass_kg": placed.block_mass,
        "volume_known": placed.volume_known,
        "trim_share_pct": put(placed.trim, "pct"),
        "trim_mm": None if placed.trim is None else placed.trim * length * 1e3,
        "list_deg": put(placed.list, "deg"),
        "why": placed.why or None,
        "trim_share_why": placed.why or None,
        "trim_why": placed.why or None,
        "list_why": placed.why or None,
        "shift_forward_kg": abs(max(forward, 0.0)),  # by one metre
        "shift_aft_kg": abs(max(-forward, 0.0)),
        "shift_starboard_kg": abs(max(starboard, 0.0)),
        "shift_port_kg": abs(max(-starboard, 0.0)),
        "spaces": [
            {
                "name": berth.space.name,
                "blocks": berth.blocks,
                "room": berth.room,
                "bound_by": berth.bound_by,
                "mass_kg": berth.blocks * placed.block_mass,
                "max_mass_kg": put(berth.space.max_mass, "kg"),
                "volume_l": put(berth.space.volume, "l"),
                "above_bilge_mm": put(berth.space.above_bilge, "mm"),
                "above_bilge_why": "height above bilge water not measured"
                if berth.space.above_bilge is None
                else None,
                "x_m": put(berth.space.x, "m"),
                "y_m": put(berth.space.y, "m"),
                "z_m": put(berth.space.z, "m"),
            }
            for berth in placed.berths
        ],
    }
