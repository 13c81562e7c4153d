"""Chart 7: what does a mile over the ground cost against a stream?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from generator.report.canvas import Drawing, corner_label, drawn, placed
from generator.report.figures.look import trait
from generator.report.page import Page

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

ALIKE = 0.1  # of each other, below which two lines are one to the eye
KINDS: tuple[tuple[str, float, Any], ...] = (  # and its dash
    ("least", 1.5, "-"),
    ("cruise", 1.2, (0, (1, 1.6))),
)


def foul_stream(page: Page, name: str = "foul-stream", height: float = 2.9) -> Drawing:
    """Energy for a mile over the ground; full at the cheapest speed, dotted at planned cruise."""
    return drawn(name, height, lambda figure: _draw(page, figure, height))


def _draw(page: Page, figure: Figure, height: float) -> None:
    axes = placed(figure, 0.045, 0.42 / height, 0.985, 1 - 0.66 / height)
    for same in _alike(page):
        _curves(page, axes, same[0])
    axes.set_xlim(0, 4)
    axes.set_ylim(0, 4.0 * max(_slack(page, motor) for motor in page.motors))
    axes.set_xlabel(f"stream against her, {page.unit('speed')}")
    corner_label(axes, f"{page.unit('energy_per_mile')} over the ground")
    figure.legend(
        handles=_handles(page), loc="upper left", bbox_to_anchor=(0.0, 1.0), ncols=2,
        borderaxespad=0, handlelength=2.6, columnspacing=1.6, borderpad=0,
    )  # fmt: skip


def _alike(page: Page) -> list[list[str]]:
    """Motors whose lines would lie on each other, together."""
    sets: list[list[str]] = []
    for motor in page.motors:
        own = page.column(f"{motor}.stream.rows", "least_kwh_per_nm")
        for same in sets:
            other = page.column(f"{same[0]}.stream.rows", "least_kwh_per_nm")
            pairs = [(a, b) for a, b in zip(own, other, strict=True) if a and b]
            if pairs and all(abs(a - b) <= ALIKE * b for a, b in pairs):
                same.append(motor)
                break
        else:
            sets.append([motor])
    return sets


def _named(page: Page, same: list[str]) -> str:
    return " and ".join(page.name(motor) for motor in same)


def _slack(page: Page, motor: str) -> float:
    row = page.value(f"{motor}.stream.rows.0")
    return float(row["cruise_kwh_per_nm"] or row["least_kwh_per_nm"] or 0.25)


def _curves(page: Page, axes: Axes, motor: str) -> None:
    look = trait(page, motor)
    for kind, width, dash in KINDS:
        rows = [
            row for row in page.value(f"{motor}.stream.rows")
            if row[f"{kind}_kwh_per_nm"] is not None
        ]  # fmt: skip
        axes.plot(
            [row["stream_kn"] for row in rows], [row[f"{kind}_kwh_per_nm"] for row in rows],
            color=look.colour, linestyle=dash, linewidth=width, marker=look.marker,
            markevery=4, markersize=4.2,
        )  # fmt: skip


def _handles(page: Page) -> list[Any]:
    from matplotlib.lines import Line2D

    words = {"least": "most economical speed", "cruise": "planned cruise"}
    return [
        Line2D(
            [], [], color=trait(page, same[0]).colour, linestyle=dash,
            linewidth=width, marker=trait(page, same[0]).marker, markersize=4.2,
            label=f"{_named(page, same)}: {words[kind]}",
        )
        for same in _alike(page) for kind, width, dash in KINDS
    ]  # fmt: skip
