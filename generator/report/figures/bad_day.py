"""The chart of page 1: energy there and energy needed for the leg that must be made."""

from __future__ import annotations

from typing import TYPE_CHECKING

from generator.report.canvas import Drawing, drawn, label, number, placed
from generator.report.figures.look import INK, PAD, QUIET, trait
from generator.report.page import Page

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure
    from matplotlib.text import Annotation, Text

WIDTH = 3.3  # inches: half of the page
ROW, GAP = 0.175, 0.1  # inches: a bar with its distance, and the room between two motors
BAR = 0.74  # of a row
LEFT = 0.24  # share of the width for the names


def bad_day(page: Page, legs: dict[str, str], name: str = "bad-day") -> Drawing:
    """Two bars for each motor, ``legs`` being the key of its result on the leg."""
    height = len(legs) * (2 * ROW + GAP) + 0.05
    return drawn(name, height, lambda figure: _draw(page, figure, legs), WIDTH)


def _draw(page: Page, figure: Figure, legs: dict[str, str]) -> None:
    axes = placed(figure, 0.0, 0.0, 1.0, 1.0)
    axes.set_axis_off()
    most = max([1.0, *(page.value(f"{leg}.{key}") or 0.0 for leg in legs.values()
                       for key in ("available_kwh", "need_kwh", "need_high_kwh"))])  # fmt: skip
    axes.set_xlim(-LEFT * most * 1.75, most * 1.42)
    place = 0.0
    for motor, leg in legs.items():
        _has(page, axes, motor, leg, place)
        _needs(page, axes, motor, leg, place + ROW)
        place += 2 * ROW + GAP
    axes.set_ylim(place - GAP / 2, -ROW * 0.6)


def _name(axes: Axes, at: float, text: str, strong: bool = False) -> None:
    start = axes.get_xlim()[0]
    label(axes, (start, at), text, va="center", fontsize=7.2, color=INK if strong else QUIET,
          weight="bold" if strong else "normal", bbox=PAD if strong else None)  # fmt: skip


def _has(page: Page, axes: Axes, motor: str, leg: str, at: float) -> None:
    _name(axes, at, f"{_short(page, motor)} has")
    there = page.value(f"{leg}.available_kwh") or 0.0
    axes.barh(at, max(there, 0.0), ROW * BAR, color=trait(page, motor).colour)
    end = max(there, 0.0) + axes.get_xlim()[1] * 0.015
    if page.value(f"{leg}.available_kwh") is None:
        label(axes, (end, at), "nothing above its reserve", va="center", fontsize=7.2)
        return
    number(axes, page, f"{leg}.available_kwh", "energy", (end, at), va="center", fontsize=7.2,
           weight="bold")  # fmt: skip


def _needs(page: Page, axes: Axes, motor: str, leg: str, at: float) -> None:
    _name(axes, at, "needs")
    need, high = page.value(f"{leg}.need_kwh"), page.value(f"{leg}.need_high_kwh")
    colour, step = trait(page, motor).colour, axes.get_xlim()[1] * 0.015
    if need is None:
        label(axes, (step, at), "more power than it has", va="center", fontsize=7.2)
        return
    axes.barh(at, need, ROW * BAR, facecolor="white", edgecolor=colour, linewidth=0.8)
    if high is not None:
        axes.barh(at, high - need, ROW * BAR, left=need, facecolor="white", edgecolor=colour,
                  linewidth=0.8, linestyle=(0, (2, 1.5)))  # fmt: skip
    end = (high or need) + step
    form = "energy" if high is None else "energy:bare"
    first = number(axes, page, f"{leg}.need_kwh", form, (end, at), va="center", fontsize=7.2)
    if high is not None:
        word = _behind(axes, first, "to")
        last = _behind(axes, word, page.plain(f"{leg}.need_high_kwh", "energy"))
        last.set_gid(f"number:{leg}.need_high_kwh*energy")


def _behind(axes: Axes, before: Text, said: str) -> Annotation:
    """A word set behind another one."""
    return axes.annotate(
        said, xy=(1.0, 0.5), xycoords=before, xytext=(2.5, 0), textcoords="offset points",
        va="center", fontsize=7.2,
    )  # fmt: skip


def _short(page: Page, motor: str) -> str:
    """Its name up to the comma, cut where it would run into the bar."""
    name = page.name(motor).partition(",")[0]
    return name if len(name) <= 10 else f"{name[:9].rstrip()}…"
