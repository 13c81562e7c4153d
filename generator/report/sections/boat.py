"""Section: what boat is it, where does she lie, what drives her, and which trips does she make?"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import LONG, Part
from generator.report.template import pieces

TEMPLATE = "sections/boat.html"
NONE = Markup()
# Name in the template, key, form, and path of the case by which it is known how it is known.
PARTICULARS = (
    ("displacement", "displacement_kg", "mass", "boat.hull.displacement"),
    ("waterline_length", "waterline_length_m", "length", "boat.hull.waterline_length"),
    ("waterline_beam", "waterline_beam_m", "length", "boat.hull.waterline_beam"),
    ("canoe_draught", "canoe_draught_m", "length", "boat.hull.canoe_draught"),
    ("wetted_area", "wetted_area_m2", "area", ""),
    ("drag_area", "drag_area_m2", "area", "boat.windage.drag_area"),
)
TRIP = (
    ("distance_nm", "distance"), ("times_per_year", "count"), ("speed_kn", "speed"),
    ("exposed_distance_nm", "distance"), ("exposed_speed_kn", "speed"), ("wind_kn", "wind"),
    ("foul_stream_kn", "speed"),
)  # fmt: skip
ENGINE = (
    ("year", "engine.year", "year"), ("power", "engine.rated_power_kw", "power:whole"),
    ("speed", "engine.rated_speed_rpm", "rpm"), ("hours", "engine.hours_h", "hours"),
    ("hours_per_year", "engine.hours_per_year_h", "hours"),
    ("legs_hours", "engine.legs_hours_h", "hours"),
    ("litres", "engine.litres_per_year_l", "fuel"),
    ("litres_per_hour", "engine.litres_per_hour_cruise_l", "fuel_rate"),
    ("tank", "engine.tank_l", "fuel"), ("ratio", "engine.gear_ratio", "ratio"),
    ("cruise", "planning.cruise_speed_kn", "speed:whole"),
    ("blades", "propeller.blades", "count"),
    ("diameter", "propeller.diameter_mm", "length_small"),
    ("pitch", "propeller.pitch_mm", "length_small"),
)  # fmt: skip
WATERS = (
    ("fetch", "waters.fetch_km", "fetch"), ("temperature", "waters.temperature_c", "temperature"),
    ("coldest", "waters.coldest_c", "temperature"), ("breaker", "berth.breaker_a", "current"),
    ("voltage", "berth.voltage_v", "voltage"), ("share", "berth.breaker_share_pct", "percent"),
    ("days", "berth.days_between_use_d", "days"),
)  # fmt: skip


@dataclass(frozen=True)
class Particular:
    """A figure of the boat and how it is known: given, standard, worked out or seen."""

    value: Markup
    known: str
    origin: str = ""
    doubt: Markup = NONE


def lead(page: Page) -> Markup:
    """What she is, in two sentences."""
    named = "keel" in str(page.value("boat.type")).lower()
    shown = {
        "name": page.words("boat.name"),
        "type": page.words("boat.type"),
        "keel": NONE if named else page.words("boat.keel_type"),
        "year": _there(page, "boat.year_on_market", "year"),
        "length": page.show("boat.length_overall_m", "length"),
        "displacement": page.show("boat.displacement_kg", "mass"),
        "hull_speed": page.show("boat.hull_speed_kn", "speed"),
        "cruise": page.show("planning.cruise_speed_kn", "speed:whole"),
    }
    return pieces(TEMPLATE, "lead")(shown)


def parts(page: Page) -> tuple[Part, ...]:
    """Particulars, waters and berth, the present drive, trips."""
    return (
        _part("particulars", pieces(TEMPLATE, "particulars")(_particulars(page))),
        _part("waters", pieces(TEMPLATE, "waters")(_waters(page))),
        drive(page),
        _part("trips", _trips(page)),
    )


def _part(name: str, body: Markup) -> Part:
    title = pieces(TEMPLATE, "title")(name)
    return Part(f"{name}-part", Markup(title.strip()), body=body)


def drive(page: Page) -> Part:
    """The present engine, its gear and its propeller, and the services that end with it."""
    shown: dict[str, Any] = {name: _there(page, key, form) for name, key, form in ENGINE}
    shown |= {
        "condition": str(page.value("engine.condition")),
        "kind": page.words("propeller.kind"),
        "installation": page.words("propeller.installation"),
    }
    services = [page.words(key) for key in page.keys("house.services")]
    return _part("drive", pieces(TEMPLATE, "drive")(shown, services))


def _there(page: Page, key: str, form: str) -> Markup:
    """A number, or nothing where there is none."""
    return NONE if page.value(key) is None else page.show(key, form)


def _particulars(page: Page) -> dict[str, Particular]:
    found = {
        name: _known(page, page.show(f"boat.{key}", form), path)
        for name, key, form, path in PARTICULARS
    }
    return found | {"bottom": Particular(page.words("boat.bottom"), "seen")}


def _known(page: Page, value: Markup, path: str) -> Particular:
    """As the case says it, by a standard value, or worked out from others."""
    found = page.find("inputs", path=path) if path else None
    if found is None:
        taken = {str(each).partition("@")[0] for each in page.column("assumptions", "path")}
        return Particular(value, "standard" if path in taken else "worked out")
    doubt = page.show(f"{found}.plus_minus", "plain") if page.value(f"{found}.plus_minus") else NONE
    return Particular(value, "given", str(page.value(f"{found}.from") or ""), doubt)


def _waters(page: Page) -> dict[str, Any]:
    shown: dict[str, Any] = {name: _there(page, key, form) for name, key, form in WATERS}
    shown |= {name: page.words(f"waters.{name}") for name in ("name", "exposure", "kind")}
    return shown | {
        "berth": page.words("berth.name"),
        "shore_power": bool(page.value("berth.shore_power")),
    }


def _trips(page: Page) -> Markup:
    found = [_trip(page, key) for key in page.keys("legs")]
    units = {form: page.unit(form) for form in ("distance", "speed", "wind")}
    must = any(trip["must_make"] for trip in found)
    return pieces(TEMPLATE, "trips")(found, units, "long" if len(found) >= LONG else "", must)


def _trip(page: Page, key: str) -> dict[str, Any]:
    facts = {name: page.value(f"{key}.{name}") for name in ("refuge", "sailable", "must_make")}
    return {
        "name": page.words(f"{key}.name"),
        "exposed": bool(page.value(f"{key}.exposed_distance_nm")),
        **facts,
        **{name: page.show(f"{key}.{name}", f"{form}:bare") for name, form in TRIP},
    }
