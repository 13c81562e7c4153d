"""Part of the technical appendix: each criterion with its limit, its value and its result."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import Part
from generator.report.template import pieces

TEMPLATE = "sections/criteria.html"
EVIDENCE = 28  # the criterion whose value is a grade
# What the value of a criterion is, by its number; a ratio of two energies or powers has no unit.
FORMS = {
    2: "share", 4: "speed", 6: "speed", 7: "ratio", 8: "specific_power", 9: "speed", 10: "speed",
    11: "hours", 13: "share", 15: "temperature", 16: "share_small", 17: "share_small",
    18: "flag", 19: "flag", 20: "flag", 21: "flag", 22: "voltage", 23: "share", 24: "lengths",
    25: "years", 26: "share", 27: "flag",
}  # fmt: skip
CHIPS = {
    "go": ("go", "Pass"), "conditional": ("conditional", "Pass with conditions"),
    "no": ("no", "Fail"), "told": ("told", "For information"),
    "not applicable": ("open", "Not applicable"), "not assessed": ("open", "Not assessed"),
}  # fmt: skip
NAMES, RESULTS, MOST_RESULTS = 15, 20, 60  # width of a column, per cent of the table


@dataclass(frozen=True)
class Cell:
    """Where one motor is on a criterion, and its result."""

    value: Markup
    chip: Markup


@dataclass(frozen=True)
class Line:
    """One criterion for all motors."""

    number: Markup
    name: Markup
    limit: Markup
    cells: tuple[Cell, ...]


def every(page: Page) -> Part | None:
    """All criteria, with how they are judged; none without a motor."""
    if not page.motors:
        return None
    numbers = [page.value(key)["id"] for key in page.keys("criteria")]
    rows = [_line(page, number) for number in numbers]
    motors = [page.text(page.called(motor, True)) for motor in page.motors]
    each = min(RESULTS, MOST_RESULTS // len(motors))
    widths = [NAMES, 100 - NAMES - each * len(motors)]
    widths += [8 * each // RESULTS, each - 8 * each // RESULTS] * len(motors)
    return Part(
        "criteria-table", pieces(TEMPLATE, "head")(), body=pieces(TEMPLATE, "intro")(),
        closing=pieces(TEMPLATE, "table")(rows, motors, widths),
    )  # fmt: skip


def chip(result: str) -> Markup:
    """A result as a coloured word."""
    look, word = CHIPS.get(result, ("open", result))
    return Markup('<span class="chip {}">{}</span>').format(look, word)


def _line(page: Page, number: int) -> Line:
    found = [page.find(f"{motor}.verdict.criteria", id=number) for motor in page.motors]
    key = next(each for each in found if each is not None)
    cells = tuple(
        Cell(Markup(), chip("not assessed")) if each is None
        else Cell(_value(page, each, number), chip(page.value(each)["result"]))
        for each in found
    )  # fmt: skip
    return Line(
        page.show(f"{key}.id", "count"), page.words(f"{key}.name"),
        page.sentence(f"{key}.limit"), cells,
    )  # fmt: skip


def _value(page: Page, key: str, number: int) -> Markup:
    """The cautious figure; a grade is a word."""
    if number == EVIDENCE:
        return page.words("evidence.grade")
    return page.show(f"{key}.pessimistic", form_of(number))


def form_of(number: int) -> str:
    """How the value of a criterion is shown."""
    return FORMS.get(number, "ratio")
