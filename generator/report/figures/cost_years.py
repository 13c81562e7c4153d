"""Chart 12: what has each option cost by which year?"""

from __future__ import annotations

from typing import TYPE_CHECKING

from generator.report.canvas import Drawing, corner_label, drawn, label, number, placed
from generator.report.figures.look import trait
from generator.report.numbers import axis_value
from generator.report.page import Page

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

FOOT, HEAD = 0.42, 0.28  # inches below and above the axes
GAP = 0.30  # inches, least distance between two end labels


def cost_years(page: Page, name: str = "cost-years", height: float = 3.3) -> Drawing:
    """Cumulative cost by year with its band, each line named at its end."""
    return drawn(name, height, lambda figure: _draw(page, figure, height))


def _draw(page: Page, figure: Figure, height: float) -> None:
    axes = placed(figure, 0.065, FOOT / height, 0.735, 1 - HEAD / height)
    options = [option for option in page.options if page.value(last_paid(page, option)) is not None]
    for option in options:
        _path(page, axes, option)
    ends = [page.value(f"{option}.cost.cumulative")[-1] for option in options]
    top = max([1.0, *(end["paid_high_money"] or end["paid_money"] for end in ends)]) * 1.04
    axes.set_ylim(0, top)
    last = max([1, *(end["year"] for end in ends)])
    axes.set_xlim(0, last)
    axes.yaxis.set_major_formatter(lambda value, _: f"{value:,.0f}")
    axes.set_xticks(range(0, int(last) + 1, 1 if last <= 12 else 5))
    axes.set_xlabel("years from now")
    corner_label(axes, f"{page.unit('money').strip()} paid, not discounted")
    _end_labels(page, axes, options, (top, last), GAP / (height - FOOT - HEAD))


def _path(page: Page, axes: Axes, option: str) -> None:
    rows, look = f"{option}.cost.cumulative", trait(page, option)
    years = page.column(rows, "year")
    low, high = (page.column(rows, f"paid_{end}_money") for end in ("low", "high"))
    told = [place for place in range(len(years)) if None not in (low[place], high[place])]
    axes.fill_between(
        [years[place] for place in told], [low[place] for place in told],
        [high[place] for place in told], color=look.colour, alpha=0.09, linewidth=0,
    )  # fmt: skip
    axes.plot(
        years, page.column(rows, "paid_money"), color=look.colour, linestyle=look.dash,
        marker=look.marker, markevery=2, markersize=4,
    )  # fmt: skip


def _end_labels(
    page: Page, axes: Axes, options: list[str], ends: tuple[float, float], gap: float
) -> None:
    """Names at the ends of the lines, pushed apart where they would touch."""
    top, last = ends
    keys = {option: last_paid(page, option) for option in options}
    rising = sorted(options, key=lambda each: float(page.value(keys[each])))
    values = [axis_value(page.value(keys[option]), "money", page.display) for option in rising]
    heights = apart([value / top for value in values], gap)
    for option, value, height in zip(rising, values, heights, strict=True):
        colour = trait(page, option).colour
        axes.plot(
            [last, last * 1.03], [value, height * top], color=colour, linewidth=0.7, clip_on=False
        )
        number(
            axes, page, keys[option], "money", (last * 1.04, height * top + top * 0.012),
            weight="bold", va="bottom",
        )  # fmt: skip
        name = page.name(option)
        label(axes, (last * 1.04, height * top), name, va="top", fontsize=7.5)


def apart(wanted: list[float], gap: float) -> list[float]:
    """Heights from 0 to 1, rising, at least a gap apart; the highest stays within the axes."""
    found: list[float] = []
    for height in wanted:
        found.append(max(height, found[-1] + gap) if found else height)
    last = len(found) - 1
    return [min(height, 1.0 - (last - place) * gap) for place, height in enumerate(found)]


def last_paid(page: Page, option: str) -> str:
    """Key of what an option has cost at the end of the horizon; it may have no value."""
    years = len(page.value(f"{option}.cost.cumulative") or ())
    return f"{option}.cost.cumulative.{max(years - 1, 0)}.paid_money"
