"""Part of the results: what does each option make good against wind and sea?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.figures.headwind import headwind_ladder
from generator.report.page import Page
from generator.report.parts import Figure, Part, Row, Table, numbers, reasons, words

SHOWN = (0, 10, 15, 20, 25, 30, 35)  # kn of wind in the table


def part(page: Page) -> Part:
    """Lee-shore paragraph, chart of the ladder, and the table of speeds and what binds."""
    if not page.value(f"{page.options[0]}.headwind"):
        return Part("headwind", "")
    text = (_lead(page), *(_lee_shore(page, option) for option in page.options))
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


def _lee_shore(page: Page, option: str) -> Markup:
    ends = [_ends(page, option, kind) for kind in _kinds(page, option)]
    return page.text(f"{{{option}.name|given}}: {_held(page, option)}; {'; '.join(ends)}.")


def _kinds(page: Page, option: str) -> tuple[str, ...]:
    return ("continuous", "peak") if option in page.motors else ("continuous",)


def _held(page: Page, option: str) -> str:
    key = f"{option}.headwind.lee_shore"
    if page.value(f"{key}.beyond_limit"):
        return f"off a lee shore in {{{key}.wind_kn|wind}} not by engine alone"
    peak = f" ({{{key}.peak_kn|speed}} at peak)" if option in page.motors else ""
    return (
        f"off a lee shore in {{{key}.wind_kn|wind}} she makes {{{key}.continuous_kn|speed}}{peak}; "
        f"{{limits.least_way_kn|speed}} there ask for {{{key}.need_n|force}} of thrust"
    )


def _ends(page: Page, option: str, kind: str) -> str:
    key = f"{option}.headwind.{kind}"
    rating = f" on the {kind} rating" if option in page.motors else ""
    if page.value(f"{key}.stops_by") == "sea":
        return f"she still makes {{limits.least_way_kn|speed}}{rating} where the wave formula ends"
    return (
        f"she stops making {{limits.least_way_kn|speed}}{rating} in {{{key}.stops_kn|wind}} "
        "(one in ten already in "
        f"{{{key}.stops_low_kn|wind}}), where {{{key}.stops_by|given}} binds"
    )


def _figure(page: Page) -> Figure:
    told = []
    for motor in page.motors or page.options[:1]:
        key = f"{motor}.headwind.continuous"
        if page.value(f"{key}.stops_by") == "sea":
            told.append(
                f"{{{motor}.name|given}} makes {{limits.least_way_kn|speed}} up to "
                "the end of the wave formula"
            )
        else:
            told.append(
                f"{{{motor}.name|given}} stops making {{limits.least_way_kn|speed}} in "
                f"{{{key}.stops_kn|wind}} for good"
            )
    finding = page.text("; ".join(told) + ".")
    note = page.text(
        "Middle of {study.draws|count} draws, in service, sea over a fetch of "
        "{waters.fetch_km|fetch}; the screw solved against power, torque, turns, battery current "
        "and battery voltage. Markers: {limits.least_way_kn|speed} made good. Grey: "
        "beyond the wave formula."
    )
    return Figure("headwind-ladder", finding, note, headwind_ladder(page))


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
