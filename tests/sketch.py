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


def outline(figure: Figure, buffer: IO[str], **_: Any) -> None:
    """In place of a figure's own way to be saved: its words, as the library sets them."""
    buffer.write(f'<svg xmlns="http://www.w3.org/2000/svg">{"".join(words(figure))}</svg>')


def words(figure: Figure) -> Iterator[str]:
    """All that is written in a chart, but for the numbers along its scales."""
    from matplotlib.text import Text

    for text in figure.findobj(Text):
        if isinstance(text, Text) and text.get_visible() and text.get_text():
            line = f"<text>{escape(text.get_text())}</text>"
            gid = text.get_gid()
            yield f'<g id="{escape(gid)}">\n{line}\n</g>' if gid else line


@pytest.fixture
def sketched(monkeypatch: pytest.MonkeyPatch) -> None:
    """No chart of this test is set."""
    monkeypatch.setattr("matplotlib.figure.Figure.savefig", outline)
