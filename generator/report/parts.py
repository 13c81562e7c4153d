"""What is a page made of? Tables, figures and titled parts, ready to be set."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace

from markupsafe import Markup

from generator.report.canvas import Drawing
from generator.report.numbers import ABSENT
from generator.report.page import Page, bare_text

NOTHING = Markup()
LONG = 14  # rows from which a table may break


@dataclass(frozen=True)
class Column:
    """Head of a column: its label, its unit if all cells share one, words or number, width."""

    label: Markup
    unit: str
    kind: str
    width: str  # share of the table, per cent


@dataclass(frozen=True)
class Row:
    """A row: its head, its cells, and a mark for its look."""

    head: Markup
    cells: tuple[Markup, ...]
    mark: str = ""


@dataclass(frozen=True)
class Table:
    """A table with caption and notes; ``long`` ones may break over pages."""

    name: str
    caption: Markup
    columns: tuple[Column, ...]
    rows: tuple[Row, ...]
    notes: tuple[Markup, ...] = ()
    long: str = ""

    @property
    def breaks(self) -> str:
        """Whether the table may run over the end of a page; a short one would leave a stub."""
        return "long" if self.long or len(self.rows) >= LONG else ""


@dataclass(frozen=True)
class Figure:
    """A chart under the sentence that states what it shows, with its source line."""

    name: str
    finding: Markup
    note: Markup
    draw: Callable[[], Drawing]  # called once, in `render`: the only place that draws
    described: str = ""  # what is drawn, where finding and note do not tell it

    @property
    def alt(self) -> str:
        """The finding in plain words, for those who cannot see the chart."""
        return f"{bare_text(self.finding)} {self.described or bare_text(self.note)}"


@dataclass(frozen=True)
class Part:
    """A titled piece of a section: text, opening tables, figures, and the tables behind them."""

    name: str
    title: Markup | str
    text: tuple[Markup, ...] = ()
    figures: tuple[Figure, ...] = ()
    tables: tuple[Table, ...] = ()
    opening: tuple[Table, ...] = ()
    body: Markup = NOTHING  # text of a template, before the figures
    closing: Markup = NOTHING  # tables of a template, behind the figures

    def __post_init__(self) -> None:
        """A column that no row has a value for is not set."""
        for name in ("tables", "opening"):
            tables = tuple(without_empty(table, ABSENT) for table in getattr(self, name))
            object.__setattr__(self, name, tables)


@dataclass(frozen=True)
class Section:
    """A numbered section of the report."""

    name: str
    title: str
    parts: tuple[Part, ...]
    lead: Markup


def words(label: str | Markup, width: int) -> Column:
    """A column of words."""
    return Column(Markup.escape(label), "", "words", str(width))


def numbers(label: str | Markup, width: int, unit: str = "") -> Column:
    """A column of numbers, with the unit that all of them share."""
    return Column(Markup.escape(label), unit.strip(), "number", str(width))


def without_empty(table: Table, *empty_marks: str) -> Table:
    """The table without columns in which no row has a value; the reason stays in its notes.

    A blank cell is a value where the marks of an empty one are named: it is to be filled in.
    """
    marks = empty_marks or (ABSENT, "")
    empty = [
        bare_text(column.label)
        for place, column in enumerate(table.columns[1:])
        if table.rows and all(bare_text(row.cells[place]) in marks for row in table.rows)
    ]
    return without_columns(table, empty)


def without_columns(table: Table, labels: Iterable[str]) -> Table:
    """The table without the columns of those labels."""
    gone = set(labels)
    kept = [
        place
        for place, column in enumerate(table.columns[1:])
        if bare_text(column.label) not in gone
    ]
    rows = tuple(replace(row, cells=tuple(row.cells[p] for p in kept)) for row in table.rows)
    columns = (table.columns[0], *(table.columns[place + 1] for place in kept))
    return replace(table, columns=columns, rows=rows)


def reasons(page: Page, keys: Iterable[str]) -> tuple[Markup, ...]:
    """Why the dashes of a table are dashes; each reason once."""
    seen: dict[str, None] = {}
    for key in keys:
        reason = page.why(key) if page.value(key) is None else None
        if reason:
            seen[reason] = None
    dash = Markup(ABSENT)
    return (dash + Markup(" ") + page.text("; ".join(seen)) + Markup("."),) if seen else ()
