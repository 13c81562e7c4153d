"""What does each piece of a wiring diagram look like? After the manner of IEC 60617.

Every symbol lies on a level wire: it is drawn about its centre and joins the wire at both sides.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from xml.etree.ElementTree import Element

from generator.report.figures.look import INK
from generator.report.figures.strokes import At, box, circle, line, solid, strokes, words


@dataclass(frozen=True)
class Symbol:
    """How far a symbol reaches to either side of its centre, and how it is drawn."""

    left: float
    right: float
    draw: Callable[[Element, At], None]


def _battery(parent: Element, at: At) -> None:
    """Two cells, long thin plates and short thick ones, and dots for those between."""
    x, y = at
    for offset in (-9.0, 5.0):
        line(parent, (x + offset, y - 5), (x + offset, y + 5), width=2.2)
        line(parent, (x + offset + 4, y - 9), (x + offset + 4, y + 9))
    line(parent, (x - 4, y), (x + 4, y), dash="1.4 1.6")


def _fuse(parent: Element, at: At) -> None:
    """A rectangle with the wire through it."""
    box(parent, at, 18, 7)
    line(parent, (at[0] - 9, at[1]), (at[0] + 9, at[1]))


def _resistor(parent: Element, at: At) -> None:
    """A rectangle without a wire."""
    box(parent, at, 16, 6)


def _blade(parent: Element, at: At) -> None:
    x, y = at
    line(parent, (x - 8, y), (x + 7, y - 8))


def _switch(parent: Element, at: At) -> None:
    _blade(parent, at)
    circle(parent, (at[0] - 8, at[1]), 1.3)


def _isolator(parent: Element, at: At) -> None:
    """A switch whose fixed contact carries a bar across."""
    _blade(parent, at)
    line(parent, (at[0] + 8, at[1] - 4), (at[0] + 8, at[1] + 4))


def _contactor(parent: Element, at: At) -> None:
    """A switch whose fixed contact carries a half circle, and its coil above."""
    x, y = at
    _blade(parent, at)
    strokes(parent, f"M{x + 8:.1f} {y:.1f} a3 3 0 0 1 6 0")


def _breaker(parent: Element, at: At) -> None:
    """A switch whose fixed contact carries a cross."""
    x, y = at
    _blade(parent, at)
    strokes(parent, f"M{x + 5:.1f} {y - 3:.1f} l6 6 m0 -6 l-6 6")


def _residual(parent: Element, at: At) -> None:
    """A breaker with the ring of a residual current device about its wire."""
    x, y = at
    _breaker(parent, (x - 4, y))
    line(parent, (x + 4, y), (x + 16, y))
    strokes(parent, f"M{x + 11:.1f} {y - 4.5:.1f} a2.2 4.5 0 1 0 0.01 0 Z")


def _square(parent: Element, at: At, first: str, second: str) -> None:
    """A converter: a square cut by its diagonal, the kind of current in each half."""
    x, y = at
    box(parent, at, 24, 22)
    line(parent, (x - 12, y + 11), (x + 12, y - 11))
    _current(parent, (x - 6, y - 4.5), first)
    _current(parent, (x + 6, y + 5), second)


def _current(parent: Element, at: At, kind: str) -> None:
    x, y = at
    if kind == "dc":
        line(parent, (x - 3.5, y - 1.5), (x + 3.5, y - 1.5))
        line(parent, (x - 3.5, y + 1.2), (x + 3.5, y + 1.2), dash="1.6 1")
    else:
        strokes(parent, f"M{x - 3.5:.1f} {y:.1f} q1.75 -4 3.5 0 t3.5 0")


def _to_ac(parent: Element, at: At) -> None:
    _square(parent, at, "dc", "ac")


def _to_dc(parent: Element, at: At) -> None:
    """Drawn from the bus outwards: direct current is on the side of the bus."""
    _square(parent, at, "dc", "ac")


def _dc_to_dc(parent: Element, at: At) -> None:
    _square(parent, at, "dc", "dc")


def _motor(parent: Element, at: At) -> None:
    circle(parent, at, 11)
    words(parent, (at[0], at[1] + 3), "M", 9, bold=True)


def _socket(parent: Element, at: At) -> None:
    """A plug in its socket: the shore inlet."""
    x, y = at
    strokes(parent, f"M{x - 5:.1f} {y - 7:.1f} a7 7 0 0 1 0 14")
    solid(parent, f"M{x - 12:.1f} {y - 2.5:.1f} h9 v5 h-9 Z", INK)


def _galvanic(parent: Element, at: At) -> None:
    """Two diodes back to back in a box: no current below their threshold."""
    x, y = at
    box(parent, at, 22, 18)
    for offset, way in ((-4.0, 1.0), (4.0, -1.0)):
        tip, foot = x + 3.5 * way, x - 3.5 * way
        level = y + offset
        solid(parent, f"M{foot:.1f} {level - 2.6:.1f} v5.2 L{tip:.1f} {level:.1f} Z")
        line(parent, (tip, level - 2.8), (tip, level + 2.8))


def _panel(parent: Element, at: At) -> None:
    """A source in a box, with two arrows of light."""
    x, y = at
    box(parent, at, 20, 16)
    line(parent, (x - 2, y - 5), (x - 2, y + 5))
    line(parent, (x + 2, y - 2.5), (x + 2, y + 2.5), width=2)
    for lower in (0.0, 6.0):
        start = f"M{x + 22:.1f} {y - 11 + lower:.1f}"
        strokes(parent, f"{start} l-10 6 m1.6 -3.2 l-1.6 3.2 l3.5 0.3")


def _load(parent: Element, at: At) -> None:
    """An arrow: what draws current."""
    x, y = at
    solid(parent, f"M{x - 3:.1f} {y - 4.5:.1f} L{x + 6:.1f} {y:.1f} L{x - 3:.1f} {y + 4.5:.1f} Z",
          INK)  # fmt: skip


def _sink(parent: Element, at: At) -> None:
    """The same, on a wire that runs the other way."""
    x, y = at
    solid(parent, f"M{x + 3:.1f} {y - 4.5:.1f} L{x - 6:.1f} {y:.1f} L{x + 3:.1f} {y + 4.5:.1f} Z",
          INK)  # fmt: skip


def _cable(parent: Element, at: At) -> None:
    """Two oblique strokes over the line: it stands for two conductors."""
    x, y = at
    line(parent, (x - 8, y), (x + 8, y))
    strokes(parent, f"M{x - 4:.1f} {y + 4:.1f} l5 -8 m3 0 l-5 8")


def stop_button(parent: Element, at: At) -> None:
    """A mushroom head, pushed from above."""
    x, y = at
    strokes(parent, f"M{x - 6:.1f} {y:.1f} a6 5 0 0 1 12 0 Z M{x:.1f} {y:.1f} v5")


def earth(parent: Element, at: At) -> None:
    """Three strokes that grow shorter downwards."""
    x, y = at
    for step, half in enumerate((8.0, 5.0, 2.0)):
        line(parent, (x - half, y + 3 * step), (x + half, y + 3 * step))


SYMBOLS = {
    "battery": Symbol(9, 9, _battery),
    "fuse": Symbol(9, 9, _fuse),
    "resistor": Symbol(8, 8, _resistor),
    "switch": Symbol(8, 8, _switch),
    "isolator": Symbol(8, 8, _isolator),
    "contactor": Symbol(8, 8, _contactor),
    "breaker": Symbol(8, 8, _breaker),
    "residual": Symbol(12, 16, _residual),
    "inverter": Symbol(12, 12, _to_ac),
    "charger": Symbol(12, 12, _to_dc),
    "converter": Symbol(12, 12, _dc_to_dc),
    "motor": Symbol(11, 11, _motor),
    "socket": Symbol(12, 2, _socket),
    "galvanic": Symbol(11, 11, _galvanic),
    "panel": Symbol(10, 22, _panel),
    "load": Symbol(3, 6, _load),
    "sink": Symbol(6, 3, _sink),
    "cable": Symbol(8, 8, _cable),
}
