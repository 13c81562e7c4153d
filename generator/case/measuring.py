"""How is an uncertain input made sure on board, and what is it called?"""

from __future__ import annotations

from dataclasses import dataclass

from generator.tables.load import read_table


@dataclass(frozen=True)
class Measuring:
    """What an input is, how to measure it, and how well that goes."""

    what: str
    how: str
    exact: bool  # the row is for this very input, not for its section


def how_to_measure(path: str) -> Measuring | None:
    """The row whose beginning of the path is the longest that fits; none where nothing does."""
    table = read_table("rules/how_to_measure")
    rows = zip(table.text("path"), table.text("what"), table.text("how"), strict=True)
    fitting = [row for row in rows if _plain(path).startswith(row[0])]
    if not fitting:
        return None
    own, what, how = max(fitting, key=lambda row: len(row[0]))
    return Measuring(what, how, own == _plain(path))


def _plain(path: str) -> str:
    """The path without the numbers of list items."""
    kept, inside = [], False
    for letter in path:
        inside = letter == "[" or (inside and letter != "]")
        if not inside and letter not in "[]":
            kept.append(letter)
    return "".join(kept)
