"""Part of bank and motor: how long does the motor hold which speed and headwind?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.figures.peak_time import peak_time
from generator.report.page import Page
from generator.report.parts import Figure, Part, Row, Table, numbers, reasons, words

SEAS = ("calm", "wind_15", "wind_20", "wind_25")


def parts(page: Page) -> tuple[Part, ...]:
    """Text, chart and one table of hold times per motor."""
    motors = [motor for motor in page.motors if page.value(f"{motor}.duty")]
    if not motors:
        return ()
    text = [page.text(each(page, motor)) for motor in motors for each in (_rating, _space, _peak)]
    text.append(page.text(_types()))
    tables = tuple(_table(page, motor) for motor in motors)
    return (Part("duty", "The motor's duty", tuple(text), (_figure(page, motors),), tables),)


def _rating(page: Page, motor: str) -> str:
    duty = f"{motor}.duty"
    return (
        f"{{{motor}.name|given}}: {{{duty}.plate_kw|power}} on the plate for air of "
        f"{{{duty}.rated_ambient_c|temperature}}; with {{{duty}.airflow_m3_per_h|air}} of air at "
        f"{{{duty}.intake_c|temperature}} through its space it gives {{{duty}.continuous_kw|power}}"
        f" continuously ({{{duty}.continuous_low_kw|power}} in one draw of ten), for its own heat "
        f"brings the space to {{{duty}.space_full_c|temperature}}."
    )


def _space(page: Page, motor: str) -> str:
    duty = f"{motor}.duty"
    cruise = (
        f"{{{duty}.heat_cruise_w|watts}} at planned cruise "
        f"({{{duty}.space_cruise_c|temperature}} inside), "
    )
    if page.value(f"{duty}.heat_cruise_w") is None:
        cruise = ""
    return (
        f"Heat that must leave the space: {cruise}{{{duty}.heat_full_w|watts}} at the warm "
        f"rating, {{{duty}.heat_peak_w|watts}} at peak, {{{duty}.heat_standing_w|watts}} standing "
        "by."
    )


def _peak(page: Page, motor: str) -> str:
    duty = f"{motor}.duty"
    if page.value(f"{duty}.peak_warm_min") is None:
        return (
            f"Its peak of {{{duty}.peak_kw|power}} is within the warm rating, held without limit."
        )
    load = f", which loads it to {{{duty}.before_share|share}}"
    if page.value(f"{duty}.before_share") is None:
        load = ", taken as a full load"
    text = (
        f"Its peak of {{{duty}.peak_kw|power}}, {{{duty}.peak_load|ratio}} times the warm rating, "
        f"is held for {{{duty}.peak_cold_min|minutes}} from cold {_after(page, duty)} a run at "
        f"planned cruise{load}; the maker states "
        f"{{{duty}.stated_peak_min|minutes}}."
    )
    return f"{text} {_holding(page, duty)}"


def _after(page: Page, duty: str) -> str:
    """The time after cruise, or that it is the same as printed."""
    cold, warm = (f"{duty}.peak_{start}_min" for start in ("cold", "warm"))
    if page.plain(cold, "minutes") == page.plain(warm, "minutes"):
        return "and after"
    return f"but for {{{warm}|minutes}} after"


def _holding(page: Page, duty: str) -> str:
    case = "{planning.hold_speed_kn|speed} against {planning.hold_wind_kn|wind}"
    state = page.value(f"{duty}.holding.state")
    if state == "not":
        return f"Holding {case} is beyond motor, bank or the range of the sea's formula."
    if state == "for good":
        return f"Holding {case} is within the warm rating, without limit of time."
    lasts, wanted = page.value(f"{duty}.holding.warm_min"), page.value(f"{duty}.holding.needed_min")
    side = "more" if lasts >= wanted else "less"
    return (
        f"Holding {case} lasts {{{duty}.holding.warm_min|minutes}}, {side} than the "
        f"{{{duty}.holding.needed_min|minutes}} that the reserve plans for."
    )


def _types() -> str:
    return (
        "In the words of the duty standard: the {planning.cruise_speed_kn|speed} of cruise are "
        "continuous duty, to steady temperature; a peak is short-time duty, for a stated time and "
        "then full cooling; gusts on a long run are continuous running with intermittent load, "
        "and that is the one met off a lee shore."
    )


def _figure(page: Page, motors: list[str]) -> Figure:
    found = []
    for motor in motors:
        duty = f"{motor}.duty"
        if page.value(f"{duty}.peak_warm_min") is None:
            found.append(f"{{{motor}.name|given}} holds {{{duty}.peak_kw|power}} continuously")
        else:
            same = _after(page, duty) == "and after"
            cold = "as" if same else f"{{{duty}.peak_cold_min|minutes}}"
            found.append(
                f"{{{motor}.name|given}} holds its peak for {{{duty}.peak_warm_min|minutes}} "
                f"after cruise, {cold} from cold"
            )
    note = page.text(
        "Lines: best estimate, heavy for the motor, light for controller and windings, by the "
        "peak time that the maker states from cold. Marks: middle of the draws, at the load of "
        "planned cruise at {planning.cruise_speed_kn|speed}."
    )
    return Figure(
        "peak-time", page.text("; ".join(found) + "."), note, lambda: peak_time(page, motors)
    )


def _table(page: Page, motor: str) -> Table:
    duty = f"{motor}.duty"
    heads = []
    for sea in SEAS:
        wind = page.find("sea_states", id=sea)
        calm = page.value(f"{wind}.wind_kn") in (None, 0, 0.0)
        heads.append(Markup("Calm") if calm else page.text(f"{{{wind}.wind_kn|wind}} ahead"))
    columns = (
        numbers("Speed", 10, page.unit("speed")), numbers("Load in a calm", 13),
        numbers("Heat in a calm", 13, page.unit("watts")), *(words(head, 16) for head in heads),
    )  # fmt: skip
    rows = tuple(_row(page, key) for key in page.keys(f"{duty}.speeds"))
    caption = page.text(
        f"How long {{{motor}.name|given}} holds each speed after a run at planned cruise; load "
        f"over the warm rating of {{{duty}.continuous_kw|power}}"
    )
    used = (
        f"{key}.calm.{name}" for key in page.keys(f"{duty}.speeds")
        for name in ("load_share", "heat_w")
    )  # fmt: skip
    notes = reasons(page, used)
    return Table(f"duty-{page.value(motor)['id']}", caption, columns, rows, notes)


def _row(page: Page, key: str) -> Row:
    cells = [
        page.show(f"{key}.calm.load_share", "share"),
        page.show(f"{key}.calm.heat_w", "watts:bare"),
    ]
    return Row(
        page.show(f"{key}.speed_kn", "speed:bare"),
        (*cells, *(_cell(page, f"{key}.{sea}") for sea in SEAS)),
    )


def _cell(page: Page, key: str) -> Markup:
    state = page.value(f"{key}.state")
    if state == "for a time":
        return page.show(f"{key}.warm_min", "minutes")
    return Markup("no limit") if state == "for good" else Markup("cannot")
