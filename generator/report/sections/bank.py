"""Part of the results: what does the bank hold, what is kept, and what currents flow?"""

from __future__ import annotations

from generator.report.page import Page
from generator.report.parts import Part, Row, Table, numbers, reasons, words

LINES = (
    ("Nominal energy", "bank.nominal_kwh", "energy"),
    ("Usable, new", "bank.usable_kwh", "energy"),
    ("Usable, aged", "bank.usable_aged_kwh", "energy"),
    ("Usable, aged, one in ten", "bank.usable_aged_low_kwh", "energy"),
    ("Reserve by share of usable, new", "reserve.share_kwh", "energy"),
    ("Reserve by share of usable, aged", "reserve.share_aged_kwh", "energy"),
    ("Reserve by demand: manoeuvring", "reserve.manoeuvring_kwh", "energy"),
    ("Reserve by demand: holding her head to wind", "reserve.holding_kwh", "energy"),
    ("Reserve taken, new", "bank.reserve_kwh", "energy"),
    ("Reserve taken, aged", "bank.reserve_aged_kwh", "energy"),
    ("Left for passages, new", "bank.available_kwh", "energy"),
    ("Left for passages, aged", "bank.available_aged_kwh", "energy"),
    ("Thrust to hold her head to wind", "reserve.hold_thrust_n", "force"),
    ("Shaft power for that", "reserve.hold_shaft_power_kw", "power"),
    ("Current at cruise", "bank.cruise_current_a", "current"),
    ("Rate at cruise", "bank.cruise_rate_c", "rate"),
    ("Current at peak", "bank.peak_current_a", "current"),
    ("Limit of the battery management", "bank.discharge_limit_a", "current"),
    ("Mass of the bank", "bank.mass_kg", "mass"),
)

DECIDES = {"share": "the share", "demand": "the demand"}


def _reserve(page: Page, motor: str) -> str:
    """How large both reserves are, and which of them decides for the new and the aged bank."""
    own = f"{motor}.reserve"
    new, aged = (DECIDES[page.value(f"{own}.{by}")] for by in ("by", "by_aged"))
    decides = f"{new} decides" if new == aged else f"{new} decides when new, {aged} when aged"
    return (
        f"{{{motor}.name|given}} keeps {{{motor}.bank.reserve_kwh|energy}} of a new bank and "
        f"{{{motor}.bank.reserve_aged_kwh|energy}} of the aged one: "
        f"{{planning.reserve_share_pct|percent}} of the usable energy "
        f"({{{own}.share_kwh|energy}} new, {{{own}.share_aged_kwh|energy}} aged) or, where more, "
        f"{{{own}.demand_kwh|energy}} for {{planning.manoeuvring_time_min|minutes}} at "
        "{planning.manoeuvring_speed_kn|speed} and {planning.hold_time_min|minutes} at "
        f"{{planning.hold_speed_kn|speed}} against {{planning.hold_wind_kn|wind}}; {decides}."
    )


def part(page: Page) -> Part:
    """Energy from nominal to what is left for passages, and the currents."""
    text = tuple(page.text(_reserve(page, motor)) for motor in page.motors)
    keys = [f"{motor}.{tail}" for motor in page.motors for _, tail, _ in LINES]
    rows = tuple(
        Row(page.text(name), tuple(page.show(f"{motor}.{tail}", form) for motor in page.motors))
        for name, tail, form in LINES
    )
    width = 52 // max(len(page.motors), 1)
    columns = [numbers(page.words(f"{motor}.name"), width) for motor in page.motors]
    caption = page.text("The bank: from nominal energy to what is left for passages")
    table = Table(
        "bank-table", caption, (words("Quantity", 48), *columns), rows, reasons(page, keys)
    )
    return Part("bank", "Bank and reserve", text, (), (table,) if page.motors else ())
