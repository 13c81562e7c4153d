"""Part of the results: what carbon is made, saved and repaid, and where does all of it end?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import Part, Row, Table, numbers, reasons, words

LINES = (
    ("diesel_yearly_kg", "Diesel that would run otherwise, a year"),
    ("yearly_kg", "Electricity, a year"),
    ("saved_yearly_kg", "Saved, a year"),
    ("bank_made_kg", "To make the bank"),
    ("drive_made_kg", "To make motor and controller"),
    ("extra_made_kg", "To make, above what the baseline needs"),
)

UNPLUGGED = {
    "own": "There is no plug: sun and wind make all of her electricity, and none is bought. Diesel "
    "counts from the well to the exhaust.",
    "genset": "There is no plug: all of her electricity is counted as made by the genset, as if no "
    "panel spared it. Diesel counts from the well to the exhaust.",
}
WITH_ARTICLE = ("Netherlands", "United", "Bahamas")  # countries whose name takes one


def part(page: Page) -> Part | None:
    """A paragraph for each motor, the table, and the end of life in words."""
    motors = [motor for motor in page.motors if page.value(f"{motor}.carbon")]
    if not motors:
        return None
    said = [_repaid(page, motor) for motor in motors] + [_grid(page, motors[0])]
    text = [page.text(" ".join(each for each in said if each)), page.text(_end(page, motors))]
    return Part("carbon", "Carbon", tuple(text), (), (_table(page, motors),))


def _repaid(page: Page, motor: str) -> str:
    own = f"{motor}.carbon"
    name = page.called(motor, True)
    unplugged = page.value(f"{own}.charged_by") in UNPLUGGED
    if page.value(f"{own}.grid_g_per_kwh") is None and not unplugged:
        return f"{name}: {page.why(f'{own}.grid_g_per_kwh')}; nothing is said of its carbon in use."
    if page.value(f"{own}.saved_yearly_kg") is None:
        made = f"{name} makes {{{own}.bank_made_kg|mass_about}} for its bank"
        return f"{made}; {page.why(f'{own}.saved_yearly_kg') or 'no diesel to hold against'}."
    made = (
        f"{name} saves {{{own}.saved_yearly_kg|mass_about}} of carbon dioxide a year and takes "
        f"{{{own}.extra_made_kg|mass_about}} more to make than the baseline"
    )
    never = f"{{{own}.never_share|share}} of the draws never save it"
    life = f"{{{own}.within_life_share|share}} of the draws repay it within the life of the bank"
    if page.value(f"{own}.payback_years") is None:
        return f"{made}: never repaid at this use ({never})."
    high = (
        f"{{{own}.payback_high_years|years}}"
        if page.value(f"{own}.payback_high_years") is not None
        else "never"
    )
    return (
        f"{made}: repaid after {{{own}.payback_years|years}} (one in ten: below "
        f"{{{own}.payback_low_years|years}}; nine in ten: {high}); {life}."
    )


def _grid(page: Page, motor: str) -> str:
    own = f"{motor}.carbon"
    if page.value(f"{own}.grid_g_per_kwh") is None:
        return UNPLUGGED.get(page.value(f"{own}.charged_by"), "")
    year = f"{{{own}.table_year|year}}" if page.value(f"{own}.table_year") else "as given"
    article = "the " if str(page.value(f"{own}.country")).startswith(WITH_ARTICLE) else ""
    return (
        f"Grid of {article}{{{own}.country|given}}, {year}: "
        f"{{{own}.grid_g_per_kwh|intensity}} generated; network, charger and battery losses are "
        "added. Diesel counts from the well to the exhaust."
    )


def _end(page: Page, motors: list[str]) -> str:
    """What becomes of the bank, and of what leaves the boat."""
    first = motors[0]
    banks = ", ".join(
        f"{{{motor}.bank.nominal_kwh|energy}} of {{{motor}.bank.chemistry|given}} weighing "
        f"{{{motor}.bank.mass_kg|mass}}{_whose(page, motor, motors)}"
        for motor in motors
    )
    lead = page.value(f"{first}.bank.chemistry") in ("AGM", "flooded")
    way = (
        "lead has a scrap price and nearly all of it is smelted again"
        if lead
        else "it travels as dangerous goods, and whoever sold it must take it back in the EEA and "
        "the UK; ask for that in the order"
    )
    return (
        f"At the end of its life the bank goes to its maker or a licensed collector: {banks}; "
        f"{way}. The {{engine.rated_power_kw|power}} diesel with what leaves beside it, "
        f"{{{first}.weight.removed_kg|mass}}, is sold or scrapped as metal once its oil is out; "
        "the {engine.tank_l|fuel} tank goes to a firm licensed for fuel."
    )


def _whose(page: Page, motor: str, motors: list[str]) -> str:
    """Of which motor, where there are several."""
    return f" ({page.called(motor)})" if len(motors) > 1 else ""


def _table(page: Page, motors: list[str]) -> Table:
    width = 62 // len(motors)
    columns = [numbers(page.words(f"{motor}.name"), width) for motor in motors]
    rows = tuple(
        Row(
            Markup.escape(label),
            tuple(_cell(page, f"{motor}.carbon", name) for motor in motors),
        )
        for name, label in LINES
    )
    keys = [
        f"{motor}.carbon.{name.removesuffix('_kg')}{end}_kg"
        for motor in motors for name, _ in LINES for end in ("", "_low", "_high")
    ]  # fmt: skip
    caption = page.text("Carbon dioxide and its equal in other gases, on the legs of the case")
    return Table(
        "carbon-table", caption, (words("Quantity", 38), *columns), rows, reasons(page, keys)
    )


def _cell(page: Page, own: str, name: str) -> Markup:
    stem = name.removesuffix("_kg")
    middle = page.show(f"{own}.{name}", "mass_about")
    if page.value(f"{own}.{stem}_low_kg") == page.value(f"{own}.{stem}_high_kg"):
        return middle
    spread = page.span(f"{own}.{stem}_low_kg", f"{own}.{stem}_high_kg", "mass_about:bare")
    return middle + Markup(f' <span class="spread">{spread}</span>')
