"""Part of the appendix: what does a mile cost against a stream?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.figures.foul_stream import foul_stream
from generator.report.page import Page
from generator.report.parts import Figure, Part, Row, Table, numbers, reasons, words

SHOWN = (0, 4, 8, 12, 16)  # rows of the analysis, whole knots


def part(page: Page) -> Part:
    """Energy per mile over the ground, the speed that asks for least."""
    if not page.motors or not page.value(f"{page.motors[0]}.stream"):
        return Part("stream", "")
    return Part("stream", "Foul stream", (), (_figure(page),), (_streams(page),))


def _figure(page: Page) -> Figure:
    finding = page.text(" ".join([*(_told(page, motor) for motor in page.motors), _doubled(page)]))
    note = page.text(
        "Calm water, in service, house load included where it draws on this bank. Cheapest speed: "
        "never below {limits.least_through_kn|speed} through the water and "
        "{limits.least_over_kn|speed} over the ground."
    )
    return Figure("foul-stream", finding, note, lambda: foul_stream(page))


def _told(page: Page, motor: str) -> str:
    key = f"{motor}.stream"
    return (
        f"{page.called(motor, True)} pays {{{key}.rows.0.least_kwh_per_nm|energy_per_mile}} in "
        f"slack water and {{{key}.rows.8.least_kwh_per_nm|energy_per_mile}} against "
        f"{{{key}.rows.8.stream_kn|speed}}."
    )


def _doubled(page: Page) -> str:
    """From which stream on a mile costs twice; motors of the same figure share a sentence."""
    sets: dict[str, list[str]] = {}
    for motor in page.motors:
        if page.value(f"{motor}.stream.doubles_kn") is not None:
            sets.setdefault(page.plain(f"{motor}.stream.doubles_kn", "speed"), []).append(motor)
    told = []
    for same in sets.values():
        names = " and ".join(page.called(motor) for motor in same)
        whom = "" if len(sets) == 1 else f" with {names}"
        told.append(
            f"Above {{{same[0]}.stream.doubles_kn|speed}} of stream a mile{whom} costs twice what "
            "it does in slack water."
        )
    return " ".join(told)


def _streams(page: Page) -> Table:
    energy, speed = page.unit("energy_per_mile"), page.unit("speed")
    columns = [words(f"Stream, {speed}", 10)]
    width = 88 // (3 * len(page.motors))
    for motor in page.motors:
        name = page.words(f"{motor}.name")
        columns += [
            numbers(name + Markup(": cruise"), width, energy),
            numbers("cheapest", width, energy),
            numbers("through the water", width, speed),
        ]
    rows, used = [], []
    for place in SHOWN:
        cells: list[Markup] = []
        for motor in page.motors:
            key = f"{motor}.stream.rows.{place}"
            for cost in ("cruise_kwh_per_nm", "least_kwh_per_nm"):
                cells.append(page.show(f"{key}.{cost}", "energy_per_mile:bare"))
                used.append(f"{key}.{cost}")
            cells.append(page.show(f"{key}.through_kn", "speed:bare"))
        head = page.show(f"{page.motors[0]}.stream.rows.{place}.stream_kn", "speed:bare")
        rows.append(Row(head, tuple(cells)))
    caption = page.text("Energy for a mile over the ground, and the speed that asks for least")
    return Table("stream-table", caption, tuple(columns), tuple(rows), reasons(page, used))
