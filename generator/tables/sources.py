"""Who published what this study uses?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType

from generator.tables.load import read_table


@dataclass(frozen=True)
class Source:
    """One entry of the bibliography; parts that are not known are empty."""

    key: str
    authors: str
    year: str
    title: str
    where: str
    doi: str

    @property
    def text(self) -> str:
        """The entry as a line of a bibliography."""
        when = f" ({self.year})" if self.year else ""
        opening = f"{self.authors}{when}: " if self.authors else ""
        parts = (f"{opening}{self.title}", self.where, self.doi and f"doi {self.doi}")
        return ". ".join(part for part in parts if part)


@cache
def sources() -> Mapping[str, Source]:
    """The bibliography by key, in the order of its file."""
    table = read_table("sources")
    fields = (table.text(name) for name in ("key", "authors", "year", "title", "where", "doi"))
    entries = [Source(*row) for row in zip(*fields, strict=True)]
    return MappingProxyType({entry.key: entry for entry in entries})
