"""How small may the bank be at which speed, and where do the options lie?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from generator.report.canvas import Drawing, corner_label, drawn, number, placed
from generator.report.figures.look import trait
from generator.report.page import Page

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure


def smallest_bank(page: Page, name: str = "smallest-bank", height: float = 2.0) -> Drawing:
    """A curve for each motor; the option's own bank as a mark: above its curve the legs go."""
    return drawn(name, height, lambda figure: _draw(page, figure, height))


def _draw(page: Page, figure: Figure, height: float) -> None:
    axes = placed(figure, 0.045, 0.42 / height, 0.985, 1 - 0.66 / height)
    tops = []
    for motor in page.motors:
        look, own = trait(page, motor), page.value(f"{motor}.use.smallest")
        rows = [row for row in page.value(f"{motor}.use.sizing") if row["smallest_kwh"] is not None]
        axes.plot(
            [row["speed_kn"] for row in rows], [row["smallest_kwh"] for row in rows],
            color=look.colour, linestyle=look.dash,
        )  # fmt: skip
        if own:
            _mark(page, axes, motor, own)
            tops.append(2.0 * own["own_nominal_kwh"])
        tops += [row["smallest_kwh"] * 1.1 for row in rows[:1]]
    axes.set_ylim(0, max([1.0, *tops]))
    axes.set_xlabel(f"speed through the water on every leg, {page.unit('speed')}")
    corner_label(axes, f"nominal bank, {page.unit('energy')}")
    figure.legend(
        handles=_handles(page), loc="upper left", bbox_to_anchor=(0.0, 1.0), ncols=2,
        borderaxespad=0, handlelength=2.6, columnspacing=1.6, borderpad=0,
    )  # fmt: skip


def _mark(page: Page, axes: Axes, motor: str, own: dict[str, Any]) -> None:
    look = trait(page, motor)
    at = own["own_speed_kn"], own["own_nominal_kwh"]
    axes.plot(*at, marker=look.marker, color=look.colour, markersize=8, markeredgecolor="white")
    place = page.motors.index(motor)
    number(
        axes, page, f"{motor}.use.smallest.own_nominal_kwh", "energy",
        (at[0], at[1] * (0.86 if place % 2 == 0 else 1.12)),
        va="top" if place % 2 == 0 else "bottom", ha="center", color=look.colour, weight="bold",
    )  # fmt: skip


def _handles(page: Page) -> list[Any]:
    from matplotlib.lines import Line2D

    found: list[Any] = []
    for motor in page.motors:
        look, name = trait(page, motor), page.name(motor)
        found.append(
            Line2D([], [], color=look.colour, linestyle=look.dash, label=f"smallest for {name}")
        )
        found.append(
            Line2D(
                [], [], color=look.colour, linestyle="", marker=look.marker, markersize=6,
                label=f"{name} as specified",
            )
        )  # fmt: skip
    return found
