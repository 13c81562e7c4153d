"""How is a wiring diagram laid out, so that nothing lies over anything else?

Batteries stand on the left, what they feed on the right of the bus bar, each leg on a line of its
own; one line stands for both poles. Columns are as wide as their words need.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise
from xml.etree.ElementTree import Element

from generator.report.canvas import Drawing
from generator.report.figures.strokes import (
    END,
    LINE,
    PLAIN,
    SMALL,
    START,
    At,
    Written,
    finished,
    group,
    line,
    sheet,
    words,
)
from generator.report.figures.symbols import SYMBOLS, earth, stop_button
from generator.report.figures.wiring import Leg, Piece, Wiring

STRINGS = ("battery", "fuse", "isolator", "contactor", "cable")
BRANCHES = ("fuse", "isolator", "contactor", "cable", "converter", "end")
MIRROR = {"fuse": "converter", "isolator": "cable", "cable": "contactor", "end": "fuse"}
# the columns of a leg that runs back, by those of one that runs out
PITCH, CLOSE = 52.0, 46.0  # pt between the lines of two legs, and of many
MANY = 7  # legs
ABOVE, BELOW = 26.0, 32.0  # pt of words over a line and under it
OVER_STOP = 56.0  # pt over a line with the button that opens its contactor
LEAST = 476.0  # pt, the measure of the page
LETTER = 0.51  # width of a letter over its size: that of the widest words used here
CONTACTOR = 42.0  # pt, for a contactor with its stop
REACH = 31.0  # pt, of the path around it to either side
TURN = 18.0  # pt beyond its outermost symbol, where a leg turns about
GAP, MARGIN = 8.0, 12.0  # pt between words of two columns; on both sides of the bus bar
TAG_AT, FIRST_AT, NEXT_AT = -12.5, 18.0, 7.6  # pt from the line to tag, first and next words

Columns = dict[str, float]


@dataclass(frozen=True)
class Grid:
    """Where columns and lines lie."""

    width: float
    height: float
    strings: Columns
    branches: Columns
    bus: float
    string_lines: tuple[float, ...]
    branch_lines: tuple[float, ...]
    shore_line: float


def single_line(name: str, wiring: Wiring) -> Drawing:
    """The single-line diagram of one option."""
    grid = _grid(wiring)
    root = sheet(grid.width, grid.height)
    for leg, level in zip(wiring.strings, grid.string_lines, strict=True):
        _leg(root, leg, grid.strings, level, grid.bus)
    lines = dict(zip((leg.id for leg in wiring.branches), grid.branch_lines, strict=True))
    for leg in wiring.branches:
        if leg.behind:
            _behind(root, leg, wiring, grid, lines)
        else:
            _leg(root, leg, grid.branches, lines[leg.id], grid.bus)
    joined = [lines[leg.id] for leg in wiring.branches if not leg.behind]
    _bus(root, grid.bus, (*grid.string_lines, *joined))
    _shore(root, wiring, grid, lines)
    _bonding(root, wiring, grid)
    return finished(name, root)


def _grid(wiring: Wiring) -> Grid:
    left, right = _columns(STRINGS, wiring.strings), _columns(BRANCHES, wiring.branches)
    used = sum(left.values()) + sum(right.values()) + 2 * MARGIN
    more = max(LEAST - used, 0.0) / (len(left) + len(right))
    strings, edge = _centres(left, 0.0, more)
    branches, width = _centres(right, edge + 2 * MARGIN, more)
    string_lines, branch_lines = _levels(wiring.strings), _levels(wiring.branches)
    lift = (branch_lines[0] + branch_lines[-1] - string_lines[0] - string_lines[-1]) / 2
    string_lines = tuple(level + max(lift, 0.0) for level in string_lines)
    branch_lines = tuple(level + max(-lift, 0.0) for level in branch_lines)
    low = max(string_lines[-1], branch_lines[-1])
    shore = low + _pitch(wiring.branches) if wiring.shore else low
    return Grid(
        width, shore + BELOW, strings, branches, edge + MARGIN, string_lines, branch_lines, shore
    )


def _levels(legs: tuple[Leg, ...]) -> tuple[float, ...]:
    """A line for every leg; a button over a contactor asks for more room above its line."""
    levels: list[float] = []
    for leg in legs:
        stop = leg.control is not None and bool(leg.control.stops)
        over = OVER_STOP if stop else ABOVE
        pitch = OVER_STOP + BELOW + GAP if stop else _pitch(legs)
        levels.append(levels[-1] + pitch if levels else over)
    return tuple(levels)


def _pitch(legs: tuple[Leg, ...]) -> float:
    return PITCH if len(legs) < MANY else CLOSE


def _columns(order: tuple[str, ...], legs: Iterable[Leg]) -> Columns:
    """The width of every column that is used: as its widest words or symbol need."""
    widths: Columns = {}
    for column in order:
        found = [_wide(leg, piece) for leg in legs if (piece := _in_column(leg, column))]
        if found:
            widths[column] = max(found) + GAP
    return widths


def _in_column(leg: Leg, column: str) -> Piece | None:
    """What a leg has in a column of the sheet; a leg that runs back lies the other way round."""
    if not leg.back:
        return leg.at(column)
    return next((piece for piece in leg.pieces if MIRROR[piece.column] == column), None)


def _wide(leg: Leg, piece: Piece) -> float:
    symbol = SYMBOLS[piece.symbol]
    own = max((_length(each.text, SMALL) for each in piece.said), default=0.0)
    least = max(symbol.left + symbol.right, _length(piece.tag, PLAIN))
    if piece.column != "contactor" or leg.control is None:
        return max(least, own)
    path = 2 * REACH if leg.control.precharge else 0.0
    return max(least, 2 * own + GAP, CONTACTOR, path)


def _length(text: str, size: float) -> float:
    return len(text) * size * LETTER


def _centres(widths: Columns, edge: float, more: float) -> tuple[Columns, float]:
    centres = {}
    for column, wide in widths.items():
        centres[column] = edge + (wide + more) / 2
        edge += wide + more
    return centres, edge


def _leg(root: Element, leg: Leg, columns: Columns, level: float, bus: float) -> None:
    """A wire from its outermost piece to the bus bar, broken by the symbols on it."""
    own = group(root, leg=leg.id, device=leg.device)
    placed = sorted(((columns[piece.column], piece) for piece in leg.pieces), key=_first)
    spans = [(x - SYMBOLS[p.symbol].left, x + SYMBOLS[p.symbol].right) for x, p in placed]
    spans = sorted([*spans, (bus, bus)])
    for (_, start), (end, _) in pairwise(spans):
        _wire(own, (start, level), (end, level))
    for x, piece in placed:
        if piece.column == "contactor" and leg.control is not None:
            _contactor(own, leg, piece, (x, level))
        else:
            _piece(own, piece, (x, level))


def _first(pair: tuple[float, Piece]) -> float:
    return pair[0]


def _wire(own: Element, *points: At) -> None:
    line(own, *points).set("class", "wire")


def _behind(root: Element, leg: Leg, wiring: Wiring, grid: Grid, lines: dict[str, float]) -> None:
    """A leg that begins at the end of another one, drops to its own line and turns about."""
    own = group(root, leg=leg.id, device=leg.device)
    high, level = lines[leg.behind], lines[leg.id]
    before = next(each for each in wiring.branches if each.id == leg.behind)
    spans = sorted(_span(grid, leg, piece) for piece in leg.pieces)
    ends = [_span(grid, before, piece) for piece in before.pieces]
    if leg.back:
        start, near = max(end for _, end in ends), spans[-1][1]
        edge = min(max(start, near) + TURN, grid.width - 2 * LINE)
    else:
        start, near = min(begin for begin, _ in ends), spans[0][0]
        edge = min(start, near) - TURN
    _wire(own, (start, high), (edge, high), (edge, level), (near, level))
    for (_, begin), (end, _) in pairwise(spans):
        _wire(own, (begin, level), (end, level))
    for piece in leg.pieces:
        _piece(own, piece, (_place(grid, leg, piece), level))


def _place(grid: Grid, leg: Leg, piece: Piece) -> float:
    return grid.branches[MIRROR[piece.column] if leg.back else piece.column]


def _span(grid: Grid, leg: Leg, piece: Piece) -> tuple[float, float]:
    """Both ends of a symbol."""
    x, symbol = _place(grid, leg, piece), SYMBOLS[piece.symbol]
    return x - symbol.left, x + symbol.right


def _piece(parent: Element, piece: Piece, at: At) -> None:
    """A symbol with its tag above and its words below."""
    own = group(parent, symbol=piece.symbol, tag=piece.tag)
    SYMBOLS[piece.symbol].draw(own, at)
    if piece.tag:
        words(own, (at[0], at[1] + TAG_AT), piece.tag, PLAIN, bold=True)
    for place, said in enumerate(piece.said):
        words(own, (at[0], at[1] + FIRST_AT + place * NEXT_AT), said)


def _contactor(own: Element, leg: Leg, piece: Piece, at: At) -> None:
    """A contactor, its pre-charge path below and its button above."""
    x, y = at
    inner = group(own, symbol=piece.symbol, tag=piece.tag)
    SYMBOLS[piece.symbol].draw(inner, at)
    words(inner, (x - 4, y - 11), piece.tag, PLAIN, bold=True, anchor=END)
    for place, said in enumerate(piece.said):
        words(inner, (x + 4, y - 11 - place * NEXT_AT), said, anchor=START)
    if leg.control and leg.control.precharge:
        _bypass(own, leg.control.precharge, at)
    if leg.control and leg.control.stops:
        _stops(own, leg.control.stops, at)


def _stops(own: Element, stops: tuple[Piece, ...], at: At) -> None:
    """The buttons that open a contactor by hand, each with its tag."""
    x, y = at
    line(own, (x, y - 5), (x, y - 28), dash="2.4 1.8")
    stop_button(own, (x, y - 33))
    for place, piece in enumerate(stops):
        inner = group(own, symbol=piece.symbol, tag=piece.tag)
        said = " ".join((piece.tag, *(each.text for each in piece.said)))
        words(inner, (x, y - 43 - place * (NEXT_AT + 1)), said, SMALL, bold=True)


def _bypass(own: Element, path: tuple[Piece, ...], at: At) -> None:
    """Fuse, relay and resistor that fill the capacitors before the contactor closes."""
    x, y = at
    low, step = y + 14.0, 2 * REACH / len(path) - 2.0
    edge = x - REACH
    inner = group(own, path="pre-charge")
    line(inner, (edge, y), (edge, low))
    for place, piece in enumerate(path):
        symbol, centre = SYMBOLS[piece.symbol], x + (place - (len(path) - 1) / 2) * step
        part = group(inner, symbol=piece.symbol, tag=piece.tag)
        line(part, (edge, low), (centre - symbol.left, low))
        symbol.draw(part, (centre, low))
        edge = centre + symbol.right
        tag = (Written(piece.tag),) if piece.tag else ()
        for row, said in enumerate((*tag, *piece.said)):
            words(part, (centre, low + 11.5 + row * NEXT_AT), said, SMALL, bold=bool(tag))
    line(inner, (edge, low), (x + REACH, low), (x + REACH, y))
    words(inner, (x, low + 11.5 + NEXT_AT), "pre-charge", SMALL)


def _bus(root: Element, x: float, levels: tuple[float, ...]) -> None:
    own = group(root, bus="positive")
    line(own, (x, min(levels) - 8), (x, max(levels) + 8), width=3 * LINE)


def _shore(root: Element, wiring: Wiring, grid: Grid, lines: dict[str, float]) -> None:
    """The alternating side: from the charger down, and back to the inlet."""
    chargers = [leg for leg in wiring.branches
                if (piece := leg.at("converter")) and piece.symbol == "charger"]  # fmt: skip
    if not chargers or not wiring.shore:
        return
    own = group(root, side="shore")
    x, level, row = grid.branches["converter"], grid.shore_line, lines[chargers[0].id]
    turn = x + 30.0
    line(own, (x + SYMBOLS["charger"].right, row), (turn, row), (turn, level))
    edge, step = turn, (turn - 80.0) / len(wiring.shore)
    for place, piece in enumerate(wiring.shore):
        centre, symbol = turn - (place + 0.5) * step, SYMBOLS[piece.symbol]
        line(own, (edge, level), (centre + symbol.right, level))
        _piece(own, piece, (centre, level))
        edge = centre - symbol.left


def _bonding(root: Element, wiring: Wiring, grid: Grid) -> None:
    """The one place where the boat's metal, the shore's earth and the drive may meet."""
    if not wiring.bonding:
        return
    own = group(root, side="bonding")
    x, y = 14.0, grid.shore_line
    line(own, (x, y - 12), (x, y))
    earth(own, (x, y))
    for place, said in enumerate(wiring.bonding):
        words(own, (2.0, y + FIRST_AT + place * NEXT_AT), said, anchor=START)
