"""What is connected to what, in words for the owner: from the quay to the propeller?"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from xml.etree.ElementTree import Element

from generator.report.canvas import Drawing
from generator.report.figures.look import FAINT, INK
from generator.report.figures.strokes import (
    PLAIN,
    SMALL,
    At,
    Written,
    box,
    finished,
    group,
    line,
    sheet,
    solid,
    words,
)
from generator.report.page import Page

WIDTH, HEIGHT = 476.0, 92.0  # pt
WIDE, HIGH, STEP = 80.0, 37.0, 99.0  # pt
UPPER, LOWER = 19.5, 72.5  # pt, middles of the two rows


@dataclass(frozen=True)
class Block:
    """One box: where it stands, its name, and what is written in it."""

    column: int
    row: float
    name: str
    said: tuple[Written, ...]


def blocks(page: Page, name: str) -> Drawing:
    """Five boxes from the quay to the propeller, and two more to the house."""
    root = sheet(WIDTH, HEIGHT)
    for block in _blocks(page):
        _drawn(root, block)
    middles = [_middle(column) for column in range(5)]
    for before, after in pairwise(middles):
        _arrow(root, (before + WIDE / 2, UPPER), (after - WIDE / 2, UPPER))
    _down(root, (middles[2], UPPER + HIGH / 2), (middles[2], LOWER - HIGH / 2))
    _arrow(root, (middles[2] + WIDE / 2, LOWER), (middles[3] - WIDE / 2, LOWER))
    return finished(name, root)


def _blocks(page: Page) -> tuple[Block, ...]:
    shore = (
        _number(page, "berth.voltage_v", "voltage"),
        _number(page, "berth.breaker_a", "current"),
    )
    plug = shore if page.value("berth.shore_power") else (Written("no plug at the berth"),)
    own = "battery of its own" if page.value("house.separate_bank") else "from the drive's battery"
    return (
        Block(0, UPPER, "Shore post", plug),
        Block(1, UPPER, "Charger", (Written("AC to DC"),)),
        Block(2, UPPER, "Battery", _each(page, "bank.nominal_kwh", "energy")),
        Block(3, UPPER, "Switch and stop", (Written("at the helm and below"),)),
        Block(4, UPPER, "Motor, propeller",
              _each(page, "particulars.motor.continuous_power_kw", "power")),
        Block(2, LOWER, "Converter", (Written("to the house's voltage"),)),
        Block(3, LOWER, "House", (Written(own), _number(page, "house.under_way_w", "watts"))),
    )  # fmt: skip


def _number(page: Page, key: str, form: str) -> Written:
    return Written(page.plain(key, form), key, form)


def _each(page: Page, tail: str, form: str) -> tuple[Written, ...]:
    """One number for every motor, the same number once."""
    found = [_number(page, f"{motor}.{tail}", form) for motor in page.motors]
    return tuple({said.text: said for said in reversed(found)}.values())[::-1]


def _middle(column: int) -> float:
    return WIDE / 2 + column * STEP


def _drawn(root: Element, block: Block) -> None:
    x, y = _middle(block.column), block.row
    own = group(root, block=block.name)
    box(own, (x, y), WIDE, HIGH, FAINT)
    words(own, (x, y - 7), block.name, PLAIN + 0.8, bold=True)
    for place, said in enumerate(block.said):
        words(own, (x, y + 4 + place * 8.6), said, SMALL + 0.3)


def _arrow(root: Element, start: At, end: At) -> None:
    line(root, start, end, width=1.6)
    x, y = end
    solid(root, f"M{x - 6:.1f} {y - 3.5:.1f} L{x:.1f} {y:.1f} L{x - 6:.1f} {y + 3.5:.1f} Z", INK)


def _down(root: Element, start: At, end: At) -> None:
    line(root, start, end, width=1.6)
    x, y = end
    solid(root, f"M{x - 3.5:.1f} {y - 6:.1f} L{x:.1f} {y:.1f} L{x + 3.5:.1f} {y - 6:.1f} Z", INK)
