"""Section: what came out, part by part?"""

from __future__ import annotations

from generator.report.page import Page
from generator.report.parts import Section
from generator.report.sections import (
    bank,
    cost,
    cruising_range,
    floating,
    legs,
    placement,
    power,
    weight,
)
from generator.report.sections.evidence import graded

ORDER = (power, cruising_range, bank, legs, weight, floating, placement, cost)


def section(page: Page) -> Section:
    """Power, range, bank, legs, weight and cost of all options."""
    lead = page.text(
        "Every figure is the middle of {study.draws|count} draws from the doubts of the inputs and "
        "of the defaults; spreads run from one in ten to nine in ten. "
    ) + graded(page)
    return Section("results", "Results", tuple(each.part(page) for each in ORDER), lead)
