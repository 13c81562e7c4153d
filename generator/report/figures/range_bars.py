"""Chart 1: how far to reserve in each sea state, both motors, the reserve drawn apart?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from generator.report.canvas import Drawing, drawn, label, number, placed
from generator.report.figures.look import INK, PAD, QUIET, trait
from generator.report.page import Page

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

BAR = 0.34  # of the distance between two sea states that has two bars
LEFT = 0.165
HEAD_AND_FOOT, GROUP = 0.94, 0.56  # inches: legend and axis, and one sea
ROOM = 0.12  # of the longest bar, from which a number has room in its bar


def range_bars(page: Page, name: str) -> Drawing:
    """Bars of range at cruise by sea state; hatched end = kept as reserve; line = the leg."""
    seas = sum(_matters(page, sea) for sea in page.keys("sea_states"))
    height = HEAD_AND_FOOT + GROUP * max(seas, 1)
    return drawn(name, height, lambda figure: _draw(page, figure, height))


def _draw(page: Page, figure: Figure, height: float) -> None:
    head, foot = 0.30 / height, 0.40 / height
    axes = placed(figure, LEFT, foot, 0.985, 1 - head - 0.16 / height)
    seas = [sea for sea in page.keys("sea_states") if _matters(page, sea)]
    for place, sea in enumerate(seas):
        _sea_label(page, axes, sea, place)
        for order, row in enumerate(_rows(page, sea)):
            _bar(page, axes, row, place + (order - (len(page.motors) - 1) / 2) * BAR)
    axes.set_ylim(len(seas) - 0.45, -0.55)
    axes.set_xlim(0, _longest(page) * 1.08)
    _must_make(page, axes)
    axes.set_yticks([])
    axes.xaxis.set_major_locator(whole_steps(8))
    axes.grid(axis="y", visible=False)
    axes.spines["left"].set_visible(False)
    axes.set_xlabel(f"{page.unit('distance')} through the water at the speed named on the left")
    _legend(page, figure)


def whole_steps(most: int) -> Any:
    """Ticks at whole miles, none at the far edge, where its number would be cut."""
    from matplotlib.ticker import MaxNLocator

    return MaxNLocator(most, integer=True, prune="upper")


def _rows(page: Page, sea: str) -> list[str]:
    """The range row of every motor in a sea, the bank as old as the verdict's."""
    wanted = page.value(sea)["id"]
    rows = (
        page.find(f"{motor}.range_at_cruise", sea=wanted, bank_age="aged") for motor in page.motors
    )
    return [row for row in rows if row]


def _matters(page: Page, sea: str) -> bool:
    """The calm, and every sea in which a motor has a range; of the others a sentence tells."""
    rows = _rows(page, sea)
    held = any(page.value(f"{row}.range_nm") is not None for row in rows)
    return bool(rows) and (held or page.value(f"{sea}.id") == "calm")


def _longest(page: Page) -> float:
    """The longest bar with its reserve, whisker and number."""
    ends = [1.0]
    if page.must_make:
        ends.append(page.value(f"{page.must_make}.distance_nm"))
    for motor in page.motors:
        for row in page.value(f"{motor}.range_at_cruise") or ():
            middle = row["range_nm"] or 0.0
            ends += [middle + (row["reserve_nm"] or 0.0), row["range_high_nm"] or 0.0]
    return max(ends)


def _sea_label(page: Page, axes: Axes, sea: str, place: int) -> None:
    wind = page.value(f"{sea}.wind_kn")
    name = f"{page.plain(f'{sea}.wind_kn', 'wind')} of wind" if wind else "calm"
    look: dict[str, Any] = {"ha": "right", "clip_on": False}
    transform = axes.get_yaxis_transform()
    label(
        axes, (-0.02, place - 0.16), name, va="center", weight="bold", transform=transform, **look
    )
    speed = f"at {page.plain(f'{_rows(page, sea)[0]}.speed_kn', 'speed')}"
    label(
        axes, (-0.02, place + 0.2), speed, va="center", color=QUIET, fontsize=7.5,
        transform=transform, **look,
    )  # fmt: skip


def _bar(page: Page, axes: Axes, key: str, at: float) -> None:
    row, motor = page.value(key), key.split(".range_at_cruise")[0]
    look = trait(page, motor)
    if row["range_nm"] is None:
        at_words = _longest(page) * 0.012, at
        label(axes, at_words, _cannot(page, key), va="center", color=QUIET, fontsize=7, bbox=PAD,
              zorder=6)  # fmt: skip
        return
    middle, kept = row["range_nm"], row["reserve_nm"] or 0.0
    axes.barh(at, middle, BAR * 0.86, color=look.colour)
    axes.barh(
        at, kept, BAR * 0.86, left=middle, facecolor="white", edgecolor=look.colour,
        hatch=look.hatch, linewidth=0.6,
    )  # fmt: skip
    _whisker(axes, row, at)
    _new(page, axes, motor, row, at)
    _named(page, axes, key, at)


def _cannot(page: Page, key: str) -> str:
    """Why a motor has no bar."""
    sea = page.find("sea_states", id=page.value(f"{key}.sea"))
    name = page.name(key.split(".range_at_cruise")[0]).partition(",")[0]
    if sea and page.value(f"{sea}.beyond_limit"):
        return f"{name}: waves beyond the method"
    return f"{name} cannot keep up {page.plain(f'{key}.speed_kn', 'speed')}"


def _named(page: Page, axes: Axes, key: str, at: float) -> None:
    """The range at the foot of its bar, where nothing crosses it; behind a bar that is short."""
    row = page.value(key)
    longest = _longest(page)
    inside = (row["range_low_nm"] or 0.0) > ROOM * longest
    end = max(row["range_nm"] + (row["reserve_nm"] or 0.0), row["range_high_nm"] or 0.0)
    number(
        axes, page, f"{key}.range_nm", "distance",
        (longest * 0.012 if inside else end + longest * 0.012, at),
        va="center", weight="bold", color="white" if inside else INK, zorder=6,
        bbox=None if inside else PAD,
    )  # fmt: skip


def _whisker(axes: Axes, row: dict[str, Any], at: float) -> None:
    low, high = row["range_low_nm"], row["range_high_nm"]
    if low is not None and high is not None:
        axes.plot([low, high], [at, at], color="white", linewidth=2.6, solid_capstyle="butt")
        axes.plot([low, high], [at, at], color=INK, linewidth=1.0, marker="|", markersize=5)


def _new(page: Page, axes: Axes, motor: str, row: dict[str, Any], at: float) -> None:
    new = page.find(f"{motor}.range_at_cruise", sea=row["sea"], bank_age="new")
    value = page.value(f"{new}.range_nm") if new else None
    if value is not None:
        axes.plot(
            value, at, "D", zorder=4, markersize=4, markerfacecolor="white", markeredgecolor=INK
        )


def _must_make(page: Page, axes: Axes) -> None:
    if page.must_make:
        distance = page.value(f"{page.must_make}.distance_nm")
        axes.axvline(distance, color=INK, linewidth=1.1, linestyle=(0, (4, 2)))
        name_of_leg(page, axes, distance, 7.5)


def name_of_leg(page: Page, axes: Axes, distance: float, size: float) -> None:
    """Names the line of the must-make leg above the axes, never beyond their edges."""
    share = distance / axes.get_xlim()[1]
    side: Any = "left" if share < 0.3 else "right" if share > 0.7 else "center"
    text = f"must-make trip {page.plain(f'{page.must_make}.distance_nm', 'distance')}"
    label(
        axes, (distance, 1.015), text, ha=side, va="bottom", fontsize=size,
        transform=axes.get_xaxis_transform(),
    )  # fmt: skip


def _legend(page: Page, figure: Figure) -> None:
    from matplotlib.lines import Line2D
    from matplotlib.patches import Patch

    handles: list[Any] = [
        Patch(facecolor=trait(page, motor).colour, label=page.name(motor)) for motor in page.motors
    ]
    handles += [
        Patch(facecolor="white", edgecolor=QUIET, hatch="////", label="reserve"),
        Line2D([], [], color=INK, marker="|", label="cautious to favourable"),
        Line2D(
            [], [], linestyle="", marker="D", markersize=4, markerfacecolor="white",
            markeredgecolor=INK, label="new battery",
        ),
    ]  # fmt: skip
    figure.legend(
        handles=handles, loc="upper left", bbox_to_anchor=(0.0, 1.0), ncols=len(handles),
        borderaxespad=0, handlelength=1.8, columnspacing=1.4, borderpad=0,
    )  # fmt: skip
