"""What does a reader meet as sentences, titles and words of a report?

The owner's own words are left out: names of boat, options, trips, items and places, wishes, notes.
"""

from __future__ import annotations

import html as entities
import re
from html.parser import HTMLParser
from typing import Any

# Of the program, or of nobody's English; in any form.
NEVER = re.compile(
    r"\b(?:in (?:one|nine) draws? (?:of|in) ten|draws? of ten|of the draws|one in ten|nine in ten"
    r"|pessimistic|registers?|told|tells|asks? for|horizon|as slowly as pays|at a crawl"
    r"|the case|this case|case file's|yaml|propulsors?|binding)\b",
    re.IGNORECASE,
)
EVERYDAY = re.compile(
    r"\b(?:takes?|gives?|holds?|stands?|lies|pays?|binds?|governs?)\b", re.IGNORECASE
)
EVERYDAY_MOST = 4.0  # in 1,000 words
LONGEST, MEAN = 35, 20.0  # words of a sentence
TITLE_WORDS, TITLE_NUMBERS = 15, 2
TEXT = {"p", "li", "dd", "figcaption"}
NUMBER = re.compile(r"\d[\d.,]*")
END = re.compile(r"(?<=[.!?:;])\s+(?=[A-Z“‘(])")


class _Reader(HTMLParser):
    """Texts of the elements that hold sentences, and the titles of charts."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.open: list[str] = []
        self.skip = 0
        self.texts: list[tuple[str, str]] = []
        self.now: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag in ("style", "svg", "title"):
            self.skip += 1
        if tag in TEXT:
            self._end()
            self.open.append(tag)
        if tag == "br":
            self.now.append(" ")

    def handle_endtag(self, tag: str) -> None:
        if tag in ("style", "svg", "title"):
            self.skip -= 1
        if tag in TEXT and self.open:
            self._end()
            self.open.pop()

    def handle_data(self, data: str) -> None:
        if self.open and not self.skip:
            self.now.append(data)

    def _end(self) -> None:
        text = " ".join("".join(self.now).replace("\u00a0", " ").split())
        if text and self.open:
            self.texts.append((self.open[-1], text))
        self.now = []


def texts(html: str, results: dict[str, Any]) -> list[tuple[str, str]]:
    """(element, text) in reading order, with one letter for each of the owner's own texts."""
    reader = _Reader()
    reader.feed(html)
    owners = own_words(results)
    return [(tag, _without(text, owners)) for tag, text in reader.texts]


def own_words(results: dict[str, Any]) -> list[str]:
    """Names and words of the owner, longest first."""
    found = [
        results["boat"]["name"], results["boat"]["type"], results["waters"]["name"],
        results["berth"]["name"], results["case"]["client"] or "",
        results["case"]["prepared_by"] or "", results["case"]["file"], results["case"]["sha256"],
        *results["study"]["priorities"], *results["study"]["reasons"],
    ]  # fmt: skip
    found += [leg["name"] for leg in results["legs"]]
    for option in results["options"]:
        found += [option["name"], option["note"] or ""]
        found += [item["name"] for item in option["weight"].get("added") or []]
        found += [item["name"] for item in option["weight"].get("removed") or []]
        found += [item["name"] for item in (option.get("cost") or {}).get("items") or []]
    return sorted(
        {" ".join(each.split()) for each in found if len(each) > 2}, key=len, reverse=True
    )


def _without(text: str, owners: list[str]) -> str:
    for each in owners:
        text = text.replace(each, "X")
        text = text.replace(entities.escape(each), "X")
    return text


def sentences(text: str) -> list[str]:
    """One text, sentence by sentence; a colon or semicolon before a capital ends one too."""
    return [each.strip() for each in END.split(text) if len(each.split()) > 1]


def words(text: str) -> list[str]:
    """Words and numbers; a number with its unit is one."""
    return [each for each in re.split(r"[\s]+", text) if re.search(r"\w", each)]
