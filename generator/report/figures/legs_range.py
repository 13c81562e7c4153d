"""Chart 2: every leg as a dot, by distance and speed, against the range that is always there."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from generator.report.canvas import Drawing, corner_label, drawn, label, placed
from generator.report.figures.look import CRIMSON, INK, QUIET, trait
from generator.report.page import Page

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

SEAS = (("calm", 1.7), ("wind_20", 0.9))
MOST_NAMED = 4
MOST_PANELS = 2


def legs_range(page: Page, name: str = "legs-range", height: float = 2.3) -> Drawing:
    """A panel for each of the first two motors; filled dots fit, crosses do not."""
    return drawn(name, height, lambda figure: _draw(page, figure, height))


def _draw(page: Page, figure: Figure, height: float) -> None:
    motors = page.motors[:MOST_PANELS]
    foot, head = 0.42 / height, 1 - 0.66 / height
    width = (0.985 - 0.045 + 0.055) / len(motors)
    for place, motor in enumerate(motors):
        left = 0.045 + place * width
        axes = placed(figure, left, foot, left + width - 0.055, head)
        _curves(page, axes, motor)
        _dots(page, axes, motor)
        axes.set_xlim(*_speeds(page))
        axes.set_ylim(0, _farthest(page))
        axes.set_xlabel(f"speed through the water, {page.unit('speed')}")
        corner_label(axes, f"{page.unit('distance')}, {page.value(motor)['name']}")
    figure.legend(
        handles=_handles(), loc="upper left", bbox_to_anchor=(0.0, 1.0), ncols=4,
        borderaxespad=0, handlelength=2.4, columnspacing=1.6, borderpad=0,
    )  # fmt: skip


def _rows(page: Page, motor: str, sea: str) -> list[dict[str, Any]]:
    return [
        row
        for row in page.value(f"{motor}.range") or ()
        if row["sea"] == sea and row["bank_age"] == "aged" and row["range_nm"] is not None
    ]


def _curves(page: Page, axes: Axes, motor: str) -> None:
    for sea, width in SEAS:
        rows = _rows(page, motor, sea)
        axes.plot(
            [row["speed_kn"] for row in rows], [row["range_low_nm"] for row in rows],
            color=trait(page, motor).colour, linewidth=width,
        )  # fmt: skip


def _speeds(page: Page) -> tuple[float, float]:
    own = [float(leg["speed_kn"]) for leg in page.value("legs")]
    return min(*own, 3.0) - 0.5, max(*own, 5.0) + 0.8


def _farthest(page: Page) -> float:
    """The legs with room above them, and no more of the curves than helps."""
    longest = max(float(leg["distance_nm"]) for leg in page.value("legs"))
    slowest, fastest = _speeds(page)
    ends = [
        float(row["range_low_nm"])
        for motor in page.motors[:MOST_PANELS]
        for row in _rows(page, motor, "calm")
        if slowest + 0.9 <= row["speed_kn"] <= fastest
    ]
    return max(1.25 * longest, min(max([1.0, *ends]) * 1.05, 2.2 * longest))


def _dots(page: Page, axes: Axes, motor: str) -> None:
    named = 0
    for key in page.keys(f"{motor}.legs"):
        row, leg = page.value(key), page.value(f"legs.{key.rsplit('.', 1)[1]}")
        at = float(leg["speed_kn"]), float(leg["distance_nm"])
        size = 12.0 + 2.0 * float(leg["times_per_year"] or 0.0)
        look: dict[str, Any] = {"s": min(size, 90.0), "zorder": 3}
        if row["fits"]:
            axes.scatter(*at, color=INK, marker="o", edgecolors="white", linewidths=0.6, **look)
            continue
        axes.scatter(*at, color=CRIMSON, marker="x", linewidths=1.5, **look)
        if named < MOST_NAMED:
            named += 1
            _name(page, axes, row["name"], at, named)


def _name(page: Page, axes: Axes, name: str, at: tuple[float, float], count: int) -> None:
    """A number beside the cross, and what it stands for in the empty corner above the curves."""
    label(
        axes, (at[0] + 0.07, at[1]), str(count), fontsize=7, color=CRIMSON, va="center",
        ha="left", bbox=_PAD,
    )  # fmt: skip
    slowest, fastest = _speeds(page)
    corner = fastest - 0.02 * (fastest - slowest), _farthest(page) * (1.05 - 0.085 * count)
    label(
        axes, corner, f"{count}  {_short(name)}", fontsize=7, color=CRIMSON, va="top",
        ha="right", bbox=_PAD,
    )  # fmt: skip


_PAD: dict[str, Any] = {"facecolor": "white", "edgecolor": "none", "pad": 0.6, "alpha": 0.8}


def _short(name: str) -> str:
    return name if len(name) <= 30 else f"{name[:28].rstrip()} …"


def _handles() -> list[Any]:
    from matplotlib.lines import Line2D

    return [
        Line2D([], [], color=INK, marker="o", linestyle="", markersize=5, label="leg that fits"),
        Line2D([], [], color=CRIMSON, marker="x", linestyle="", markersize=5, label="does not fit"),
        Line2D([], [], color=QUIET, linewidth=1.7, label="range in a calm"),
        Line2D([], [], color=QUIET, linewidth=0.9, label="range, 20 kn ahead"),
    ]
