"""Chart 13: which inputs move the tightest criterion, and how far?"""

from __future__ import annotations

from typing import TYPE_CHECKING

from generator.report.canvas import Drawing, drawn, label, number, placed
from generator.report.figures.look import CRIMSON, INK, PAD, QUIET, trait
from generator.report.numbers import shown
from generator.report.page import Page

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

LEFT = 0.42
BAR = 0.56
WIDEST = 46  # letters of a name
ROOM, MORE_ROOM = 0.12, 0.3  # beside the bars, share of their span; where words stand there


def tornado(
    page: Page, motor: str, name: str, form: str = "ratio", axis: str = ""
) -> Drawing:  # fmt: skip
    """Bars from the criterion's value at the input's low end to that at its high end.

    ``axis``: what that value is called.
    """
    rows = page.keys(f"{motor}.tornado.rows")
    height = 0.75 + 0.2 * len(rows)
    shown_as = (form, axis)
    return drawn(name, height, lambda figure: _draw(page, figure, motor, height, shown_as))


def _draw(
    page: Page, figure: Figure, motor: str, height: float, shown_as: tuple[str, str]
) -> None:  # fmt: skip
    form, axis = shown_as
    axes = placed(figure, LEFT, 0.42 / height, 0.97, 1 - 0.24 / height)
    rows = page.keys(f"{motor}.tornado.rows")
    ends = [page.value(f"{row}.{end}") for row in rows for end in ("at_low", "at_high")]
    limit, best = (page.value(f"{motor}.tornado.{key}") for key in ("limit_go", "best"))
    known = [best, limit, *(end for end in ends if end is not None)]
    low, high = min(known), max(known)
    room = (high - low) * ROOM or 0.1
    more = room if None not in ends else (high - low) * MORE_ROOM or 0.3
    axes.set_xlim(low - room, high + more)
    axes.set_ylim(len(rows) - 0.4, -0.6)
    for place, row in enumerate(rows):
        bar(page, axes, motor, (row, place), best, ("", form))
        name(axes, place, page.value(f"{row}.what"))
    axes.axvline(best, color=INK, linewidth=0.8, zorder=4)
    axes.axvline(limit, color=CRIMSON, linewidth=1.1, linestyle=(0, (4, 2)), zorder=4)
    _named(page, axes, motor, form)
    bare(axes)
    axes.xaxis.set_major_formatter(lambda value, _: shown(value, f"{form}:bare", page.display))
    unit = page.unit(form).strip()
    axes.set_xlabel(f"{axis}, {unit}" if axis and unit else axis)


def _named(page: Page, axes: Axes, motor: str, form: str) -> None:
    """Both upright lines, their names on the sides away from each other."""
    limit, best = (page.value(f"{motor}.tornado.{key}") for key in ("limit_go", "best"))
    looks = (("limit", "limit_go", limit, CRIMSON), ("estimate", "best", best, INK))
    for what, key, value, colour in looks:
        left = (value < best) if what == "limit" else (value < limit)
        words = f"{what} {page.plain(f'{motor}.tornado.{key}', form)}"
        label(
            axes, (value, 1.02), words, transform=axes.get_xaxis_transform(), va="bottom",
            ha="right" if left else "left", color=colour, fontsize=7.5,
        )  # fmt: skip


def bare(axes: Axes) -> None:
    """No upright axis: the names stand in its place."""
    axes.set_yticks([])
    axes.grid(axis="y", visible=False)
    axes.spines["left"].set_visible(False)


def name(axes: Axes, place: int, what: str, most: int = WIDEST) -> None:
    """What an input is called, beside its bar."""
    short = what if len(what) <= most else f"{what[: most - 1].rstrip()}…"
    label(
        axes, (-0.015, place), short, transform=axes.get_yaxis_transform(), ha="right",
        va="center", fontsize=7.5, clip_on=False,
    )  # fmt: skip


def bar(
    page: Page, axes: Axes, motor: str, at: tuple[str, int], best: float,
    shown: tuple[str, str] = ("", "ratio"),
) -> None:  # fmt: skip
    """One input: hatched to its low end, filled to its high end, both ends in numbers.

    An end at which there is no value has no bar, and words in the place of the number.
    ``at``: the key of its row and its place; ``shown``: the suffix of the ends and their form.
    """
    (row, place), (suffix, form), look = at, shown, trait(page, motor)
    ends = [(key, page.value(f"{row}.{key}")) for key in (f"at_low{suffix}", f"at_high{suffix}")]
    for (_, end), face in zip(ends, ("white", look.colour), strict=True):
        if end is None:
            continue
        axes.barh(
            place, end - best, BAR, left=best, facecolor=face, edgecolor=look.colour,
            hatch=look.hatch if face == "white" else None, linewidth=0.7, zorder=3,
        )  # fmt: skip
    left, right = axes.get_xlim()
    gap = (right - left) * 0.006
    lacking = [key.removeprefix("at_").removesuffix(suffix) for key, end in ends if end is None]
    if lacking:
        label(
            axes, (right, place), f"{' and '.join(lacking)}: no value", ha="right", va="center",
            fontsize=7, color=QUIET, bbox=PAD, zorder=5,
        )  # fmt: skip
    known = sorted((pair for pair in ends if pair[1] is not None), key=lambda pair: pair[1])
    sides = [(-gap, "right"), (gap, "left")]
    if len(known) == 1 and known[0][1] > best:
        sides.reverse()
    for (key, value), (side, align) in zip(known, sides, strict=False):
        number(
            axes, page, f"{row}.{key}", form, (value + side, place), ha=align, va="center",
            fontsize=7, color=QUIET, bbox=PAD, zorder=5,
        )  # fmt: skip
