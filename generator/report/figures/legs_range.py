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
MOST_NAMED = 6
LINE, LINE_LETTERS = 0.14, 140  # inches of a line of names, and how much it holds
MOST_PANELS = 2


def legs_range(page: Page, name: str = "legs-range", height: float = 2.3) -> Drawing:
    """A panel for each of the first two motors; filled dots fit, crosses do not."""
    height += LINE * len(_names(page))
    return drawn(name, height, lambda figure: _draw(page, figure, height))


def _draw(page: Page, figure: Figure, height: float) -> None:
    motors = page.motors[:MOST_PANELS]
    lines = _names(page)
    foot, head = (0.42 + LINE * len(lines)) / height, 1 - 0.66 / height
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
    for row, words in enumerate(reversed(lines)):
        figure.text(0.0, (0.03 + LINE * row) / height, words, fontsize=7, color=INK, va="bottom")
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
        if not any(row["range_low_nm"] for row in rows):
            label(
                axes, (0.98, 0.97), "20 kn ahead: held at no speed\nin nine draws of ten",
                fontsize=7, ha="right", va="top", color=QUIET, bbox=_PAD,
                transform=axes.transAxes,
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
    named = _numbered(page)
    beside: dict[tuple[float, float], list[str]] = {}
    for key in page.keys(f"{motor}.legs"):
        place = int(key.rsplit(".", 1)[1])
        row, leg = page.value(key), page.value(f"legs.{place}")
        at = float(leg["speed_kn"]), float(leg["distance_nm"])
        size = 12.0 + 2.0 * float(leg["times_per_year"] or 0.0)
        look: dict[str, Any] = {"s": min(size, 90.0), "zorder": 3}
        if row["fits"]:
            axes.scatter(*at, color=INK, marker="o", edgecolors="white", linewidths=0.6, **look)
        else:
            axes.scatter(*at, color=CRIMSON, marker="x", linewidths=1.5, **look)
        if place in named:
            beside.setdefault(at, []).append(str(named.index(place) + 1))
    for at, numbers in beside.items():
        label(
            axes, (at[0] + 0.09, at[1]), ", ".join(numbers), fontsize=7, color=INK, va="center",
            ha="left", bbox=_PAD, zorder=4,
        )  # fmt: skip


def _numbered(page: Page) -> list[int]:
    """The legs that bear a number: those that a motor cannot make first, then the others."""
    fails = {
        place
        for motor in page.motors[:MOST_PANELS]
        for place, row in enumerate(page.value(f"{motor}.legs"))
        if not row["fits"]
    }
    places = range(len(page.value("legs")))
    return sorted(places, key=lambda place: (place not in fails, place))[:MOST_NAMED]


def _names(page: Page) -> list[str]:
    """What the numbers stand for, as many to a line as have room."""
    lines: list[str] = []
    for count, place in enumerate(_numbered(page), start=1):
        name = f"{count}  {page.value(f'legs.{place}')['name']}"
        if lines and len(lines[-1]) + len(name) <= LINE_LETTERS:
            lines[-1] += f"  ·  {name}"
        else:
            lines.append(name)
    return lines


_PAD: dict[str, Any] = {"facecolor": "white", "edgecolor": "none", "pad": 0.6, "alpha": 0.8}


def _handles() -> list[Any]:
    from matplotlib.lines import Line2D

    return [
        Line2D([], [], color=INK, marker="o", linestyle="", markersize=5, label="leg that fits"),
        Line2D([], [], color=CRIMSON, marker="x", linestyle="", markersize=5, label="does not fit"),
        Line2D([], [], color=QUIET, linewidth=1.7, label="range in a calm"),
        Line2D([], [], color=QUIET, linewidth=0.9, label="range, 20 kn ahead"),
    ]
