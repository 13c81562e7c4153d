"""Section: what could drive her, one paragraph each?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import Part, Row, Table, numbers, words


def parts(page: Page) -> tuple[Part, ...]:
    """One paragraph and one row for each option, the references among them."""
    return (*(_part(page, option) for option in page.options), _table(page))


def lead(page: Page) -> Markup:
    """On what all options are judged."""
    return page.text(
        "Every option takes the same path from weight to verdict on the same legs of "
        f"{{boat.name|given}}{_reference(page)}."
    )


def _reference(page: Page) -> str:
    """Against which diesel the money of a motor is held."""
    fair = page.value("money.fair_baseline")
    if fair is None or page.value("case.redacted"):
        return ""
    other = {"keep": "a new diesel", "new diesel": "keeping the present one"}[fair]
    named = {"keep": "keeping the present diesel", "new diesel": "a new diesel"}[fair]
    return f"; money is held against {named}, and {other} stands beside it"


def _part(page: Page, option: str) -> Part:
    kinds = {"battery": _motor, "keep": _diesel, "new diesel": _diesel}
    text = page.text(kinds[page.value(option)["kind"]](page, option))
    note = page.value(f"{option}.note")
    return Part(
        f"option-{page.value(option)['id']}",
        page.words(f"{option}.name"),
        (text, page.sentence(f"{option}.note")) if note else (text,),
    )


def _motor(page: Page, option: str) -> str:
    motor, bank = f"{option}.particulars.motor", f"{option}.bank"
    return (
        f"{{{motor}.continuous_power_kw|power}} continuous and {{{motor}.peak_power_kw|power}} for "
        f"{{{motor}.peak_time_min|minutes}}, at {{{motor}.rated_speed_rpm|rpm}} through a "
        f"reduction of {{{motor}.gear_ratio|ratio}}. The {{{bank}.chemistry|given}} bank of "
        f"{{{bank}.charge_ah|charge}} at {{{bank}.nominal_voltage_v|voltage}} holds "
        f"{{{bank}.nominal_kwh|energy}}, of which {{{bank}.usable_kwh|energy}} may be drawn when "
        f"new and {{{bank}.usable_aged_kwh|energy}} when aged; it weighs {{{bank}.mass_kg|mass}}. "
        f"{_first(page, option)}."
    )


def _first(page: Page, option: str) -> str:
    """First cost, which a copy without prices leaves out, and net mass, where any moves."""
    moves = page.plain(f"{option}.weight.net_kg", "mass:size,bare") != "0"
    mass = f"et mass {{{option}.weight.net_kg|mass:signed}}" if moves else "o mass moves"
    if page.value(f"{option}.cost.first_money") is None:
        return f"N{mass}"
    return f"First cost {{{option}.cost.first_money|money}}, n{mass}"


def _diesel(page: Page, option: str) -> str:
    diesel = f"{option}.particulars.diesel"
    return (
        f"{{{diesel}.rated_power_kw|power}} at {{{diesel}.rated_speed_rpm|rpm}} through a "
        f"reduction of {{{diesel}.gear_ratio|ratio}}, from a tank of {{{diesel}.tank_l|fuel}}. "
        f"{_first(page, option)}."
    )


def _table(page: Page) -> Part:
    rows = tuple(_row(page, option) for option in page.options)
    small = page.unit("length_small")
    columns = (
        words("Option", 40), numbers("Continuous", 12, page.unit("power")),
        numbers("Peak", 10, page.unit("power")), numbers("Energy usable", 14, page.unit("energy")),
        numbers("Propeller, diameter and pitch", 24, small),
    )  # fmt: skip
    caption = page.text("The options in one view; one unit of power, at the shaft, for all")
    table = Table("options-table", caption, columns, rows)
    return Part("options-part", "Side by side", (), (), (table,))


def _row(page: Page, option: str) -> Row:
    if page.value(option)["kind"] == "battery":
        power = [page.show(f"{option}.particulars.motor.{kind}_power_kw", "power:bare")
                 for kind in ("continuous", "peak")]  # fmt: skip
        energy = page.show(f"{option}.bank.usable_kwh", "energy:bare")
    else:
        power = [page.show(f"{option}.particulars.diesel.rated_power_kw", "power:bare"), Markup("")]
        energy = page.show(f"{option}.particulars.diesel.tank_l", "fuel")
    propeller = (
        page.show(f"{option}.particulars.propeller.diameter_mm", "length_small:bare")
        + Markup(" × ")
        + page.show(f"{option}.particulars.propeller.pitch_mm", "length_small:bare")
    )
    return Row(page.words(f"{option}.name"), (*power, energy, propeller))
