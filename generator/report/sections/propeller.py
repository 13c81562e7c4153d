"""Do motor and propeller belong together, and what does the yard need to know of the shaft?"""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from generator.analyses.option import OptionAnswers
from generator.report.page import Page
from generator.report.parts import Part
from generator.report.sections.technical import motors_of, widths
from generator.report.template import pieces

TEMPLATE = "sections/propeller.html"
PROPELLER = "particulars.propeller"


@dataclass(frozen=True)
class Propeller:
    """The propeller of an option as it is, and the record of the option."""

    name: Markup
    it: object
    kind: Markup
    blades: Markup
    diameter: Markup
    pitch: Markup
    area: Markup
    deviation: Markup


def part(page: Page) -> Part:
    """The match in words and the propeller table for the yard."""
    options = [_propeller(page, option) for option in page.options]
    if not page.value(f"{page.options[0]}.match"):
        return Part("propeller", "")
    motors = motors_of(page)
    body = Markup("").join(pieces(TEMPLATE, "match")(motor) for motor in motors)
    if motors:
        most = max(motors, key=lambda motor: motor.it.docking.ahead_peak.value or 0.0)
        saildrive = page.value("propeller.installation") == "saildrive"
        area = page.show(f"{most.key}.{PROPELLER}.area_ratio", "ratio")
        body += pieces(TEMPLATE, "shaft")(most, saildrive, area)
    table = pieces(TEMPLATE, "table")(options, widths(36, len(options)))
    return Part("propeller", pieces(TEMPLATE, "title")(), body=body, closing=table)


def _propeller(page: Page, option: str) -> Propeller:
    own = f"{option}.{PROPELLER}"
    return Propeller(
        page.words(f"{option}.name"),
        page.view(option, OptionAnswers),
        page.words(f"{own}.kind"),
        page.show(f"{own}.blades", "count"),
        page.show(f"{own}.diameter_mm", "length_small"),
        page.show(f"{own}.pitch_mm", "length_small"),
        page.show(f"{own}.area_ratio", "ratio"),
        page.show(f"{option}.match.deviation_share", "share:signed"),
    )
