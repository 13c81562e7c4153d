"""What can go wrong on purpose? Only these three.

StudyError
├── CaseError    the case file is wrong: every fault with its line, all at once
├── TableError   our own data are wrong: which file, which row
└── EngineError  the machine lacks something that a report needs: what, and how to install it
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

LONGEST = 300  # letters of each part of a message
MOST = 40  # faults or warnings that are told of one file


@dataclass(frozen=True)
class Fault:
    """One thing wrong, or merely doubtful, in a case file."""

    file: str
    line: int
    path: str
    problem: str
    expected: str
    warning: bool = False

    def __str__(self) -> str:
        """One line that can be printed, whatever the file holds."""
        place = f"{one_line(self.file)}:{self.line}: "
        where = f"{one_line(self.path)}: " if self.path else ""
        kind = "warning: " if self.warning else ""
        hope = f", {one_line(self.expected)}" if self.expected else ""
        return f"{place}{kind}{where}{one_line(self.problem)}{hope}"


def one_line(text: str) -> str:
    """A text with nothing in it that moves a cursor, cut where it goes on and on."""
    cut = text if len(text) <= LONGEST else f"{text[: LONGEST - 4]} ..."
    return "".join(letter if letter.isprintable() else "?" for letter in cut)


def first_of_each_file(faults: Iterable[Fault]) -> list[Fault]:
    """Some dozens of each file in their order, and how many more there are of it."""
    kept: list[Fault] = []
    counts: dict[str, int] = {}
    for fault in faults:
        counts[fault.file] = counts.get(fault.file, 0) + 1
        if counts[fault.file] <= MOST:
            kept.append(fault)
    for file, count in counts.items():
        if count > MOST:
            last = [fault for fault in kept if fault.file == file][-1]
            hope = "expected the first ones mended before them"
            more = replace(last, path="", problem=f"and {count - MOST} more", expected=hope)
            kept.insert(kept.index(last) + 1, more)
    return kept


class StudyError(Exception):
    """Anything this project raises on purpose."""


class CaseError(StudyError):
    """The case file is wrong; carries every fault that was found."""

    def __init__(self, faults: list[Fault]) -> None:
        self.faults = first_of_each_file(faults)
        super().__init__("\n".join(str(fault) for fault in self.faults))


class TableError(StudyError):
    """A table of the package is wrong."""


class EngineError(StudyError):
    """The drawing engine cannot run on this machine."""
