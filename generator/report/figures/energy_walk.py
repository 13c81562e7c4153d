"""Chart 6: what becomes of a full bank on the leg that must be made?"""

from __future__ import annotations

from typing import TYPE_CHECKING

from generator.report.canvas import Drawing, corner_label, drawn, label, number, placed
from generator.report.figures.look import CRIMSON, GREY, INK, QUIET, trait
from generator.report.page import Page

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

NAMES = 0.215  # of the width, for the names of the steps
MOST_PANELS = 2
OF_THE_BANK = ("below the floor", "age at the horizon", "cold", "reserve")
ON_THE_PAGE = {
    "below the floor": "below the lowest charge",
    "age at the horizon": "lost by age",
    "cold": "lost in the cold",
    "the way before it": "trip before it",
    "calm, clean boat": "clean boat in a calm",
    "fouling": "growth on the bottom",
    "sea": "waves",
    "house": "house supply",
}
SMALL = 0.05  # kWh, below which a step is left out in every panel


def energy_walk(page: Page, name: str = "energy-walk", height: float = 2.35) -> Drawing:
    """Bars walk from the bank on the label down to what is left; a panel for each motor."""
    return drawn(name, height, lambda figure: _draw(page, figure, height))


def walked(page: Page) -> list[str]:
    """The motors that have a walk, as many as have room."""
    return [motor for motor in page.motors if page.value(f"{motor}.use.walk")][:MOST_PANELS]


def _draw(page: Page, figure: Figure, height: float) -> None:
    motors = walked(page)
    width = (0.985 - NAMES) / len(motors)
    steps = _steps(page)
    names = ["battery by its label", *(ON_THE_PAGE.get(name, name) for name in steps),
             "left above the reserve"]  # fmt: skip
    low = min(0.0, *(_lowest(page, motor) for motor in motors))
    for place, motor in enumerate(motors):
        left = NAMES + place * width + (0.03 if place else 0.0)
        axes = placed(figure, left, 0.30 / height, NAMES + (place + 1) * width, 1 - 0.24 / height)
        _bars(page, axes, motor, steps)
        axes.set_ylim(len(names) - 0.4, -0.6)
        axes.set_xlim(low * 1.2, _most(page) * 1.17)
        axes.axvline(0.0, color=QUIET, linewidth=0.6)
        axes.set_yticks([])
        axes.grid(axis="y", visible=False)
        axes.spines["left"].set_visible(False)
        corner_label(axes, f"{page.unit('energy')}, {page.value(motor)['name']}")
        if place == 0:
            for row, text in enumerate(names):
                label(
                    axes, (-0.02, row), text, ha="right", va="center", clip_on=False,
                    transform=axes.get_yaxis_transform(),
                    weight="bold" if row in (0, len(names) - 1) else "normal",
                )  # fmt: skip


def _steps(page: Page) -> list[str]:
    """The steps that are seen in a panel, in their order; one that no motor has is left out."""
    rows = [row for motor in walked(page) for row in page.value(f"{motor}.use.walk")]
    seen = dict.fromkeys(row["name"] for row in rows)
    large = {row["name"] for row in rows if abs(row["energy_kwh"]) >= SMALL}
    return [name for name in seen if name in large]


def _lowest(page: Page, motor: str) -> float:
    """The lower of what is left and its cautious figure."""
    key = f"{motor}.use.walk_left"
    return min(float(page.value(f"{key}{end}_kwh") or 0.0) for end in ("", "_low"))


def _most(page: Page) -> float:
    return max(float(page.value(f"{motor}.use.walk_nominal_kwh")) for motor in walked(page))


def _bars(page: Page, axes: Axes, motor: str, steps: list[str]) -> None:
    key, colour = f"{motor}.use", trait(page, motor).colour
    nominal = float(page.value(f"{key}.walk_nominal_kwh"))
    gap = _most(page) * 0.012
    axes.barh(0, nominal, 0.66, color=colour)
    number(axes, page, f"{key}.walk_nominal_kwh", "energy:bare", (nominal + gap, 0), va="center")
    level = nominal
    for place, row in enumerate(page.value(f"{key}.walk")):
        after = level - float(row["energy_kwh"])
        if row["name"] in steps:
            at = steps.index(row["name"]) + 1
            _step(axes, row["name"], (level, after), at)
            number(
                axes, page, f"{key}.walk.{place}.energy_kwh", "energy:bare",
                (max(level, after, 0.0) + gap, at), va="center", color=QUIET,
            )  # fmt: skip
        level = after
    last = len(steps) + 1
    axes.barh(last, level, 0.66, color=colour if level >= 0 else CRIMSON)
    number(
        axes, page, f"{key}.walk_left_kwh", "energy:bare", (max(level, 0.0) + gap, last),
        va="center", weight="bold",
    )  # fmt: skip
    low = page.value(f"{key}.walk_left_low_kwh")
    if low is not None:
        axes.plot([low, low], [last - 0.33, last + 0.33], color=CRIMSON, linewidth=1.6)


def _step(axes: Axes, name: str, ends: tuple[float, float], at: int) -> None:
    """The bar of one step, and the thread to the next."""
    level, after = ends
    axes.barh(at, level - after, 0.66, left=after, color=GREY if name in OF_THE_BANK else INK)
    axes.plot([after, after], [at - 0.33, at + 1.33], color=QUIET, linewidth=0.5)
