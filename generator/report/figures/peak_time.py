"""Chart: how long is the peak held, against the load of the run before?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from generator.report.canvas import Drawing, corner_label, drawn, number, placed
from generator.report.figures.look import PAD, trait
from generator.report.page import Page

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure


def peak_time(page: Page, motors: list[str], height: float = 2.6) -> Drawing:
    """Minutes until motor or controller is hot, over preceding load; a dot at planned cruise."""
    return drawn("peak-time", height, lambda figure: _draw(page, figure, motors, height))


def _draw(page: Page, figure: Figure, motors: list[str], height: float) -> None:
    axes = placed(figure, 0.065, 0.42 / height, 0.985, 1 - 0.5 / height)
    for motor in motors:
        _lines(page, axes, motor)
    for motor in motors:
        _dot(page, axes, motor)
    axes.set_xlim(0, 100)
    axes.set_ylim(bottom=0)
    axes.set_xlabel("load of the run before, % of the warm continuous rating")
    corner_label(axes, "min at peak")
    figure.legend(
        loc="upper right", bbox_to_anchor=(0.985, 1.0), ncols=2, borderaxespad=0, borderpad=0,
        handlelength=2.6, columnspacing=1.6,
    )  # fmt: skip


def _lines(page: Page, axes: Axes, motor: str) -> None:
    rows = page.value(f"{motor}.duty.chart") or ()
    look, name = trait(page, motor), page.name(motor)
    held = [(row["before_share"] * 100, _shorter(row)) for row in rows]
    told = [(load, minutes) for load, minutes in held if minutes is not None]
    axes.plot(
        [load for load, _ in told], [minutes for _, minutes in told],
        color=look.colour, linestyle=look.dash, linewidth=1.6, label=name,
    )  # fmt: skip


def _shorter(row: dict[str, Any]) -> float | None:
    """The time of whichever is hot first, motor or controller."""
    known = [row[key] for key in ("motor_min", "controller_min") if row[key] is not None]
    return min(known, default=None)


def _dot(page: Page, axes: Axes, motor: str) -> None:
    duty = page.value(f"{motor}.duty")
    if None in (duty["peak_warm_min"], duty["before_share"]):
        return
    look = trait(page, motor)
    at = (duty["before_share"] * 100, duty["peak_warm_min"])
    axes.plot(*at, look.marker, color=look.colour, markersize=5)
    number(
        axes, page, f"{motor}.duty.peak_warm_min", "minutes", (at[0] + 1.2, at[1] + 0.5),
        weight="bold", color=look.colour, va="bottom", bbox=PAD,
    )  # fmt: skip
