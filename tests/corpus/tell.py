"""What is told of the differences: by pattern, and which of them are allowed by which row?"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from tests.corpus.leaves import Difference

MOST = 40  # patterns allowed beyond those of named items
ITEM = "item "  # a cause that begins so is a named item of the work
BELOW = ".**"  # at the end of a row: the key and all below it
PARTS = {
    "number": "moved numbers",
    "text": "moved texts",
    "missing": "missing without a row in old_keys.csv",
    "new": "new",
}
LONGEST = 60


@dataclass(frozen=True)
class Move:
    """All differences of one pattern and kind."""

    kind: str
    pattern: str
    variants: int
    leaves: int
    worst: Difference
    where: str  # the variant of the worst one


@dataclass(frozen=True)
class Judged:
    """The moves with the cause that allows each, and the rows that allow none."""

    moves: tuple[tuple[Move, str], ...]
    idle: tuple[str, ...]

    @property
    def beyond(self) -> int:
        """Allowed patterns whose cause is no named item."""
        return len({move.pattern for move, cause in self.moves if cause and not _item(cause)})

    @property
    def passed(self) -> bool:
        """Whether every move but a new leaf has a cause, and not too many have none of weight."""
        lacking = [move for move, cause in self.moves if not cause and move.kind != "new"]
        return not lacking and self.beyond <= MOST


def moves(found: Iterable[tuple[str, Difference]]) -> list[Move]:
    """The differences by pattern, the widest first."""
    groups: dict[tuple[str, str], list[tuple[str, Difference]]] = {}
    for variant, item in found:
        groups.setdefault((item.kind, item.pattern), []).append((variant, item))
    gathered = [_move(*key, items) for key, items in groups.items()]
    return sorted(gathered, key=lambda move: (-move.worst.change, move.pattern))


def judged(found: Iterable[Move], rows: Iterable[list[str]]) -> Judged:
    """Each move with the cause of the first row that allows it; nothing where none does."""
    allowed = [(pattern, cause) for pattern, cause, *_ in rows]
    used: set[str] = set()
    placed = []
    for move in found:
        row = next((row for row in allowed if _covers(row[0], move.pattern)), None)
        if row is None or move.kind == "new":
            placed.append((move, ""))
            continue
        used.add(row[0])
        placed.append((move, row[1] or "no cause given"))
    return Judged(tuple(placed), tuple(row[0] for row in allowed if row[0] not in used))


def told(verdict: Judged, most: int | None) -> Iterable[str]:
    """The lines of the answer."""
    for kind, head in PARTS.items():
        part = [(move, cause) for move, cause in verdict.moves if move.kind == kind]
        part.sort(key=lambda pair: bool(pair[1]))  # what is not allowed stands first
        if part:
            yield f"{head}: {len(part)} patterns, {sum(1 for _, cause in part if cause)} expected"
            yield from (_line(*pair) for pair in part[:most])
            if most is not None and len(part) > most:
                yield f"  and {len(part) - most} more (--all)"
    yield from (f"STALE  expected_moves.csv: {pattern} matched nothing" for pattern in verdict.idle)
    yield f"allowed beyond named items: {verdict.beyond} of at most {MOST} patterns"
    yield "as expected" if verdict.passed else "MOVED: not all of it is expected"


def _move(kind: str, pattern: str, items: list[tuple[str, Difference]]) -> Move:
    where, worst = max(items, key=lambda pair: pair[1].change)
    names = {variant for variant, _ in items}
    return Move(kind, pattern, len(names), len(items), worst, where)


def _line(move: Move, cause: str) -> str:
    worst = move.worst
    change = f"{worst.change:.1e}" if move.kind == "number" else move.kind
    shown = f"{_short(worst.old)} -> {_short(worst.new)}"
    told = f"  {move.pattern}: {move.variants} variants, {move.leaves} leaves, {change}; "
    return told + f"{move.where} {worst.key}: {shown}" + (f" [{cause}]" if cause else "")


def _short(value: object) -> str:
    text = f"{value!r}"
    return text if len(text) <= LONGEST else text[: LONGEST - 3] + "..."


def _covers(row: str, pattern: str) -> bool:
    if row.endswith(BELOW):
        return f"{pattern}.".startswith(row.removesuffix(BELOW) + ".")
    return row == pattern


def _item(cause: str) -> bool:
    return cause.lower().startswith(ITEM)
