"""Section: what drives her today, and what does the sea add to a clean hull?"""

from __future__ import annotations

from dataclasses import replace

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import Part, Row, Table, numbers, words


def drive(page: Page) -> Part:
    """The present engine, its gear and its propeller."""
    engine = page.text(
        "The present diesel of {engine.year|year} gives {engine.rated_power_kw|power} at "
        "{engine.rated_speed_rpm|rpm} and has run {engine.hours_h|hours}; its condition is stated "
        "as {engine.condition|given}; its owner reckons {engine.hours_per_year_h|hours} a year. On "
        f"the legs of this case it runs {{engine.legs_hours_h|hours}} a year{_burnt(page)} "
        "from a tank of {engine.tank_l|fuel}."
    )
    own = _drive(page)
    return replace(own, text=(engine, *own.text))


def _burnt(page: Page) -> str:
    """What it burns in a year, and at cruise, where the formulas give either."""
    if page.value("engine.litres_per_year_l") is None:
        return ","
    cruise = " ({engine.litres_per_hour_cruise_l|fuel_rate} at cruise)"
    if page.value("engine.litres_per_hour_cruise_l") is None:
        cruise = ""
    return f" and burns {{engine.litres_per_year_l|fuel}}{cruise},"


def _drive(page: Page) -> Part:
    text = page.text(
        "A reduction of {engine.gear_ratio|ratio} turns a {propeller.kind|given} propeller of "
        "{propeller.blades|count} blades, {propeller.diameter_mm|length_small} in diameter and "
        "{propeller.pitch_mm|length_small} in pitch, on a {propeller.installation|given}. Its wake "
        "fraction is taken as {propeller.wake_fraction|ratio} and its thrust deduction as "
        "{propeller.thrust_deduction|ratio}."
    )
    served = [page.words(key) for key in page.keys("house.services")]
    services = (
        (Markup("Services that the diesel gives and that end with it: ")
         + Markup(", ").join(served) + Markup("."),) if served else ()
    )  # fmt: skip
    return Part("drive", "Engine, gear and propeller", (text, *services))


def service(page: Page) -> Part:
    """What bottom, propeller, wind and steering add to a clean hull."""
    known = page.value("service_factor.product_at_cruise") is not None
    raised = (
        " to {service_factor.product_at_cruise|ratio} of clean at cruise, against a flat "
        "{service_factor.single_factor|ratio} by common practice."
        if known
        else "; by common practice a flat {service_factor.single_factor|ratio} stands for them."
    )
    rows = tuple(_factor(page, key) for key in page.keys("service_factor.parts"))
    table = Table(
        "service-factor",
        page.text(
            "In-service factor by part; at cruise in a calm it comes to "
            "{service_factor.product_at_cruise|ratio}"
            if known
            else "In-service factor by part"
        ),
        (
            words("Part", 34), words("Acts on", 16), numbers("Value", 10),
            numbers("Range", 18), words("In a calm", 11), words("In wind and sea", 11),
        ),
        rows,
    )  # fmt: skip
    text = page.text(
        "A clean hull in still water is not what {boat.name|given} meets (her bottom: "
        "{boat.bottom|given}). In a calm, bottom and propeller alone raise her power" + raised
    )
    note = page.sentence("service_factor.note")
    return Part("service", "From clean hull to in service", (text, note), (), (table,))


def _factor(page: Page, key: str) -> Row:
    cells = (
        page.words(f"{key}.applies_to"),
        page.show(f"{key}.value", "ratio"),
        page.span(f"{key}.low", f"{key}.high", "ratio"),
        page.words(f"{key}.in_calm"),
        page.words(f"{key}.in_wind"),
    )
    return Row(page.words(f"{key}.name"), cells)
