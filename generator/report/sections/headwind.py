"""Part of the results: what does each option make good against wind and sea?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.figures.headwind import headwind_ladder
from generator.report.page import Page
from generator.report.parts import Figure, Part, Row, Table, numbers, reasons, words

SHOWN = (0, 10, 15, 20, 25, 30, 35)  # kn of wind in the table


def part(page: Page) -> Part:
    """What the wind raises, chart of the ladder, and the table of speeds and what binds."""
    if not page.value(f"{page.options[0]}.headwind"):
        return Part("headwind", "")
    text = (_lead(page), _lee_shore(page))
    return Part("headwind", "Against the wind", text, (_figure(page),), (_table(page),))


def _lead(page: Page) -> Markup:
    key = f"{page.options[0]}.headwind"
    return page.text(
        "Against the wind she meets its force on hull and rig and the sea that it raises over "
        f"{{waters.fetch_km|fetch}}: {{{key}.lee_shore.wave_height_m|length}} in "
        f"{{{key}.lee_shore.wind_kn|wind}} (the open sea has "
        f"{{{key}.lee_shore.open_sea_m|height}} in it). The wave formula ends at "
        f"{{{key}.limit_wind_kn|wind}} over that fetch; beyond it no speed is given for any "
        "option, the diesel among them."
    )


def _lee_shore(page: Page) -> Markup:
    """What a lee shore asks for, once for all, and what each option makes there."""
    key = f"{page.options[0]}.headwind.lee_shore"
    if page.value(f"{key}.beyond_limit"):
        return page.text(
            f"Off a lee shore in {{{key}.wind_kn|wind}} the sea is beyond what the wave formula "
            "covers, and no speed is given for any option."
        )
    held = "; ".join(_held(page, option) for option in page.options)
    return page.text(
        f"Off a lee shore in {{{key}.wind_kn|wind}}, {{limits.least_way_kn|speed}} made good ask "
        f"for {{{key}.need_n|force}} of thrust. There {held}."
    )


def _kinds(page: Page, option: str) -> tuple[str, ...]:
    return ("continuous", "peak") if option in page.motors else ("continuous",)


def _held(page: Page, option: str) -> str:
    key = f"{option}.headwind.lee_shore"
    name = page.called(option)
    if option not in page.motors:
        return f"{name} makes {{{key}.continuous_kn|speed}}"
    return (
        f"{name} makes {{{key}.continuous_kn|speed}} on its continuous rating and "
        f"{{{key}.peak_kn|speed}} at peak"
    )


def _stops(page: Page, kinds: list[tuple[str, str]]) -> Row:
    """The wind in which each falls below the least way: the middle, then one in ten."""
    cells = []
    for option, kind in kinds:
        key = f"{option}.headwind.{kind}"
        low = page.show(f"{key}.stops_low_kn", "wind:bare")
        if page.value(f"{key}.stops_by") == "sea":
            cells.append(Markup("still makes it at ") + page.show(f"{key}.stops_kn", "wind"))
            continue
        cells.append(
            page.show(f"{key}.stops_kn", "wind") + Markup(' <span class="spread">')
            + low + Markup("</span>")
        )  # fmt: skip
    head = page.text("Falls below {limits.least_way_kn|speed} in, one in ten already in")
    return Row(head, tuple(cells), "group")


def _figure(page: Page) -> Figure:
    told: list[str] = []
    for motor in page.motors or page.options[:1]:
        key = f"{motor}.headwind.continuous"
        if page.value(f"{key}.stops_by") == "sea":
            told.append(
                f"{page.called(motor, not told)} makes {{limits.least_way_kn|speed}} up to "
                f"{{{key}.stops_kn|wind}}, the end of the wave formula"
            )
        else:
            told.append(
                f"{page.called(motor, not told)} falls below {{limits.least_way_kn|speed}} in "
                f"{{{key}.stops_kn|wind}} of wind on its continuous rating"
            )
    finding = page.text("; ".join(told) + ".")
    note = page.text(
        "Middle of {study.draws|count} draws, in service, sea over a fetch of "
        "{waters.fetch_km|fetch}; the screw solved against power, torque, turns, battery current "
        "and battery voltage. Markers: {limits.least_way_kn|speed} made good. Grey: "
        "beyond the wave formula."
    )
    return Figure("headwind-ladder", finding, note, lambda: headwind_ladder(page))


def _table(page: Page) -> Table:
    columns = [words(f"Wind, {page.unit('wind')} and Beaufort", 13)]
    kinds = [(option, kind) for option in page.options for kind in _kinds(page, option)]
    width = 87 // len(kinds)
    for option, kind in kinds:
        name = page.words(f"{option}.name")
        head = name + Markup(", ") + kind if option in page.motors else name
        columns.append(numbers(head, width, page.unit("speed")))
    rows, used = [], []
    for wind in SHOWN:
        keys = [f"{option}.headwind.rows.{wind}" for option, _ in kinds]
        cells = tuple(_cell(page, key, kind) for key, (_, kind) in zip(keys, kinds, strict=True))
        used += [f"{key}.{kind}_kn" for key, (_, kind) in zip(keys, kinds, strict=True)]
        head = page.show(f"{keys[0]}.wind_kn", "wind:bare") + Markup(" · F\u2009")
        rows.append(Row(head + page.show(f"{keys[0]}.beaufort", "count"), cells))
    rows.append(_stops(page, kinds))
    caption = page.text(
        "Speed made good against wind and its sea, and what binds there; nothing made good is "
        "driven back"
    )
    return Table("headwind-table", caption, tuple(columns), tuple(rows), reasons(page, used))


def _cell(page: Page, key: str, kind: str) -> Markup:
    shown = page.show(f"{key}.{kind}_kn", "speed:bare")
    if page.value(f"{key}.{kind}_kn") is None:
        return shown
    return shown + Markup(" ") + page.words(f"{key}.{kind}_limit")
