"""Part of bank and motor: what does the bank give new, in midlife and at the horizon?"""

from __future__ import annotations

from dataclasses import replace

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import Part, Row, Table, numbers, reasons, words

ROWS = (
    ("Temperature of the cells", "temperature_c", "temperature"),
    ("Capacity left by age", "age_share", "share"),
    ("Capacity left by age and cold", "capacity_share", "share"),
    ("Resistance at half charge", "resistance_mohm", "resistance"),
    ("Floor that peak power sets", "sag_floor_pct", "percent"),
    ("The same with the gauge's error", "sag_and_gauge_pct", "percent"),
    ("Floor counted", "floor_pct", "percent"),
    ("Usable above the floor", "usable_kwh", "energy"),
    ("To the reserve", "to_reserve_kwh", "energy"),
    ("Current at peak, at the floor", "peak_current_a", "current"),
    ("Voltage at peak, at the floor", "peak_voltage_v", "voltage"),
    ("Power held at the floor", "peak_held_kw", "power"),
)


MOST = 2  # banks whose columns fit side by side


def parts(page: Page) -> tuple[Part, ...]:
    """One part per battery option, and the figures of their banks side by side."""
    motors = [motor for motor in page.motors if page.value(f"{motor}.bank.ages")]
    tables = tuple(_table(page, motors[n : n + MOST]) for n in range(0, len(motors), MOST))
    told = [_part(page, motor) for motor in motors]
    if told:
        told[-1] = replace(told[-1], tables=tables)
    return tuple(told)


def _part(page: Page, motor: str) -> Part:
    bank = f"{motor}.bank"
    name = page.value(motor)["id"]
    text = tuple(page.text(each(page, bank)) for each in (_label, _floor, _ageing, _care))
    title = page.text(f"The bank of {{{motor}.name|given}}")
    return Part(f"bank-ages-{name}", title, text)


def _label(page: Page, bank: str) -> str:
    return (
        f"On the label {{{bank}.nominal_voltage_v|voltage}} and {{{bank}.charge_ah|charge}}, "
        f"{{{bank}.nominal_kwh|energy}} in {{{bank}.cells|count}} cells in series and "
        f"{{{bank}.strings|count}} {_strings(page, bank)}. At the horizon "
        f"{{{bank}.usable_aged_kwh|energy}} may be drawn and "
        f"{{{bank}.available_aged_kwh|energy}} of that lie above the reserve."
    )


def _strings(page: Page, bank: str) -> str:
    return "string" if page.value(f"{bank}.strings") == 1 else "strings side by side"


def _floor(page: Page, bank: str) -> str:
    aged = f"{page.keys(f'{bank}.ages')[-1]}"
    start = (
        f"Old and cold, peak power of {{{bank}.peak_kw|power}} is held above the cut-off of "
        f"{{{bank}.cut_off_v|voltage}} "
    )
    if (page.value(f"{aged}.sag_floor_pct") or 0.0) >= 100.0:
        return (
            start + "at no state of charge, not even full: the bank cannot deliver it, and "
            f"{{{aged}.usable_kwh|energy}} count as usable."
        )
    return start + (
        f"down to {{{aged}.sag_floor_pct|percent}} of charge, which with "
        f"{{{bank}.gauge_error_pct|percent}} for the gauge makes "
        f"{{{aged}.sag_and_gauge_pct|percent}}; the planned depth leaves "
        f"{{{bank}.planned_floor_pct|percent}}. The larger counts, once: "
        f"{{{aged}.floor_pct|percent}}, set by {{{bank}.floor_by|given}}."
    )


def _ageing(page: Page, bank: str) -> str:
    text = (
        f"{{{bank}.cycles_per_year|ratio}} full cycles a year take "
        f"{{{bank}.cycle_loss_pct|percent}} of the capacity by the horizon and the calendar takes "
        f"{{{bank}.calendar_loss_pct|percent}}: this bank is limited by {{{bank}.limited_by|given}}"
        f". A fifth is gone after {{{bank}.life_years|years}}, when it is taken to be replaced."
    )
    if page.value(f"{bank}.published_share") is not None:
        text += (
            f" A published large cell of this chemistry would keep "
            f"{{{bank}.published_share|share}}; the life on board is taken shorter."
        )
    return text


def _care(page: Page, bank: str) -> str:
    if page.value(f"{bank}.lead"):
        return (
            f"These {{{bank}.nominal_kwh|energy}} of {{{bank}.chemistry|given}} want a full charge "
            "after each passage and a float charge at the berth: lead that rests part-full "
            "sulphates, and what is lost does not come back."
        )
    return (
        f"These {{{bank}.nominal_kwh|energy}} of {{{bank}.chemistry|given}} need no float charge "
        f"and may rest part-full; they are reckoned resting at {{{bank}.resting_share|share}} and "
        "would age less at half. In the cold of the season, in the coldest of ten draws, the "
        "cells take "
        f"{{{bank}.cold_charge_low_a|current}} of charge at most."
    )


def _table(page: Page, motors: list[str]) -> Table:
    ages = [age for motor in motors for age in page.keys(f"{motor}.bank.ages")]
    nominal = [
        page.show(f"{motor}.bank.nominal_kwh", "energy")
        for motor in motors
        for _ in page.keys(f"{motor}.bank.ages")
    ]
    rows = [Row(page.text("Nominal energy"), tuple(nominal))]
    rows += [
        Row(page.text(label), tuple(page.show(f"{age}.{key}", form) for age in ages))
        for label, key, form in ROWS
    ]
    keys = [f"{age}.{key}" for age in ages for _, key, _ in ROWS]
    caption = page.text("Label, age and cold: new in the season, then at the coldest")
    heads = [head for motor in motors for head in _heads(page, motor, len(motors) > 1)]
    columns = (words("Quantity", 28), *(numbers(head, 72 // len(heads)) for head in heads))
    name = page.value(motors[0])["id"]
    return Table(f"bank-ages-table-{name}", caption, columns, tuple(rows), reasons(page, keys))


def _heads(page: Page, motor: str, named: bool) -> list[Markup]:
    """Age of each column, under the name of the motor where there are two."""
    ages = page.keys(f"{motor}.bank.ages")
    over = page.words(f"{motor}.name") + Markup(": ") if named else Markup("")
    years = (page.text(f"after {{{age}.years|years}}") for age in ages[1:])
    return [over + Markup("new"), *(over + year for year in years)]
