"""How is a line drawing put together, stroke by stroke, as SVG?

Symbols of a wiring diagram are few strokes at exact places, and each must say what it belongs to;
so they are written as SVG at once and not through the chart library.
"""

from __future__ import annotations

from dataclasses import dataclass
from xml.etree.ElementTree import Element, SubElement, tostring

from generator.report.canvas import Drawing
from generator.report.figures.look import INK, QUIET
from generator.report.typeface import FAMILY

LINE = 1.0  # pt, strokes of symbols and wires
SMALL, PLAIN, LARGE = 6.9, 7.6, 9.2  # pt, sizes of words
CENTRE, START, END = "middle", "start", "end"

At = tuple[float, float]


@dataclass(frozen=True)
class Written:
    """Words of a drawing: as they stand, or the text of a number with its key in the results."""

    text: str
    key: str = ""
    form: str = ""


def sheet(width: float, height: float) -> Element:
    """An empty drawing of that size in points."""
    return Element(
        "svg",
        {
            "xmlns": "http://www.w3.org/2000/svg",
            "width": f"{width:.1f}pt",
            "height": f"{height:.1f}pt",
            "viewBox": f"0 0 {width:.1f} {height:.1f}",
        },
    )


def finished(name: str, root: Element) -> Drawing:
    """The drawing as it is set into the page."""
    return Drawing(name, tostring(root, encoding="unicode"))


def group(parent: Element, **marks: str) -> Element:
    """A group of strokes that says what it is: ``data-<mark>`` for every mark."""
    return SubElement(parent, "g", {f"data-{name}": text for name, text in marks.items()})


def strokes(
    parent: Element, path: str, width: float = LINE, colour: str = INK, dash: str = ""
) -> Element:
    """Open strokes along a path."""
    look = {"d": path, "fill": "none", "stroke": colour, "stroke-width": f"{width:g}"}
    return SubElement(parent, "path", look | ({"stroke-dasharray": dash} if dash else {}))


def solid(parent: Element, path: str, fill: str = "#ffffff", colour: str = INK) -> Element:
    """A closed outline on a ground of its own."""
    look = {"d": path, "fill": fill, "stroke": colour, "stroke-width": f"{LINE:g}"}
    return SubElement(parent, "path", look)


def line(parent: Element, *points: At, width: float = LINE, dash: str = "") -> Element:
    """Straight strokes from point to point."""
    first, *others = (f"{x:.1f} {y:.1f}" for x, y in points)
    return strokes(parent, f"M{first} L{' L'.join(others)}", width, dash=dash)


def box(parent: Element, centre: At, wide: float, high: float, fill: str = "#ffffff") -> Element:
    """A rectangle about its centre."""
    left, top = centre[0] - wide / 2, centre[1] - high / 2
    path = f"M{left:.1f} {top:.1f} h{wide:g} v{high:g} h{-wide:g} Z"
    return solid(parent, path, fill)


def circle(parent: Element, centre: At, radius: float, fill: str = "#ffffff") -> Element:
    """A circle about its centre."""
    x, y = centre
    arc = f"a{radius:g} {radius:g} 0 1 0"
    path = f"M{x - radius:.1f} {y:.1f} {arc} {2 * radius:g} 0 {arc} {-2 * radius:g} 0 Z"
    return solid(parent, path, fill)


def words(
    parent: Element,
    at: At,
    said: Written | str,
    size: float = SMALL,
    bold: bool = False,
    anchor: str = CENTRE,
    quiet: bool = False,
) -> Element:
    """A line of words; a number keeps its key, so that it can be compared with the results."""
    said = Written(said) if isinstance(said, str) else said
    weight = "; font-weight: 700" if bold else ""
    look = {
        "x": f"{at[0]:.1f}",
        "y": f"{at[1]:.1f}",
        "text-anchor": anchor,
        "fill": QUIET if quiet else INK,
        "style": f"font-family: '{FAMILY}'; font-size: {size:g}px{weight}",
    }
    if said.key:
        look |= {"data-key": said.key, "data-form": said.form}
    node = SubElement(parent, "text", look)
    node.text = said.text
    return node
