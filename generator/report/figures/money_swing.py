"""Chart 13, money: which assumption moves the saving most, each moved alone?"""

from __future__ import annotations

from textwrap import wrap
from typing import TYPE_CHECKING, Any

from generator.report.canvas import Drawing, drawn, label, number, placed
from generator.report.figures.look import INK, PAD, QUIET, trait
from generator.report.page import Page

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

MOST = 8  # bars; the others are in the tables
LEFT, BAR = 0.41, 0.62
LONGEST = 46  # letters of a line of a name


def money_swing(page: Page, option: str) -> Drawing:
    """Bars from the saving at one end of a range to that at the other, the longest on top."""
    rows = page.keys(f"{option}.cost.swing")[:MOST]
    height = 0.62 + 0.34 * len(rows)
    name = f"money-swing-{page.value(option)['id']}"
    return drawn(name, height, lambda figure: _draw(page, figure, option, rows, height))


def _draw(page: Page, figure: Figure, option: str, rows: list[str], height: float) -> None:
    axes = placed(figure, LEFT, 0.40 / height, 0.965, 1 - 0.14 / height)
    middle = page.value(f"{option}.cost.swing_middle_money")
    ends = [page.value(f"{row}.{end}_money") for row in rows for end in ("low", "high")]
    low, high = min([middle, *ends]), max([middle, *ends])
    room = max(high - low, 1.0)
    if high > -0.35 * room and low < 0.35 * room:
        axes.axvline(0.0, color=INK, linewidth=1.1)
    axes.set_xlim(low - 0.17 * room, high + 0.17 * room)
    axes.axvline(middle, color=QUIET, linewidth=0.9, linestyle=(0, (4, 2)))
    for place, row in enumerate(rows):
        _bar(page, axes, option, row, place)
    axes.set_ylim(len(rows) - 0.4, -0.6)
    axes.set_yticks([])
    axes.grid(axis="y", visible=False)
    axes.spines["left"].set_visible(False)
    axes.xaxis.set_major_formatter(lambda value, _: f"{value:,.0f}".replace("-", "\u2212"))
    axes.xaxis.set_major_locator(_few())
    axes.set_xlabel(f"{page.unit('money').strip()} saved over the horizon, present value")


def _few() -> Any:
    from matplotlib.ticker import MaxNLocator

    return MaxNLocator(5)


def _bar(page: Page, axes: Axes, option: str, row: str, place: int) -> None:
    look, value = trait(page, option), page.value(row)
    ends = sorted(((value["low_money"], "low"), (value["high_money"], "high")))
    axes.barh(place, ends[1][0] - ends[0][0], BAR, left=ends[0][0], color=look.colour, alpha=0.85)
    for (at, end), side in zip(ends, ("right", "left"), strict=True):
        text = f" {value[f'shown_{end}']} "
        label(axes, (at, place), text, ha=side, va="center", fontsize=7, bbox=PAD)
    lines = wrap(value["meaning"], LONGEST)
    name = "\n".join(lines[:2]) + (" …" if len(lines) > 2 else "")
    label(
        axes, (-0.02, place), name, ha="right", va="center", fontsize=7.5, clip_on=False,
        transform=axes.get_yaxis_transform(),
    )  # fmt: skip
    if place == 0:
        number(
            axes, page, f"{option}.cost.swing_middle_money", "money:signed",
            (page.value(f"{option}.cost.swing_middle_money"), -0.42), ha="center", va="bottom",
            fontsize=7, color=QUIET,
        )  # fmt: skip
