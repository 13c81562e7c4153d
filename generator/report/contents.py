"""Which sections does the report hold, in which order?"""

from __future__ import annotations

from generator.report.page import Page
from generator.report.parts import Section
from generator.report.sections import (
    appendix,
    bank_and_motor,
    cautions,
    comparison,
    criteria,
    installation,
    insurer,
    options,
    results,
    risks,
    vessel,
    wiring,
    yard,
)

ORDER = (
    vessel,
    installation,
    options,
    results,
    bank_and_motor,
    comparison,
    criteria,
    wiring,
    risks,
    cautions,
    yard,
    insurer,
    appendix,
)


def sections(page: Page) -> tuple[Section, ...]:
    """All sections after the front page, in reading order."""
    return tuple(each.section(page) for each in ORDER)
