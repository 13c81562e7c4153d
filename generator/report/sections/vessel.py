"""Section: what boat is it, where does she lie, and what does the owner ask of her?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import Part, Row, Table, numbers, words

PARTICULARS = (
    ("Length overall", "boat.length_overall_m", "length", "boat.hull.length_overall"),
    ("Waterline length", "boat.waterline_length_m", "length", "boat.hull.waterline_length"),
    ("Greatest beam", "boat.beam_m", "length", "boat.hull.beam"),
    ("Beam on the waterline", "boat.waterline_beam_m", "length", "boat.hull.waterline_beam"),
    ("Draught", "boat.draught_m", "length", "boat.hull.draught"),
    ("Draught of the canoe body", "boat.canoe_draught_m", "length", "boat.hull.canoe_draught"),
    ("Displacement as she floats", "boat.displacement_kg", "mass", "boat.hull.displacement"),
    ("Freeboard, mean", "boat.freeboard_m", "length", "boat.windage.freeboard"),
    ("Mast height", "boat.mast_height_m", "length", "boat.windage.mast_height"),
    ("Drag area seen from ahead", "boat.drag_area_m2", "area", "boat.windage.drag_area"),
    ("Wetted area", "boat.wetted_area_m2", "area", ""),
    ("Length over cube root of volume", "boat.length_displacement_ratio", "ratio", ""),
    ("Waterline beam over canoe draught", "boat.beam_draught_ratio", "ratio", ""),
    (
        "Prismatic coefficient", "boat.prismatic_coefficient", "ratio",
        "boat.hull.prismatic_coefficient",
    ),
    ("Hull speed", "boat.hull_speed_kn", "speed", ""),
)  # fmt: skip
LEG_FORMS = (
    ("distance_nm", "distance"), ("times_per_year", "count"), ("speed_kn", "speed"),
    ("exposed_distance_nm", "distance"), ("exposed_speed_kn", "speed"), ("wind_kn", "wind"),
    ("foul_stream_kn", "speed"),
)  # fmt: skip


def parts(page: Page) -> tuple[Part, ...]:
    """What she is, the owner's own words, particulars, waters and berth, legs."""
    return (_owner(page), _particulars(page), _waters(page))


def lead(page: Page) -> Markup:
    """What she is, in a sentence."""
    return page.text(
        "{boat.name|given} is a {boat.type|given} of {boat.length_overall_m|length}"
        f"{_keel(page)}, first placed on the market in {{boat.year_on_market|year}}, "
        "floating at {boat.displacement_kg|mass}. Her hull speed is {boat.hull_speed_kn|speed}; "
        "the owner plans to motor at {planning.cruise_speed_kn|speed}."
    )


def _keel(page: Page) -> str:
    """Her keel, where her type does not name it already."""
    named = "keel" in str(page.value("boat.type")).lower()
    return "" if named else " with a {boat.keel_type|given} keel"


def _owner(page: Page) -> Part:
    said = [*page.keys("study.priorities"), *page.keys("study.reasons")]
    quotes = tuple(Markup("<q>") + page.words(key) + Markup("</q>") for key in said)
    return Part("owner", "What the owner asks, in the owner’s words", quotes)


def _particulars(page: Page) -> Part:
    rows = tuple(
        Row(Markup.escape(name), (page.show(key, form), _origin(page, path)))
        for name, key, form, path in PARTICULARS
    )
    table = Table(
        "particulars",
        page.text("Particulars of {boat.name|given} as used in every calculation"),
        (words("Particular", 46), numbers("Value", 20), words("How it is known", 34)),
        rows,
    )
    return Part("particulars-part", "Particulars", (), (), (table,))


def _origin(page: Page, path: str) -> Markup:
    """How an input is known: as the case says, by default, or worked out from others."""
    found = page.find("inputs", path=path) if path else None
    if found:
        given = page.value(f"{found}.from")
        origin = page.words(f"{found}.from") if given else Markup("given")
        doubt = page.value(f"{found}.plus_minus")
        shown = page.show(f"{found}.plus_minus", "plain")
        return origin + Markup(" ±\u00a0") + shown if doubt else origin
    return Markup("default, see appendix") if _assumed(page, path) else Markup("worked out")


def _assumed(page: Page, path: str) -> bool:
    taken = {str(each).split("@")[0] for each in page.column("assumptions", "path")}
    return path in taken


def _waters(page: Page) -> Part:
    text = page.text(
        "She sails on the {waters.name|given} ({waters.exposure|given}, {waters.kind|given} water "
        "at {waters.temperature_c|temperature}, {waters.fetch_km|fetch} of open water to windward)."
    )
    return Part("waters", "Waters, berth and legs", (text, _berth(page)), (), (_legs(page),))


def _berth(page: Page) -> Markup:
    if not page.value("berth.shore_power"):
        return page.text("At {berth.name|given} there is no shore power.")
    return page.text(
        "At {berth.name|given} the pedestal gives {berth.breaker_a|current} at "
        "{berth.voltage_v|voltage}, {berth.breaker_share_pct|percent} of it for hours; between two "
        "outings lie {berth.days_between_use_d|days}."
    )


def _legs(page: Page) -> Table:
    rows = tuple(_leg(page, key) for key in page.keys("legs"))
    wind, miles, speed = page.unit("wind"), page.unit("distance"), page.unit("speed")
    columns = (
        words("Leg", 29), numbers("Length", 9, miles), numbers("A year", 8),
        numbers("Speed", 8, speed), numbers("Exposed", 10, miles), numbers("at", 7, speed),
        numbers("Wind", 7, wind), numbers("Stream", 9, speed), words("Refuge, sail", 13),
    )  # fmt: skip
    caption = page.text(
        "The legs she motors; on the exposed part the wind is on the nose, the stream foul"
    )
    return Table("legs", caption, columns, rows)


def _leg(page: Page, key: str) -> Row:
    cells = [page.show(f"{key}.{name}", f"{form}:bare") for name, form in LEG_FORMS]
    escape = page.words(f"{key}.refuge") + Markup(", ") + page.words(f"{key}.sailable")
    must = page.value(f"{key}.must_make")
    name = page.words(f"{key}.name") + Markup(" <b>must be made</b>" if must else "")
    return Row(name, (*cells, escape), "strong" if must else "")
