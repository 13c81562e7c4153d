"""Part of the results: which inputs move the verdict, and how are they made sure?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.figures.tornado import tornado
from generator.report.page import Page
from generator.report.parts import (
    Figure,
    Part,
    Row,
    Table,
    numbers,
    reasons,
    without_columns,
    words,
)
from generator.report.sections.criteria import form_of

MUST_MAKE = 1  # the criterion of the worst leg
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
    form = form_of(page.value(f"{own}.criterion"))
    finding = page.text(
        f"{page.called(motor, True)}: “{{{own}.criterion_name|given}}” stands at "
        f"{{{own}.best|{form}}} with a limit of {{{own}.limit_go|{form}}}; most of its doubt "
        f"comes from the input “{{{own}.rows.0.what|given}}”."
    )
    note = page.text(
        "The deciding criterion with the least in hand at the pessimistic end; the upright line is "
        f"the best estimate. {_held(page, motor)}Evidence: {{evidence.grade|given}}."
    )
    name = f"tornado-{motor.split('.')[1]}"
    return Figure(name, finding, note, lambda: tornado(page, motor, name, form))


def _held(page: Page, motor: str) -> str:
    """In how many draws a must-make leg is held at all, where some do not hold it."""
    worst = page.value(f"{motor}.worst_leg")
    share = None if worst is None else page.value(f"{motor}.legs.{worst}.feasible_share")
    if page.value(f"{motor}.tornado.criterion") != MUST_MAKE or share is None or share >= 1.0:
        return ""
    held = f"{{{motor}.legs.{worst}.feasible_share|share}}"
    return f"The leg is held at all in {held} of the draws; where it is not, the value is nothing. "


def _ends(page: Page, motor: str, key: str) -> Markup:
    """The criterion at both ends of an input, from low to high."""
    form = form_of(page.value(f"{motor}.tornado.criterion"))
    ends = [f"{key}.at_low", f"{key}.at_high"]
    if all(page.value(end) is not None for end in ends):
        ends.sort(key=page.value)
    return page.span(ends[0], ends[1], form)


def _table(page: Page, motors: list[str]) -> Table:
    rows = tuple(
        Row(
            page.words(f"{key}.what"),
            (
                page.words(f"{motor}.name"),
                _ends(page, motor, key),
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
    ends = [
        f"{key}.{end}" for motor in motors for key in page.keys(f"{motor}.tornado.rows")[:NAMED]
        for end in ("at_low", "at_high")
    ]  # fmt: skip
    table = Table("measure-next", caption, columns, rows, reasons(page, ends))
    return table if len(motors) > 1 else without_columns(table, ("Motor",))
