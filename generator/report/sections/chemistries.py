"""Part of bank and motor: which bank of each chemistry meets the same legs and currents?"""

from __future__ import annotations

from generator.report.page import Page
from generator.report.parts import Part, Row, Table, numbers, words

FORMS = (
    ("nominal_kwh", "energy:bare"), ("legs_kwh", "energy:bare"), ("cruise_kwh", "energy:bare"),
    ("peak_kwh", "energy:bare"), ("mass_kg", "mass:bare"), ("volume_l", "fuel:bare"),
    ("price_money", "money:bare"), ("life_years", "years:bare"),
)  # fmt: skip


def parts(page: Page) -> tuple[Part, ...]:
    """One part for all battery options."""
    motors = [motor for motor in page.motors if page.value(f"{motor}.chemistries")]
    if not motors:
        return ()
    text = tuple(page.text(_sentence(page, motor)) for motor in motors)
    tables = tuple(_table(page, motor) for motor in motors)
    return (Part("chemistries", "Other chemistries on the same need", text, (), tables),)


def _sentence(page: Page, motor: str) -> str:
    own = f"{motor}.chemistries"
    lead = page.find(f"{own}.banks", chemistry="AGM")
    lithium = page.find(f"{own}.banks", chemistry="LFP")
    start = (
        f"“{{{own}.leg|given}}” with its reserve takes {{{own}.need_kwh|energy}}, and peak power "
        f"of {{{motor}.name|given}} takes {{{own}.peak_current_a|current}}. "
    )
    if page.value(f"{lead}.binds") == "legs":
        return start + (
            f"AGM meets the legs with {{{lead}.legs_kwh|energy}} and {{{lead}.mass_kg|mass}}; "
            f"LFP with {{{lithium}.nominal_kwh|energy}} and {{{lithium}.mass_kg|mass}}."
        )
    return start + (
        f"AGM would have the energy with {{{lead}.legs_kwh|energy}}, but lead is sized at a "
        f"fifth of its capacity an hour, the limit of the criterion on battery currents: the "
        f"{{{lead}.binds|given}} asks for {{{lead}.nominal_kwh|energy}} and "
        f"{{{lead}.mass_kg|mass}}. It fails on current before it fails on energy; minutes above "
        f"that limit cost it voltage and life. LFP needs {{{lithium}.nominal_kwh|energy}} and "
        f"{{{lithium}.mass_kg|mass}}."
    )


def _table(page: Page, motor: str) -> Table:
    energy = page.unit("energy")
    columns = (
        words("Chemistry", 13), numbers("Nominal", 10, energy), numbers("for the legs", 10, energy),
        numbers("for cruise", 10, energy), numbers("for peak", 10, energy),
        numbers("Mass", 10, page.unit("mass")), numbers("Volume", 10, page.unit("fuel")),
        *([numbers("Price", 10, page.unit("money"))] if _priced(page) else []),
        numbers("Life", 7, "years"), words("Set by", 10),
    )  # fmt: skip
    rows = tuple(_row(page, key) for key in page.keys(f"{motor}.chemistries.banks"))
    caption = page.text(
        f"Banks for {{{motor}.name|given}}, worn and cold, by the register's defaults; for the "
        "legs: middle need with reserve, no margin"
    )
    name = f"chemistries-{page.value(motor)['id']}"
    return Table(name, caption, columns, rows)


def _priced(page: Page) -> bool:
    """A copy without prices has no column for them."""
    return not page.value("case.redacted")


def _row(page: Page, key: str) -> Row:
    forms = [each for each in FORMS if _priced(page) or each[0] != "price_money"]
    cells = tuple(page.show(f"{key}.{name}", form) for name, form in forms)
    return Row(page.words(f"{key}.chemistry"), (*cells, page.words(f"{key}.binds")))
