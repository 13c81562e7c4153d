"""What stands in a case file, as plain text values that remember their line?

The file is taken apart event by event, so that an alias is never followed, nothing is built
deeper than allowed, and no text is guessed to be a number, a date or a truth value.
"""

from __future__ import annotations

import os
import re
import stat
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

import yaml

from generator.errors import CaseError, Fault

LARGEST = 1_000_000  # bytes
DEEPEST = 12
MOST_EVENTS = 5_000  # keys, values and ends of lists; a boat fills some hundreds
# C0 and C1 without tab and line ends, line separators, direction marks, halves of pairs,
# byte-order marks inside
_CONTROL = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u200e\u200f\u2028-\u202e\u2066-\u2069"
    "\ud800-\udfff\ufeff\ufffe\uffff]"
)


@dataclass(frozen=True)
class Scalar:
    """One text and where it stands."""

    text: str
    line: int
    column: int


@dataclass(frozen=True)
class Items:
    """A list."""

    nodes: list[Node]
    line: int


@dataclass(frozen=True)
class Section:
    """Keys with their values, and the line of each key."""

    nodes: dict[str, Node]
    lines: dict[str, int]
    line: int


@dataclass(frozen=True)
class Hole:
    """A place whose content was refused; nothing more is said about it."""

    line: int


Node = Scalar | Items | Section | Hole


@dataclass(frozen=True)
class Document:
    """The whole file: its name as given, its bytes, what it holds, and what was refused."""

    file: str
    content: bytes
    root: Section
    faults: tuple[Fault, ...]


def read_document(path: Path) -> Document:
    """The file as a tree of texts; CaseError where there is no tree to go on with."""
    file = str(path)
    content = file_bytes(path, file)
    reader = _Reader(file, _events(file_text(content, file), file))
    try:
        root = reader.document()
    except CaseError as error:
        raise CaseError([*reader.faults, *error.faults]) from None
    return Document(file, content, root, tuple(reader.faults))


def file_bytes(
    path: Path, file: str, kind: str = "YAML", largest: int = LARGEST, links: bool = True
) -> bytes:
    """The bytes of a regular file of bearable size; nothing that could wait or never end is read.

    ``links``: whether the file itself may be a link, as the one named on the command line may.
    """
    try:
        _refuse_odd(path.stat() if links else path.lstat(), file, kind)
        # between the two looks the file may have become a pipe or a link: open none that waits
        waiting = getattr(os, "O_NONBLOCK", 0) | (0 if links else getattr(os, "O_NOFOLLOW", 0))
        opened = os.open(path, os.O_RDONLY | getattr(os, "O_BINARY", 0) | waiting)
        with os.fdopen(opened, "rb") as stream:
            _refuse_odd(os.fstat(opened), file, kind)
            content = stream.read(largest + 1)
    except OSError as error:
        problem = f"cannot be read: {error.strerror}"
        if isinstance(error, FileNotFoundError | NotADirectoryError):
            problem = "there is no such file"
        raise CaseError([Fault(file, 1, "", problem, f"expected a {kind} file")]) from None
    if len(content) > largest:
        line = content.count(b"\n") + 1
        problem = f"is larger than {largest // 1_000_000} MB"
        raise CaseError([Fault(file, line, "", problem, "expected some kilobytes")])
    return content


def _refuse_odd(what: os.stat_result, file: str, kind: str) -> None:
    """Refuse what is no regular file, before it is opened and again after."""
    mode = what.st_mode
    if stat.S_ISREG(mode):
        return
    problem = "is a pipe, a socket or a device"
    if stat.S_ISDIR(mode):
        problem = "is a folder"
    elif stat.S_ISLNK(mode):
        problem = "is a link to elsewhere"
    raise CaseError([Fault(file, 1, "", problem, f"expected a {kind} file itself")])


def file_text(content: bytes, file: str) -> str:
    """The bytes as text without control characters."""
    try:
        text = content.decode("utf-8").removeprefix("\ufeff")  # some editors begin with that mark
    except UnicodeDecodeError as error:
        line = content.count(b"\n", 0, error.start) + 1
        fault = Fault(file, line, "", "is not UTF-8 text", "expected a file saved as UTF-8")
        raise CaseError([fault]) from None
    found = _CONTROL.search(text)
    if found:
        line = text.count("\n", 0, found.start()) + 1
        problem = f"holds the control character U+{ord(found[0]):04X}"
        raise CaseError([Fault(file, line, "", problem, "expected printable text")])
    return text


def _events(text: str, file: str) -> Iterator[yaml.Event]:
    """The events of the C parser, as far as a case file may go."""
    try:
        for number, event in enumerate(yaml.parse(text, yaml.CSafeLoader)):
            if number > MOST_EVENTS:
                problem = f"holds more than {MOST_EVENTS} keys and values"
                raise CaseError([Fault(file, _line(event), "", problem, "expected some hundreds")])
            yield event
    except yaml.MarkedYAMLError as error:
        raise CaseError([_syntax_fault(error, file)]) from None


def _syntax_fault(error: yaml.MarkedYAMLError, file: str) -> Fault:
    """What the parser could not read; it has a limit of depth of its own, and reads ahead."""
    mark = error.problem_mark or error.context_mark
    line = mark.line + 1 if mark else 1
    problem = str(error.problem or error.context)
    if "nesting depth" in problem:
        return Fault(file, line, "", f"goes deeper than {DEEPEST} levels", "expected flatter keys")
    hope = "expected `key: value` lines, indented by blanks"
    return Fault(file, line, "", f"is not YAML: {problem}", hope)


def _line(event: yaml.Event) -> int:
    return int(event.start_mark.line) + 1 if event.start_mark else 1


def _column(event: yaml.Event) -> int:
    return int(event.start_mark.column) + 1 if event.start_mark else 1


@dataclass
class _Reader:
    """Builds the tree from events, one call deeper for each level of the file."""

    file: str
    events: Iterator[yaml.Event]
    faults: list[Fault] = field(default_factory=list)

    def document(self) -> Section:
        """The only document of the file, which must be a section."""
        next(self.events)  # start of stream
        event = next(self.events)
        if not isinstance(event, yaml.DocumentStartEvent):
            raise CaseError([self._fault(_line(event), "", "is empty", "expected `version: 1`")])
        root = self._node(next(self.events), "", 0)
        next(self.events)  # end of document
        event = next(self.events)
        if isinstance(event, yaml.DocumentStartEvent):
            self._refuse(_line(event), "", "a second document starts", "expected one per file")
        if not isinstance(root, Section):
            fault = self._fault(1, "", "holds no keys", "expected `version: 1` and sections")
            raise CaseError([] if self.faults else [fault])
        return root

    def _node(self, event: yaml.Event, path: str, depth: int) -> Node:
        """What one event begins, read to its end."""
        if isinstance(event, yaml.AliasEvent):
            problem = f"is the alias `*{event.anchor}`"
            return self._refuse(_line(event), path, problem, "expected the value itself")
        if isinstance(event, yaml.ScalarEvent):
            found = _CONTROL.search(event.value)
            if found:  # written as an escape, past the gate that the file's own bytes went through
                problem = f"holds the control character U+{ord(found[0]):04X}"
                return self._refuse(_line(event), path, problem, "expected printable text")
            node: Node = Scalar(event.value, _line(event), _column(event))
        elif depth == DEEPEST:
            problem = f"goes deeper than {DEEPEST} levels"
            raise CaseError([self._fault(_line(event), path, problem, "expected flatter keys")])
        elif isinstance(event, yaml.MappingStartEvent):
            node = self._section(_line(event), path, depth)
        else:
            node = self._items(_line(event), path, depth)
        tag = getattr(event, "tag", None)
        if tag is not None:
            shown = str(tag).replace("tag:yaml.org,2002:", "!!")[:60]
            return self._refuse(_line(event), path, f"has the tag `{shown}`", "expected plain text")
        return node

    def _items(self, line: int, path: str, depth: int) -> Items:
        nodes: list[Node] = []
        while not isinstance(event := next(self.events), yaml.SequenceEndEvent):
            nodes.append(self._node(event, f"{path}[{len(nodes)}]", depth + 1))
        return Items(nodes, line)

    def _section(self, line: int, path: str, depth: int) -> Section:
        nodes: dict[str, Node] = {}
        lines: dict[str, int] = {}
        while not isinstance(event := next(self.events), yaml.MappingEndEvent):
            key = self._key(event, path, depth)
            below = f"{path}.{key}" if path else key
            known = len(self.faults)
            node = self._node(next(self.events), below, depth + 1)
            if key == "<<":
                del self.faults[known:]  # one fault, whatever is merged
                self._refuse(_line(event), path, "has a merge key", "expected the keys themselves")
            elif key in nodes:
                first = f"stands first in line {lines[key]}"
                self._refuse(_line(event), below, "is given twice", f"{first}, expected once")
            elif key:
                nodes[key], lines[key] = node, _line(event)
        return Section(nodes, lines, line)

    def _key(self, event: yaml.Event, path: str, depth: int) -> str:
        """The text of a key; nothing, with a fault, where it is no text."""
        if (
            isinstance(event, yaml.ScalarEvent)
            and event.tag is None
            and event.value
            and not _CONTROL.search(event.value)
        ):
            return str(event.value)
        known = len(self.faults)
        self._node(event, path, depth + 1)
        del self.faults[known:]
        self._refuse(_line(event), path, "has a key that is not plain text", "expected a word")
        return ""

    def _refuse(self, line: int, path: str, problem: str, expected: str) -> Hole:
        self.faults.append(self._fault(line, path, problem, expected))
        return Hole(line)

    def _fault(self, line: int, path: str, problem: str, expected: str) -> Fault:
        return Fault(self.file, line, path, problem, expected)
