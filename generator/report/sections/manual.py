"""Part of a pack: what must the installer's and the owner's manual say of this boat?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import Part
from generator.tables.method import method

HELD = method("wiring.held_share")


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
        f"{{{motor}.name|given}}: {{{motor}.particulars.motor.continuous_power_kw|power}} on the "
        f"plate, {_worked(motor, page)}; "
        f"{{{motor}.bank.nominal_kwh|energy}}, of which "
        f"{{{motor}.bank.reserve_aged_kwh|energy}} are reserve"
    )
    made = f"{motor}.installation"
    if page.value(f"{made}.voltages.ceiling_v"):
        said += (
            f", and alarms at {{{made}.alarms.first_share|share}} and "
            f"{{{made}.alarms.second_share|share}} of charge; up to "
            f"{{{made}.voltages.ceiling_v|voltage}} at its terminals"
        )
    return said + "."


def _worked(motor: str, page: Page) -> str:
    """What the motor gives in its own warm air, and for how long its peak."""
    duty, plate = f"{motor}.duty", f"{motor}.particulars.motor"
    if not page.value(duty):
        return f"{{{plate}.peak_power_kw|power}} for {{{plate}.peak_time_min|minutes}} by its maker"
    set_to = f"{motor}.bank.as_set"
    said = f"{{{set_to}.continuous_power_kw|power}} continuously in its own warm air"
    if page.value(f"{duty}.peak_warm_min") is None:
        return f"{said}, {{{duty}.peak_kw|power}} at peak"
    time = "peak_warm_min"
    if page.value(f"{duty}.peak_warm_min") > page.value(f"{duty}.stated_peak_min"):
        time = "stated_peak_min"
    if page.value(f"{set_to}.peak_power_kw") < HELD * page.value(f"{plate}.peak_power_kw"):
        return (
            f"{said}, {{{duty}.peak_kw|power}} of its peak of {{{plate}.peak_power_kw|power}} "
            f"within the bank's limit, for {{{duty}.{time}|minutes}} after a run at cruise"
        )
    return f"{said}, {{{duty}.peak_kw|power}} for {{{duty}.{time}|minutes}} after a run at cruise"
