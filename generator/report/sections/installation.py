"""Parts: what does her own sea trial say, and what does service add to a clean hull?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import Column, Part, Row, Table, numbers, reasons, words
from generator.report.sections.evidence import graded

TRIAL_FORMS = (
    ("engine_speed_rpm", "rpm"), ("speed_out_kn", "speed"), ("speed_back_kn", "speed"),
    ("speed_kn", "speed"), ("wind_kn", "wind"), ("depth_m", "height"),
    ("law_power_kw", "power"), ("fuel_power_kw", "power"), ("shaft_power_kw", "power"),
)  # fmt: skip


def trial(page: Page) -> Part:
    """The sea trial, row by row, and what it makes of the evidence."""
    if page.value("trial") is None:
        return Part("trial", "Sea trial", (graded(page),))
    rows = page.keys("trial.rows")
    keys = [f"{row}.{name}" for row in rows for name, _ in TRIAL_FORMS]
    table = Table(
        "trial-rows",
        page.text("Sea trial of the present engine: rows kept, and rows refused with the reason"),
        _trial_columns(page),
        tuple(_trial_row(page, row) for row in rows),
        reasons(page, keys),
    )
    said = (graded(page), page.sentence("trial.note"))
    return Part("trial", "Sea trial", said, (), (table,))


def _trial_columns(page: Page) -> tuple[Column, ...]:
    speed = page.unit("speed")
    return (
        words("Case line", 7), numbers("Engine", 8, "rpm"), numbers("Out", 6, speed),
        numbers("Back", 6, speed), numbers("Mean", 6, speed), numbers("Wind", 6, speed),
        numbers("Depth", 7, page.unit("height")), numbers("By law", 8, page.unit("power")),
        numbers("By fuel, battery", 8, page.unit("power")), numbers("Shaft", 8, page.unit("power")),
        numbers("Hull model", 7, page.unit("power")), numbers("Curve used", 7, page.unit("power")),
        words("Used", 16),
    )  # fmt: skip


def _trial_row(page: Page, key: str) -> Row:
    metered = "fuel_power_kw" if page.value(f"{key}.read_power_kw") is None else "read_power_kw"
    forms = [(metered if name == "fuel_power_kw" else name, form) for name, form in TRIAL_FORMS]
    cells = [page.show(f"{key}.{name}", f"{form}:bare") for name, form in forms]
    curves = [
        page.show(f"{key}.{name}", "power:bare") for name in ("model_power_kw", "curve_power_kw")
    ]
    used = page.value(f"{key}.used")
    verdict = Markup("kept") if used else Markup("refused: ") + page.sentence(f"{key}.why")
    if page.value(f"{key}.remark"):
        verdict += Markup("; not used: ") + page.words(f"{key}.remark")
    line = page.show(f"{key}.line", "year")
    return Row(line, (*cells, *curves, verdict), "" if used else "refused")


def service(page: Page) -> Part:
    """What bottom, propeller, wind and steering add to a clean hull."""
    known = page.value("service_factor.product_at_cruise") is not None
    raised = (
        " to {service_factor.product_at_cruise|ratio} of clean at cruise, against a flat "
        "{service_factor.single_factor|ratio} by common practice."
        if known
        else "; by common practice a flat {service_factor.single_factor|ratio} stands for them."
    )
    rows = tuple(_factor(page, key) for key in page.keys("service_factor.parts"))
    table = Table(
        "service-factor",
        page.text(
            "In-service factor by part; at cruise in a calm it comes to "
            "{service_factor.product_at_cruise|ratio}"
            if known
            else "In-service factor by part"
        ),
        (
            words("Part", 34), words("Acts on", 16), numbers("Value", 10),
            numbers("Range", 18), words("In a calm", 11), words("In wind and sea", 11),
        ),
        rows,
    )  # fmt: skip
    text = page.text(
        "A clean hull in still water is not what {boat.name|given} meets (her bottom: "
        "{boat.bottom|given}). In a calm, bottom and propeller alone raise her power" + raised
    )
    note = page.sentence("service_factor.note")
    return Part("service", "From clean hull to in service", (text, note), (), (table,))


def _factor(page: Page, key: str) -> Row:
    cells = (
        page.words(f"{key}.applies_to"),
        page.show(f"{key}.value", "ratio"),
        page.span(f"{key}.low", f"{key}.high", "ratio"),
        page.words(f"{key}.in_calm"),
        page.words(f"{key}.in_wind"),
    )
    return Row(page.words(f"{key}.name"), cells)
