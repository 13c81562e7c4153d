"""Part of the results: which of the owner's legs fit, and what is left after each?"""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from generator.analyses.option import OptionAnswers
from generator.analyses.use.leg_help import LegHelp
from generator.analyses.use.legs import LegResult
from generator.report.figures.energy_walk import energy_walk, walked
from generator.report.figures.legs_range import legs_range
from generator.report.page import Page, joined
from generator.report.parts import Figure, Part
from generator.report.template import pieces
from generator.report.view import View

TEMPLATE = "sections/legs.html"
MOST_ROWS = 12  # legs of one motor on the page; all of them stand in the table of the folder


@dataclass(frozen=True)
class MotorLegs:
    """One motor and the leg that must be made."""

    option: View
    worst: View


@dataclass(frozen=True)
class LegRow:
    """One leg under one motor, and what would mend it."""

    option: View
    leg: View
    help: View | None


def part(page: Page) -> Part:
    """Legs against range, the walk of the worst, and one row per leg and motor."""
    if not page.value("legs"):
        return Part("legs-part", "")
    must_make = pieces(TEMPLATE, "must_make")
    body = joined(must_make(each) for each in _worst(page))
    text = tuple(
        _depth(page, key) for key in page.keys("legs") if page.value(f"{key}.depth_froude")
    )
    figures = (_dots(page), *_walk(page)) if page.motors else ()
    rows = [row for motor in page.motors for row in _rows(page, motor)]
    every = sum(len(page.keys(f"{motor}.legs")) for motor in page.motors)
    slowest = page.show("limits.least_through_kn", "speed")
    table = pieces(TEMPLATE, "table")(rows, every > len(rows), slowest) if rows else Markup()
    return Part("legs-part", "Legs", text, figures, body=body, closing=table)


def _worst(page: Page) -> list[MotorLegs]:
    """Each motor with its worst must-make leg."""
    found = []
    for motor in page.motors:
        key = must_make_row(page, motor)
        option, leg = page.view(motor, OptionAnswers), page.view(key or "", LegResult)
        if option is not None and leg is not None:
            found.append(MotorLegs(option, leg))
    return found


def _rows(page: Page, motor: str) -> list[LegRow]:
    """Legs that do not fit first, then those that must be made, then the others."""
    option = page.view(motor, OptionAnswers)
    assert option is not None
    mends = {mend.leg: mend for mend in page.views(f"{motor}.use.failing", LegHelp)}
    rows = [LegRow(option, leg, mends.get(place)) for place, leg in enumerate(option.legs)]
    if len(rows) <= MOST_ROWS:
        return rows
    return sorted(rows, key=lambda row: (row.leg.fits, not row.leg.must_make))[:MOST_ROWS]


def _dots(page: Page) -> Figure:
    finding = " ".join(_covered(page, motor) for motor in page.motors)
    note = page.text(
        "Curves: range to reserve, bank aged, that nine draws of ten reach. Dot size: times a "
        "year. Stream, wind and sea of each leg count in whether it fits, not in its place."
    )
    return Figure("legs-range", page.text(finding), note, lambda: legs_range(page))


def _covered(page: Page, motor: str) -> str:
    key = f"{motor}.use.coverage"
    if page.value(key) is None:
        return f"{{{motor}.name|given}}: no passage is motored."
    said = (
        f"{{{motor}.name|given}}: {{{key}.legs_low_share|share}} of {{{key}.passages|count}} "
        f"passages a year and {{{key}.miles_low_share|share}} of their miles fit"
    )
    if (page.value(f"{key}.legs_low_share") or 0.0) >= 1.0:
        return said + "."
    return said + f", {{{key}.slower_legs_low_share|share}} at a speed slower by what he accepts."


def _walk(page: Page) -> tuple[Figure, ...]:
    motors = walked(page)
    if not motors:
        return ()
    finding = " ".join(_left(page, motor) for motor in motors)
    note = page.text(
        f"“{{legs.{page.value(f'{motors[0]}.use.walk_leg')}.name|given}}”, best estimate; grey: "
        "never planned with. Red line: what is left in one draw of ten. Wind, sea and stream are "
        "what each adds to the parts above it."
    )
    return (Figure("energy-walk", page.text(finding), note, lambda: energy_walk(page)),)


def _left(page: Page, motor: str) -> str:
    key = f"{motor}.use"
    low = page.value(f"{key}.walk_left_low_kwh")
    short = page.value(f"{key}.walk_left_kwh") < 0
    left = "are lacking for the reserve" if short else "are left above the reserve"
    said = (
        f"{{{motor}.name|given}}: of {{{key}.walk_nominal_kwh|energy}} on the label "
        f"{{{key}.walk_left_kwh|energy:size}} {left} after the leg"
    )
    if low is None:
        leg = f"{motor}.legs.{page.value(f'{key}.walk_leg')}"
        return said + f"; in {{{leg}.feasible_share|share}} of the draws it can be made at all."
    if low < 0:
        return said + f"; in one draw of ten {{{key}.walk_left_low_kwh|energy:size}} are lacking."
    return said + f", {{{key}.walk_left_low_kwh|energy}} in one draw of ten."


def must_make_row(page: Page, option: str) -> str | None:
    """The key of the option's result on its worst must-make leg."""
    worst = page.value(f"{option}.worst_leg")
    rows = f"{option}.legs"
    return page.find(rows, must_make=True) if worst is None else f"{rows}.{worst}"


def _depth(page: Page, key: str) -> Markup:
    """What depth and width of a leg mean for the deep-water curve."""
    said = page.text(
        f"“{{{key}.name|given}}”: {{{key}.speed_kn|speed}} in {{{key}.depth_m|length}} of water is "
        f"a depth Froude number of {{{key}.depth_froude|ratio}}"
    )
    if page.value(f"{key}.blockage_pct") is not None:
        said += page.text(f", and she fills {{{key}.blockage_pct|percent}} of the channel")
    held = page.value(f"{key}.deep_enough") and page.value(f"{key}.wide_enough")
    end = "; the curve of deep water holds." if held else (
        "; the curve of deep water asks for too little there, and plain Go is barred."
    )  # fmt: skip
    return said + page.text(end)
