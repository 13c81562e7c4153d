"""Part of bank and motor: what does the bank give new, in midlife and at the end of the study?"""

from __future__ import annotations

from dataclasses import replace

from markupsafe import Markup

from generator.report.page import Page, joined
from generator.report.parts import Part
from generator.report.sections.bank import motors_of
from generator.report.template import pieces
from generator.report.view import View

TEMPLATE = "sections/bank_ages.html"
AGES = 3
MOST = 2  # banks whose columns fit side by side


def parts(page: Page) -> tuple[Part, ...]:
    """One part per battery option, and the figures of their banks side by side."""
    motors = motors_of(page)
    told = [_part(page, motor) for motor in motors]
    if told:
        tables = (_table(motors[first : first + MOST]) for first in range(0, len(motors), MOST))
        told[-1] = replace(told[-1], closing=joined(tables))
    return tuple(told)


def _part(page: Page, motor: View) -> Part:
    title = page.text(f"The bank of {{{motor.name.key}|given}}")
    body = pieces(TEMPLATE, "said")(motor.bank)
    return Part(f"bank-ages-{motor.id}", title, body=body)


def _table(motors: list[View]) -> Markup:
    return pieces(TEMPLATE, "table")(motors, str(motors[0].id), 72 // (AGES * len(motors)))
