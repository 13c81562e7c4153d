"""Which leaves of two results trees differ, once keys that were renamed are brought together?"""

from __future__ import annotations

import csv
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

RELATIVE, ABSOLUTE = 2e-9, 1e-12
DIGITS = 9  # of a tree that was rounded as results.json is
PLACE = "*"

Steps = tuple[str | int, ...]
Pattern = tuple[str, ...]


@dataclass(frozen=True)
class Difference:
    """One leaf that is not what it was."""

    kind: str  # number, text, missing, new
    pattern: str  # its key, a star for every place of a list; the old key where it is missing
    key: str
    old: Any
    new: Any

    @property
    def change(self) -> float:
        """Relative to the old number; endless where one of the two is no number, or was 0."""
        if not (_is_number(self.old) and _is_number(self.new)) or self.old == 0:
            return float("inf")
        return float(abs(self.new - self.old) / abs(self.old))


@dataclass(frozen=True)
class Renames:
    """The new key of an old one, by pattern; nothing where the old one is dead."""

    rows: Mapping[Pattern, Pattern]

    def new(self, steps: Steps) -> Steps | None:
        """The steps of a leaf in the new tree; the longest pattern that begins its key counts."""
        if not self.rows:
            return steps
        for length in range(len(steps), 0, -1):
            for pattern in _patterns(steps[:length]):
                row = self.rows.get(pattern)
                if row is not None:
                    places = iter(
                        step
                        for step, sign in zip(steps, pattern, strict=False)
                        if isinstance(step, int) and sign == PLACE
                    )
                    return (*_filled(row, places), *steps[length:]) if row else None
        return steps


def read_renames(path: Path) -> Renames:
    """The table of old keys; none where there is no such file."""
    rows: dict[Pattern, Pattern] = {}
    for old, new, *why in table(path):
        if not new and not any(why):
            raise ValueError(f"{path.name}: {old} is dead without a reason")
        if new and old.split(".").count(PLACE) != new.split(".").count(PLACE):
            raise ValueError(f"{path.name}: {old} and {new} have not the same number of places")
        rows[tuple(old.split("."))] = tuple(new.split(".")) if new else ()
    return Renames(rows)


def table(path: Path) -> list[list[str]]:
    """The rows below the line of names; remarks and a row of units are no rows."""
    if not path.exists():
        return []
    with path.open(encoding="utf-8", newline="") as stream:
        rows = [row for row in csv.reader(stream) if row and not row[0].startswith("#")]
    return [[cell.strip() for cell in row] for row in rows[1:] if set(row) != {"-"}]


def leaves(node: Any) -> dict[Steps, Any]:
    """Every value by its steps; an empty list or section is a value."""
    found: dict[Steps, Any] = {}
    left: list[tuple[Steps, Any]] = [((), node)]
    while left:
        steps, value = left.pop()
        if isinstance(value, dict) and value:
            left.extend(((*steps, key), below) for key, below in value.items())
        elif isinstance(value, list) and value:
            left.extend(((*steps, place), below) for place, below in enumerate(value))
        else:
            found[steps] = value
    return found


def pattern_of(steps: Steps) -> Pattern:
    """A star for every place of a list."""
    return tuple(PLACE if isinstance(step, int) else step for step in steps)


def differences(old: Any, new: Any, renames: Renames) -> tuple[int, list[Difference]]:
    """How many leaves are equal, and those that are not."""
    left, equal, found = leaves(new), 0, []
    for steps, before in leaves(old).items():
        moved = renames.new(steps)
        if moved is None:
            continue
        if moved not in left:
            found.append(_difference("missing", steps, before, None))
            continue
        after = left.pop(moved)
        if same(before, after):
            equal += 1
        else:
            number = _is_number(before) or _is_number(after)
            found.append(_difference("number" if number else "text", moved, before, after))
    found += [_difference("new", steps, None, value) for steps, value in left.items()]
    return equal, found


def same(old: Any, new: Any) -> bool:
    """Numbers nearly, all else exactly; 1 is not true."""
    if _is_number(old) and _is_number(new):
        return bool(abs(new - old) <= max(ABSOLUTE, RELATIVE * abs(old)))
    return type(old) is type(new) and bool(old == new)


def rounded(node: Any) -> Any:
    """The tree as results.json rounds it."""
    if isinstance(node, dict):
        return {key: rounded(value) for key, value in node.items()}
    if isinstance(node, list):
        return [rounded(value) for value in node]
    return float(f"{node:.{DIGITS}g}") if isinstance(node, float) else node


def _patterns(steps: Steps) -> Iterator[Pattern]:
    """A star for every place, then one of the places as it is: a row may name a place."""
    stars = pattern_of(steps)
    yield stars
    for at, step in enumerate(steps):
        if isinstance(step, int):
            yield (*stars[:at], str(step), *stars[at + 1 :])


def _difference(kind: str, steps: Steps, old: Any, new: Any) -> Difference:
    return Difference(kind, ".".join(pattern_of(steps)), ".".join(map(str, steps)), old, new)


def _filled(row: Pattern, places: Iterator[int]) -> Steps:
    return tuple(
        next(places) if step == PLACE else int(step) if step.isdigit() else step for step in row
    )


def _is_number(value: Any) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool)
