"""Part of the results: which gates of a foul stream does she pass?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import Part, Row, Table, numbers, reasons, words


def gates(page: Page) -> Part:
    """Whether she passes the gates of her legs."""
    return Part("gates", "Foul stream at the gates", tables=_gates(page))


def _gates(page: Page) -> tuple[Table, ...]:
    keys = [key for motor in page.motors for key in page.keys(f"{motor}.stream.gates")]
    if not keys:
        return ()
    speed = page.unit("speed")
    columns = (
        words("Leg and option", 32), numbers("Stream", 9, speed), words("Which", 13),
        numbers("To spare", 10, speed), numbers("One in ten", 10, speed),
        numbers("Cheapest mile", 13, page.unit("energy_per_mile")),
        numbers("through the water", 13, speed),
    )  # fmt: skip
    rows = tuple(_gate(page, key) for key in keys)
    caption = page.text(
        "Gates: speed on the continuous rating less the stream; {limits.gate_go_kn|speed} is "
        "enough, {limits.gate_tide_kn|speed} asks for the tide to be worked"
    )
    used = [f"{key}.{name}" for key in keys for name in ("least_kwh_per_nm", "through_kn")]
    return (Table("gate-table", caption, columns, rows, reasons(page, used)),)


def _gate(page: Page, key: str) -> Row:
    option = key.split(".stream.")[0]
    head = page.words(f"{key}.name") + Markup("<br>") + page.words(f"{option}.name")
    which = Markup("springs") if page.value(f"{key}.at_springs") else Markup("mean of the leg")
    cells = (
        page.show(f"{key}.stream_kn", "speed:bare"), which,
        page.show(f"{key}.margin_kn", "speed:bare"),
        page.show(f"{key}.margin_low_kn", "speed:bare"),
        page.show(f"{key}.least_kwh_per_nm", "energy_per_mile:bare"),
        page.show(f"{key}.through_kn", "speed:bare"),
    )  # fmt: skip
    return Row(head, cells)
