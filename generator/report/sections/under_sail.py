"""Part of the results: what does the propeller cost and give while she sails?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import Part, Row, Table, numbers, reasons, without_empty, words

FORMS = {
    "sailing_kn": "speed", "battery_w": "watts", "returned_w": "watts",
    "returned_lost_kn": "speed_small",
}  # fmt: skip
STATES = ("locked", "free", "feathered", "folded")


def part(page: Page) -> Part:
    """Knots lost by state, a knot more by motor, and regeneration as a bonus."""
    if not page.value(f"{page.options[0]}.under_sail"):
        return Part("under-sail", "")
    text = (*_motor_sailing(page), *_bonus(page))
    return Part("under-sail", "Under sail", text, (), (_table(page),))


def _motor_sailing(page: Page) -> tuple[Markup, ...]:
    """What a knot more costs; motors of the same figures share a sentence."""
    told = []
    for motor, names in _alike(page, "one_more", ("sailing_kn", "battery_w")):
        rows = page.keys(f"{motor}.under_sail.one_more")
        slow, fast = rows[0], rows[-1]
        if None in (page.value(f"{slow}.battery_w"), page.value(f"{fast}.battery_w")):
            continue
        told.append(
            f"Motor-sailing, {names} adds a knot to {{{slow}.sailing_kn|speed}} under sail for "
            f"{{{slow}.battery_w|watts}} from the battery, and to {{{fast}.sailing_kn|speed}} for "
            f"{{{fast}.battery_w|watts}}, the pull of the sails held."
        )
    return (page.text(" ".join(told)),) if told else ()


def _bonus(page: Page) -> tuple[Markup, ...]:
    """Regeneration of each motor whose propeller can; nothing of it is in the verdict."""
    told = []
    for motor, names in _alike(page, "rows", ("returned_w", "returned_lost_kn")):
        row = f"{motor}.under_sail.rows.2"
        if page.value(f"{row}.returned_w") is None:
            continue
        told.append(
            f"At {{{row}.sailing_kn|speed}} under sail {names} could take back "
            f"{{{row}.returned_w|watts}}, and she would sail "
            f"{{{row}.returned_lost_kn|speed_small}} slower for it than with the propeller turning "
            "freely. The verdict and every range count it as nothing."
        )
    return (page.text(" ".join(told)),) if told else ()


def _alike(page: Page, rows: str, names: tuple[str, ...]) -> list[tuple[str, str]]:
    """The first motor of each set whose shown figures are the same, and what the set is called."""
    sets: dict[tuple[str, ...], list[str]] = {}
    for motor in page.motors:
        keys = page.keys(f"{motor}.under_sail.{rows}")
        shown = tuple(page.plain(f"{key}.{name}", FORMS[name]) for key in keys for name in names)
        sets.setdefault(shown, []).append(motor)
    return [(same[0], " or ".join(page.called(motor) for motor in same)) for same in sets.values()]


def _table(page: Page) -> Table:
    key = f"{(page.motors or page.options)[0]}.under_sail.rows"
    speed = page.unit("speed_small")
    columns = (
        words(f"Sailing at, {page.unit('speed')}", 16),
        *(numbers(f"Lost, {state}", 16, speed) for state in STATES),
        numbers("Given back", 20, page.unit("watts")),
    )
    rows = tuple(_row(page, row) for row in page.keys(key))
    caption = page.text(
        "Speed that a propeller of her diameter and blade area takes off under sail, by its state: "
        "what is locked or turns freely today, and what a feathering or folding one would cost"
    )
    names = (*(f"{state}_lost_kn" for state in STATES), "returned_w")
    used = [f"{row}.{name}" for row in page.keys(key) for name in names]
    table = Table("under-sail-table", caption, columns, rows, reasons(page, used))
    return without_empty(table)


def _row(page: Page, key: str) -> Row:
    cells = [page.show(f"{key}.{state}_lost_kn", "speed_small:bare") for state in STATES]
    cells.append(page.show(f"{key}.returned_w", "watts:bare"))
    return Row(page.show(f"{key}.sailing_kn", "speed:bare"), tuple(cells))
