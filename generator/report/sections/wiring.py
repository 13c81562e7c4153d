"""Section: how is the direct-current installation of every motor made?"""

from __future__ import annotations

from generator.report.page import Page
from generator.report.parts import Part
from generator.report.sections import diagram, schedules


def parts(page: Page) -> tuple[Part, ...]:
    """All parts there are; none without a battery option."""
    if not page.motors:
        return ()
    found = (
        diagram.for_owner(page), schedules.overview(page), diagram.part(page),
        schedules.confirm(page), *schedules.lists(page),
    )  # fmt: skip
    return tuple(part for part in found if part)
