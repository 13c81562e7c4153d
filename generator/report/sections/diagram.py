"""Part of the installation: how is it joined together, for the owner and for the yard?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.figures.blocks import blocks
from generator.report.figures.single_line import single_line
from generator.report.figures.wiring_of import described, wiring_of
from generator.report.page import Page
from generator.report.parts import Figure, Part


def wired(page: Page) -> list[str]:
    """The battery options whose installation is known."""
    return [motor for motor in page.motors if page.value(f"{motor}.installation.circuits")]


def for_owner(page: Page) -> Part | None:
    """The block picture."""
    motors = wired(page)
    if not motors:
        return None
    powers = " or ".join(
        f"{{{motor}.particulars.motor.continuous_power_kw|power}}" for motor in motors
    )
    finding = page.text(
        f"From the quay to the propeller: {{{motors[0]}.bank.nominal_kwh|energy}} stand between "
        "a post of {berth.breaker_a|current} and a motor of " + powers + "."
    )
    if not page.value("berth.breaker_a"):
        finding = page.text(
            f"From the quay to the propeller: {{{motors[0]}.bank.nominal_kwh|energy}} feed a motor "
            f"of {powers}."
        )
    note = page.text("Where two numbers stand in a box, they belong to the motors in their order.")
    said = "Shore post, charger, battery, switch and stop, motor and propeller stand in a row; "
    said += "from the battery a converter feeds the house."
    figure = Figure("blocks", finding, note, lambda: blocks(page, "blocks"), said)
    return Part("blocks-part", "What is connected to what", (), (figure,))


def part(page: Page) -> Part | None:
    """The single-line diagram of every battery option."""
    figures = tuple(_figure(page, motor) for motor in wired(page))
    if not figures:
        return None
    return Part("diagram", "Single-line diagram", (_reading(page),), figures)


def _reading(page: Page) -> Markup:
    motor = wired(page)[0]
    remote = page.find(f"{motor}.installation.switches", kind="remote disconnect")
    return page.text(
        "One line stands for both poles; every positive leg shows its fuse (F), cable (C) and "
        "switches (Q, K, S) by the tags of the schedules"
        f"{_manner(page)}. The contactors of the strings open the whole bank, by "
        f"{{{remote}.id|given}} together or each by its management system. Charger and converters "
        "are galvanically isolated: neither pole is earthed, so Q and K open both. "
        f"Devices must bear {{{motor}.installation.voltages.ceiling_v|voltage}}, the highest "
        "on charge, and not the label. Every number is for the installer to confirm."
    )


def _manner(page: Page) -> str:
    key = page.find("documents", title="Graphical symbols for diagrams")
    return f"; symbols after the manner of {{{key}.designation|given}}" if key else ""


def _figure(page: Page, motor: str) -> Figure:
    own = f"{motor}.installation"
    wiring = wiring_of(page, motor)
    finding = page.text(
        f"{{{motor}.name|given}}: {_strings(page, own)}, "
        f"{_fault(page, own)} into a short circuit at the busbar, a fuse in "
        "every positive leg."
    )
    note = page.text(
        "Shore side and bonding are drawn as a reminder, not sized: for the installer to confirm. "
        f"Not drawn: the gauge's shunt in the negative of {{{own}.strings|count}} "
        f"{_each(page, own)}, fused supplies of coils and key switch, wires between the management "
        "systems and what they stop, the three leads of the motor."
    )
    name = f"single-line-{page.value(motor)['id']}"
    return Figure(name, finding, note, lambda: single_line(name, wiring), described(wiring))


def _fault(page: Page, own: str) -> str:
    """The range of the fault current; its maker's figure needs none."""
    most = f"{{{own}.fault.bank_most_ka|short_circuit}}"
    if page.value(f"{own}.fault.by_maker"):
        return most
    return f"{{{own}.fault.bank_ka|short_circuit:bare}} to {most}"


def _each(page: Page, own: str) -> str:
    return "string" if page.value(f"{own}.strings") == 1 else "strings"


def _strings(page: Page, own: str) -> str:
    if page.value(f"{own}.strings") == 1:
        return f"one string of {{{own}.voltages.nominal_v|voltage}}"
    return f"{{{own}.strings|count}} strings of {{{own}.voltages.nominal_v|voltage}}"
