"""How is an uncertain input made sure on board, and what is it called?"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

from generator.tables.load import read_table


@dataclass(frozen=True)
class Measuring:
    """What an input is, how to measure it, and how well that goes."""

    what: str
    how: str
    exact: bool  # the row is for this very input, not for its section


@lru_cache(maxsize=4096)
def how_to_measure(path: str) -> Measuring | None:
    """The row whose beginning of the path is the longest that fits; none where nothing does."""
    table = read_table("rules/how_to_measure")
    rows = zip(table.text("path"), table.text("what"), table.text("how"), strict=True)
    plain = re.sub(r"\[\d+\]", "", path)
    fitting = [row for row in rows if plain.startswith(row[0])]
    if not fitting:
        return None
    own, what, how = max(fitting, key=lambda row: len(row[0]))
    return Measuring(what, how, own == plain)
