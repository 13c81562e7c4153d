"""Chart 10: what do house and motor use by month, and what of it is bought or comes by the sun?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from generator.report.canvas import Drawing, corner_label, drawn, placed
from generator.report.figures.look import FAINT, GREY, INK, OCHRE, trait
from generator.report.page import Page

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

WIDTH, APART = 0.36, 0.20  # of a month's column: each of its two bars, and half their distance

OTHERS = ("wind", "screw", "genset")  # drawn as one
LEAST = 0.05  # kWh a month: less is no bar


def season_balance(page: Page, motor: str, name: str = "season-balance") -> Drawing:
    """Two bars a month: what is used, and what is supplied."""
    height = 2.35
    return drawn(name, height, lambda figure: _draw(page, motor, figure, height))


def _draw(page: Page, motor: str, figure: Figure, height: float) -> None:
    axes = placed(figure, 0.065, 0.26 / height, 0.985, 1 - 0.56 / height)
    rows = f"{motor}.energy_year.months"
    handles = [*_used(page, axes, motor), *_sources(page, axes, rows)]
    axes.set_ylim(0, max(1.0, axes.get_ylim()[1]))
    axes.set_xlim(-0.6, 11.6)
    axes.set_xticks(list(range(12)), [name[:3] for name in page.column(rows, "month")])
    axes.grid(False, axis="x")
    corner_label(axes, f"{page.unit('energy')} a month")
    figure.legend(
        handles=handles, loc="upper left", bbox_to_anchor=(0.0, 1.0), ncols=len(handles),
        borderaxespad=0, handlelength=2.0, columnspacing=1.6, borderpad=0,
    )  # fmt: skip


def _used(page: Page, axes: Axes, motor: str) -> list[Any]:
    """House and motor, one upon the other."""
    rows, look = f"{motor}.energy_year.months", trait(page, motor)
    house, used = page.column(rows, "house_kwh"), page.column(rows, "used_kwh")
    at = [month - APART for month in range(12)]
    driven = [total - own for total, own in zip(used, house, strict=True)]
    own = {"color": FAINT, "edgecolor": GREY, "label": "used by the house"}
    motors = {"color": "white", "edgecolor": look.colour, "hatch": look.hatch,
              "label": "used by the motor"}  # fmt: skip
    found = [_bars(axes, at, house, [0.0] * 12, own)]
    if max(driven) > LEAST:
        found.append(_bars(axes, at, driven, house, motors))
    return found


def _bars(
    axes: Axes, at: list[float], values: list[float], below: list[float], look: dict[str, Any]
) -> Any:
    """Twelve bars upon others, and what stands for them in the legend."""
    from matplotlib.patches import Patch

    bare = {name: value for name, value in look.items() if name != "label"}
    axes.bar(at, values, WIDTH, bottom=below, linewidth=0.7, zorder=2, **bare)
    face = {"facecolor" if name == "color" else name: value for name, value in look.items()}
    return Patch(linewidth=0.7, **face)


def _sources(page: Page, axes: Axes, rows: str) -> list[Any]:
    """What is supplied, source upon source; each only where there is any."""
    at = [month + APART for month in range(12)]
    low, found = [0.0] * 12, []
    for look, values in _supplied(page.value(rows)):
        if max(values) > LEAST:
            found.append(_bars(axes, at, values, low, look))
            low = [below + value for below, value in zip(low, values, strict=True)]
    return found


def _supplied(months: list[dict[str, Any]]) -> list[tuple[dict[str, Any], list[float]]]:
    """The look of each source, and what it supplies by month."""
    shore = {"color": GREY, "edgecolor": GREY, "label": "from shore power"}
    sun = {"color": "white", "edgecolor": INK, "label": "from the sun"}
    other = {"color": "white", "edgecolor": OCHRE, "hatch": "..",
             "label": "from genset, wind and propeller"}  # fmt: skip
    return [
        (shore, [row["shore_kwh"] for row in months]),
        (sun, [max(row["sun_kwh"] - row["spilled_kwh"], 0.0) for row in months]),
        (other, [_other(row) for row in months]),
    ]


def _other(row: dict[str, Any]) -> float:
    """What else is supplied, less what is left over beyond the sun's own."""
    over = max(float(row["spilled_kwh"]) - float(row["sun_kwh"]), 0.0)
    return max(sum(float(row[f"{name}_kwh"]) for name in OTHERS) - over, 0.0)
