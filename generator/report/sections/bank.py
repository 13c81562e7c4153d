"""Part of the results: what does the bank hold, what is kept, and what currents flow?"""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from generator.analyses.option import OptionAnswers
from generator.report.page import Page, joined
from generator.report.parts import Part
from generator.report.template import pieces
from generator.report.view import View

TEMPLATE = "sections/bank.html"


@dataclass(frozen=True)
class Plan:
    """What the reserve is kept for, by the case."""

    share: Markup
    manoeuvring_time: Markup
    manoeuvring_speed: Markup
    hold_time: Markup
    hold_speed: Markup
    hold_wind: Markup


def motors_of(page: Page) -> list[View]:
    """The options with a bank, as records."""
    return [view for view in page.views("options", OptionAnswers) if view.bank is not None]


def part(page: Page) -> Part:
    """Energy from nominal to what is left for passages, and the currents."""
    motors = motors_of(page)
    plan = Plan(
        page.show("planning.reserve_share_pct", "percent"),
        page.show("planning.manoeuvring_time_min", "minutes"),
        page.show("planning.manoeuvring_speed_kn", "speed"),
        page.show("planning.hold_time_min", "minutes"),
        page.show("planning.hold_speed_kn", "speed"),
        page.show("planning.hold_wind_kn", "wind"),
    )
    keeps, cannot = pieces(TEMPLATE, "reserve"), pieces(TEMPLATE, "cannot_keep")
    body = joined(
        keeps(motor, plan) if motor.reserve.of_aged.there else cannot(motor) for motor in motors
    )
    cells = pieces(TEMPLATE, "cells")
    body += joined(cells(motor) for motor in motors if motor.bank.cells_by == "usual")
    table = pieces(TEMPLATE, "table")(motors, 52 // len(motors)) if motors else Markup()
    return Part("bank", "Bank and reserve", body=body, closing=table)
