"""What does a chart look like: typeface, sizes, colours, line and hatch of each option?"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from typing import Any, Literal, cast

from generator.report.page import Page
from generator.report.typeface import FAMILY, register_with_charts

INK = "#16283a"
QUIET = "#5b6772"
RULE = "#c9d1d8"
FAINT = "#eef2f5"
BLUE, OCHRE, TEAL, NIGHT, CRIMSON = "#0d568c", "#c4650f", "#0f6457", "#1d1426", "#9c1f2e"
GREY = "#8a939c"

WIDTH = 6.61  # inches: the measure of the page, 168 mm

RULES = {
    "font.family": FAMILY,
    "font.size": 8.0,
    "axes.labelsize": 8.0,
    "axes.labelcolor": QUIET,
    "axes.edgecolor": QUIET,
    "axes.linewidth": 0.6,
    "axes.axisbelow": True,
    "axes.grid": True,
    "axes.spines.top": False,
    "axes.spines.right": False,
    "axes.unicode_minus": True,
    "grid.color": RULE,
    "grid.linewidth": 0.4,
    "xtick.color": QUIET,
    "ytick.color": QUIET,
    "xtick.major.size": 0,
    "ytick.major.size": 0,
    "xtick.minor.size": 0,
    "ytick.minor.size": 0,
    "text.color": INK,
    "text.parse_math": False,
    "lines.linewidth": 1.4,
    "hatch.linewidth": 0.7,
    "legend.frameon": False,
    "legend.fontsize": 7.5,
    "figure.facecolor": "none",
    "axes.facecolor": "none",
    "svg.fonttype": "none",
    "svg.hashsalt": "report",
}
PAD: dict[str, Any] = {"facecolor": "white", "edgecolor": "none", "pad": 1.0}  # behind words


@dataclass(frozen=True)
class Trait:
    """How one option is drawn wherever it appears: colour, dash, marker and hatch all differ."""

    colour: str
    dash: tuple[float, tuple[float, ...]] | Literal["-"]
    marker: str
    hatch: str


KEEP = Trait(GREY, (0, (5, 1.6)), "s", "..")
NEW_DIESEL = Trait(NIGHT, (0, (1.2, 1.4)), "D", "xx")
MOTORS = (
    Trait(BLUE, "-", "o", "////"),
    Trait(OCHRE, (0, (7, 1.5, 1.5, 1.5)), "^", "\\\\\\\\"),
    Trait(TEAL, (0, (3, 1.2)), "v", "||"),
    Trait(CRIMSON, (0, (4, 1, 1, 1, 1, 1)), "P", "--"),
)


def trait(page: Page, option: str) -> Trait:
    """The look of an option: fixed for keep and new diesel, by order for the motors."""
    kind = page.value(option)["kind"]
    if kind == "battery":
        return MOTORS[page.motors.index(option) % len(MOTORS)]
    return KEEP if kind == "keep" else NEW_DIESEL


@contextmanager
def drawn_in_house_style() -> Iterator[None]:
    """Matplotlib with the report's rules and typeface, left as it was afterwards."""
    import matplotlib

    register_with_charts()
    with matplotlib.rc_context(cast(Any, RULES)):
        yield
