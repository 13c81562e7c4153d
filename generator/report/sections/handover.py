"""Part of a pack: what is measured at handover, against which prediction?"""

from __future__ import annotations

from typing import Any

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import Part, Row, Table, numbers, words

DRIVE = "drive."  # before a key of the motor circuit


def part(page: Page) -> Part | None:
    """The tests with the numbers of this boat and room for the reading."""
    keys = page.keys("handover")
    if not keys or not page.motors:
        return None
    rows = tuple(_row(page, key) for key in keys)
    width = 24 // len(page.motors)
    columns = (
        words("Test", 34),
        *(numbers(page.words(f"{motor}.name"), width) for motor in page.motors),
        words("Passes", 27),
        words("Measured, by whom", 15),
    )
    text = page.text(
        "Dead tests before anything is live, then alongside, then the trial on the ground of the "
        "old one. Outside a tolerance once: correct and repeat; twice: the front page of the "
        "report is issued anew with the measured figures of {boat.name|given}."
    )
    caption = page.text("Tests at handover, with what this study foretells")
    table = Table("handover-table", caption, columns, rows, (), "long")
    return Part("handover", "Commissioning checks", (text,), (), (table,))


def _row(page: Page, key: str) -> Row:
    cells = tuple(_foretold(page, motor, page.value(key)) for motor in page.motors)
    return Row(page.words(f"{key}.test"), (*cells, page.words(f"{key}.accept"), Markup("")))


def _foretold(page: Page, motor: str, test: dict[str, Any]) -> Markup:
    """The number to compare with: below the option, at a speed of its curve, or of its circuit."""
    tail, form, speed = test["key"], test["form"], test["speed_kn"]
    if not tail:
        return Markup("")
    if speed is not None:
        rows, _, name = tail.partition(".")
        return page.at(page.at_speed(f"{motor}.{rows}", speed), name, form)
    if tail.startswith(DRIVE):
        circuit = page.find(f"{motor}.installation.circuits", kind="motor")
        return page.at(circuit, tail.removeprefix(DRIVE), form)
    return page.show(f"{motor}.{tail}", form)
