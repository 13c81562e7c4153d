"""What is joined to what? The few parts from which the pictures of an installation are drawn."""

from __future__ import annotations

from dataclasses import dataclass

from generator.report.figures.strokes import Written


@dataclass(frozen=True)
class Piece:
    """One symbol on a line: the column it stands in, its tag, and what is written below it."""

    column: str
    symbol: str
    tag: str
    said: tuple[Written, ...] = ()


@dataclass(frozen=True)
class Control:
    """A contactor's path for pre-charge, fuse, relay and resistor, and what opens it by hand."""

    precharge: tuple[Piece, ...]
    stops: tuple[Piece, ...]


@dataclass(frozen=True)
class Leg:
    """One line from a bus bar outwards, with the device that protects its positive side."""

    id: str
    device: str  # tag in the fuse schedule
    pieces: tuple[Piece, ...]
    control: Control | None = None  # of the contactor on it
    behind: str = ""  # id of the leg at whose end it begins; else it begins at the bus bar
    back: bool = False  # it runs back towards the bus bar
    start: str = "main busbar"  # in words

    def at(self, column: str) -> Piece | None:
        """What stands in a column, if anything."""
        return next((piece for piece in self.pieces if piece.column == column), None)


@dataclass(frozen=True)
class Wiring:
    """The direct-current side, and the shore side behind its charger."""

    strings: tuple[Leg, ...]
    branches: tuple[Leg, ...]  # the charger last
    shore: tuple[Piece, ...]  # from the charger back to the inlet
    bonding: tuple[Written, ...]
