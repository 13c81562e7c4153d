"""Section: which hazards and rules apply, to which number, and who must confirm it?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import Part, Row, Table, words


def lead(page: Page) -> Markup:
    """What the study does not replace."""
    return page.text(
        "This study of {boat.name|given} predicts; it replaces neither a survey nor the judgement "
        "of those named below, each for the number beside their name."
    )


def parts(page: Page) -> tuple[Part, ...]:
    """One row for each caution, with the one who confirms it."""
    rows = tuple(_row(page, key) for key in page.keys("cautions"))
    columns = (
        words("Caution", 20),
        words("What it means aboard", 56),
        words("To be confirmed by", 24),
    )
    caption = page.text("Cautions, each tied to a number of this boat")
    table = Table("cautions-table", caption, columns, rows, (), "long")
    return (Part("cautions-part", "", (), (), (table,)), *_outside(page))


def _row(page: Page, key: str) -> Row:
    cells = (page.sentence(f"{key}.text"), page.sentence(f"{key}.confirm"))
    return Row(page.sentence(f"{key}.title"), cells)


def _outside(page: Page) -> tuple[Part, ...]:
    """Inputs outside the range of a formula: the value is still given, and said."""
    keys = page.keys("range_warnings")
    if not keys:
        return ()
    said = tuple(_beyond(page, key) for key in keys)
    return (Part("outside", "Near or beyond the published range", said),)


def _beyond(page: Page, key: str) -> Markup:
    return Markup("<b>{}:</b> outside {} to {} in {} of the draws. {} Source: {}.").format(
        page.sentence(f"{key}.quantity"),
        page.show(f"{key}.low", "ratio"),
        page.show(f"{key}.high", "ratio"),
        page.show(f"{key}.share_outside_pct", "percent"),
        page.sentence(f"{key}.message"),
        page.words(f"{key}.source"),
    )
