"""Section: what drives her today, and what does her own sea trial say?"""

from __future__ import annotations

from dataclasses import replace

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import Column, Part, Row, Table, numbers, reasons, words
from generator.report.sections.evidence import graded

TRIAL_FORMS = (
    ("engine_speed_rpm", "rpm"), ("speed_out_kn", "speed"), ("speed_back_kn", "speed"),
    ("speed_kn", "speed"), ("wind_kn", "wind"), ("depth_m", "height"),
    ("law_power_kw", "power"), ("fuel_power_kw", "power"), ("shaft_power_kw", "power"),
)  # fmt: skip


def drive(page: Page) -> Part:
    """The present engine, its gear and its propeller."""
    engine = page.text(
        "The present diesel of {engine.year|year} gives {engine.rated_power_kw|power} at "
        "{engine.rated_speed_rpm|rpm} and has run {engine.hours_h|hours}; its condition is stated "
        "as {engine.condition|given}; its owner reckons {engine.hours_per_year_h|hours} a year. On "
        f"the legs of this case it runs {{engine.legs_hours_h|hours}} a year{_burnt(page)} "
        "from a tank of {engine.tank_l|fuel}."
    )
    own = _drive(page)
    return replace(own, text=(engine, *own.text))


def _burnt(page: Page) -> str:
    """What it burns in a year, and at cruise, where the formulas give either."""
    if page.value("engine.litres_per_year_l") is None:
        return ","
    cruise = " ({engine.litres_per_hour_cruise_l|fuel_rate} at cruise)"
    if page.value("engine.litres_per_hour_cruise_l") is None:
        cruise = ""
    return f" and burns {{engine.litres_per_year_l|fuel}}{cruise},"


def _drive(page: Page) -> Part:
    text = page.text(
        "A reduction of {engine.gear_ratio|ratio} turns a {propeller.kind|given} propeller of "
        "{propeller.blades|count} blades, {propeller.diameter_mm|length_small} in diameter and "
        "{propeller.pitch_mm|length_small} in pitch, on a {propeller.installation|given}. Its wake "
        "fraction is taken as {propeller.wake_fraction|ratio} and its thrust deduction as "
        "{propeller.thrust_deduction|ratio}."
    )
    served = [page.words(key) for key in page.keys("house.services")]
    services = (
        (Markup("Services that the diesel gives and that end with it: ")
         + Markup(", ").join(served) + Markup("."),) if served else ()
    )  # fmt: skip
    return Part("drive", "Engine, gear and propeller", (text, *services))


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
