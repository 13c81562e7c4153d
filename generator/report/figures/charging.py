"""Chart 9: how long from the day's end to full, by the current of the berth's breaker?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from generator.report.canvas import Drawing, corner_label, drawn, label, placed
from generator.report.figures.look import INK, QUIET, trait
from generator.report.page import Page

if TYPE_CHECKING:
    from matplotlib.figure import Figure

KINDS = (("typical", 1.7), ("worst", 0.9))
LONGEST = 26.0  # h shown; longer is more than a day and a night


def charging(page: Page, name: str = "charging", height: float = 1.9) -> Drawing:
    """Thick from a usual day, thin from a bank drawn to its reserve; dotted: this berth."""
    return drawn(name, height, lambda figure: _draw(page, figure, height))


def _draw(page: Page, figure: Figure, height: float) -> None:
    axes = placed(figure, 0.045, 0.42 / height, 0.985, 1 - 0.66 / height)
    for motor in page.motors:
        rows = page.value(f"{motor}.use.charging") or ()
        look = trait(page, motor)
        for kind, width in KINDS:
            axes.plot(
                [row["breaker_a"] for row in rows], [row[f"{kind}_h"] for row in rows],
                color=look.colour, linestyle=look.dash, linewidth=width, marker=look.marker,
                markersize=4.0, markerfacecolor=look.colour if kind == "typical" else "white",
            )  # fmt: skip
    axes.set_xlim(2, 51)
    axes.set_ylim(0, LONGEST)
    axes.set_yticks([0, 5, 10, 15, 20, 25])
    axes.axhline(10, color=QUIET, linewidth=0.8, linestyle=(0, (4, 2)))
    here = page.value("berth.breaker_a") if page.value("berth.shore_power") else None
    if here is not None:
        axes.axvline(here, color=INK, linewidth=0.8, linestyle=(0, (1, 1.5)))
        text = f"this berth, {page.plain('berth.breaker_a', 'current')}"
        label(
            axes, (here + 0.4, 0.985), text, va="top", color=QUIET, fontsize=7.5,
            transform=axes.get_xaxis_transform(),
        )  # fmt: skip
    axes.set_xlabel("breaker at the berth, A")
    corner_label(axes, "hours until full")
    figure.legend(
        handles=_handles(page), loc="upper left", bbox_to_anchor=(0.0, 1.0), ncols=2,
        borderaxespad=0, handlelength=2.6, columnspacing=1.6, borderpad=0,
    )  # fmt: skip


def _handles(page: Page) -> list[Any]:
    from matplotlib.lines import Line2D

    words = {"typical": "after a usual day", "worst": "drawn to its reserve"}
    return [
        Line2D(
            [], [], color=trait(page, motor).colour, linestyle=trait(page, motor).dash,
            linewidth=width, marker=trait(page, motor).marker, markersize=4.0,
            markerfacecolor=trait(page, motor).colour if kind == "typical" else "white",
            label=f"{page.value(motor)['name']}, {words[kind]}",
        )
        for motor in page.motors for kind, width in KINDS
    ]  # fmt: skip
