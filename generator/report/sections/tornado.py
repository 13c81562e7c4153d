"""Part of the results: which inputs move the verdict, and how are they made sure?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.figures.tornado import tornado
from generator.report.page import Page
from generator.report.parts import Figure, Part, Row, Table, numbers, words

NAMED = 3  # inputs to measure next, per motor


def part(page: Page) -> Part | None:
    """A chart for each motor, and what to measure before an order."""
    motors = [motor for motor in page.motors if page.keys(f"{motor}.tornado.rows")]
    if not motors:
        return None
    text = page.text(
        "Each doubtful input of {boat.name|given} is set in turn where one draw in ten lies below "
        "it and where one in ten lies above, all else at the best estimate; hatched is its low "
        "end, filled its high end."
    )
    figures = tuple(_figure(page, motor) for motor in motors)
    return Part("tornado", "What is worth measuring", (text,), figures, (_table(page, motors),))


def _figure(page: Page, motor: str) -> Figure:
    own = f"{motor}.tornado"
    finding = page.text(
        f"{{{motor}.name|given}}: “{{{own}.criterion_name|given}}” stands at {{{own}.best|ratio}} "
        f"with a limit of {{{own}.limit_go|ratio}}; most of its doubt is "
        f"{{{own}.rows.0.what|given}}."
    )
    note = page.text(
        "The deciding criterion with the least in hand at the pessimistic end; the upright line is "
        "the best estimate. Evidence: {evidence.grade|given}."
    )
    name = f"tornado-{motor.split('.')[1]}"
    return Figure(name, finding, note, tornado(page, motor, name))


def _table(page: Page, motors: list[str]) -> Table:
    rows = tuple(
        Row(
            page.words(f"{key}.what"),
            (
                page.words(f"{motor}.name"),
                page.show(f"{key}.at_low", "ratio")
                + Markup(" \u2013 ")
                + page.show(f"{key}.at_high", "ratio"),
                page.words(f"{key}.how") if page.value(f"{key}.how") else Markup("–"),
            ),
        )
        for motor in motors
        for key in page.keys(f"{motor}.tornado.rows")[:NAMED]
    )
    columns = (
        words("Measure next", 30), words("Motor", 18), numbers("Criterion moves", 16),
        words("How", 36),
    )  # fmt: skip
    caption = page.text("Before any order for {boat.name|given}: what to make sure, and how")
    return Table("measure-next", caption, columns, rows)
