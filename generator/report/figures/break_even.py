"""Where does the answer on money turn: by hours and fuel, by price and life of the bank?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import numpy as np

from generator.report.canvas import Drawing, corner_label, drawn, label, placed
from generator.report.figures.look import INK, PAD, QUIET
from generator.report.page import Page

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

COSTS, SAVES = "#e9c9a8", "#bcd9d3"  # two light fills that differ in grey as well
BELOW, ABOVE = -1e12, 1e12
HEIGHT = 2.75


def break_even(page: Page, option: str) -> Drawing:
    """Two maps; their heavy line is where the option and its baseline cost the same."""
    name = f"break-even-{page.value(option)['id']}"
    return drawn(name, HEIGHT, lambda figure: _draw(page, figure, option))


def _draw(page: Page, figure: Figure, option: str) -> None:
    maps = f"{option}.cost.maps"
    bottom, top = 0.42 / HEIGHT, 1 - 0.28 / HEIGHT
    left = placed(figure, 0.06, bottom, 0.47, top)
    currency = page.unit("money").strip()
    hours = page.value(f"{option}.year.motoring_h")
    fuel = page.value("money.diesel_money_per_l")
    _map(page, left, f"{maps}.hours_and_fuel", "fuel_money_per_l", "hours_h", (fuel, hours))
    left.set_xlabel(f"diesel, {currency} per litre")
    corner_label(left, "engine hours a year")
    if not page.value(f"{maps}.price_and_life"):
        return
    right = placed(figure, 0.565, bottom, 0.985, top)
    price = sum(
        row["amount_money"] for row in page.value(f"{option}.cost.items")
        if row["part"] == "battery" and row["when"] == "first"
    )  # fmt: skip
    life = page.value(f"{option}.cost.bank_life_years")
    _map(page, right, f"{maps}.price_and_life", "bank_money", "life_years", (price, life))
    right.set_xlabel(f"price of the bank, {currency}")
    right.xaxis.set_major_locator(_few(5))
    right.xaxis.set_major_formatter(lambda value, _: f"{value:,.0f}")
    corner_label(right, "life of the bank, years")


def _map(
    page: Page, axes: Axes, rows: str, across: str, down: str, today: tuple[float, float]
) -> None:
    x, y = (np.unique(page.column(rows, name)) for name in (across, down))
    saved = np.asarray(page.column(rows, "saving_money")).reshape(y.size, x.size)
    axes.contourf(x, y, saved, levels=[BELOW, 0.0, ABOVE], colors=[COSTS, SAVES])
    axes.grid(visible=False)
    if saved.min() < 0.0 < saved.max():
        axes.contour(x, y, saved, levels=[0.0], colors=[INK], linewidths=1.6)
    lines = axes.contour(x, y, saved, levels=_steps(saved), colors=[QUIET], linewidths=0.5)
    texts = axes.clabel(
        lines, fmt=lambda value: f"{value:+,.0f}".replace("-", "\u2212"), fontsize=6.5
    )
    for text in texts:
        text.set_rotation(0)  # read level, as all words of a chart
    axes.plot(*today, "o", color=INK, markersize=5, clip_on=False)
    look: dict[str, Any] = {"fontsize": 7, "bbox": PAD}
    side = "left" if today[0] < (x[0] + x[-1]) / 2 else "right"
    gap = 0.03 * (x[-1] - x[0]) * (1 if side == "left" else -1)
    label(axes, (today[0] + gap, today[1]), "as she is", ha=side, va="center", **look)


def _steps(saved: Any) -> list[float]:
    """Four or so round amounts between the least and the most saved, without zero."""
    values = _few(5).tick_values(float(saved.min()), float(saved.max()))
    inside = [float(v) for v in values if saved.min() < v < saved.max() and abs(v) > 1e-9]
    return inside or [float(saved.mean())]


def _few(most: int) -> Any:
    from matplotlib.ticker import MaxNLocator

    return MaxNLocator(most)
