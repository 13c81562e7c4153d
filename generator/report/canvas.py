"""How does a drawing become clean SVG that can stand alone, in the page and in the PDF?"""

from __future__ import annotations

import io
import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

from markupsafe import Markup

from generator.report.figures.look import QUIET, WIDTH, drawn_in_house_style
from generator.report.page import Page
from generator.verbatim import as_typed

if TYPE_CHECKING:
    from collections.abc import Callable

    from matplotlib.axes import Axes
    from matplotlib.figure import Figure
    from matplotlib.text import Text

KEYED = re.compile(r'<g id="number:([^"]+?)\*([^"]+)">\s*<text([^>]*)>([^<]*)</text>\s*</g>')
NAMES = re.compile(r'(\bid="|url\(#|href="#)')
METADATA = re.compile(r"\s*<metadata>.*?</metadata>", re.DOTALL)
HATCH = re.compile(
    r'(<pattern [^>]*>\s*<rect [^>]*/>\s*)<path d="([^"]*C[^"]*)" fill="(#\w+)" stroke="\3" '
    r'stroke-width="([\d.]+)" stroke-linecap="butt" stroke-linejoin="miter"/>'
)
NUMBER = re.compile(r"-?\d+(?:\.\d+)?")
CURVES = 8  # in which the drawing library makes a dot of a hatch
STYLED = re.compile(r'<([a-z]+)([^>]*?) style="([^"]*)"([^>]*)>')


@dataclass(frozen=True)
class Drawing:
    """One chart: its name, its SVG, and the same with a title for readers of the HTML."""

    name: str
    svg: str

    def in_page(self, alt: str) -> Markup:
        """The SVG set into the HTML, described by a title."""
        head, _, body = self.svg.partition(">")
        label = Markup(' role="img" aria-labelledby="{0}-title"><title id="{0}-title">{1}</title>')
        return Markup(head) + label.format(self.name, alt) + Markup(body)

    def as_picture(self, alt: str) -> Markup:
        """The picture as the PDF fetches it from memory, with its alternative text."""
        return Markup('<img src="chart:{}" alt="{}">').format(self.name, alt)


def drawn(
    name: str, height: float, draw: Callable[[Figure], None], width: float = WIDTH
) -> Drawing:
    """Draw on an empty figure of fixed size (inches) and keep the SVG."""
    from matplotlib.figure import Figure as Blank
    from matplotlib.text import Text as Words

    with drawn_in_house_style():
        figure = Blank(figsize=(width, height))
        draw(figure)
        for text in figure.findobj(Words):
            text.set_text(as_typed(text.get_text()))
        buffer = io.StringIO()
        figure.savefig(buffer, format="svg", metadata={"Date": None, "Creator": None})
    return Drawing(name, _clean(buffer.getvalue(), name))


def number(
    axes: Axes, page: Page, key: str, form: str, at: tuple[float, float], **look: object
) -> Text:
    """Write a number of the results into a chart, with its key kept in the drawing."""
    text = axes.text(*at, page.plain(key, form), **look)  # type: ignore[arg-type]
    text.set_gid(f"number:{key}*{form}")
    return text


def label(axes: Axes, at: tuple[float, float], text: str, **look: object) -> Text:
    """Write a word into a chart."""
    return axes.text(*at, text, **look)  # type: ignore[arg-type]


def placed(figure: Figure, left: float, bottom: float, right: float, top: float) -> Axes:
    """One set of axes between fixed margins, as shares of the figure."""
    return figure.add_axes((left, bottom, right - left, top - bottom))


def corner_label(axes: Axes, text: str) -> None:
    """The name of the upright axis, read level, above its top."""
    axes.text(0, 1.03, text, transform=axes.transAxes, color=QUIET, fontsize=8, va="bottom")


def _clean(raw: str, name: str) -> str:
    svg = METADATA.sub("", raw[raw.index("<svg") :])
    svg = KEYED.sub(_data, svg)
    svg = NAMES.sub(rf"\1{name}-", svg)
    return HATCH.sub(_as_dots, STYLED.sub(_as_attributes, svg)).strip()


def _data(match: re.Match[str]) -> str:
    key, form, look, text = match.groups()
    return f'<text data-key="{key}" data-form="{form}"{look}>{text}</text>'


def _as_attributes(match: re.Match[str]) -> str:
    """Style properties as attributes: the drawing engine reads those faster."""
    tag, before, style, after = match.groups()
    if "font" in style or tag == "svg":
        return match[0]
    parts = [part.split(":", 1) for part in style.split(";") if ":" in part]
    if any(f" {name.strip()}=" in before + after for name, _ in parts):
        return match[0]
    moved = "".join(f' {name.strip()}="{value.strip()}"' for name, value in parts)
    return f"<{tag}{before}{moved}{after}>"


def _as_dots(match: re.Match[str]) -> str:
    """A hatch of dots as round ends of strokes too short to see.

    The same discs in a fifteenth of the text; the drawing engine reads it anew for every bar.
    """
    before, path, colour, width = match.groups()
    discs = [[float(each) for each in NUMBER.findall(disc)] for disc in path.split("z")[:-1]]
    if not discs or any(len(disc) != 2 + 6 * CURVES for disc in discs):
        return match[0]
    # From its top, two curves to its right: there stand the height of its centre and its radius.
    dots = "".join(f"M {disc[0]:g} {disc[13]:g} h 0.01 " for disc in discs)
    whole = 2.0 * (discs[0][12] - discs[0][0]) + float(width)
    return (
        f'{before}<path d="{dots.strip()}" fill="none" stroke="{colour}" '
        f'stroke-width="{whole:g}" style="stroke-linecap: round"/>'  # over the chart's own sheet
    )
