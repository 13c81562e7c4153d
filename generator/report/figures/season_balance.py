"""Chart 10: which months does the sun carry, and what do house and motor take?"""

from __future__ import annotations

from typing import TYPE_CHECKING

from generator.report.canvas import Drawing, corner_label, drawn, label, placed
from generator.report.figures.look import FAINT, GREY, INK, QUIET, trait
from generator.report.page import Page

if TYPE_CHECKING:
    from matplotlib.figure import Figure

WIDTH = 0.62  # of a month's column
NAMES = "plain: house; hatched: motor"
SUN = "; line: sun, with its dim and its bright quarter of years"


def season_balance(page: Page, motor: str, name: str = "season-balance") -> Drawing:
    """Bars of house and motor by month, the sun as a line with its dim and bright quarter."""
    height = 2.0
    return drawn(name, height, lambda figure: _draw(page, motor, figure, height))


def _draw(page: Page, motor: str, figure: Figure, height: float) -> None:
    axes = placed(figure, 0.065, 0.30 / height, 0.985, 1 - 0.28 / height)
    rows, look = f"{motor}.energy_year.months", trait(page, motor)
    months = range(12)
    house, used = page.column(rows, "house_kwh"), page.column(rows, "used_kwh")
    axes.bar(months, house, WIDTH, color=FAINT, edgecolor=GREY, linewidth=0.7, zorder=2)
    driven = [total - own for total, own in zip(used, house, strict=True)]
    axes.bar(
        months, driven, WIDTH, bottom=house, color="white", edgecolor=look.colour,
        hatch=look.hatch, linewidth=0.7, zorder=2,
    )  # fmt: skip
    sun, dim, bright = (page.column(rows, f"sun{end}_kwh") for end in ("", "_dim", "_bright"))
    shines = max(bright) > 0.0
    if shines:
        axes.fill_between(months, dim, bright, color=INK, alpha=0.13, linewidth=0, zorder=3)
        axes.plot(months, sun, color=INK, marker="o", markersize=3.5, linewidth=1.2, zorder=4)
    top = max([1.0, *used, *bright]) * 1.16
    axes.set_ylim(0, top)
    axes.set_xlim(-0.6, 11.6)
    axes.set_xticks(list(months), [name[:3] for name in page.column(rows, "month")])
    axes.grid(False, axis="x")
    corner_label(axes, f"{page.unit('energy')} a month")
    label(
        axes, (0.985, 0.985), NAMES + (SUN if shines else ""), transform=axes.transAxes,
        ha="right", va="top", fontsize=7.5, color=QUIET,
    )  # fmt: skip
