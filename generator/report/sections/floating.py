"""Part of the results: how does she float and stand afterwards, in which condition of loading?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.page import Page, joined
from generator.report.parts import Part, Row, Table, numbers, reasons, words
from generator.verbatim import as_typed

ROWS = (
    ("gravity_height_m", "length", "Centre of gravity above today's waterline"),
    ("transverse_radius_m", "length", "Metacentric radius BM"),
    ("metacentric_height_m", "length", "Metacentric height GM"),
    ("roll_period_s", "seconds", "Time of a full roll"),
    ("wind_heel_deg", "angle", "Heel under bare poles, wind abeam"),
)
SOURCES = {
    "given": "by the figures in the case",
    "offsets": "by the offsets in {boat.offsets_file|given}, integrated",
    "dimensions": "by waterline, beam and displacement, with the corrections for yachts",
}
STANDS = {
    "inclining test": "GM is that of the case, from an inclining test or papers.",
    "timed roll": "GM follows from the timed roll of {boat.roll_period_s|seconds}.",
    "height of gravity": "GM of {KEY.before.metacentric_height_m|FORM} rests on an assumed "
    "height of the centre of gravity at the waterline of today, until ten rolls are timed.",
}


def part(page: Page) -> Part:
    """What holds the battery boxes, before and after, and each condition of loading."""
    moved = [key for key in page.options if page.value(f"{key}.weight.conditions")]
    if not moved:
        text = page.text("No option moves a mass: {boat.name|given} floats as she does today.")
        return Part("floating", "Floating and stability", (text,))
    said = (joined((_by(page, moved[0]), _deferred(page, moved))), *_restraints(page))
    loaded = [key for key in page.motors if key in moved] or moved
    tables = (_stands(page, moved), _conditions(page, loaded))
    return Part("floating", "Floating and stability", said, (), tables)


def _by(page: Page, option: str) -> Markup:
    """On what hydrostatics and stability rest."""
    key = f"{option}.weight"
    source = SOURCES[page.value(f"{key}.hydrostatics")]
    stands = STANDS[page.value(f"{key}.stands_by")].replace("KEY", key)
    stands = stands.replace("FORM", _gm_form(page, option))
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
        f"A naval architect confirms, for {page.called(worst)}, the net "
        f"{{{key}.net_kg|mass:signed}} and GM of "
        f"{{{key}.after.metacentric_height_m|{_gm_form(page, worst)}}}: "
        "these are figures for small angles and tell nothing of a knock-down."
    )


def _gm_form(page: Page, option: str) -> str:
    """GM to the centimetre where it is measured, to the decimetre where a height is assumed."""
    assumed = page.value(f"{option}.weight.stands_by") == "height of gravity"
    return "height" if assumed else "length"


def _figures(page: Page, moved: list[str]) -> list[tuple[str, str, str]]:
    """The rows of the table, each with its form; one that is nothing for all is left out."""
    form = _gm_form(page, moved[0])
    keys = [f"{moved[0]}.weight.before", *(f"{key}.weight.after" for key in moved)]
    return [
        (name, form if name == "metacentric_height_m" else own, label)
        for name, own, label in ROWS
        if any(page.plain(f"{key}.{name}", f"{own}:bare").strip("0.") for key in keys)
    ]


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
        for name, form, label in _figures(page, moved)
    )
    caption = page.text(
        "{boat.name|given} as weighed, today and with each option; heel in "
        "{planning.hold_wind_kn|wind} of wind"
    )
    return Table(
        "stands-table", caption, (words("Figure", 36), numbers("Today", 16), *columns), rows
    )


CELL = ("net_kg", "trim_mm", "metacentric_after_m")


def _conditions(page: Page, moved: list[str]) -> Table:
    """One row for each condition of loading: with the diesel, and what each option does to it."""
    found: dict[str, dict[str, str]] = {}
    for option in moved:
        for key in page.keys(f"{option}.weight.conditions"):
            found.setdefault(as_typed(str(page.value(f"{key}.name"))), {})[option] = key
    rows = tuple(_condition(page, moved, keys) for keys in found.values())
    columns = (
        words("Condition", 22), numbers("With the diesel", 12, page.unit("mass")),
        numbers("GM", 8, page.unit("length")),
        *(numbers(page.words(f"{key}.name"), 58 // len(moved)) for key in moved),
    )  # fmt: skip
    caption = page.text(
        "Her tank as filled with the diesel, then net mass, trim by the bow and GM with each motor "
        "(more in weight_conditions.csv)"
    )
    used = [f"{key}.{name}" for keys in found.values() for key in keys.values() for name in CELL]
    return Table("conditions-table", caption, columns, rows, reasons(page, used))


def _condition(page: Page, moved: list[str], keys: dict[str, str]) -> Row:
    first = next(iter(keys.values()))
    gm = _gm_form(page, moved[0])
    forms = dict(zip(CELL, ("mass:signed", "length_small:signed", gm), strict=True))
    cells = (
        page.show(f"{first}.displacement_before_kg", "mass:bare"),
        page.show(f"{first}.metacentric_before_m", f"{gm}:bare"),
        *(
            joined((page.at(keys.get(option), name, form) for name, form in forms.items()), ", ")
            for option in moved
        ),
    )
    return Row(page.words(f"{first}.name"), cells)


def _restraints(page: Page) -> tuple[Markup, ...]:
    """What the battery boxes of each motor are to be held against; none without boxes."""
    boxes = [
        (motor, key) for motor in page.motors for key in page.keys(f"{motor}.weight.restraints")
    ]
    if not boxes:
        return ()
    held = "; ".join(
        f"{{{key}.name|given}}{_whose(page, motor)} {{{key}.sideways_n|force}}"
        for motor, key in boxes
    )
    up = "and upwards, should she turn over"
    if page.value(f"{boxes[0][1]}.upwards_n") is None:
        up = "not upwards in {waters.exposure|given} waters"
    return (
        page.text(
            "Fastenings hold {boat.shock_allowance|ratio} times the weight ahead and sideways, "
            f"{up}, for the installer to confirm: {held}."
        ),
    )


def _whose(page: Page, motor: str) -> str:
    """Of which motor, where there are several."""
    return f" of {page.called(motor)}" if len(page.motors) > 1 else ""
