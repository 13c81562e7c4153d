"""Part of a pack: what is this pack, and what is it not?"""

from __future__ import annotations

from generator.report.page import Page
from generator.report.parts import Part


def part(page: Page) -> Part:
    """Limits of the pack, each with a fact of the case."""
    text = (
        page.text(
            "Taken from study {case.reference|given} of {case.date|given}: a prediction from "
            "{study.draws|count} draws, not a survey of finished work, and no certificate. "
            "{input_count.sure|count} of {input_count.total|count} inputs were weighed or "
            "measured; the rest are papers, estimates and defaults."
        ),
        page.text(
            "Every conductor, fuse, setting and place is for the installer to confirm aboard "
            "{boat.name|given}; documents are named to be verified in their current edition; "
            "compliance is not claimed."
        ),
        page.text(
            "Local codes, the insurer's terms and the surveyor's word go before this pack. Work "
            "on the battery is for those qualified for it."
        ),
    )
    return Part("bounds", "Limits of this pack", text)
