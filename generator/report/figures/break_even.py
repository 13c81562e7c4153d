"""Where does the answer on money turn: by hours and fuel, by price and life of the bank?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import numpy as np

from generator.report.canvas import Drawing, corner_label, drawn, label, placed
from generator.report.figures.look import INK, QUIET, trait
from generator.report.page import Page

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

COSTS, SAVES = "#e9c9a8", "#bcd9d3"  # two light fills that differ in grey as well
BELOW, ABOVE = -1e12, 1e12
HEIGHT = 1.78


def break_even(page: Page) -> Drawing:
    """Two maps a motor; their heavy line is where it and its baseline cost the same."""
    motors = [motor for motor in page.motors if page.value(f"{motor}.cost.maps")]
    rows = [motors[first : first + 2] for first in range(0, len(motors), 2)]
    height = HEIGHT * max(len(rows), 1)
    return drawn("break-even", height, lambda figure: _draw(page, figure, rows))


def _draw(page: Page, figure: Figure, rows: list[list[str]]) -> None:
    tall = 1.0 / len(rows)
    for down, motors in enumerate(rows):
        width = 1.0 / len(motors)
        for across, motor in enumerate(motors):
            foot = 1.0 - (down + 1) * tall
            _pair(page, figure, motor, (across * width, foot, width, tall))


def _pair(page: Page, figure: Figure, motor: str, box: tuple[float, float, float, float]) -> None:
    """Hours and fuel beside price and life, in one box of the figure."""
    left, foot, width, tall = box
    maps, currency = f"{motor}.cost.maps", page.unit("money").strip()
    bottom, top = foot + tall * 0.38 / HEIGHT, foot + tall * (1 - 0.38 / HEIGHT)
    half = (width - 0.012) / 2
    hours, fuel = page.value(f"{motor}.year.motoring_h"), page.value("money.diesel_money_per_l")
    first = placed(figure, left + 0.042, bottom, left + half, top)
    if page.value(f"{maps}.hours_and_fuel"):
        _map(page, first, f"{maps}.hours_and_fuel", ("fuel_money_per_l", "hours_h"), (fuel, hours))
    first.set_xlabel(f"diesel, {currency} per litre")
    corner_label(first, "engine hours a year")
    label(
        first, (0.0, 1.19), page.name(motor), transform=first.transAxes, va="bottom",
        fontsize=7.5, weight="bold", color=trait(page, motor).colour,
    )  # fmt: skip
    if not page.value(f"{maps}.price_and_life"):
        return
    second = placed(figure, left + half + 0.036, bottom, left + width - 0.008, top)
    today = f"{motor}.cost.turn.today"
    price, life = page.value(f"{today}_bank_money"), page.value(f"{today}_life_years")
    _map(page, second, f"{maps}.price_and_life", ("bank_money", "life_years"), (price, life))
    second.set_xlabel(f"price of the bank, {currency}")
    second.xaxis.set_major_locator(_few(3))
    second.xaxis.set_major_formatter(lambda value, _: f"{value:,.0f}")
    corner_label(second, "life of the bank, years")


def _map(
    page: Page, axes: Axes, rows: str, names: tuple[str, str], today: tuple[float, float]
) -> None:
    x, y = (np.unique(page.column(rows, name)) for name in names)
    saved = np.asarray(page.column(rows, "saving_money")).reshape(y.size, x.size)
    axes.contourf(x, y, saved, levels=[BELOW, 0.0, ABOVE], colors=[COSTS, SAVES])
    axes.grid(visible=False)
    if saved.min() < 0.0 < saved.max():
        axes.contour(x, y, saved, levels=[0.0], colors=[INK], linewidths=1.6)
    lines = axes.contour(x, y, saved, levels=_steps(saved), colors=[QUIET], linewidths=0.5)
    texts = axes.clabel(
        lines, fmt=lambda value: f"{value:+,.0f}".replace("-", "\u2212"), fontsize=6
    )
    for text in texts:
        text.set_rotation(0)  # read level, as all words of a chart
    axes.plot(*today, "o", color=INK, markersize=4, clip_on=False)


def _steps(saved: Any) -> list[float]:
    """Four or so round amounts between the least and the most saved, without zero."""
    values = _few(4).tick_values(float(saved.min()), float(saved.max()))
    inside = [float(v) for v in values if saved.min() < v < saved.max() and abs(v) > 1e-9]
    return inside or [float(saved.mean())]


def _few(most: int) -> Any:
    from matplotlib.ticker import MaxNLocator

    return MaxNLocator(most)
