"""Section: the options side by side, a better cell marked only beyond its doubt."""

from __future__ import annotations

from typing import Any

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import Part, Row, Table, numbers, reasons, without_empty, words


def part(page: Page) -> Part:
    """One table: all options, one question a row."""
    judged = (
        "Bold marks the better motor, and only where the difference has been judged draw by draw "
        "and is larger than its own doubt; the diesels of {boat.name|given} stand beside them as "
        "references."
    )
    alone = "The diesels of {boat.name|given} stand beside the motor as references."
    said = page.text(judged if len(page.motors) > 1 else alone)
    if page.value("answer.asked") and page.value("answer.comparison"):
        said += Markup(" ") + page.sentence("answer.comparison.words_rows")
    return Part("comparison-part", "Side by side", (said,), (), (_table(page),))


def _table(page: Page) -> Table:
    keys = [key for row in page.column("comparison.rows", "keys") for key in row if key]
    width = 48 // max(len(page.options), 1)
    columns = [numbers(page.words(f"{option}.name"), width) for option in page.options]
    rows = tuple(_row(page, key) for key in page.keys("comparison.rows"))
    caption = page.text("All options on the same legs and at the same prices")
    notes = (*reasons(page, keys), *_diesels(page))
    heads = (words("Quantity", 32), *columns, words("Difference", 20))
    return without_empty(Table("comparison-table", caption, heads, rows, notes))


def _diesels(page: Page) -> tuple[Markup, ...]:
    """What keeps the word of a diesel from a plain go."""
    told = []
    for option in page.options:
        rows = [
            key for key in page.keys(f"{option}.verdict.criteria")
            if option not in page.motors and page.value(key)["role"] == "decide"
            and page.value(key)["result"] in ("conditional", "no")
        ]  # fmt: skip
        for key in rows:
            told.append(f"for {page.called(option)}: {{{key}.id|count}}\u00a0{{{key}.name|given}}")
    if not told:
        return ()
    return (page.text(f"With conditions, or failed, {'; '.join(told)}."),)


def _row(page: Page, key: str) -> Row:
    row = page.value(key)
    cells = [
        _cell(page, data, row["form"], place == row["better"])
        for place, data in enumerate(row["keys"])
    ]
    return Row(page.sentence(f"{key}.label"), (*cells, _judged(page, key)), _look(row))


def _look(row: dict[str, Any]) -> str:
    """Labels that stand under the row above are set in."""
    return "inset" if row["label"].startswith(" ") else ""


def _judged(page: Page, key: str) -> Markup:
    if page.value(f"{key}.better") is not None:
        return Markup("larger than its doubt")
    return page.sentence(f"{key}.why")


def _cell(page: Page, key: str | None, form: str, better: bool) -> Markup:
    if key is None:
        return Markup("")
    shown = page.placed(key, form)
    return Markup('<strong class="better">') + shown + Markup("</strong>") if better else shown
