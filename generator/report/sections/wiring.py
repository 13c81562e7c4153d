"""Section: how is the direct-current installation of every motor made?"""

from __future__ import annotations

from generator.report.page import Page
from generator.report.parts import Part, Section
from generator.report.sections import diagram, schedules


def section(page: Page) -> Section:
    """The picture for the owner, the diagram, what to confirm, and the lists for the yard."""
    if not page.motors:
        lead = page.text("No option of {boat.name|given} has a propulsion battery to be wired.")
        return Section("wiring", "Direct-current installation", (), lead)
    lead = page.text(
        "Sized for {boat.name|given} from the currents of this study; every number is for the "
        "installer to confirm, and compliance with no document is claimed."
    )
    return Section("wiring", "Direct-current installation", parts(page), lead)


def parts(page: Page) -> tuple[Part, ...]:
    """All parts there are; none without a battery option."""
    if not page.motors:
        return ()
    found = (
        diagram.for_owner(page), schedules.overview(page), diagram.part(page),
        schedules.confirm(page), *schedules.lists(page),
    )  # fmt: skip
    return tuple(part for part in found if part)
