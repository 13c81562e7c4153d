"""On what does the study rest: how many inputs are sure, and what backs the power curve?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.page import Page


def counted(page: Page) -> Markup:
    """How many of the given values were measured or weighed, and how many values are defaults."""
    return page.text(
        "{input_count.sure|count} of {input_count.given|count} values given were measured or "
        "weighed; {input_count.defaults|count} more are defaults, listed in the appendix with "
        "their ranges."
    )


def graded(page: Page) -> Markup:
    """What backs the power curve, and what the trial did to it."""
    grade = page.text("Evidence of the power curve: {evidence.grade|given}")
    if page.value("trial.resistance_scale") is None or not page.value("evidence.used_rows"):
        return grade + page.text("; no timed run of {boat.name|given} stands behind it.")
    scaled = page.text(
        ", {evidence.used_rows|count} two-way runs of the present engine, which scale the "
        "resistance curve by {trial.resistance_scale|ratio}."
    )
    if None in (page.value("evidence.curve_low_pct"), page.value("evidence.curve_high_pct")):
        return grade + scaled
    return (
        grade
        + scaled
        + page.text(
            " Shaft power at {planning.cruise_speed_kn|speed} is then known within "
            "{evidence.curve_low_pct|percent:signed} and {evidence.curve_high_pct|percent:signed}."
        )
    )
