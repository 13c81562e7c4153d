"""Charts that are laid out but not set as SVG: two thirds of the time that pages take.

For tests that look at words and tables alone. Every line of a chart's own code runs; what the
drawing library makes of it is looked at where charts are tested.
"""

from __future__ import annotations

from typing import IO, Any

import pytest


def outline(_figure: Any, buffer: IO[str], **_: Any) -> None:
    """In place of a figure's own way to be saved."""
    buffer.write('<svg xmlns="http://www.w3.org/2000/svg"></svg>')


@pytest.fixture
def sketched(monkeypatch: pytest.MonkeyPatch) -> None:
    """No chart of this test is set."""
    monkeypatch.setattr("matplotlib.figure.Figure.savefig", outline)
