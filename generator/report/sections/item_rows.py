"""Which payment stands in which row: what is bought in several options has one?"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from generator.analyses.option import OptionAnswers
from generator.report.page import Page
from generator.report.view import View

ORDER = (
    "motor", "engine", "battery", "electrics", "propeller", "labour", "haul-out", "survey",
    "assessment", "overhaul", "insurance", "winter", "other", "grant", "sale",
)  # fmt: skip
ONE_EACH = ("motor", "engine", "battery", "propeller")  # alike enough for one row under two names


@dataclass(frozen=True)
class ItemRow:
    """A row: all names under which it is paid, and the payments of each option."""

    part: str
    names: list[Any]
    cells: list[list[View]]


def item_rows(page: Page) -> tuple[list[ItemRow], list[ItemRow]]:
    """Payments at first, and those that come later or every year, in the order of their parts."""
    options = [view.cost.items for view in page.views("options", OptionAnswers)]
    first = [[each for each in items if each.when == "first"] for items in options]
    later = [[each for each in items if each.when != "first"] for items in options]
    return _rows(first), _rows(later)


def _rows(options: list[list[View]]) -> list[ItemRow]:
    rows: list[ItemRow] = []
    for place, items in enumerate(options):
        taken = [str(each.name) for each in items]
        for item in items:
            row = next((each for each in rows if _fits(each, item, place, taken)), None)
            if row is None:
                row = ItemRow(item.part, [], [[] for _ in options])
                rows.append(row)
            if str(item.name) not in [str(name) for name in row.names]:
                row.names.append(item.name)
            row.cells[place].append(item)
    return sorted(rows, key=lambda row: ORDER.index(row.part))


def _fits(row: ItemRow, item: View, place: int, taken: list[str]) -> bool:
    """By its name; or as the one thing of its part, whose row no item of this option names."""
    names = [str(name) for name in row.names]
    if row.part != item.part:
        return False
    if str(item.name) in names:
        return True
    return item.part in ONE_EACH and not row.cells[place] and not set(names) & set(taken)
