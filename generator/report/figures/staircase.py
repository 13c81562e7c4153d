"""Which motor with which battery is suitable, at three speeds?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from generator.report.canvas import Drawing, drawn, label, number, placed
from generator.report.figures.look import INK, NIGHT, OCHRE, RULE
from generator.report.page import Page

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

NEAR = 1e-6
# How a word is filled, and its number written; dark, grey and white stay apart without colour.
FILLS = {
    "Suitable": (NIGHT, "white"),
    "Suitable with conditions": (RULE, INK),
    "Not suitable as specified": ("white", INK),
}


def staircase(page: Page, option: str, name: str = "staircase") -> Drawing:
    """A panel for each speed: motors upward, batteries to the right; the option's own is framed."""
    rows = _speeds(page, option)
    height = 0.92 + 0.2 * len({row["motor_kw"] for row in next(iter(rows.values()))[1]})
    return drawn(name, height, lambda figure: _draw(page, option, figure, height))


def _speeds(page: Page, option: str) -> dict[float, tuple[list[str], list[dict[str, Any]]]]:
    """Keys and cells of the map by what every passage is slower."""
    found: dict[float, tuple[list[str], list[dict[str, Any]]]] = {}
    for key in page.keys(f"{option}.map.cells"):
        cell = page.value(key)
        keys, cells = found.setdefault(cell["slower_kn"], ([], []))
        keys.append(key)
        cells.append(cell)
    return found


def _draw(page: Page, option: str, figure: Figure, height: float) -> None:
    speeds = _speeds(page, option)
    left, wide, gap = 0.066, 0.3, 0.014
    for place, (keys, cells) in enumerate(speeds.values()):
        start = left + place * (wide + gap)
        axes = placed(figure, start, 0.46 / height, start + wide, 1 - 0.42 / height)
        _panel(page, axes, (keys, cells), option)
        _scales(page, axes, (keys, cells), first=place == 0)
        slower = page.plain(f"{keys[0]}.slower_kn", "speed")
        title = "at your speeds" if place == 0 else f"{slower} slower"
        label(axes, (0, 1.03), title, transform=axes.transAxes, fontsize=7.5, va="bottom")
    figure.legend(
        handles=_handles(), loc="upper left", bbox_to_anchor=(0.0, 1.0), ncols=4,
        borderaxespad=0, handlelength=1.2, columnspacing=2.0, borderpad=0,
    )  # fmt: skip


def _panel(
    page: Page, axes: Axes, shown: tuple[list[str], list[dict[str, Any]]], option: str
) -> None:
    from matplotlib.patches import Rectangle

    motors, banks = _steps(shown[1], "motor_kw"), _steps(shown[1], "bank_kwh")
    own = page.value(f"{option}.map.own_motor_kw"), page.value(f"{option}.map.own_bank_kwh")
    for key, cell in zip(*shown, strict=True):
        x, y = banks.index(cell["bank_kwh"]), motors.index(cell["motor_kw"])
        fill, ink = FILLS[cell["word"]]
        axes.add_patch(
            Rectangle((x, y), 1, 1, facecolor=fill, edgecolor=RULE, linewidth=0.5, zorder=1)
        )
        if cell["binding"]:
            number(
                axes, page, f"{key}.binding", "count", (x + 0.5, y + 0.46), ha="center",
                va="center", fontsize=6.5, color=ink, zorder=3,
            )  # fmt: skip
        if abs(cell["motor_kw"] - own[0]) < NEAR and abs(cell["bank_kwh"] - own[1]) < NEAR:
            axes.add_patch(
                Rectangle((x, y), 1, 1, fill=False, edgecolor=OCHRE, linewidth=2.0, zorder=4)
            )


def _scales(
    page: Page, axes: Axes, shown: tuple[list[str], list[dict[str, Any]]], first: bool
) -> None:
    """Each motor and each battery of the map named at its own step."""
    motors, banks = _steps(shown[1], "motor_kw"), _steps(shown[1], "bank_kwh")
    axes.set_xlim(0, len(banks))
    axes.set_ylim(0, len(motors))
    axes.grid(visible=False)
    named = [_told(page, shown, "bank_kwh", size, "energy:bare") for size in banks]
    axes.set_xticks([place + 0.5 for place in range(len(banks))], named)
    powers = [_told(page, shown, "motor_kw", size, "power:bare") for size in motors]
    axes.set_yticks(
        [place + 0.5 for place in range(len(motors))], powers if first else [""] * len(motors)
    )
    axes.tick_params(labelsize=6.0)
    axes.set_xlabel(f"battery, {page.unit('energy')} nominal", fontsize=7)
    if first:
        axes.set_ylabel(f"motor, {page.unit('power')}", fontsize=7)


def _told(
    page: Page, shown: tuple[list[str], list[dict[str, Any]]], name: str, size: float, form: str
) -> str:
    key = next(key for key, cell in zip(*shown, strict=True) if cell[name] == size)
    return page.plain(f"{key}.{name}", form)


def _steps(cells: list[dict[str, Any]], name: str) -> list[float]:
    return sorted({float(cell[name]) for cell in cells})


def _handles() -> list[Any]:
    from matplotlib.patches import Patch

    words = {"Not suitable as specified": "not suitable"}
    found = [
        Patch(facecolor=fill, edgecolor=INK, linewidth=0.5, label=words.get(word, word.lower()))
        for word, (fill, _) in FILLS.items()
    ]
    return [*found, Patch(fill=False, edgecolor=OCHRE, linewidth=2.0, label="as specified")]
