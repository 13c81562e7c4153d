"""Chart 13, money: which input moves the saving most, each moved alone, motor beside motor?"""

from __future__ import annotations

from math import inf
from typing import TYPE_CHECKING, Any

from generator.report.canvas import Drawing, drawn, label, placed
from generator.report.figures.look import INK, trait
from generator.report.figures.tornado import bar, bare, name
from generator.report.page import Page

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

MOST = 7  # inputs; all of them are in cost_swing.csv
LETTERS = 38  # of a name
LEAST = 0.03  # of the widest; what moves less is not drawn
LEFT, RIGHT, GAP = 0.31, 0.985, 0.025
ROOM = 0.42  # beside the bars, for the numbers at their ends, share of their span


def money_swing(page: Page) -> Drawing:
    """One panel a motor, the same inputs in the same order in each."""
    motors = [motor for motor in page.motors if page.keys(f"{motor}.cost.swing")]
    inputs = widest(page, motors)
    height = 0.66 + 0.21 * len(inputs)
    return drawn("money-swing", height, lambda figure: _draw(page, figure, motors, inputs, height))


def widest(page: Page, motors: list[str]) -> list[str]:
    """The inputs that move any motor's money most, the widest first."""
    size: dict[str, float] = {}
    for motor in motors:
        for row in page.value(f"{motor}.cost.swing"):
            swing = inf if row["swing_money"] is None else row["swing_money"]
            size[row["what"]] = max(size.get(row["what"], 0.0), swing)
    least = LEAST * max((swing for swing in size.values() if swing < inf), default=0.0)
    told = [what for what in size if size[what] >= least]
    return sorted(told, key=lambda what: -size[what])[:MOST]


def _draw(page: Page, figure: Figure, motors: list[str], inputs: list[str], height: float) -> None:
    width = (RIGHT - LEFT - GAP * (len(motors) - 1)) / len(motors)
    for order, motor in enumerate(motors):
        left = LEFT + order * (width + GAP)
        axes = placed(figure, left, 0.38 / height, left + width, 1 - 0.22 / height)
        _panel(page, axes, motor, inputs)
        if order == 0:
            for place, what in enumerate(inputs):
                name(axes, place, what, LETTERS)


def _panel(page: Page, axes: Axes, motor: str, inputs: list[str]) -> None:
    best = page.value(f"{motor}.cost.swing_middle_money")
    rows = {page.value(row)["what"]: row for row in page.keys(f"{motor}.cost.swing")}
    shown = [rows[what] for what in inputs if what in rows]
    ends = [page.value(f"{row}.at_{end}_money") for row in shown for end in ("low", "high")]
    known = [best, *(end for end in ends if end is not None)]
    low, high = min(known), max(known)
    room = ROOM * max(high - low, 1.0)
    axes.set_xlim(low - room, high + room)
    axes.set_ylim(len(inputs) - 0.4, -0.6)
    for place, what in enumerate(inputs):
        if what in rows:
            bar(page, axes, motor, (rows[what], place), best, ("_money", "money:bare"))
    axes.axvline(best, color=INK, linewidth=0.8, zorder=4)
    if low - room < 0.0 < high + room:
        axes.axvline(0.0, color=INK, linewidth=1.4, zorder=4)
    bare(axes)
    axes.xaxis.set_major_locator(_few())
    axes.xaxis.set_major_formatter(lambda value, _: f"{value:,.0f}".replace("-", "\u2212"))
    axes.set_xlabel(f"{page.unit('money').strip()} saved, present value")
    label(
        axes, (0.0, 1.02), page.name(motor), transform=axes.transAxes, va="bottom",
        fontsize=7.5, weight="bold", color=trait(page, motor).colour,
    )  # fmt: skip


def _few() -> Any:
    from matplotlib.ticker import MaxNLocator

    return MaxNLocator(4)
