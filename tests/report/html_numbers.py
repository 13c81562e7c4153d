"""Which numbers does a page print, and which digits stand outside of them?"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from functools import lru_cache
from html.parser import HTMLParser

VOID = {"meta", "br", "col", "img", "wbr", "hr", "link"}


@dataclass
class Numbers(HTMLParser):
    """Reads keyed elements, and text with digits that no key accounts for."""

    keyed: list[tuple[str, str, str]] = field(default_factory=list)  # key, form, text
    loose: list[str] = field(default_factory=list)
    ids: list[str] = field(default_factory=list)
    links: list[str] = field(default_factory=list)
    open: list[tuple[str, tuple[str, str] | None]] = field(default_factory=list)
    said: list[str] = field(default_factory=list)

    def __post_init__(self) -> None:
        super().__init__(convert_charrefs=True)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        found = {name: value or "" for name, value in attrs}
        if "id" in found:
            self.ids.append(found["id"])
        if "href" in found:
            self.links.append(found["href"])
        key = (found["data-key"], found["data-form"]) if "data-key" in found else None
        if tag in VOID:
            return
        self.open.append((tag, key))
        self.said.append("")

    def handle_endtag(self, tag: str) -> None:
        opened, key = self.open.pop()
        assert opened == tag, f"<{opened}> closed by </{tag}>"
        text = self.said.pop()
        if key:
            self.keyed.append((*key, text))
        if self.said:
            self.said[-1] += text

    def handle_data(self, data: str) -> None:
        if self.said:
            self.said[-1] += data
        inside = {tag for tag, _ in self.open}
        if inside & {"style", "svg", "title"} or any(key for _, key in self.open):
            return
        if re.search(r"\d", data):
            self.loose.append(data.strip())


@lru_cache(maxsize=8)
def read(html: str) -> Numbers:
    """All numbers of a page."""
    numbers = Numbers()
    numbers.feed(html)
    numbers.close()
    return numbers
