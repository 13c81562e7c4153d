"""Part of the results: what does the battery give at a crawl, and what have owners read?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import Part, Row, Table, numbers, words


def part(page: Page) -> Part | None:
    """Watts at 2 to 3.5 kn of the first motor, between two published curves and readings."""
    if not page.motors or not page.value(f"{page.motors[0]}.low_speed"):
        return None
    first = f"{page.motors[0]}.low_speed.0"
    text = page.text(
        f"Slow, the drive itself counts: at {{{first}.speed_kn|speed}} the propeller shaft needs "
        f"{{{first}.shaft_w|watts}}, and the battery gives {{{first}.battery_w|watts}} for it; "
        f"{{{first}.standing_w|watts}} of that turn shaft and seal and feed the controller, and "
        "would be taken without any thrust too. Of two published efficiency curves that of a large "
        f"drive would take {{{first}.best_curve_w|watts}} there and that of a small one "
        f"{{{first}.worst_curve_w|watts}}; the figure used lies between them, and a maker's own "
        "curve would settle it."
    )
    return Part("low-speed", "At a crawl", (text,), (), (_crawl(page), _readings(page)))


def _crawl(page: Page) -> Table:
    motor = page.motors[0]
    watts = page.unit("watts")
    columns = (
        words(f"Speed, {page.unit('speed')}", 14), numbers("Shaft", 12, watts),
        numbers("Without thrust", 16, watts),
        numbers("Battery, one in ten to nine in ten", 28, watts),
        numbers("Large drive’s curve", 15, watts), numbers("Small drive’s curve", 15, watts),
    )  # fmt: skip
    rows = tuple(
        Row(
            page.show(f"{key}.speed_kn", "speed:bare"),
            (
                page.show(f"{key}.shaft_w", "watts:bare"),
                page.show(f"{key}.standing_w", "watts:bare"),
                _spread(page, key, "battery"),
                page.show(f"{key}.best_curve_w", "watts:bare"),
                page.show(f"{key}.worst_curve_w", "watts:bare"),
            ),
        )
        for key in page.keys(f"{motor}.low_speed")
    )
    caption = page.text(
        f"Calm, in service, {{{motor}.name|given}}: what the shaft needs and the battery gives"
    )
    return Table("low-speed-table", caption, columns, rows)


def _readings(page: Page) -> Table:
    watts = page.unit("watts")
    columns = (
        words("Boat and reading", 52), numbers("Speed", 10, page.unit("speed")),
        numbers("Owner read", 12, watts),
        numbers(page.text("{boat.name|given} by the study"), 26, watts),
    )  # fmt: skip
    rows = tuple(
        Row(
            page.words(f"{key}.boat") + Markup("<br>") + page.words(f"{key}.note"),
            (
                page.show(f"{key}.speed_kn", "speed:bare"),
                page.show(f"{key}.read_w", "watts:bare"),
                _spread(page, key, "here"),
            ),
        )
        for key in page.keys(f"{page.motors[0]}.owners_readings")
    )
    caption = page.text(
        "What owners of other boats have read at the battery; their hulls and screws differ from "
        "those of {boat.name|given}"
    )
    return Table("readings-table", caption, columns, rows)


def _spread(page: Page, key: str, name: str) -> Markup:
    return (
        page.show(f"{key}.{name}_w", "watts:bare") + Markup(' <span class="spread">')
        + page.span(f"{key}.{name}_low_w", f"{key}.{name}_high_w", "watts:bare")
        + Markup("</span>")
    )  # fmt: skip
