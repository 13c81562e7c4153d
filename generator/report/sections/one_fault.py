"""Part of bank and motor: what is left with one string lost, and what stays alive?"""

from __future__ import annotations

from generator.report.page import Page
from generator.report.parts import Part, Row, Table, numbers, reasons, words

ROWS = (
    ("Strings side by side", "strings", "count"),
    ("Power left at the terminals", "power_kw", "power"),
    ("Speed left in a calm", "speed_kn", "speed"),
    ("Miles at manoeuvring speed, from full", "distance_nm", "distance"),
    ("What one string may carry, continuous", "string_carries_a", "current"),
    ("Hardest-worked string left, at cruise", "cruise_string_a", "current"),
    ("Hardest-worked string left, at peak", "peak_string_a", "current"),
    ("Draws in which the rest trips at cruise", "cruise_trips_share", "share"),
    ("Draws in which the rest trips at peak", "peak_trips_share", "share"),
)
MANY = 0.1  # one draw in ten


def parts(page: Page) -> tuple[Part, ...]:
    """One part for all battery options."""
    motors = [motor for motor in page.motors if page.value(f"{motor}.one_fault")]
    if not motors:
        return ()
    text = tuple(page.text(_sentence(page, motor)) for motor in motors)
    tables = (_table(page, motors), *(_layouts(page, motor) for motor in motors))
    return (Part("one-fault", "One string lost", text, (), tables),)


def _sentence(page: Page, motor: str) -> str:
    fault = f"{motor}.one_fault"
    if page.value(f"{fault}.strings") == 1:
        return (
            f"{{{motor}.name|given}} has one string of {{{motor}.bank.charge_ah|charge}}: when it "
            "trips, nothing drives her. Two strings with a management system each would leave half."
        )
    left = (
        f"{{{motor}.name|given}} with one of {{{fault}.strings|count}} strings lost keeps "
        f"{{{fault}.power_kw|power}}"
    )
    far = page.value(f"{fault}.distance_nm") is not None
    left += f", {{{fault}.speed_kn|speed}} and {{{fault}.distance_nm|distance}}" if far else (
        f" and {{{fault}.speed_kn|speed}}"
    )  # fmt: skip
    cruise, peak = (page.value(f"{fault}.{name}_trips_share") > MANY for name in ("cruise", "peak"))
    if cruise:
        return left + "; at planned cruise the rest trips in cascade, so that nothing is left."
    left += f" ({{{fault}.bound_by|given}} sets what a string carries)"
    if peak:
        return left + "; at peak power the rest trips in cascade: the controller is held lower."
    return left + "; the rest does not trip in cascade."


def _table(page: Page, motors: list[str]) -> Table:
    rows = tuple(
        Row(
            page.text(name),
            tuple(page.show(f"{motor}.one_fault.{key}", form) for motor in motors),
        )
        for name, key, form in ROWS
    )
    keys = [f"{motor}.one_fault.{key}" for motor in motors for _, key, _ in ROWS]
    width = 52 // len(motors)
    columns = [numbers(page.words(f"{motor}.name"), width) for motor in motors]
    caption = page.text("One string lost, the bank old and cold")
    return Table(
        "one-fault-table",
        caption,
        (words("Quantity", 48), *columns),
        rows,
        reasons(page, keys),
    )


def _layouts(page: Page, motor: str) -> Table:
    """Which layout keeps drive and house alive after which fault."""
    fault, house = f"{motor}.one_fault", "{house.under_way_w|watts}"
    left = f"drive on {{{fault}.power_kw|power}}"
    half = "drive on the other half"
    if page.value(f"{fault}.half_power_kw") is not None:
        half = f"drive on {{{fault}.half_power_kw|power}}"
    dark, lit = f"no drive, {house} dark", f"no drive, {house} alive"
    one = left if page.value(f"{fault}.strings") > 1 else "no drive"
    cells = (
        ("One bank for all", f"{one}, {house} {'alive' if one == left else 'dark'}", dark),
        ("Split bank, halves by switch", f"{half}, {house} alive", f"{half}, {house} alive"),
        ("House battery of its own, lead will do", f"{one}, {house} alive", lit),
        ("Converter with a buffer battery", f"{one}, {house} alive", lit + " while it lasts"),
    )
    rows = tuple(
        Row(page.text(name), (page.text(string), page.text(whole))) for name, string, whole in cells
    )
    caption = page.text(f"What stays alive, by layout: {{{motor}.name|given}}")
    columns = (
        words("Layout", 28),
        words("One string trips", 36),
        words("Whole bank opens", 36),
    )
    return Table(f"layouts-{page.value(motor)['id']}", caption, columns, rows)
