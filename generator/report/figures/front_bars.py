"""The small chart of the front page: range in a calm and in wind, the reserve apart."""

from __future__ import annotations

from typing import TYPE_CHECKING

from generator.report.canvas import Drawing, drawn, label, number, placed
from generator.report.figures.look import INK, PAD, QUIET, trait
from generator.report.figures.range_bars import name_of_leg, whole_steps
from generator.report.page import Page

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

WIDTH, HEIGHT = 3.3, 1.55
SEAS = ("calm", "wind_20")
BAR = 0.36
LETTER = 0.047  # inches: the mean letter of a name at this size
ROOM_FOR_NAME = 0.5  # share of the longest bar below which a name stands behind the number


def front_bars(page: Page, name: str = "range-front") -> Drawing:
    """Two groups of bars with the reserve hatched and the must-make leg as a line."""
    return drawn(name, HEIGHT, lambda figure: _draw(page, figure), WIDTH)


def _draw(page: Page, figure: Figure) -> None:
    axes = placed(figure, 0.012, 0.21, 0.985, 0.92)
    rows = [
        (sea, page.find(f"{motor}.range_at_cruise", sea=sea, bank_age="new"))
        for sea in SEAS for motor in page.motors
    ]  # fmt: skip
    keys = [(sea, key) for sea, key in rows if key]
    ends = [(page.value(key)["range_nm"] or 0) + (page.value(key)["reserve_nm"] or 0)
            for _, key in keys]  # fmt: skip
    leg = page.value(f"{page.must_make}.distance_nm") if page.must_make else None
    longest = max([1.0, leg or 0.0, *ends])
    axes.set_xlim(0, longest * 1.22)
    place, last = 0.0, ""
    for sea, key in keys:
        place = place + 0.62 if sea != last else place
        if sea != last:
            _title(page, axes, sea, place - 0.4)
        _bar(page, axes, key, place, longest)
        place, last = place + BAR, sea
    axes.set_ylim(place, 0)
    _leg(page, axes, leg)
    axes.set_yticks([])
    axes.xaxis.set_major_locator(whole_steps(5))
    axes.grid(axis="y", visible=False)
    axes.spines["left"].set_visible(False)
    axes.set_xlabel(f"{page.unit('distance')}, hatched: kept as reserve", fontsize=7)
    axes.tick_params(labelsize=7)


def _title(page: Page, axes: Axes, sea: str, at: float) -> None:
    wind = page.find("sea_states", id=sea)
    name = "calm" if sea == "calm" else f"{page.plain(f'{wind}.wind_kn', 'wind')} ahead"
    label(
        axes,
        (axes.get_xlim()[1] * 0.008, at),
        name,
        va="center",
        color=QUIET,
        fontsize=7.2,
        bbox=PAD,
    )


def _bar(page: Page, axes: Axes, key: str, at: float, longest: float) -> None:
    motor = key.split(".range_at_cruise")[0]
    row, look, name = page.value(key), trait(page, motor), page.name(motor)
    middle, kept = row["range_nm"], row["reserve_nm"] or 0.0
    if middle is None:
        text = f"{name}: cannot hold the speed"
        label(axes, (longest * 0.01, at), text, va="center", fontsize=7, bbox=PAD)
        return
    axes.barh(at, middle, BAR * 0.84, color=look.colour)
    axes.barh(at, kept, BAR * 0.84, left=middle, facecolor="white", edgecolor=look.colour,
              hatch=look.hatch, linewidth=0.6)  # fmt: skip
    end = middle + kept + longest * 0.02
    number(axes, page, f"{key}.range_nm", "distance", (end, at), va="center", weight="bold",
           fontsize=7.5)  # fmt: skip
    if middle > ROOM_FOR_NAME * longest:
        label(axes, (longest * 0.02, at), name, va="center", fontsize=6.8, color="white")
    else:
        start = end + longest * 0.22
        room = (axes.get_xlim()[1] - start) / axes.get_xlim()[1] * WIDTH
        label(axes, (start, at), _fitted(name, room), va="center", fontsize=6.8)


def _fitted(name: str, room: float) -> str:
    """The name, or as much of it as fits into ``room`` inches."""
    most = max(int(room / LETTER), 1)
    return name if len(name) <= most else f"{name[: most - 1].rstrip()}…"


def _leg(page: Page, axes: Axes, leg: float | None) -> None:
    if leg is not None:
        axes.axvline(leg, color=INK, linewidth=1.0, linestyle=(0, (4, 2)))
        name_of_leg(page, axes, leg, 7.0)
