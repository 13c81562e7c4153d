"""Chart 8: how does the charge go over three days around an outing in the season?"""

from __future__ import annotations

from typing import TYPE_CHECKING

from generator.report.canvas import Drawing, corner_label, drawn, label, placed
from generator.report.figures.look import CRIMSON, PAD, QUIET, trait
from generator.report.page import Page

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

DAY = 24


def weekend(page: Page, name: str = "weekend") -> Drawing:
    """Charge of every motor's bank by the hour, its reserve line, and the outing shaded."""
    height = 2.0
    return drawn(name, height, lambda figure: _draw(page, figure, height))


def _draw(page: Page, figure: Figure, height: float) -> None:
    axes = placed(figure, 0.065, 0.42 / height, 0.985, 1 - 0.28 / height)
    motors = [motor for motor in page.motors if page.value(f"{motor}.energy_year.example")]
    for motor in motors:
        _path(page, axes, motor)
    first = f"{motors[0]}.energy_year.example"
    hours = page.column(first, "hour_h")
    axes.set_xlim(hours[0], hours[-1])
    axes.set_ylim(_floor(page, motors), 102)
    noons = range(0, int(hours[-1]) + 1, 12)
    axes.set_xticks(list(noons), [("0 h" if hour % DAY == 0 else "12 h") for hour in noons])
    for midnight in range(0, int(hours[-1]) + 1, DAY):
        axes.axvline(midnight, color=QUIET, linewidth=0.5, linestyle=(0, (1, 2)))
    corner_label(axes, "charge, % of the bank half way through its life")
    axes.legend(loc="lower right", ncols=len(motors))


def _floor(page: Page, motors: list[str]) -> float:
    """Ten under the lowest charge and reserve line, in whole tens."""
    lows = [
        float(value)
        for motor in motors
        for value in (
            *page.column(f"{motor}.energy_year.example", "charge_low_pct"),
            page.value(f"{motor}.energy_year.reserve_line_pct"),
        )
        if value is not None
    ]
    return max(0.0, 10.0 * (min(lows) // 10.0) - 10.0)


def _path(page: Page, axes: Axes, motor: str) -> None:
    rows, look = f"{motor}.energy_year.example", trait(page, motor)
    hours, middle, low, high = (
        page.column(rows, name)
        for name in ("hour_h", "charge_pct", "charge_low_pct", "charge_high_pct")
    )
    axes.fill_between(hours, low, high, color=look.colour, alpha=0.12, linewidth=0)
    axes.plot(hours, middle, color=look.colour, linestyle=look.dash, label=page.name(motor))
    line = page.value(f"{motor}.energy_year.reserve_line_pct")
    if motor != page.motors[0]:
        axes.axhline(line, color=CRIMSON, linewidth=0.6, linestyle=(0, (2, 2)))
        return
    axes.axhline(line, color=CRIMSON, linewidth=0.9, linestyle=(0, (4, 2)))
    label(
        axes, (hours[0] + 0.5, line), "reserve, never planned for", color=CRIMSON, fontsize=7.5,
        va="bottom", bbox=PAD, zorder=5,
    )  # fmt: skip
