"""Chart 3: what shaft power takes her to which speed, and where does each motor top out?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from generator.report.canvas import Drawing, corner_label, drawn, label, placed
from generator.report.figures.look import INK, QUIET, trait
from generator.report.page import Page

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure


def speed_power(page: Page, name: str = "speed-power", height: float = 3.5) -> Drawing:
    """Curve and band of the calm in service, trial points with bars, ratings as level lines."""
    return drawn(name, height, lambda figure: _draw(page, figure, height))


def _draw(page: Page, figure: Figure, height: float) -> None:
    axes = placed(figure, 0.045, 0.42 / height, 0.985, 1 - 0.62 / height)
    top = max([1.0, *_ratings(page)])
    axes.set_ylim(0, top * 1.12)
    axes.set_xlim(2.0, _fastest(page) + 0.25)
    for option in page.options:
        _curve(page, axes, option)
    for column, motor in reversed(list(enumerate(page.motors))):
        _rating(page, axes, motor, column)
    _trial(page, axes)
    axes.set_xlabel(f"speed through the water, calm, {page.unit('speed')}")
    corner_label(axes, f"{page.unit('power')} at the shaft")
    figure.legend(
        handles=_handles(page), loc="upper left", bbox_to_anchor=(0.0, 1.0),
        ncols=4, borderaxespad=0, handlelength=2.4, columnspacing=1.4, borderpad=0,
    )  # fmt: skip


def _ratings(page: Page) -> list[float]:
    return [page.value(f"{motor}.bank.as_set.peak_power_kw") for motor in page.motors]


def _fastest(page: Page) -> float:
    ends = [page.value(f"{option}.top_speed.peak_kn") or 0.0 for option in page.options]
    return max([4.0, *ends, *(value or 0.0 for value in page.column("trial.rows", "speed_kn"))])


def _curve(page: Page, axes: Axes, option: str) -> None:
    rows, look = f"{option}.speed_power", trait(page, option)
    speeds = page.column(rows, "speed_kn")
    width = 1.6 if page.value(option)["kind"] == "battery" else 1.1
    axes.plot(
        speeds, page.column(rows, "shaft_power_kw"), color=look.colour, linestyle=look.dash,
        linewidth=width, zorder=3,
    )  # fmt: skip
    if option == page.options[0]:
        low, high = (page.column(rows, f"shaft_power_{end}_kw") for end in ("low", "high"))
        axes.fill_between(speeds, low, high, color="#dfe6ec", linewidth=0, zorder=1)


def _rating(page: Page, axes: Axes, motor: str, column: int) -> None:
    look = trait(page, motor)
    left, right = axes.get_xlim()
    for kind, dash in (("continuous", "-"), ("peak", (0, (2, 1.5)))):
        power = page.value(f"{motor}.particulars.motor.{kind}_power_kw")
        reached = page.value(f"{motor}.top_speed.{kind}_kn")
        end = reached if reached is not None else right
        axes.plot([left, end], [power, power], color=look.colour, linestyle=dash, linewidth=0.9)
        if reached is not None:
            _reached(page, axes, motor, reached, power)
        words = f"{page.value(motor)['name']}: {kind} {_kilowatts(page, motor, kind)}"
        start = left + (right - left) * (0.008 + 0.31 * column)
        label(axes, (start, power + axes.get_ylim()[1] * 0.012), words, va="bottom", fontsize=7.5)


def _reached(page: Page, axes: Axes, motor: str, speed: float, power: float) -> None:
    """The speed that a rating reaches, on the curve, tied to the rating's level."""
    look, rows = trait(page, motor), f"{motor}.speed_power"
    needed = _between(page.column(rows, "speed_kn"), page.column(rows, "shaft_power_kw"), speed)
    axes.plot([speed, speed], [needed, power], color=look.colour, linestyle=":", linewidth=0.8)
    axes.plot(
        speed, needed, look.marker, color=look.colour, markersize=5.5, markeredgecolor="white",
        zorder=6,
    )  # fmt: skip


def _between(speeds: list[float], powers: list[float], speed: float) -> float:
    """The power of the curve at a speed, straight between its rows."""
    for place, faster in enumerate(speeds[1:]):
        if faster >= speed:
            share = (speed - speeds[place]) / (faster - speeds[place])
            return powers[place] + max(share, 0.0) * (powers[place + 1] - powers[place])
    return powers[-1] if powers else 0.0


def _kilowatts(page: Page, motor: str, kind: str) -> str:
    return page.plain(f"{motor}.particulars.motor.{kind}_power_kw", "power")


def _trial(page: Page, axes: Axes) -> None:
    rows = [row for row in page.value("trial.rows") or () if row["used"]] if _has(page) else []
    for row in rows:
        if row["speed_kn"] is None or row["shaft_power_kw"] is None:
            continue
        low, high = row["shaft_power_low_kw"], row["shaft_power_high_kw"]
        if low is not None and high is not None:
            axes.plot([row["speed_kn"]] * 2, [low, high], color=INK, linewidth=0.9, zorder=5)
        axes.plot(
            row["speed_kn"], row["shaft_power_kw"], "o", markersize=4.5, color="white",
            markeredgecolor=INK, markeredgewidth=1.1, zorder=6,
        )  # fmt: skip


def _has(page: Page) -> bool:
    return page.value("trial") is not None


def _handles(page: Page) -> list[Any]:
    from matplotlib.lines import Line2D
    from matplotlib.patches import Patch

    handles: list[Any] = [
        Line2D(
            [], [], color=trait(page, option).colour, linestyle=trait(page, option).dash,
            label=page.name(option),
        )
        for option in page.options
    ]  # fmt: skip
    handles.append(Patch(color="#dfe6ec", label="low to cautious figure"))
    if _has(page):
        handles.append(
            Line2D(
                [], [], linestyle="", marker="o", color="white", markeredgecolor=INK,
                label="sea trial, double run", markersize=4.5,
            )
        )  # fmt: skip
    handles.append(Line2D([], [], color=QUIET, marker="^", linewidth=0.9, label="top of a rating"))
    return handles
