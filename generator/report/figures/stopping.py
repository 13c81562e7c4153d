"""Chart 14: how far and how long does each option take to stop from 3 and from 5 kn?"""

from __future__ import annotations

from typing import TYPE_CHECKING

from generator.report.canvas import Drawing, corner_label, drawn, label, placed
from generator.report.figures.look import INK, PAD, trait
from generator.report.page import Page

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

ROW, GAP = 0.21, 0.16  # inches of a bar and between the two speeds


def stopping(page: Page, name: str = "stopping") -> Drawing:
    """Bars of boat lengths by option, 3 kn above 5 kn; way and time in a column."""
    height = 2 * (ROW * len(page.options) + GAP) + 0.75
    return drawn(name, height, lambda figure: _draw(page, figure, height))


def _draw(page: Page, figure: Figure, height: float) -> None:
    axes = placed(figure, 0.30, 0.42 / height, 0.985, 1 - 0.28 / height)
    longest = max(_lengths(page, option, 1) for option in page.options)
    axes.set_xlim(0, longest * 1.22)
    axes.grid(False, axis="y")
    top = 0.0
    for stop in (0, 1):
        for option in page.options:
            _bar(page, axes, option, stop, top)
            top -= ROW
        top -= GAP
    axes.set_ylim(top + GAP + 0.06, 0.16)
    axes.set_yticks([])
    axes.axvline(1.0, color=INK, linewidth=0.9, linestyle=(0, (2, 1.5)), zorder=4)
    axes.set_xlabel("boat lengths from full astern to standstill, still air")
    corner_label(axes, "one boat length dashed; way and time on the right")


def _lengths(page: Page, option: str, stop: int) -> float:
    return float(page.value(f"{option}.docking.stops.{stop}.lengths"))


def _bar(page: Page, axes: Axes, option: str, stop: int, at: float) -> None:
    look, key = trait(page, option), f"{option}.docking.stops.{stop}"
    width = _lengths(page, option, stop)
    axes.barh(
        at, width, height=ROW * 0.72, color="white", edgecolor=look.colour, hatch=look.hatch,
        linewidth=0.9, zorder=2,
    )  # fmt: skip
    words = f"{page.value(option)['name']}, {page.plain(f'{key}.speed_kn', 'wind')}"
    label(
        axes, (-0.012, at), words, ha="right", va="center", fontsize=7.5,
        transform=axes.get_yaxis_transform(),
    )  # fmt: skip
    seconds = (
        f"{page.plain(f'{key}.distance_m', 'height')}, {page.plain(f'{key}.time_s', 'seconds')}"
    )
    label(
        axes, (0.998, at), seconds, ha="right", va="center", fontsize=7.5, bbox=PAD, zorder=5,
        transform=axes.get_yaxis_transform(),
    )  # fmt: skip
