"""Where does the answer on money turn: by hours and fuel, by price and life of the bank?"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import numpy as np

from generator.report.canvas import Drawing, corner_label, drawn, label, placed
from generator.report.figures.look import INK, PAD, QUIET, trait
from generator.report.page import Page

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

COSTS = "#e9d3bc"  # a light fill that is seen in grey as well
BELOW = -1e12
HEIGHT, HEAD, FOOT = 2.1, 0.42, 0.40  # inches
LEAST_PART = 0.1  # of a map; where less of it turns, words say so
CLEAR = (0.14, 0.16)  # of the map, across and up: between a label and the dot
MAPS = (
    ("hours_and_fuel", ("fuel_money_per_l", "hours_h")),
    ("price_and_life", ("bank_money", "life_years")),
)


@dataclass(frozen=True)
class Map:
    """One map of one motor: its rows, its two directions, and where she is today."""

    motor: str
    kind: str
    names: tuple[str, str]
    today: tuple[float, float]


def maps_that_turn(page: Page) -> list[Map]:
    """The maps on which the motor is the cheaper one in a part worth a picture.

    One a motor where there are several: what the price of the battery turns, words say.
    """
    most = len(MAPS) if len(page.motors) == 1 else 1
    return [each for motor in page.motors for each in _of_motor(page, motor)[:most]]


def _of_motor(page: Page, motor: str) -> list[Map]:
    found = []
    for kind, names in MAPS:
        saved = page.column(f"{motor}.cost.maps.{kind}", "saving_money")
        gained = sum(value > 0.0 for value in saved)
        if LEAST_PART * len(saved) <= gained < len(saved):
            found.append(Map(motor, kind, names, _today(page, motor, kind)))
    return found


def _today(page: Page, motor: str, kind: str) -> tuple[float, float]:
    if kind == "hours_and_fuel":
        return page.value("money.diesel_money_per_l"), page.value(f"{motor}.year.motoring_h")
    turn = f"{motor}.cost.turn.today"
    return page.value(f"{turn}_bank_money"), page.value(f"{turn}_life_years")


def break_even(page: Page) -> Drawing:
    """A map for each place where the answer turns; on its heavy line both cost the same."""
    maps = maps_that_turn(page)
    rows = [maps[first : first + 2] for first in range(0, len(maps), 2)]
    height = HEIGHT * max(len(rows), 1)
    return drawn("break-even", height, lambda figure: _draw(page, figure, rows))


def _draw(page: Page, figure: Figure, rows: list[list[Map]]) -> None:
    tall = 1.0 / max(len(rows), 1)
    for down, maps in enumerate(rows):
        foot = 1.0 - (down + 1) * tall
        for across, each in enumerate(maps):
            left = across * 0.5
            axes = placed(
                figure, left + 0.045, foot + tall * FOOT / HEIGHT, left + 0.465,
                foot + tall * (1 - HEAD / HEIGHT),
            )  # fmt: skip
            _map(page, axes, each)


def _map(page: Page, axes: Axes, each: Map) -> None:
    currency = page.unit("money").strip()
    _named(page, axes, each, currency)
    rows = f"{each.motor}.cost.maps.{each.kind}"
    x, y = (np.unique(page.column(rows, name)) for name in each.names)
    saved = np.asarray(page.column(rows, "saving_money")).reshape(y.size, x.size)
    axes.contourf(x, y, saved, levels=[BELOW, 0.0], colors=[COSTS])
    axes.grid(visible=False)
    axes.contour(x, y, saved, levels=[0.0], colors=[INK], linewidths=1.8)
    lines = axes.contour(
        x, y, saved, levels=_steps(saved), colors=[QUIET], linewidths=0.5, linestyles="solid"
    )
    texts = axes.clabel(
        lines, fmt=lambda value: f"{value:+,.0f}".replace("-", "\u2212"), fontsize=7, inline=False
    )
    axes.plot(*each.today, "o", color=INK, markersize=5, clip_on=False)
    _clear(texts, (x, y), each.today)


def _named(page: Page, axes: Axes, each: Map, currency: str) -> None:
    """Names of the map and of its two directions."""
    label(
        axes, (0.0, 1.16), page.name(each.motor), transform=axes.transAxes, va="bottom",
        fontsize=8, weight="bold", color=trait(page, each.motor).colour,
    )  # fmt: skip
    if each.kind == "hours_and_fuel":
        axes.set_xlabel(f"diesel, {currency} per litre")
        corner_label(axes, "engine hours a year")
        return
    axes.set_xlabel(f"price of the battery, {currency}")
    axes.xaxis.set_major_locator(_few(4))
    axes.xaxis.set_major_formatter(lambda value, _: f"{value:,.0f}")
    corner_label(axes, "life of the battery, years")


def _clear(texts: Any, directions: tuple[Any, Any], today: tuple[float, float]) -> None:
    """Labels read level on a ground of their own, away from the dot and within the frame."""
    for text in texts:
        text.set_rotation(0)
        text.set_bbox({**PAD, "alpha": 0.75})
        apart, edges = zip(
            *(
                (abs(at - dot) / float(np.ptp(along)),
                 min(at - along[0], along[-1] - at) / float(np.ptp(along)))
                for at, dot, along in zip(text.get_position(), today, directions, strict=True)
            ),
            strict=True,
        )  # fmt: skip
        if (apart[0] < CLEAR[0] and apart[1] < CLEAR[1]) or edges[0] < CLEAR[0] / 2:
            text.remove()


def _steps(saved: Any) -> list[float]:
    """Four or so round amounts between the least and the most saved, without zero."""
    values = _few(4).tick_values(float(saved.min()), float(saved.max()))
    inside = [float(v) for v in values if saved.min() < v < saved.max() and abs(v) > 1e-9]
    return inside or [float(saved.mean())]


def _few(most: int) -> Any:
    from matplotlib.ticker import MaxNLocator

    return MaxNLocator(most)
