"""Charts that are laid out but not set as SVG: two thirds of the time that pages take.

For tests that look at words and tables alone. Every line of a chart's own code runs, and its
words with the keys of its numbers are kept; what the drawing library makes of its lines, bars and
scales is looked at where charts are tested.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import IO, TYPE_CHECKING, Any

import pytest
from markupsafe import escape

if TYPE_CHECKING:
    from matplotlib.figure import Figure
    from matplotlib.text import Text


def outline(figure: Figure, buffer: IO[str], **_: Any) -> None:
    """In place of a figure's own way to be saved: its words, as the library sets them."""
    buffer.write(f'<svg xmlns="http://www.w3.org/2000/svg">{"".join(words(figure))}</svg>')


def words(figure: Figure) -> Iterator[str]:
    """All that is written in a chart, but for what stands along its scales."""
    for text in texts(figure):
        if text.get_visible() and text.get_text():
            line = f"<text>{escape(text.get_text())}</text>"
            gid = text.get_gid()
            yield f'<g id="{escape(gid)}">\n{line}\n</g>' if gid else line


def texts(figure: Figure) -> Iterator[Text]:
    """Without asking for the marks of scales, which are made when they are asked for."""
    legends = [*figure.legends, *(legend for axes in figure.axes if (legend := axes.get_legend()))]
    for legend in legends:
        yield from (*legend.get_texts(), legend.get_title())
    yield from figure.texts
    for axes in figure.axes:
        yield from (*axes.texts, axes.title, axes.xaxis.label, axes.yaxis.label)


@pytest.fixture
def sketched(monkeypatch: pytest.MonkeyPatch) -> None:
    """No chart of this test is set."""
    monkeypatch.setattr("matplotlib.figure.Figure.savefig", outline)
