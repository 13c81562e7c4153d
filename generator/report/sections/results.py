"""Section: what came out, part by part?"""

from __future__ import annotations

from generator.report.page import Page
from generator.report.parts import Part, Section
from generator.report.sections import (
    bank,
    berth,
    carbon,
    cost,
    cruising_range,
    docking,
    floating,
    headwind,
    known,
    legs,
    low_speed,
    placement,
    power,
    propeller,
    stream,
    tornado,
    under_sail,
    weight,
    year,
)

ORDER = (
    power,
    known,
    low_speed,
    headwind,
    docking,
    propeller,
    cruising_range,
    stream,
    bank,
    legs,
    berth,
    year,
    under_sail,
    weight,
    floating,
    placement,
    cost,
    carbon,
    tornado,
)


def section(page: Page) -> Section:
    """Power, range, bank, legs, weight and cost of all options."""
    lead = page.text(
        "Every figure is the middle of {study.draws|count} draws from the doubts of the inputs and "
        "of the defaults; spreads run from one in ten to nine in ten."
    )
    return Section("results", "Results", _parts(page), lead)


def _parts(page: Page) -> tuple[Part, ...]:
    found = (each.part(page) for each in ORDER)
    return tuple(part for part in found if part is not None and part.title)
