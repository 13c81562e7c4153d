"""Chart 4: how much range does one knot less bring, calm and in wind, bank new and aged?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from generator.report.canvas import Drawing, corner_label, drawn, label, placed
from generator.report.figures.look import INK, QUIET, trait
from generator.report.page import Page

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

SEAS = ("calm", "wind_20")


def range_speed(page: Page, name: str = "range-speed", height: float = 3.3) -> Drawing:
    """Two panels on one scale: range to reserve against speed; hollow and thin = aged bank."""
    return drawn(name, height, lambda figure: _draw(page, figure, height))


def _draw(page: Page, figure: Figure, height: float) -> None:
    foot, head = 0.42 / height, 1 - 0.66 / height
    left = placed(figure, 0.045, foot, 0.50, head)
    right = placed(figure, 0.555, foot, 0.985, head)
    for axes, sea in zip((left, right), SEAS, strict=True):
        for motor in page.motors:
            _curves(page, axes, motor, sea)
        axes.set_ylim(0, _farthest(page) * 1.06)
        axes.set_xlim(*_speeds(page))
        _cruise(page, axes)
        axes.xaxis.set_major_locator(_whole_knots())
        axes.set_xlabel(f"speed through the water, {page.unit('speed')}")
        corner_label(axes, f"{page.unit('distance')} to reserve, {_sea_name(page, sea)}")
    figure.legend(
        handles=_handles(page), loc="upper left", bbox_to_anchor=(0.0, 1.0), ncols=2,
        borderaxespad=0, handlelength=2.6, columnspacing=1.6, borderpad=0,
    )  # fmt: skip


def _whole_knots() -> Any:
    from matplotlib.ticker import MultipleLocator

    return MultipleLocator(1)


def _sea_name(page: Page, sea: str) -> str:
    key = page.find("sea_states", id=sea)
    wind = page.value(f"{key}.wind_kn") if key else None
    return f"{page.plain(f'{key}.wind_kn', 'wind')} ahead" if wind else "calm"


def _rows(page: Page, motor: str, sea: str, age: str) -> list[dict[str, Any]]:
    return [
        row
        for row in page.value(f"{motor}.range") or ()
        if row["sea"] == sea and row["bank_age"] == age and row["range_nm"] is not None
    ]


def _all_rows(page: Page) -> list[dict[str, Any]]:
    return [row for motor in page.motors for sea in SEAS for row in _rows(page, motor, sea, "new")]


def _farthest(page: Page) -> float:
    return max([1.0, *(float(row["range_nm"]) for row in _all_rows(page))])


def _speeds(page: Page) -> tuple[float, float]:
    speeds = [row["speed_kn"] for row in _all_rows(page)] or [2.0, 6.0]
    return min(speeds), max(speeds) + 0.1


def _curves(page: Page, axes: Axes, motor: str, sea: str) -> None:
    look = trait(page, motor)
    for age, width, fill in (("aged", 0.9, "white"), ("new", 1.7, look.colour)):
        rows = _rows(page, motor, sea, age)
        axes.plot(
            [row["speed_kn"] for row in rows], [row["range_nm"] for row in rows],
            color=look.colour, linewidth=width, marker=look.marker, markevery=3, markersize=4.2,
            markerfacecolor=fill, linestyle=look.dash,
        )  # fmt: skip


def _cruise(page: Page, axes: Axes) -> None:
    speed = page.value("planning.cruise_speed_kn")
    if speed is None:
        return
    axes.axvline(speed, color=INK, linewidth=0.8, linestyle=(0, (1, 1.5)))
    label(
        axes, (speed + 0.06, 0.985), "planned cruise", va="top", color=QUIET, fontsize=7.5,
        transform=axes.get_xaxis_transform(),
    )  # fmt: skip


def _handles(page: Page) -> list[Any]:
    from matplotlib.lines import Line2D

    handles = []
    for motor in page.motors:
        look = trait(page, motor)
        for age, width, fill in (("new", 1.7, look.colour), ("aged", 0.9, "white")):
            handles.append(
                Line2D(
                    [], [], color=look.colour, linestyle=look.dash, linewidth=width,
                    marker=look.marker, markersize=4.2, markerfacecolor=fill,
                    label=f"{page.value(motor)['name']}, bank {age}",
                )
            )  # fmt: skip
    return handles
