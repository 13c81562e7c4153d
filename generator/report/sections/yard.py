"""Appendix: what does a yard need for its quote, and what of it is in this report?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.page import Page, joined
from generator.report.parts import Part, Row, Table, words
from generator.report.sections.change import each


def parts(page: Page) -> tuple[Part, ...]:
    """What this study gives, and what the yard adds."""
    if not page.motors:
        return ()
    rows = tuple(Row(Markup(head), (page.text(given), page.text(adds)))
                 for head, given, adds in _rows(page))  # fmt: skip
    columns = (words("Subject", 15), words("This study gives", 47), words("The yard adds", 38))
    caption = page.text("What a yard quotes on, and what it still has to find aboard")
    return (Part("yard-list", "", (), (), (Table("yard-table", caption, columns, rows, (),
                                                 "long"),)),)  # fmt: skip


def _rows(page: Page) -> tuple[tuple[str, str, str], ...]:
    stern = "saildrive" if page.value("propeller.installation") == "saildrive" else "shaft"
    gland = "leg and its seal" if stern == "saildrive" else "a feed or vent for the shaft seal"
    served = [f"{{{key}|given}}" for key in page.keys("house.services")]
    services = ", ".join(served) if served else "no service of the engine is named"
    return (
        ("Masses", f"Ledger with places; out {each(page, 'weight.removed_kg', 'mass')}, in "
         f"{each(page, 'weight.added_kg', 'mass')}", "Weight of all that leaves; fixings"),
        ("Cables and fuses", "Cable, fuse, label and settings lists; short circuit up "
         f"to {each(page, 'installation.fault.bank_most_ka', 'short_circuit')}",
         "Routes as measured, lugs with torque, the maker's short-circuit figure"),
        ("Drive", f"Turns at full power {each(page, 'match.full_power_rpm', 'rpm')}, torque "
         f"stalled {each(page, 'match.stall_newtonmetre', 'torque')}, thrust "
         f"{each(page, 'docking.ahead_peak_n', 'force')}",
         f"Thrust bearing, coupling, bed, alignment, {gland}, tip clearance, drip tray"),
        ("Battery space", f"{each(page, 'bank.mass_kg', 'mass')} of bank, {standing(page)}; air "
         f"at the motor {each(page, 'duty.space_full_c', 'temperature')} at full power; cells "
         f"warn at {each(page, 'installation.alarms.hot_degc', 'temperature')}",
         "Boxes held in a knock-down, vent path, detector, height above bilge water, protection "
         "against water, way out through the hatch"),
        ("Removal", "A tank of {engine.tank_l|fuel} and the exhaust go out of use",
         "Drained and gas-freed; through-hulls and exhaust closed; old wiring dead-ended; waste"),
        ("Services lost", services, "What replaces each; bonding and anodes without the block"),
        ("Control", "Pre-charge, contactor, stop, disconnect and neutral start in the diagram",
         "Throttle and its wire, display, compass and radio clear of the cables"),
        ("Quote", f"{joined_names(page)}: each drawn and listed",
         "Hours and exclusions; who signs for cables, for the battery space, for the tests"),
    )  # fmt: skip


def standing(page: Page) -> str:
    """Where the banks stand, as a place of a sentence."""
    named = [
        f"{{{motor}.installation.battery_space|given}}"
        for motor in page.motors
        if page.value(f"{motor}.installation.battery_space")
    ]
    return f"standing in: {named[0]}" if named else "its space is not named in the case"


def joined_names(page: Page) -> str:
    """The names of all motors as places of a sentence."""
    return str(joined((Markup(f"{{{motor}.name|given}}") for motor in page.motors), ", "))
