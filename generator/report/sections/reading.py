"""Beside the contents: how is this report to be read?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.page import Page
from generator.report.sections.evidence import counted, graded


def reading(page: Page) -> tuple[Markup, ...]:
    """A few sentences that explain words and spreads, each with a number of this boat."""
    return (
        counted(page),
        graded(page),
        page.text(
            "A figure is the middle of {study.draws|count} draws. “One in ten” is the value below "
            "which a tenth of them fall, “nine in ten” the value below which nine tenths do."
        ),
        page.text(
            "“To reserve” means that {planning.reserve_share_pct|percent} of the usable energy, or "
            "what {planning.manoeuvring_time_min|minutes} of manoeuvring and "
            "{planning.hold_time_min|minutes} at {planning.hold_speed_kn|speed} against "
            "{planning.hold_wind_kn|wind} ask for if that is more, is still in the bank."
        ),
        page.text(
            "“Aged” is the bank at the end of {planning.horizon_years|years}. Power is power at "
            "the shaft, for diesels and motors alike."
        ),
    )
