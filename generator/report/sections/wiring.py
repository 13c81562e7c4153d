"""Section: how is the direct-current installation of every motor made?"""

from __future__ import annotations

from generator.report.page import Page
from generator.report.parts import Section
from generator.report.sections import schedules


def section(page: Page) -> Section:
    """Overview, what to confirm, and the lists for the yard."""
    if not page.motors:
        lead = page.text("No option of {boat.name|given} has a propulsion battery to be wired.")
        return Section("wiring", "Direct-current installation", (), lead)
    lead = page.text(
        "Sized for {boat.name|given} from the currents of this study; every number is for the "
        "installer to confirm, and compliance with no document is claimed."
    )
    parts = (*schedules.parts(page), *schedules.lists(page))
    return Section("wiring", "Direct-current installation", parts, lead)
