"""Section: what do bank and motor give when old, cold, warm, or one string short?"""

from __future__ import annotations

from generator.report.page import Page
from generator.report.parts import Section
from generator.report.sections import bank_ages, chemistries, duty, losses, one_fault

ORDER = (bank_ages, one_fault, chemistries, duty, losses)


def section(page: Page) -> Section:
    """Ages of the bank, one fault, other chemistries, the motor's duty, and the losses."""
    old = next((f"{motor}.bank" for motor in page.motors if page.value(f"{motor}.bank")), "waters")
    lead = page.text(
        "What the labels give is met on a warm day with a new bank. Here the bank is "
        f"{{planning.horizon_years|years}} old at {{{old}.coldest_c|temperature}}, and the motor "
        "stands in its own warm air after hours at {planning.cruise_speed_kn|speed}."
    )
    parts = tuple(part for each in ORDER for part in each.parts(page))
    return Section("bank_and_motor", "Bank and motor under load", parts, lead)
