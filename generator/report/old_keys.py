"""What is a key of the results called now, which a page still asks for by its old name?

``old_keys.csv`` goes when the last page reads records: it holds what schema 1 called a number, what
it is called since, or why it is gone.
"""

from __future__ import annotations

import csv
import re
from functools import cache, lru_cache
from pathlib import Path

FILE = Path(__file__).with_name("old_keys.csv")


@lru_cache(maxsize=1)
def _rows() -> tuple[tuple[re.Pattern[str], str], ...]:
    """A pattern for each old key, and the new one with a place for each star."""
    with FILE.open(encoding="utf-8", newline="") as file:
        return tuple(
            (re.compile(re.escape(row["old"]).replace(r"\*", r"(\d+)")), row["new"])
            for row in csv.DictReader(file)
        )


@cache
def new_key(key: str) -> str:
    """The key as it is now; the same where none has replaced it."""
    for old, new in _rows():
        found = old.fullmatch(key)
        if found and new:
            return new.replace("*", "{}").format(*found.groups())
    return key
