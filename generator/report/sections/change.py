"""Part of a pack: what changes aboard, in numbers, without prices?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.page import Page, joined
from generator.report.parts import Part, Row, Table, numbers, reasons, words

ROWS = (
    ("Motor, continuous at its shaft", "particulars.motor.continuous_power_kw", "power"),
    ("Motor, peak", "particulars.motor.peak_power_kw", "power"),
    ("Rated turns", "particulars.motor.rated_speed_rpm", "rpm"),
    ("Reduction", "particulars.motor.gear_ratio", "ratio"),
    ("Bank", "bank.chemistry", "given"),
    ("Nominal voltage", "bank.nominal_voltage_v", "voltage"),
    ("Highest voltage on charge", "installation.voltages.ceiling_v", "voltage"),
    ("Charge", "bank.charge_ah", "charge"),
    ("Energy, nominal", "bank.nominal_kwh", "energy"),
    ("Strings side by side", "installation.strings", "count"),
    ("Short circuit at the busbar, at most", "installation.fault.bank_most_ka", "short_circuit"),
    ("Mass of the bank", "bank.mass_kg", "mass"),
    ("Masses out", "weight.removed_kg", "mass"),
    ("Masses in", "weight.added_kg", "mass"),
    ("Net", "weight.net_kg", "mass:signed"),
)


def part(page: Page) -> Part:
    """The diesel that goes, the services that end with it, and what comes."""
    text = page.text(
        "The diesel of {engine.rated_power_kw|power} goes out of {boat.name|given}, "
        "{boat.type|given}, {boat.length_overall_m|length} long and "
        "{boat.displacement_kg|mass} as she sails; an electric drive takes its place on a "
        "{propeller.installation|given}. She lies at {berth.name|given} and sails "
        "{waters.name|given}."
    )
    served = [page.words(key) for key in page.keys("house.services")]
    ends = Markup("With the engine end: ") + joined(served, ", ") + Markup(".")
    return Part("change", "What changes", (text, *((ends,) if served else ())), (), (_table(page),))


def _table(page: Page) -> Table:
    rows = tuple(
        Row(Markup.escape(name), tuple(_cell(page, motor, key, form) for motor in page.motors))
        for name, key, form in ROWS
    )
    width = 56 // max(len(page.motors), 1)
    columns = (
        words("Quantity", 44),
        *(numbers(page.words(f"{m}.name"), width) for m in page.motors),
    )
    keys = [f"{motor}.{key}" for motor in page.motors for _, key, _ in ROWS]
    return Table(
        "change-table", page.text("What comes aboard {boat.name|given}"), columns, rows,
        reasons(page, keys),
    )  # fmt: skip


def _cell(page: Page, motor: str, key: str, form: str) -> Markup:
    return page.words(f"{motor}.{key}") if form == "given" else page.show(f"{motor}.{key}", form)


def each(page: Page, tail: str, form: str) -> str:
    """One number for every motor as places of a sentence, the same number once."""
    seen = {page.plain(f"{motor}.{tail}", form): motor for motor in reversed(page.motors)}
    return " or ".join(f"{{{motor}.{tail}|{form}}}" for motor in reversed(seen.values()))
