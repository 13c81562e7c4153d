"""Section: can she fight wind and tide, and stop?"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Any

from markupsafe import Markup

from generator.analyses.option import OptionAnswers
from generator.analyses.verdict.criteria.foul_gate import FoulGate
from generator.report.figures.headwind import headwind_ladder
from generator.report.page import Page
from generator.report.parts import Figure, Part
from generator.report.template import pieces
from generator.report.view import View

TEMPLATE = "sections/wind.html"
DOUBLE = re.compile(r"[ \n]+")  # no-break spaces stay: one is between a number and its unit
SHOWN = (0, 10, 15, 20, 25, 30)  # rows of the analysis: whole knots of wind
CROSS = 2  # the row of the cross winds that is said in words
GATE = 9  # the criterion on the worst gate


@dataclass(frozen=True)
class Option:
    """One option as this section sees it."""

    view: View
    called: Markup
    start: Markup
    motor: bool
    gate: View | None


@dataclass(frozen=True)
class Wind:
    """One wind: what every option makes of it."""

    rows: tuple[tuple[View, bool], ...]

    @property
    def first(self) -> View:
        """The wind is that of every option."""
        return self.rows[0][0]


@dataclass(frozen=True)
class GateRow:
    """One gate with every motor."""

    gates: tuple[View, ...]


def parts(page: Page) -> tuple[Part, ...]:
    """Wind, stopping, stream."""
    options = [_option(page, key) for key in page.options]
    if not page.value(f"{page.options[0]}.headwind"):
        return ()
    return (_wind(page, options), _stopping(page, options), _gates(page, options))


def _said(name: str, *given: Any) -> Markup:
    return Markup(DOUBLE.sub(" ", str(pieces(TEMPLATE, name)(*given))).strip())


def _option(page: Page, key: str) -> Option:
    view = page.view(key, OptionAnswers)
    assert view is not None
    row = page.find(f"{key}.verdict.criteria", id=GATE)
    return Option(
        view=view,
        called=page.text(page.called(key)),
        start=page.text(page.called(key, True)),
        motor=key in page.motors,
        gate=page.view(f"{row}.facts", FoulGate) if row else None,
    )


def _motors(options: list[Option]) -> list[Option]:
    return [each for each in options if each.motor]


def _wind(page: Page, options: list[Option]) -> Part:
    motors = _motors(options)
    fetch = page.show("waters.fetch_km", "fetch")
    least = page.show("limits.least_way_kn", "speed")
    limit = page.show(f"{page.options[0]}.headwind.limit_wind_kn", "wind")
    chart = Figure(
        "headwind-ladder", _said("wind_title", motors or options[:1]),
        _said("wind_note", fetch, least, limit), lambda: headwind_ladder(page),
    )  # fmt: skip
    winds = [Wind(tuple((each.view.headwind.rows[place], each.motor) for each in options))
             for place in SHOWN]  # fmt: skip
    table = pieces(TEMPLATE, "wind_table")(winds, options, _widths(options))
    body = _said("wind", options, motors, fetch, least)
    return Part("headwind", _said("wind_head"), figures=(chart,), body=body, closing=table)


def _widths(options: list[Option]) -> list[int]:
    """Shares of the table: a motor has three columns, a diesel one."""
    count = sum(3 if each.motor else 1 for each in options)
    one = 86 // count
    return [7, 7, *([one] * count)]


def _stopping(page: Page, options: list[Option]) -> Part:
    slow, fast = (page.show(f"limits.stop_from_{name}kn", "speed") for name in ("", "more_"))
    motors = _motors(options)
    others = [each for each in options if not each.motor]
    cross = options[0].view.docking.cross_wind[CROSS]
    body = _said("stopping", motors, others, slow, cross)
    table = pieces(TEMPLATE, "stopping_table")(options, slow, fast)
    return Part("docking", _said("stopping_head"), body=body, closing=table)


def _gates(page: Page, options: list[Option]) -> Part:
    motors = _motors(options)
    head = _said("gates_head")
    if not motors or not motors[0].view.stream.gates:
        return Part("gates", head, body=_said("no_gates"))
    every = [each.view.stream.gates for each in motors]
    rows = [GateRow(tuple(gates)) for gates in zip(*every, strict=True)]
    enough, tide = (page.show(f"limits.gate_{name}_kn", "speed") for name in ("go", "tide"))
    body = _said("gates", motors, enough, tide)
    table = pieces(TEMPLATE, "gate_table")(rows, motors)
    return Part("gates", head, body=body, closing=table)
