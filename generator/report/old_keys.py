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
def _rows() -> dict[str, list[tuple[re.Pattern[str], str]]]:
    """By the last step of an old key its pattern, and the new one with a place for each star."""
    found: dict[str, list[tuple[re.Pattern[str], str]]] = {}
    with FILE.open(encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            pattern = re.compile(re.escape(row["old"]).replace(r"\*", r"(\d+)"))
            found.setdefault(row["old"].rpartition(".")[2], []).append((pattern, row["new"]))
    return found


@cache
def new_key(key: str) -> str:
    """The key as it is now; the same where none has replaced it."""
    for old, new in _rows().get(key.rpartition(".")[2], ()):
        found = old.fullmatch(key)
        if found and new:
            return new.replace("*", "{}").format(*found.groups())
    return key
