"""Part of the results: what power for what speed, and where does each motor top out?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.figures.speed_power import speed_power
from generator.report.page import Page
from generator.report.parts import Column, Figure, Part, Row, Table, numbers, reasons, words

STEP = 0.5  # kn between two rows of the table
SLOWEST = 3.0  # kn of its first row


def part(page: Page) -> Part:
    """Chart of shaft power against speed, and the table behind it."""
    return Part(
        "power", "Power and speed", (_words(page), _rules(page)), (_figure(page),), _tables(page)
    )


def _words(page: Page) -> Markup:
    option = (page.motors or page.options)[0]
    if page.value(f"{option}.cruise_shaft_kw") is None:
        return Markup("")
    above = f"one in ten above {{{option}.cruise_shaft_high_kw|power}}"
    if page.value(f"{option}.cruise_shaft_high_kw") is None:
        above = "one in ten more than hull form or propeller series can tell"
    return page.text(
        "At {planning.cruise_speed_kn|speed} in a calm, in service, {boat.name|given} asks for a "
        f"thrust of {{{option}.cruise_thrust_n|force}} and {{{option}.cruise_shaft_kw|power}} at "
        f"the shaft (one in ten below {{{option}.cruise_shaft_low_kw|power}}, {above}). The "
        "same speed asks for the same shaft power whatever turns the shaft; only the mass aboard "
        "and the propeller can change it."
    )


def _rules(page: Page) -> Markup:
    """The rules of thumb of the trade as a cross-check; above their ceiling is an input error."""
    key = f"{(page.motors or page.options)[0]}.rules_of_thumb"
    if not page.value(key):
        return Markup("")
    said = (
        f"Cross-check by rules of thumb at {{{key}.speed_kn|speed}}: Gerr would install "
        f"{{{key}.gerr_kw|power}}, Wyman {{{key}.wyman_kw|power}}, Keith {{{key}.keith_kw|power}}"
    )
    if page.value(f"{key}.gerr_share") is not None:
        said += f"; the computed need in service is {{{key}.gerr_share|share}} of Gerr's"
    if page.value(f"{key}.above"):
        said += ", above that ceiling: length, displacement or trial is likely mistyped"
    return page.text(said + ".")


def _figure(page: Page) -> Figure:
    reached = "; ".join(
        f"{{{motor}.name|given}} reaches {{{motor}.top_speed.continuous_kn|speed}} on its "
        f"continuous rating and {{{motor}.top_speed.peak_kn|speed}} at peak"
        for motor in page.motors
    )
    finding = page.text((reached or "No motor is in this case") + ".")
    note = page.text(
        "Calm water, deep, in service. Level lines: ratings at the motor. A motor stops short of "
        "its rating where the propeller asks for more torque or turns than it gives. Evidence: "
        "{evidence.grade|given}. Band: the middle eight tenths of {study.draws|count} draws."
    )
    return Figure("speed-power", finding, note, lambda: speed_power(page))


def _tables(page: Page) -> tuple[Table, ...]:
    if not page.motors:
        return ()
    rows, keys = [], []
    for key in page.keys(f"{page.motors[0]}.speed_power"):
        speed = float(page.value(f"{key}.speed_kn"))
        if _told(page, speed):
            row, used = _row(page, key, speed)
            rows.append(row)
            keys += used
    caption = page.text("Calm water, in service: what she asks for and what the bank gives")
    return (Table("power-table", caption, _columns(page), tuple(rows), reasons(page, keys)),)


def _told(page: Page, speed: float) -> bool:
    """Every half knot from manoeuvring up to the last speed that any motor reaches at peak."""
    found = (page.find(f"{motor}.speed_power", speed_kn=speed) for motor in page.motors)
    reached = any(page.value(f"{key}.within_peak") for key in found if key)
    steps = speed / STEP
    return reached and speed >= SLOWEST and abs(steps - round(steps)) < 1e-6


def _columns(page: Page) -> tuple[Column, ...]:
    power, width = page.unit("power"), 56 // (2 * len(page.motors))
    pairs = [
        column
        for motor in page.motors
        for column in (
            numbers(page.words(f"{motor}.name") + Markup(": battery"), width, power),
            numbers("motor speed", width, "rpm"),
        )
    ]
    return (
        words(f"Speed, {page.unit('speed')}", 12), numbers("Resistance", 12, page.unit("force")),
        numbers("Shaft, one in ten to nine in ten", 20, power), *pairs,
    )  # fmt: skip


def _row(page: Page, key: str, speed: float) -> tuple[Row, list[str]]:
    cells = [
        page.show(f"{key}.resistance_n", "force:bare"),
        page.show(f"{key}.shaft_power_kw", "power:bare")
        + Markup(' <span class="spread">')
        + page.span(f"{key}.shaft_power_low_kw", f"{key}.shaft_power_high_kw", "power:bare")
        + Markup("</span>"),
    ]
    used = []
    for motor in page.motors:
        own = page.find(f"{motor}.speed_power", speed_kn=speed)
        for name, form in (("battery_power_kw", "power:bare"), ("motor_rpm", "rpm:bare")):
            cells.append(page.show(f"{own}.{name}", form) if own else Markup("–"))
            used.append(f"{own}.{name}")
    return Row(page.show(f"{key}.speed_kn", "speed:bare"), tuple(cells)), used if own else []
