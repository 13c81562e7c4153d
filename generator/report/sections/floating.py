"""Part of the results: how does she float and stand afterwards, in which condition of loading?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import Part, Row, Table, numbers, reasons, words

ROWS = (
    ("displacement_kg", "mass", "Displacement"),
    ("flotation_m", "length", "Centre of flotation, from the datum"),
    ("buoyancy_height_m", "length", "Centre of buoyancy above today's waterline"),
    ("gravity_height_m", "length", "Centre of gravity above today's waterline"),
    ("transverse_radius_m", "length", "Metacentric radius BM"),
    ("metacentric_height_m", "length", "Metacentric height GM"),
    ("roll_period_s", "seconds", "Time of a full roll"),
    ("wind_heel_deg", "angle", "Heel under bare poles, wind abeam"),
)
MOVES = (
    ("fore_mm", "length_small:signed", "Draught at the fore end of the waterline, change"),
    ("aft_mm", "length_small:signed", "Draught at the aft end, change"),
    ("trim_limit_mm", "length_small", "Trim that still passes, over the waterline"),
    ("list_deg", "angle:signed", "List, to starboard"),
    ("gravity_forward_mm", "length_small:signed", "Centre of gravity, forward"),
    ("gravity_starboard_mm", "length_small:signed", "Centre of gravity, to starboard"),
    ("gravity_up_mm", "length_small:signed", "Centre of gravity, up"),
    ("drain_after_mm", "length_small", "Lowest drain above water"),
    ("freeboard_aft_after_m", "length", "Freeboard aft"),
    ("plate_left_kg", "mass:signed", "Left of the builder's plate, cruising"),
)
SOURCES = {
    "given": "by the figures in the case",
    "offsets": "by the offsets in {boat.offsets_file|given}, integrated",
    "dimensions": "by waterline, beam and displacement, with the corrections for yachts",
}
STANDS = {
    "inclining test": "GM is that of the case, from an inclining test or papers.",
    "timed roll": "GM follows from the timed roll of {boat.roll_period_s|seconds}.",
    "height of gravity": "GM rests on an assumed height of the centre of gravity: ten timed rolls "
    "at the berth would replace {KEY.before.metacentric_height_m|length}.",
}


def part(page: Page) -> Part:
    """Before and after, each condition of loading, and what holds the battery boxes."""
    moved = [key for key in page.options if page.value(f"{key}.weight.conditions")]
    if not moved:
        text = page.text("No option moves a mass: {boat.name|given} floats as she does today.")
        return Part("floating", "Floating and stability", (text,))
    tables = (_stands(page, moved), _moves(page, moved), _conditions(page, moved))
    boxes = _restraints(page)
    said = (_by(page, moved[0]), _deferred(page, moved))
    return Part(
        "floating", "Floating and stability", said, (), tables + ((boxes,) if boxes else ())
    )


def _by(page: Page, option: str) -> Markup:
    """On what hydrostatics and stability rest."""
    key = f"{option}.weight"
    source = SOURCES[page.value(f"{key}.hydrostatics")]
    stands = STANDS[page.value(f"{key}.stands_by")].replace("KEY", key)
    return page.text(
        f"Today she is reckoned {source}: {{{key}.before.per_cm_kg|mass}} aboard sink her one "
        f"centimetre, and {{{key}.before.trim_per_cm_kg|mass}} moved one metre along trim her one "
        f"centimetre. {stands}"
    )


def _deferred(page: Page, moved: list[str]) -> Markup:
    """For which numbers a naval architect is asked."""
    worst = max(moved, key=lambda key: abs(page.value(f"{key}.weight.net_kg") or 0.0))
    key = f"{worst}.weight"
    return page.text(
        f"A naval architect confirms, for {{{worst}.name|given}}, the net "
        f"{{{key}.net_kg|mass:signed}} and GM of {{{key}.after.metacentric_height_m|length}}: "
        "these are figures for small angles and tell nothing of a knock-down."
    )


def _stands(page: Page, moved: list[str]) -> Table:
    """Hydrostatics and stability today and under each option."""
    today = f"{moved[0]}.weight.before"
    columns = [numbers(page.words(f"{key}.name"), 48 // len(moved)) for key in moved]
    rows = tuple(
        Row(
            Markup.escape(label),
            (
                page.show(f"{today}.{name}", form),
                *(page.show(f"{key}.weight.after.{name}", form) for key in moved),
            ),
        )
        for name, form, label in ROWS
    )
    caption = page.text(
        "{boat.name|given} as weighed, today and with each option; heel in "
        "{planning.hold_wind_kn|wind} of wind"
    )
    return Table(
        "stands-table", caption, (words("Figure", 36), numbers("Today", 16), *columns), rows
    )


def _moves(page: Page, moved: list[str]) -> Table:
    """How the waterline moves on her sides, and what is left of her limits."""
    columns = [numbers(page.words(f"{key}.name"), 60 // len(moved)) for key in moved]
    rows = tuple(
        Row(
            Markup.escape(label),
            tuple(page.show(f"{key}.weight.{name}", form) for key in moved),
        )
        for name, form, label in MOVES
    )
    keys = [f"{key}.weight.{name}" for key in moved for name, _, _ in MOVES]
    caption = page.text("Where the water stands on her after the change, deeper positive")
    return Table("moves-table", caption, (words("Figure", 40), *columns), rows, reasons(page, keys))


def _conditions(page: Page, moved: list[str]) -> Table:
    """Every condition of loading of every option."""
    forms = (
        ("displacement_before_kg", "mass:bare"),
        ("net_kg", "mass:signed,bare"),
        ("sinkage_mm", "length_small:signed,bare"),
        ("trim_mm", "length_small:signed,bare"),
        ("list_deg", "angle:signed,bare"),
        ("metacentric_before_m", "length:bare"),
        ("metacentric_after_m", "length:bare"),
    )
    keys = [row for key in moved for row in page.keys(f"{key}.weight.conditions")]
    rows = tuple(
        Row(
            page.words(f"{key}.name"),
            (
                page.words(f"{key.split('.weight.')[0]}.name"),
                *(page.show(f"{key}.{name}", form) for name, form in forms),
            ),
            "group" if key.endswith(".0") else "",
        )
        for key in keys
    )
    mass, small, length = (page.unit(form) for form in ("mass", "length_small", "length"))
    columns = (
        words("Condition", 22), words("Option", 17), numbers("With the diesel", 11, mass),
        numbers("Net", 8, mass), numbers("Sinks", 8, small), numbers("By the bow", 9, small),
        numbers("List", 7, page.unit("angle")), numbers("GM before", 9, length),
        numbers("GM after", 9, length),
    )  # fmt: skip
    caption = page.text(
        "Each condition against the same boat with her diesel and that filling of its tank"
    )
    used = [f"{key}.{name}" for key in keys for name, _ in forms]
    return Table("conditions-table", caption, columns, rows, reasons(page, used), "long")


def _restraints(page: Page) -> Table | None:
    """What every battery box is to be held against."""
    keys = [row for key in page.motors for row in page.keys(f"{key}.weight.restraints")]
    if not keys:
        return None
    rows = tuple(
        Row(
            page.words(f"{key}.name"),
            (
                page.words(f"{key.split('.weight.')[0]}.name"),
                page.show(f"{key}.mass_kg", "mass:bare"),
                page.show(f"{key}.sideways_n", "force:bare"),
                page.show(f"{key}.upwards_n", "force:bare"),
            ),
        )
        for key in keys
    )
    force = page.unit("force")
    columns = (
        words("Battery", 30), words("Option", 24), numbers("Mass", 14, page.unit("mass")),
        numbers("Sideways and ahead", 16, force), numbers("Upwards, turned over", 16, force),
    )  # fmt: skip
    caption = page.text(
        "Loads that boxes and fastenings hold: their weight, whichever way it points, times "
        "{boat.shock_allowance|ratio}"
    )
    used = [f"{key}.upwards_n" for key in keys]
    return Table("restraint-table", caption, columns, rows, reasons(page, used))
