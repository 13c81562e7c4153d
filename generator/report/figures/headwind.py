"""Chart 5: what speed does each option make good against the wind, and where does it end?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from generator.report.canvas import Drawing, corner_label, drawn, label, placed
from generator.report.figures.look import QUIET, trait
from generator.report.page import Page

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

ZONE, BEYOND = "#f3dfd3", "#e6e9ec"


def headwind_ladder(page: Page, name: str = "headwind-ladder", height: float = 3.1) -> Drawing:
    """Speed made good over true wind; thick continuous, thin at peak; lee-shore zone shaded."""
    return drawn(name, height, lambda figure: _draw(page, figure, height))


def _draw(page: Page, figure: Figure, height: float) -> None:
    axes = placed(figure, 0.045, 0.42 / height, 0.985, 1 - 0.82 / height)
    end = _end(page)
    axes.set_xlim(0, 40)
    axes.set_ylim(0, _fastest(page) * 1.08)
    axes.axhspan(0, _least_way(page), color=ZONE, linewidth=0, zorder=0)
    if end < 40:
        axes.axvspan(end, 40, color=BEYOND, linewidth=0, zorder=1)
        label(
            axes, ((end + 40) / 2, axes.get_ylim()[1] * 0.5), "waves beyond\nthe method",
            ha="center", va="center", color=QUIET, fontsize=7.5,
        )  # fmt: skip
    label(
        axes, (0.5, 0.15),
        f"too slow off a lee shore: less than {page.plain('limits.least_way_kn', 'wind')}",
        color=QUIET, fontsize=7.5, va="bottom",
    )  # fmt: skip
    for option in page.options:
        _curves(page, axes, option)
    axes.set_xlabel(f"head wind with its waves, {page.unit('wind')}")
    corner_label(axes, f"speed to windward, {page.unit('speed')}")
    figure.legend(
        handles=_handles(page), loc="upper left", bbox_to_anchor=(0.0, 1.0), ncols=3,
        borderaxespad=0, handlelength=2.6, columnspacing=1.6, borderpad=0,
    )  # fmt: skip


def _least_way(page: Page) -> float:
    return float(page.value("limits.least_way_kn"))


def _rows(page: Page, option: str) -> list[dict[str, Any]]:
    return [row for row in page.value(f"{option}.headwind.rows") or () if not row["beyond_limit"]]


def _end(page: Page) -> float:
    """The last wind whose sea is within the formula; that of the first option."""
    rows = _rows(page, page.options[0])
    return float(rows[-1]["wind_kn"]) if rows else 0.0


def _fastest(page: Page) -> float:
    return max(float(_rows(page, option)[0]["peak_kn"]) for option in page.options)


def _curves(page: Page, axes: Axes, option: str) -> None:
    look, rows = trait(page, option), _rows(page, option)
    winds = [row["wind_kn"] for row in rows]
    kinds = [("continuous", 1.7), ("peak", 0.9)] if option in page.motors else [("peak", 1.3)]
    for kind, width in kinds:
        axes.plot(
            winds, [row[f"{kind}_kn"] for row in rows], color=look.colour, linestyle=look.dash,
            linewidth=width, zorder=3,
        )  # fmt: skip
        stops = page.value(f"{option}.headwind.{kind}.stops_kn")
        if page.value(f"{option}.headwind.{kind}.stops_by") != "sea":
            axes.plot(
                stops, _least_way(page), look.marker, color=look.colour, markersize=5.5,
                markeredgecolor="white", zorder=5,
            )  # fmt: skip
    _named_stop(page, axes, option)


def _named_stop(page: Page, axes: Axes, option: str) -> None:
    """The wind at which a motor's continuous rating stops making 2 kn, in figures."""
    key = f"{option}.headwind.continuous"
    if option not in page.motors or page.value(f"{key}.stops_by") == "sea":
        return
    place = page.motors.index(option) % 3  # three lines have room above the words of the zone
    label(
        axes, (page.value(f"{key}.stops_kn") - 0.6, _least_way(page) - 0.35 - 0.5 * place),
        page.plain(f"{key}.stops_kn", "wind"), ha="right", va="center", fontsize=7.5, zorder=6,
    )  # fmt: skip


def _handles(page: Page) -> list[Any]:
    from matplotlib.lines import Line2D

    handles: list[Any] = []
    for option in page.options:
        look, name = trait(page, option), page.name(option)
        kinds = [(f"{name}, continuous", 1.7), (f"{name}, peak", 0.9)]
        if option not in page.motors:
            kinds = [(name, 1.3)]
        handles += [
            Line2D(
                [], [], color=look.colour, linestyle=look.dash, linewidth=width, label=words,
                marker=look.marker, markersize=4.2,
            )
            for words, width in kinds
        ]  # fmt: skip
    return handles
