"""What does results.json say of the case: boat, engine, waters, berth, legs, inputs?"""

from __future__ import annotations

from datetime import date, timedelta
from typing import Any

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.handling.confined import ConfinedLeg
from generator.analyses.motion.service_factor import UNTOLD
from generator.analyses.percentiles import scalar, spread
from generator.case.assumption import Assumption
from generator.case.case import Case
from generator.case.diesel import Propeller
from generator.case.usage import Leg
from generator.draws import Draws
from generator.report.results.suffix import CRUISE_BEYOND, NOT_MOTORED, excused, put
from generator.tables.method import method_numbers

# Defaults that stand in for a thing which the case may say itself.
OVERRULED = {
    "boat.hull.waterline_beam_share": "boat.hull.waterline_beam",
    "boat.keel.wetted_area_share": "boat.keel.wetted_area",
    "boat.keel.chord_share": "boat.keel.chord",
    "boat.keel.volume_share": "boat.keel.volume",
    "boat.keel.centre_share": "boat.keel.centre_depth",
    "boat.rudder.wetted_area_share": "boat.rudder.wetted_area",
    "boat.rudder.chord_share": "boat.rudder.chord",
    "boat.windage.freeboard_share": "boat.windage.freeboard",
    "boat.windage.mast_height_share": "boat.windage.mast_height",
    "boat.windage.mast_diameter_share": "boat.windage.mast_diameter",
}
HALF_A_YEAR = timedelta(days=182)  # validity of quotes: common practice, no source


def case_part(case: Case, draws: Draws) -> dict[str, Any]:
    """File, instruction and study."""
    study = case.study
    missing = [
        name
        for name, value in (("reference", study.reference), ("signatory", study.prepared_by))
        if not value
    ]
    return {
        "case": {
            "file": case.file.name,
            "sha256": case.file.sha256,
            "reference": study.reference or None,
            "reference_why": None if study.reference else "not given in the case",
            "client": study.client,
            "prepared_by": study.prepared_by or None,
            "prepared_by_why": None if study.prepared_by else "not given in the case",
            "date": study.date,
            "valid_until": _half_a_year_after(study.date),
            "currency": study.currency,
            "units": study.units,
            "qualification": study.qualification or None,
            "independence": study.independence or None,
            "issue": study.issue or "1",
            "changes": list(study.changes),
            "draft": bool(missing),
            "draft_why": f"no {' and no '.join(missing)} given" if missing else None,
        },
        "study": {
            "priorities": list(study.priorities),
            "reasons": list(study.reasons),
            "draws": draws.count,
            "seed": draws.seed,
        },
    }


def _half_a_year_after(day: str) -> str:
    """The day on which prices and the state of the boat want a second look."""
    return (date.fromisoformat(day) + HALF_A_YEAR).isoformat()


def boat_part(case: Case, today: Findings) -> dict[str, Any]:
    """Particulars of the boat as she is."""
    boat, hull, form = case.boat, case.boat.hull, today.power.vessel.form
    length_ratio = form.waterline_length / np.asarray(form.canoe_volume) ** (1.0 / 3.0)
    return {
        "name": boat.name,
        "type": boat.type,
        "keel_type": hull.keel_type,
        "hull_type": hull.hull_type,
        "year_on_market": boat.year_on_market,
        "market": boat.market,
        "import_date": boat.import_date,
        **({} if boat.import_date else {"import_date_why": "not brought in from elsewhere"}),
        "design_category": boat.design_category,
        "datum": boat.datum,
        "bottom": boat.bottom or UNTOLD,
        "length_overall_m": put(hull.length_overall, "m"),
        "waterline_length_m": put(hull.waterline_length, "m"),
        "beam_m": put(hull.beam, "m"),
        "waterline_beam_m": put(form.waterline_beam, "m"),
        "draught_m": put(hull.draught, "m"),
        "canoe_draught_m": put(form.canoe_draught, "m"),
        "displacement_kg": put(hull.displacement, "kg"),
        "freeboard_m": put(today.power.vessel.freeboard, "m"),
        "mast_height_m": put(today.power.vessel.mast_height, "m"),
        "drag_area_m2": put(today.power.vessel.drag_area, "m2"),
        "wetted_area_m2": put(form.canoe_wetted_area, "m2"),
        "length_displacement_ratio": put(length_ratio, "1"),
        "beam_draught_ratio": put(form.waterline_beam / form.canoe_draught, "1"),
        "prismatic_coefficient": put(form.prismatic_coefficient, "1"),
        "hull_speed_kn": put(today.power.vessel.hull_speed, "kn"),
        "offsets_file": None if boat.offsets is None else boat.offsets.file,
        "roll_period_s": put(boat.floatation.roll_period, "s"),
        "shock_allowance": put(case.masses.shock_allowance, "1"),
        "floatation_centre_m": put(form.waterline_length * (0.5 + form.lcf), "m"),
    }


def propeller_part(propeller: Propeller) -> dict[str, Any]:
    """One propeller."""
    return {
        "kind": propeller.kind,
        "blades": propeller.blades,
        "diameter_mm": put(propeller.diameter, "mm"),
        "pitch_mm": put(propeller.pitch, "mm"),
        "area_ratio": put(propeller.area_ratio, "1"),
        "wake_fraction": put(propeller.wake_fraction, "1"),
        "thrust_deduction": put(propeller.thrust_deduction, "1"),
        "installation": propeller.installation,
    }


def engine_part(case: Case, keep: Findings | None) -> dict[str, Any]:
    """The present engine, and what it burns by the study's own curve."""
    engine = case.engine
    burnt: dict[str, Any] = dict.fromkeys(("litres_per_hour_cruise_l", "litres_per_year_l"))
    if keep is not None:
        cruise, yearly = (spread(each).middle for each in (keep.key.cruise_drain, keep.legs.yearly))
        burnt = excused({"litres_per_hour_cruise_l": scalar(cruise) * 3.6e6}, CRUISE_BEYOND)
        burnt |= excused({"litres_per_year_l": scalar(yearly) * 1e3}, NOT_MOTORED)
    return {
        "rated_power_kw": put(engine.rated_power, "kw"),
        "rated_speed_rpm": put(engine.rated_speed, "rpm"),
        "gear_ratio": put(engine.gear_ratio, "1"),
        "tank_l": put(engine.tank, "l"),
        "year": engine.year,
        "hours_h": put(engine.hours, "h"),
        "hours_per_year_h": put(engine.hours_per_year, "h"),
        "condition": engine.condition,
        **burnt,
        "legs_hours_h": None
        if keep is None
        else scalar(spread(keep.legs.yearly_time).middle) / 3600.0,
    }


def surroundings_part(case: Case, found: Findings) -> dict[str, Any]:
    """Waters, berth, house, planning and legs."""
    waters, berth, house, plan = case.waters, case.berth, case.house, case.planning
    power = None
    if berth.breaker is not None and berth.voltage is not None:
        power = put(np.asarray(berth.breaker) * np.asarray(berth.voltage), "kw")
    return {
        "waters": {
            "name": waters.name,
            "kind": waters.kind,
            "exposure": waters.exposure,
            "temperature_c": put(waters.temperature, "degc"),
            "coldest_c": put(found.case.waters.coldest, "degc"),
            "fetch_km": put(waters.fetch, "km"),
            "country": waters.country,
        },
        "berth": {
            "name": berth.name,
            "shore_power": berth.shore_power,
            "breaker_a": put(berth.breaker, "a"),
            "breaker_share_pct": put(berth.breaker_share, "pct"),
            "voltage_v": put(berth.voltage, "v"),
            "charge_power_kw": power,
            "days_between_use_d": put(berth.days_between_use, "d"),
        },
        "house": {
            "under_way_w": put(house.under_way, "w"),
            "separate_bank": house.separate_bank,
            "buffered": house.buffered,
            "daily_kwh": put(house.daily, "kwh"),
            "services": list(house.services),
        },
        "planning": {
            "cruise_speed_kn": put(plan.cruise_speed, "kn"),
            "manoeuvring_speed_kn": put(plan.manoeuvring_speed, "kn"),
            "manoeuvring_time_min": put(plan.manoeuvring_time, "min"),
            "hold_speed_kn": put(plan.hold_speed, "kn"),
            "hold_wind_kn": put(plan.hold_wind, "kn"),
            "hold_time_min": put(plan.hold_time, "min"),
            "reserve_share_pct": put(plan.reserve_share, "pct"),
            "horizon_years": case.prices.horizon,
        },
        "legs": [
            _leg(item.leg, item.must_make)
            | next((_confined(own) for own in found.confined if own.place == place), {})
            for place, item in enumerate(found.legs.results)
        ],
    }


def _leg(leg: Leg, must_make: bool) -> dict[str, Any]:
    return {
        "name": leg.name,
        "distance_nm": put(leg.distance, "nm"),
        "times_per_year": put(leg.times_per_year, "1"),
        "speed_kn": put(leg.speed, "kn"),
        "exposed_distance_nm": put(leg.exposed_distance, "nm"),
        "exposed_speed_kn": put(leg.exposed_speed, "kn"),
        "wind_kn": put(leg.wind, "kn"),
        "fetch_km": put(leg.fetch, "km"),
        "depth_m": put(leg.depth, "m"),
        "width_m": put(leg.width, "m"),
        "foul_stream_kn": put(leg.foul_stream, "kn"),
        "refuge": leg.refuge,
        "sailable": leg.sailable,
        "season": leg.season or None,
        "track": leg.track,
        "must_make": must_make,
    }


def _confined(item: ConfinedLeg) -> dict[str, Any]:
    """What depth and width of a leg mean for her, at the unfavourable end of their doubt."""
    return {
        "depth_froude": item.depth_froude,
        "blockage_pct": None if item.blockage is None else 100.0 * item.blockage,
        "deep_enough": not item.too_shallow,
        "wide_enough": not item.too_narrow,
    }


def _by_place(given: list[Assumption]) -> list[Assumption]:
    """In the order of the case file: the parts by their first line, in each part line by line."""
    first: dict[str, int] = {}
    for item in given:
        part = item.path.partition(".")[0].partition("[")[0]
        first[part] = min(first.get(part, item.line), item.line)
    return sorted(
        given,
        key=lambda item: (first[item.path.partition(".")[0].partition("[")[0]], item.line),
    )


def _overruled(item: Assumption, given: set[str]) -> bool:
    """Is this default of no effect, because the case says the thing itself?"""
    return OVERRULED.get(item.draw_key.partition("@")[0]) in given


def _idle(item: Assumption, case: Case) -> bool:
    """Is this default of no effect, because nothing that it belongs to is aboard?"""
    key = item.draw_key.partition("@")[0]
    return key == "house.inverter_standing" and not np.any(case.house.cooking)


def inputs_part(case: Case) -> dict[str, Any]:
    """Every given number with its origin, how many were measured, and every default used."""
    told: dict[str, Assumption] = {}
    for item in case.assumptions:  # what an option inherits was given once
        if item.origin == "given":
            told.setdefault(item.draw_key, item)
    given = _by_place(list(told.values()))
    paths = {item.path for item in case.assumptions if item.origin == "given"}
    defaults = {
        (item.draw_key, item.size): item
        for item in case.assumptions
        if item.origin == "default" and not _overruled(item, paths) and not _idle(item, case)
    }
    counts = {
        name: sum(item.provenance == name for item in given)
        for name in ("weighed", "measured", "builder", "estimate")
    }
    sure = counts["weighed"] + counts["measured"]
    return {
        "inputs": [
            {
                "path": item.path,
                "value": item.value,
                "unit": item.unit,
                "from": item.provenance or None,
                "plus_minus": item.plus_minus or None,
                "shown": item.shown,
            }
            for item in given
        ],
        "input_count": {
            **counts,
            "sure": sure,
            "given": len(given),
            "defaults": len(defaults),
            "total": len(given) + len(defaults),
        },
        "assumptions": [
            {
                "path": item.draw_key.partition("@")[0],
                "when": item.draw_key.partition("@")[2] or item.size or None,
                "value": item.value,
                "low": item.low,
                "high": item.high,
                "unit": item.unit,
                "source": item.source,
                "mark": item.mark,
                "meaning": item.meaning,
                "shown": item.shown,
                "shown_low": item.shown_low,
                "shown_high": item.shown_high,
            }
            for item in defaults.values()
        ],
        "method_numbers": [
            {
                "key": item.key,
                "value": item.value,
                "shown": item.shown,
                "mark": item.mark,
                "source": item.source,
                "meaning": item.meaning,
            }
            for item in method_numbers().values()
        ],
    }
