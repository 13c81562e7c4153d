"""Part of the results: how long at the berth, what without a plug, and how small may it all be?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.figures.charging import charging
from generator.report.figures.smallest_bank import smallest_bank
from generator.report.page import Page, joined
from generator.report.parts import Figure, Part, Row, Table, numbers, reasons, words


def part(page: Page) -> Part:
    """Charging at the berth, the plug gone, and the smallest bank and charger."""
    motors = [motor for motor in page.motors if page.value(f"{motor}.use.berth")]
    if not motors:
        return Part("berth-part", "")
    figures = (_charging(page, motors), _smallest(page, motors))
    return Part(
        "berth-part", "Berth and size", _plug(page, motors), figures, (_table(page, motors),)
    )


def _charging(page: Page, motors: list[str]) -> Figure:
    finding = " ".join(_hours(page, motor) for motor in motors)
    note = page.text(
        "The breaker carries {berth.breaker_share_pct|percent} of its rating for hours. The "
        "current is constant to the knee of the bank, then falls. Dashed: ten hours, a night."
    )
    return Figure("charging", page.text(finding), note, lambda: charging(page))


def _hours(page: Page, motor: str) -> str:
    key = f"{motor}.use.berth"
    read = page.value(f"{key}.bound_by") is not None
    if page.value(f"{key}.typical_kwh") is None:
        return f"{{{motor}.name|given}}: {page.why(f'{key}.typical_kwh')}."
    if page.value(f"{key}.typical_hours_h") is None:
        hangs = "hangs on a breaker nobody has read" if not read else (
            f"is not known: {page.why(f'{key}.typical_hours_h')}"
        )  # fmt: skip
        return (
            f"{{{motor}.name|given}} comes home {{{key}.typical_kwh|energy}} short after a usual "
            f"day; how long that takes to put back {hangs}."
        )
    worst = f", a bank drawn to its reserve in {{{key}.worst_hours_h|hours}}"
    if page.value(f"{key}.worst_hours_h") is None:
        worst = ""
    return (
        f"{{{motor}.name|given}}: the {{{key}.typical_kwh|energy}} of a usual day are back in "
        f"{{{key}.typical_hours_h|hours}}{worst}; the {page.value(f'{key}.bound_by')} sets the "
        "pace."
    )


def _plug(page: Page, motors: list[str]) -> tuple[Markup, ...]:
    """What a full bank does where nothing charges it, and what the sun puts back."""
    said = "; ".join(
        f"{{{motor}.name|given}} has {{{motor}.use.berth.outings_low|ratio}} usual days in it"
        for motor in motors
        if page.value(f"{motor}.use.berth.outings_low") is not None
    )
    gone = "If the plug goes" if page.value("berth.shore_power") else "Without a plug"
    told = f"{gone}, a full bank, aged, is all there is until she lies at another"
    first = page.text(
        f"{told}: {said} at the cautious end, a usual day being the outing that is made most, "
        f"{{{motors[0]}.use.berth.days|count}} times a year: “{_outing(page, motors[0])}”."
        if said
        else f"{told}."
    )
    sun = [page.text(_sun(page, motor)) for motor in motors if page.value(f"{motor}.use.sun")]
    return (first, *((joined(sun),) if sun else ()))


def _outing(page: Page, motor: str) -> str:
    """The legs of a usual day, one after the other."""
    names = page.keys(f"{motor}.use.berth.outing")
    return "”, then “".join(f"{{{key}|given}}" for key in names)


def _sun(page: Page, motor: str) -> str:
    """Panels there and panels needed, in the dimmest quarter of her weeks."""
    key = f"{motor}.use.sun"
    said = f"{{{motor}.name|given}} uses {{{key}.use_kwh|energy}} in one week of her season"
    if page.value(f"{key}.use_kwh") is None:
        return f"{{{motor}.name|given}}: {page.why(f'{key}.use_kwh')}."
    if page.value(f"{key}.rated_w"):
        said += (
            f"; her {{{key}.rated_w|watts}} of panels give {{{key}.sun_dim_kwh|energy}} in the "
            f"dimmest quarter of those weeks, and the house takes {{{key}.house_kwh|energy}}"
        )
    if page.value(f"{key}.least_w") is None:
        return said + "; no panels that she can carry put that back."
    return said + (
        f"; {{{key}.least_w|watts}} of panels, about {{{key}.least_area_m2|area}}, would put it "
        "back with a ratio of {limits.mooring_go|ratio}."
    )


def _smallest(page: Page, motors: list[str]) -> Figure:
    finding = " ".join(_size(page, motor) for motor in motors)
    note = page.text(
        "Go at the pessimistic end: {limits.leg_go|ratio} times the need of the leg that must be "
        "made, {limits.coverage_go_share|share} of all passages. Curves leave out the bank's own "
        "mass; the sizes named carry it."
    )
    return Figure("smallest-bank", page.text(finding), note, lambda: smallest_bank(page))


def _size(page: Page, motor: str) -> str:
    key = f"{motor}.use.smallest"
    name = f"{{{motor}.name|given}}"
    if page.value(f"{key}.bank_kwh") is None:
        return f"{name}: no bank makes the legs go at the owner's speeds."
    said = f"{name}: {{{key}.bank_kwh|energy}} make the legs go at the owner's speeds"
    if page.value(f"{key}.enough"):
        return said + f", {{{key}.own_nominal_kwh|energy}} are there."
    return said + f", and {{{key}.own_nominal_kwh|energy}} are there."


def _table(page: Page, motors: list[str]) -> Table:
    energy, hours, power = page.unit("energy"), page.unit("hours"), page.unit("power")
    columns = (
        words("Motor", 22), numbers("Usual day", 9, energy), numbers("to full", 8, hours),
        numbers("one in ten above", 9, hours), numbers("To reserve", 9, energy),
        numbers("to full", 8, hours), numbers("Charger now", 9, power),
        numbers("Smallest charger", 9, power), numbers("Smallest bank", 9, energy),
        numbers("heavier by", 8, page.unit("mass")),
    )  # fmt: skip
    forms = (
        ("berth.typical_kwh", "energy:bare"), ("berth.typical_hours_h", "hours:bare"),
        ("berth.typical_hours_high_h", "hours:bare"), ("berth.worst_kwh", "energy:bare"),
        ("berth.worst_hours_h", "hours:bare"), ("berth.into_bank_kw", "power:bare"),
        ("berth.least_charger_kw", "power:bare"), ("smallest.bank_kwh", "energy:bare"),
        ("smallest.heavier_kg", "mass:bare,signed"),
    )  # fmt: skip
    rows = tuple(
        Row(
            page.words(f"{motor}.name"),
            tuple(page.show(f"{motor}.use.{name}", form) for name, form in forms),
        )
        for motor in motors
    )
    used = [f"{motor}.use.{name}" for motor in motors for name, _ in forms]
    caption = page.text(
        "Charging at {berth.name|given}, and the smallest bank and charger that make the legs go"
    )
    return Table("berth-table", caption, columns, rows, reasons(page, used))
