"""Chart 11: which masses go out and come in, where, and how does she float after that?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from generator.report.canvas import Drawing, drawn, label, placed
from generator.report.figures.look import FAINT, INK, QUIET, WIDTH, trait
from generator.report.page import Page

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

MOST = 6  # masses named on each side
TIMES = 20  # how many times too large the new waterline is drawn
WIDER = 1.24  # the width drawn over her length
TURNED = 0.5  # of her waterline: flags of masses forward of it fly aft
FLAG = 0.0235  # height of one line of flags over the length shown
START = {"midships": 0.5, "fore end of the waterline": 1.0}  # datum, share of the waterline

Points = list[tuple[float, float]]


def profile(page: Page, option: str, name: str) -> Drawing:
    """Outline of the boat with masses as discs at their place, old and new waterline."""
    boat = page.value("boat")
    length = boat["length_overall_m"] * WIDER
    out, into = (_named(page, option, side) for side in ("out", "in"))
    above = boat["freeboard_m"] * 1.35 + length * FLAG * (len(out) + 0.6)
    below = boat["draught_m"] * 1.05 + length * FLAG * (len(into) + 0.4)
    height = WIDTH * (above + below) / length

    def draw(figure: Figure) -> None:
        axes = placed(figure, 0, 0, 1, 1)
        axes.set_axis_off()
        aft = _overhang(boat) * 0.55 + boat["length_overall_m"] * (WIDER - 1.0) / 2.0
        axes.set_xlim(-aft, length - aft)
        axes.set_ylim(-below, above)
        _outline(axes, boat)
        _waterlines(page, axes, option, boat)
        _flags(page, axes, option, out, boat["freeboard_m"] * 1.35, 1)
        _flags(page, axes, option, into, -boat["draught_m"] * 1.05, -1)

    return drawn(name, height, draw)


def _named(page: Page, option: str, side: str) -> list[str]:
    """The largest masses of one side that have a place, in the order of their flags.

    First those whose flags fly forward, the foremost lowest; above them those whose flags fly aft.
    """
    keys = [
        key
        for key in page.keys(f"{option}.weight.ledger")
        if page.value(f"{key}.way") == side and page.value(f"{key}.x_m") is not None
    ]
    largest = sorted(keys, key=lambda key: -abs(page.value(f"{key}.mass_kg")))[:MOST]
    middle = TURNED * float(page.value("boat.waterline_length_m")) - _datum(page)
    places = {key: float(page.value(f"{key}.x_m")) for key in largest}
    aft = sorted((key for key in largest if places[key] <= middle), key=lambda key: -places[key])
    return aft + sorted(set(largest) - set(aft), key=lambda key: places[key])


def _overhang(boat: dict[str, Any]) -> float:
    return float(boat["length_overall_m"] - boat["waterline_length_m"])


def _outline(axes: Axes, boat: dict[str, Any]) -> None:
    from matplotlib.patches import Polygon

    for shape in (_keel(boat), _rudder(boat), _cabin(boat), _hull(boat)):
        axes.add_patch(Polygon(shape, facecolor=FAINT, edgecolor=QUIET, linewidth=0.9, zorder=1))


def _hull(boat: dict[str, Any]) -> Points:
    length, board = boat["waterline_length_m"], boat["freeboard_m"]
    stern, stem = -0.55 * _overhang(boat), length + 0.45 * _overhang(boat)
    steps = [step / 24 for step in range(25)]
    sheer = [(stern + (stem - stern) * t, board * (0.94 + 0.62 * (t - 0.38) ** 2)) for t in steps]
    bottom = [
        (length * (1 - t), -boat["canoe_draught_m"] * (4 * t * (1 - t)) ** 0.8) for t in steps
    ]
    return sheer + bottom


def _keel(boat: dict[str, Any]) -> Points:
    length, deep = boat["waterline_length_m"], -boat["draught_m"]
    root = -0.6 * boat["canoe_draught_m"]
    ends = (0.10, 0.78, 0.14, 0.60) if boat["keel_type"] == "long" else (0.40, 0.60, 0.41, 0.55)
    aft, fore, aft_tip, fore_tip = (share * length for share in ends)
    return [(aft, root), (fore, root), (fore_tip, deep), (aft_tip, deep)]


def _rudder(boat: dict[str, Any]) -> Points:
    length, deep = boat["waterline_length_m"], -0.78 * boat["draught_m"]
    return [(0.01 * length, 0.05), (0.09 * length, 0.0), (0.075 * length, deep),
            (0.015 * length, deep)]  # fmt: skip


def _cabin(boat: dict[str, Any]) -> Points:
    length, board = boat["waterline_length_m"], boat["freeboard_m"]
    return [(0.30 * length, board * 0.9), (0.31 * length, board * 1.34),
            (0.62 * length, board * 1.30), (0.72 * length, board * 0.95)]  # fmt: skip


def _waterlines(page: Page, axes: Axes, option: str, boat: dict[str, Any]) -> None:
    length = boat["waterline_length_m"]
    left, right = -0.75 * _overhang(boat), length + 0.65 * _overhang(boat)
    axes.plot([left, right], [0, 0], color=QUIET, linewidth=0.9, zorder=2)
    sink = page.value(f"{option}.weight.sinkage_mm")
    trim = page.value(f"{option}.weight.trim_mm")
    if sink is None or trim is None:
        return
    ends = [_level(page, option, sink, trim, x, length) for x in (left, right)]
    _limits(page, axes, option, sink, length)
    axes.plot([left, right], ends, color=trait(page, option).colour, linewidth=1.3,
              linestyle=(0, (5, 2)), zorder=4)  # fmt: skip


def _level(page: Page, option: str, sink: float, trim: float, x: float, length: float) -> float:
    """Height of the new waterline on her side, enlarged; she trims about her flotation."""
    about = float(page.value(f"{option}.weight.before.flotation_m")) + _datum(page)
    return TIMES * (sink + trim * (x - about) / length) / 1000


def _limits(page: Page, axes: Axes, option: str, sink: float, length: float) -> None:
    """The waterlines at the limit of trim, and the way of the centre of gravity."""
    limit = page.value(f"{option}.weight.trim_limit_mm")
    for sign in (1.0, -1.0):
        ends = [_level(page, option, sink, sign * limit, x, length) for x in (0.0, length)]
        axes.plot([0.0, length], ends, color=QUIET, linewidth=0.8, linestyle=(0, (2, 3)), zorder=3)
    shift = page.value(f"{option}.weight.gravity_forward_mm")
    if not shift:
        return
    start = float(page.value(f"{option}.weight.before.gravity_m")) + _datum(page)
    away = TIMES * shift / 1000
    high = 0.35 * page.value("boat.freeboard_m")
    axes.annotate("", (start + away, high), (start, high),
                  arrowprops={"arrowstyle": "-|>", "color": trait(page, option).colour, "lw": 1.4},
                  zorder=6)  # fmt: skip


def _flags(page: Page, axes: Axes, option: str, keys: list[str], start: float, up: int) -> None:
    """A disc at the place of each mass, and a flag with its name."""
    left, right = axes.get_xlim()
    middle = TURNED * float(page.value("boat.waterline_length_m"))
    for level, key in enumerate(keys):
        row = page.value(key)
        x, z = row["x_m"] + _datum(page), row["z_m"] or 0.0
        height = start + up * (right - left) * FLAG * (level + 0.5)
        axes.plot([x, x], [z, height], color=INK, linewidth=0.6, zorder=3)
        _disc(axes, (x, z), abs(row["mass_kg"]), trait(page, option).colour, up > 0)
        sign, ahead = "out" if up > 0 else "in", x <= middle
        text = f"{page.plain(f'{key}.mass_kg', 'mass:size')} {sign}: {row['name']}"
        away = (right - left) * (0.008 if ahead else -0.008)
        label(axes, (x + away, height), text, va="center", ha="left" if ahead else "right",
              fontsize=7.2, bbox={"facecolor": "white", "edgecolor": "none", "pad": 0.6},
              zorder=7)  # fmt: skip


def _disc(axes: Axes, at: tuple[float, float], mass: float, colour: str, out: bool) -> None:
    """The lighter over the heavier, so that none is hidden."""
    axes.plot(*at, "o", markersize=3.2 * (max(mass, 1.0) / 10) ** 0.5,
              markerfacecolor="none" if out else colour,
              markeredgecolor=INK if out else "white", markeredgewidth=1.0,
              zorder=(6.0 if out else 4.0) + 1.0 / (1.0 + mass))  # fmt: skip


def _datum(page: Page) -> float:
    """How far the datum lies before the aft end of the waterline."""
    share = START.get(page.value("boat.datum") or "", 0.0)
    return share * float(page.value("boat.waterline_length_m"))
