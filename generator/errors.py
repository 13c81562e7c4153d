"""What can go wrong on purpose? Only these three.

StudyError
├── CaseError    the case file is wrong: every fault with its line, all at once
├── TableError   our own data are wrong: which file, which row
└── EngineError  the machine lacks something that a report needs: what, and how to install it
"""

from __future__ import annotations

from dataclasses import dataclass


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
        place = f"{self.file}:{self.line}: "
        where = f"{self.path}: " if self.path else ""
        kind = "warning: " if self.warning else ""
        hope = f", {self.expected}" if self.expected else ""
        return f"{place}{kind}{where}{self.problem}{hope}"


class StudyError(Exception):
    """Anything this project raises on purpose."""


class CaseError(StudyError):
    """The case file is wrong; carries every fault that was found."""

    def __init__(self, faults: list[Fault]) -> None:
        self.faults = faults
        super().__init__("\n".join(str(fault) for fault in faults))


class TableError(StudyError):
    """A table of the package is wrong."""


class EngineError(StudyError):
    """The drawing engine cannot run on this machine."""
