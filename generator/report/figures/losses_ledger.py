"""Chart: from the battery to the water, what does each step take?"""

from __future__ import annotations

from textwrap import shorten
from typing import TYPE_CHECKING, Any

from generator.report.canvas import Drawing, drawn, label, number, placed
from generator.report.figures.look import (
    BLUE,
    CRIMSON,
    GREY,
    OCHRE,
    QUIET,
    RULE,
    TEAL,
)
from generator.report.page import Page

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

# name, results keys, face, hatch: told apart in black and white as well
GROUPS = (
    ("bank", ("bank_w",), CRIMSON, ""),
    ("cables and standby", ("cables_w", "standby_w"), GREY, "----"),
    ("motor and controller", ("motor_w",), OCHRE, "////"),
    ("gear, seal, bearings", ("gear_w", "seal_w", "bearings_w"), TEAL, "||||"),
    ("propeller and wake", ("propeller_w",), RULE, "\\\\\\\\"),
    ("tows the hull", ("towing_w",), BLUE, ""),
)
BAR = 0.62


def losses_ledger(page: Page, motors: list[str]) -> Drawing:
    """Stacked bars, one per motor and speed, in shares of what is taken inside the bank."""
    count = sum(len(page.keys(f"{motor}.losses")) for motor in motors)
    height = 0.75 + 0.33 * count + 0.12 * len(motors)
    return drawn("losses-ledger", height, lambda figure: _draw(page, figure, motors, height))


def _draw(page: Page, figure: Figure, motors: list[str], height: float) -> None:
    axes = placed(figure, 0.255, 0.38 / height, 0.90, 1 - 0.42 / height)
    place = 0.0
    for motor in motors:
        for row in page.keys(f"{motor}.losses"):
            _bar(page, axes, motor, row, place)
            place += 1.0
        place += 0.35
    axes.set_ylim(place - 0.85, -0.6)
    axes.set_xlim(0, 100)
    axes.set_yticks([])
    axes.grid(axis="y", visible=False)
    axes.spines["left"].set_visible(False)
    axes.set_xlabel("% of the power taken inside the bank")
    _legend(figure)


def _bar(page: Page, axes: Axes, motor: str, key: str, place: float) -> None:
    row = page.value(key)
    whole, start = row["taken_kw"] * 10.0, 0.0  # W per per cent
    for _, names, face, hatch in GROUPS:
        width = sum(row[name] for name in names) / whole
        axes.barh(
            place, width, BAR, left=start, color=face, hatch=hatch, edgecolor="white",
            linewidth=0.5,
        )  # fmt: skip
        start += width
    look: dict[str, Any] = {
        "ha": "right", "va": "center", "transform": axes.get_yaxis_transform(), "clip_on": False,
    }  # fmt: skip
    number(axes, page, f"{key}.speed_kn", "speed", (-0.015, place), weight="bold", **look)
    label(
        axes,
        (-0.105, place),
        shorten(page.name(motor), 26, placeholder="…"),
        color=QUIET,
        fontsize=7,
        **look,
    )
    number(
        axes, page, f"{key}.taken_kw", "power", (1.015, place), va="center", fontsize=7.5,
        transform=axes.get_yaxis_transform(), clip_on=False,
    )  # fmt: skip
    number(
        axes, page, f"{key}.useful_share", "share", (99.0, place), ha="right", va="center",
        color="white", weight="bold", fontsize=7.5,
    )  # fmt: skip


def _legend(figure: Figure) -> None:
    from matplotlib.patches import Patch

    handles = [
        Patch(facecolor=face, hatch=hatch, edgecolor="white", label=name)
        for name, _, face, hatch in GROUPS
    ]
    figure.legend(
        handles=handles, loc="upper right", bbox_to_anchor=(0.985, 1.0), ncols=6, borderaxespad=0,
        borderpad=0, handlelength=1.6, columnspacing=1.0, fontsize=6.8,
    )  # fmt: skip
