"""Part of the results: how far to reserve, at which speed and in which sea?"""

from __future__ import annotations

from collections.abc import Callable

from markupsafe import Markup

from generator.report.canvas import Drawing
from generator.report.figures.range_bars import range_bars
from generator.report.figures.range_speed import range_speed
from generator.report.page import Page
from generator.report.parts import Column, Figure, Part, Row, Table, numbers, reasons, words


def part(page: Page) -> Part:
    """Charts of range by sea state and by speed, and the table behind them."""
    figures = (bars(page, "range-bars", lambda: range_bars(page, "range-bars")), _by_speed(page))
    text = page.text(
        "Range is counted to the reserve, never to an empty bank, and through the water. The bank "
        "is taken new and aged over {planning.horizon_years|years}."
    )
    return Part("range", "Range", (text,), figures, (_table(page),))


def bars(page: Page, name: str, draw: Callable[[], Drawing]) -> Figure:
    """Chart 1 with its finding, for page 1 and for the results."""
    finding = "; ".join(_finding(page, motor) for motor in page.motors)
    if page.must_make:
        finding += f". The must-make leg is {{{page.must_make}.distance_nm|distance}}"
    note = page.text(
        "Bank new unless marked. Hatched: what the reserve would give at the same speed. Whisker: "
        "the middle eight tenths of {study.draws|count} draws."
    )
    return Figure(name, page.text(finding + "."), note, draw)


def row_at_cruise(page: Page, option: str, sea: str, age: str = "new") -> str | None:
    """The key of an option's range row in a sea; diesels have a tank instead of an age."""
    rows = f"{option}.range_at_cruise"
    return page.find(rows, sea=sea, bank_age=age) or page.find(rows, sea=sea, bank_age="tank")


def _finding(page: Page, motor: str) -> str:
    calm, wind = (row_at_cruise(page, motor, sea) for sea in ("calm", "wind_20"))
    reach = f"{{{motor}.name|given}} goes {{{calm}.range_nm|distance}} in a calm"
    if page.value(f"{wind}.range_nm") is None:
        return f"{reach} and cannot hold {{{wind}.speed_kn|speed}} against " + _wind(page)
    return f"{reach} and {{{wind}.range_nm|distance}} against " + _wind(page)


def _wind(page: Page) -> str:
    return f"{{{page.find('sea_states', id='wind_20')}.wind_kn|wind}}"


def _by_speed(page: Page) -> Figure:
    finding = "; ".join(_slower(page, motor) for motor in page.motors)
    note = page.text(
        "To reserve, through the water; a curve ends where the continuous rating ends. One scale "
        "for both panels."
    )
    return Figure("range-speed", page.text(finding + "."), note, lambda: range_speed(page))


def _slower(page: Page, motor: str) -> str:
    """What one knot less than planned cruise brings, both by the speeds that are printed."""
    name, slow = f"{{{motor}.name|given}}", f"{motor}.range_slower"
    fast = row_at_cruise(page, motor, "calm")
    told = [
        f"{{{key}.range_nm|distance}} at {{{key}.speed_kn|speed}}"
        for key in (slow, fast)
        if key and page.value(f"{key}.range_nm") is not None
    ]
    return f"{name}: {', '.join(told)} in a calm" if told else f"{name} has no range in a calm"


def _table(page: Page) -> Table:
    rows, keys = [], []
    for sea in page.keys("sea_states"):
        for age in ("new", "aged"):
            row, used = _row(page, sea, age)
            rows.append(row)
            keys += used
    columns = [words("Sea, and bank", 22), numbers("Speed", 8, page.unit("speed"))]
    for motor in page.motors:
        columns += _columns(page, motor, 70 // max(len(page.motors), 1))
    caption = page.text("Range to reserve, its doubt, and the miles that the reserve would add")
    return Table("range-table", caption, tuple(columns), tuple(rows), reasons(page, keys))


def _row(page: Page, sea: str, age: str) -> tuple[Row, list[str]]:
    seas, cells, keys = page.value(sea), [], []
    found = [row_at_cruise(page, motor, seas["id"], age) for motor in page.motors]
    for row in found:
        keys += [f"{row}.range_nm"] if row else []
        cells += _cells(page, row) if row else [Markup("")] * 3
    name = page.text(f"{{{sea}.wind_kn|wind}} ahead") if seas["wind_kn"] else Markup("Calm")
    speed = page.at(next(iter(found), None), "speed_kn", "speed:bare")
    return Row(name + Markup(f", bank {age}"), (speed, *cells)), keys


def _columns(page: Page, motor: str, width: int) -> tuple[Column, ...]:
    name, unit = page.words(f"{motor}.name"), page.unit("distance")
    return (
        numbers(name, width * 38 // 100, unit),
        numbers("one in ten to nine in ten", width * 36 // 100, unit),
        numbers("reserve adds", width * 26 // 100, unit),
    )


def _cells(page: Page, row: str) -> list[Markup]:
    middle = page.show(f"{row}.range_nm", "distance:bare")
    if page.value(f"{row}.range_nm") is None:
        return [middle, Markup(""), Markup("")]
    spread = page.span(f"{row}.range_low_nm", f"{row}.range_high_nm", "distance:bare")
    return [middle, spread, page.show(f"{row}.reserve_nm", "distance:bare")]
