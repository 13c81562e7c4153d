"""Part of the results: do the battery's blocks fit, and where do they keep her level?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import Part, Row, Table, numbers, reasons, words

SHIFTS = (
    ("shift_forward_kg", "forward"), ("shift_aft_kg", "aft"),
    ("shift_starboard_kg", "to starboard"), ("shift_port_kg", "to port"),
)  # fmt: skip


def part(page: Page) -> Part:
    """One sentence for each motor, and one row for each of its spaces."""
    placed = [key for key in page.motors if page.value(f"{key}.placement")]
    if not placed:
        text = page.text(
            "The case of {boat.name|given} names no spaces for batteries, so their fit is not "
            "checked: measure each space's volume, what its sole may carry and its height above "
            "the bilge water."
        )
        return Part("placement", "Where the battery goes", (text,) if page.motors else ())
    said = tuple(_sentence(page, key) for key in placed)
    return Part("placement", "Where the battery goes", said, (), (_spaces(page, placed),))


def _sentence(page: Page, option: str) -> Markup:
    """Whether the blocks fit, how she floats with them there, and what else must move."""
    key = f"{option}.placement"
    blocks = (
        f"{page.called(option, True)}: {{{key}.blocks|count}} blocks of "
        f"{{{key}.block_mass_kg|mass}} each"
    )
    if not page.value(f"{key}.fits"):
        return page.text(f"{blocks} do not fit: the spaces together take fewer.")
    if page.value(f"{key}.unplaced"):
        return page.text(
            f"{blocks} fit; they are not shared out, for no place is given for "
            f"{{{key}.unplaced|given}}."
        )
    bulk = "" if page.value(f"{key}.volume_known") else " by mass; the size of a block is not given"
    end = "bow" if page.value(f"{key}.trim_share_pct") >= 0 else "stern"
    trims = f"trims {{{key}.trim_mm|length_small:size}} by the {end}"
    if page.plain(f"{key}.trim_mm", "length_small:size,bare").strip("0.") == "":
        trims = "floats level fore and aft"
    lists = f"lists {{{key}.list_deg|angle:size}}"
    if page.plain(f"{key}.list_deg", "angle:size,bare").strip("0.") == "":
        lists = "stands upright"
    text = (
        f"{blocks} fit{bulk}. As the table shares them out she {trims} and {lists}, the least "
        "trim and list that these spaces allow"
    )
    return page.text(f"{text}{_shift(page, key)}.")


def _shift(page: Page, key: str) -> str:
    """What other masses must move, where the spaces alone do not keep her within limits."""
    if page.value(f"{key}.level"):
        return "; both are within the limits of criterion\u00a0{criteria.16.id|year}"
    asked = [
        f"{{{key}.{name}|mass}} moved one metre {way}"
        for name, way in SHIFTS
        if page.value(f"{key}.{name}")
    ]
    return f"; to come within the limits it takes besides {' and '.join(asked)}"


def _spaces(page: Page, placed: list[str]) -> Table:
    """Every space under every motor."""
    keys = [row for key in placed for row in page.keys(f"{key}.placement.spaces")]
    forms = (
        ("blocks", "count"), ("room", "count"), ("mass_kg", "mass:bare"),
        ("max_mass_kg", "mass:bare"), ("volume_l", "fuel:bare"),
        ("above_bilge_mm", "length_small:bare"),
    )  # fmt: skip
    rows = tuple(
        Row(
            page.words(f"{key}.name"),
            (
                page.words(f"{key.split('.placement.')[0]}.name"),
                *(page.show(f"{key}.{name}", form) for name, form in forms),
                page.words(f"{key}.bound_by"),
            ),
            "group" if key.endswith(".0") else "",
        )
        for key in keys
    )
    mass = page.unit("mass")
    columns = (
        words("Space", 22), words("Option", 17), numbers("Blocks", 8), numbers("Room for", 8),
        numbers("Mass", 8, mass), numbers("May carry", 9, mass),
        numbers("Volume", 9, page.unit("fuel")),
        numbers("Above bilge water", 10, page.unit("length_small")), words("Bound by", 9),
    )  # fmt: skip
    used = [f"{key}.above_bilge_mm" for key in keys]
    caption = page.text("Blocks in the spaces of {boat.name|given} for least trim and list")
    return Table("spaces-table", caption, columns, rows, reasons(page, used))
