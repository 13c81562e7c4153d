"""Part of a pack: what must the installer's and the owner's manual say of this boat?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import Part


def part(page: Page) -> Part | None:
    """Points with a number of this boat each."""
    if not page.motors:
        return None
    text = tuple(page.text(_points(motor, page)) for motor in page.motors)
    owner = page.text(
        "The owner's manual adds for {boat.name|given}: the daily look before leaving; speed "
        "against range in calm and wind; what each alarm means and what is done; charging at "
        "{berth.name|given} and what is never left alone; lay-up; what may be opened, and by "
        "whom; where isolators, stop and disconnect are; what to tell rescuers of the battery."
    )
    papers = Markup(
        "The installer's manual adds: diagram and schedules as built, torque of every lug, "
        "settings as loaded, readings of the tests, makers' papers, and what the stability and "
        "weight of the boat were after the work."
    )
    return Part("manual", "Manual points", (*text, owner, papers))


def _points(motor: str, page: Page) -> str:
    said = (
        f"{{{motor}.name|given}}: {{{motor}.particulars.motor.continuous_power_kw|power}} for good "
        f"and {{{motor}.particulars.motor.peak_power_kw|power}} for "
        f"{{{motor}.particulars.motor.peak_time_min|minutes}}; "
        f"{{{motor}.bank.nominal_kwh|energy}}, of which "
        f"{{{motor}.bank.reserve_aged_kwh|energy}} are reserve"
    )
    if page.value(f"{motor}.installation.voltages.ceiling_v"):
        said += f"; up to {{{motor}.installation.voltages.ceiling_v|voltage}} at its terminals"
    return said + "."
