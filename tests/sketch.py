"""Charts that are written down but not drawn: a tenth of the time that pages take.

For tests that look at words and tables alone. Every line of a chart's own code runs, and its
words with the keys of its numbers are kept; of its lines and bars it is asked only whether their
numbers fit together, and of its scales whether they have an end and a length. What the drawing
library makes of them is looked at where charts are tested, and that a sketch has the words of the
chart, in `tests/report/test_sketch.py`.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterator
from typing import IO, Any

import numpy as np
import pytest
from markupsafe import escape

DRAWN = {  # what draws numbers, and how many of its arguments are those
    "plot": 2, "fill_between": 3, "scatter": 2, "bar": 2, "barh": 2, "contour": 3, "contourf": 3,
    "axhline": 0, "axvline": 0, "axhspan": 0, "axvspan": 0, "add_patch": 0,
}  # fmt: skip


class Said:
    """A text of a chart, as far as it is read."""

    def __init__(self, text: object) -> None:
        self.text, self.gid = str(text), ""

    def get_text(self) -> str:
        return self.text

    def set_text(self, text: str) -> None:
        self.text = text

    def set_gid(self, gid: str) -> None:
        self.gid = gid

    def svg(self) -> str:
        """One text for each line, as the library sets it."""
        lines = "".join(f"<text>{escape(line)}</text>" for line in self.text.split("\n"))
        return f'<g id="{escape(self.gid)}">\n{lines}\n</g>' if self.gid else lines


class Anything:
    """A part of a chart of which nothing is asked but that it takes what it is told."""

    def __getattr__(self, name: str) -> Callable[..., Anything]:
        return lambda *_, **__: self


class Scale:
    """One axis: its ends as they are set, else as the numbers along it want them."""

    def __init__(self) -> None:
        self.ends: list[float | None] = [None, None]
        self.numbers: list[float] = []

    def set(self, ends: tuple[Any, Any]) -> None:
        if ends[1] is None and isinstance(ends[0], tuple):
            ends = ends[0]
        given = [None if end is None else float(end) for end in ends]
        assert all(end is None or np.isfinite(end) for end in given), given
        assert given[0] is None or given[0] != given[1], "a scale without length"
        self.ends = [
            new if new is not None else old for new, old in zip(given, self.ends, strict=True)
        ]

    def get(self) -> tuple[float, float]:
        known = [number for number in self.numbers if np.isfinite(number)] or [0.0, 1.0]
        low, high = self.ends
        return min(known) if low is None else low, max(known) if high is None else high


class Axes:
    """One set of axes: its words, its scales, and the names of what is drawn on it."""

    transAxes = transData = None  # noqa: N815

    def __init__(self) -> None:
        self.words: list[Said] = []
        self.named: list[str] = []
        self.x, self.y = Scale(), Scale()
        self.xaxis = self.yaxis = self.transform = Anything()
        self.spines: defaultdict[str, Anything] = defaultdict(Anything)

    def text(self, x: Any, y: Any, text: object, **_: Any) -> Said:
        float(x), float(y)
        return self._said(text)

    def annotate(self, text: object, *_: Any, **__: Any) -> Said:
        return self._said(text)

    def set_xlabel(self, text: object, **_: Any) -> None:
        self._said(text)

    set_ylabel = set_title = set_xlabel

    def set_xlim(self, left: Any = None, right: Any = None) -> None:
        self.x.set((left, right))

    def set_ylim(self, bottom: Any = None, top: Any = None) -> None:
        self.y.set((bottom, top))

    def get_xlim(self) -> tuple[float, float]:
        return self.x.get()

    def get_ylim(self) -> tuple[float, float]:
        return self.y.get()

    def set_xticks(self, ticks: Any, labels: Any = None) -> None:
        assert labels is None or len(labels) == len(ticks)
        for each in labels or ():
            self._said(each)

    set_yticks = set_xticks

    def get_xaxis_transform(self) -> Anything:
        return self.transform

    get_yaxis_transform = get_xaxis_transform

    def grid(self, visible: bool = True, which: str = "major", axis: str = "both") -> None:
        """Not drawn."""

    def tick_params(self, **_: Any) -> None:
        """Not drawn."""

    def set_axis_off(self) -> None:
        """Not drawn."""

    def clabel(self, *_: Any, **__: Any) -> list[Anything]:
        return []

    def legend(self, handles: Any = None, **_: Any) -> None:
        assert self.named or handles is not None, "a legend without a name"
        names = self.named if handles is None else [each.get_label() for each in handles]
        for name in names:
            self._said(name)

    def __getattr__(self, name: str) -> Callable[..., Anything]:
        if name not in DRAWN:
            raise AttributeError(name)

        def draw(*given: Any, label: str = "", **_: Any) -> Anything:
            numbers = [np.asarray(each, float) for each in given[: DRAWN[name]]]
            if numbers:
                if name.startswith("contour"):
                    assert numbers[2].shape == (numbers[1].size, numbers[0].size)
                else:
                    np.broadcast_shapes(*(each.shape for each in numbers))
                flat = [each.ravel().tolist() for each in numbers]
                along, across = (self.y, self.x) if name == "barh" else (self.x, self.y)
                along.numbers += flat[0]
                across.numbers += [each for row in flat[1:] for each in row]
            if label:
                self.named.append(label)
            return Anything()

        return draw

    def _said(self, text: object) -> Said:
        self.words.append(Said(text))
        return self.words[-1]


class Sheet:
    """In place of the drawing library's figure."""

    def __init__(self, figsize: tuple[float, float]) -> None:
        assert min(figsize) > 0.0
        self.axes: list[Axes] = []
        self.around = Axes()  # what is written beside the axes

    def add_axes(self, place: tuple[float, float, float, float]) -> Axes:
        assert min(place[2:]) > 0.0, "axes without room"
        self.axes.append(Axes())
        return self.axes[-1]

    def text(self, x: float, y: float, text: object, **look: Any) -> Said:
        return self.around.text(x, y, text, **look)

    def legend(self, handles: Any = None, **look: Any) -> None:
        if handles is None:
            self.around.named = [name for each in self.axes for name in each.named]
        self.around.legend(handles, **look)

    def findobj(self, _: type) -> list[Said]:
        return list(self.words())

    def words(self) -> Iterator[Said]:
        """All that is written in it, but for what stands along scales and level lines."""
        for each in (self.around, *self.axes):
            yield from (said for said in each.words if said.text)

    def savefig(self, buffer: IO[str], **_: Any) -> None:
        written = "".join(said.svg() for said in self.words())
        buffer.write(f'<svg xmlns="http://www.w3.org/2000/svg">{written}</svg>')


@pytest.fixture
def sketched(monkeypatch: pytest.MonkeyPatch) -> None:
    """No chart of this test is drawn."""
    monkeypatch.setattr("matplotlib.figure.Figure", Sheet)
