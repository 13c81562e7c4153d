"""Technical appendix: power, stream, propeller under sail and hull forms, for the specialist."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from markupsafe import Markup

from generator.analyses.motion.second_opinions import FormBand, OpinionRows
from generator.analyses.motion.service_factor import ServiceFactor
from generator.analyses.motion.speed_table import SpeedPower
from generator.analyses.motion.trial_table import TrialTable
from generator.analyses.option import OptionAnswers
from generator.report.figures.foul_stream import foul_stream
from generator.report.figures.speed_power import speed_power
from generator.report.page import Page
from generator.report.parts import Figure, Part
from generator.report.template import pieces
from generator.report.view import View

TEMPLATE = "sections/technical.html"
STEP = 0.5  # kn between two rows of the table of power
SLOWEST = 3.0  # kn of its first row
STREAMS = (0, 4, 8, 12, 16)  # rows of the analysis, whole knots
STATES = (
    ("locked_lost", "Lost, locked"), ("free_lost", "Lost, turning freely"),
    ("feathered_lost", "Lost, feathered"), ("folded_lost", "Lost, folded"),
    ("returned", "Power regenerated"),
)  # fmt: skip


@dataclass(frozen=True)
class Motor:
    """A motor by its short name, at the start of a sentence and within one, and its record."""

    key: str
    name: Markup
    within: Markup
    it: View
    alone: bool  # no other option runs from a battery
    whole: View | None  # its range in a calm at cruise, battery new


def motors_of(page: Page) -> list[Motor]:
    """The options that run from a battery."""
    return [_motor(page, key) for key in page.motors]


def _motor(page: Page, key: str) -> Motor:
    it = page.view(key, OptionAnswers)
    assert it is not None
    calm = (bar for bar in it.range_at_cruise or () if bar.sea == "calm" and bar.bank_age == "new")
    return Motor(
        key,
        page.text(page.called(key, True)),
        page.text(page.called(key)),
        it,
        len(page.motors) == 1,
        next(calm, None),
    )


def widths(first: int, columns: int) -> list[int]:
    """Widths of a head of rows and of equal columns, per cent."""
    return [first, *[(100 - first) // max(columns, 1)] * columns]


def part(name: str, body: Markup, *figures: Figure, closing: Markup | None = None) -> Part:
    """A part of the appendix with its title from the template."""
    title = pieces(TEMPLATE, f"{name}_title")()
    return Part(
        name.replace("_", "-"), title, body=body, figures=figures, closing=closing or Markup()
    )


def figure(name: str, title: Markup, note: Markup, draw: object) -> Figure:
    """A chart whose title and note come from the template."""
    return Figure(name, Markup(title.strip()), Markup(note.strip()), draw)  # type: ignore[arg-type]


def motion(page: Page) -> tuple[Part | None, ...]:
    """Power, low speed and what is added in service."""
    return (_power(page), _low_speed(page), _service(page))


def _power(page: Page) -> Part:
    first = (page.motors or page.options)[0]
    motors = motors_of(page)
    chart = figure(
        "speed-power",
        pieces(TEMPLATE, "power_chart_title")(motors),
        pieces(TEMPLATE, "power_chart_note")(page.words("evidence.grade")),
        lambda: speed_power(page),
    )
    rows = _power_rows(page)
    columns = widths(10, 3 + 2 * len(motors))
    table = pieces(TEMPLATE, "power_table")(motors, rows, columns) if rows else Markup()
    return part("power", _at_cruise(page, first), chart, closing=table)


def _at_cruise(page: Page, option: str) -> Markup:
    """What planned cruise needs: of itself, not of the nearest row of the curve."""
    if page.value(f"{option}.cruise_shaft_kw") is None:
        return Markup()
    cautious = f"{option}.cruise_shaft_high_kw"
    return pieces(TEMPLATE, "power")(
        {
            "speed": page.show("planning.cruise_speed_kn", "speed"),
            "power": page.show(f"{option}.cruise_shaft_kw", "power"),
            "thrust": page.show(f"{option}.cruise_thrust_n", "force"),
            "cautious": page.value(cautious) is not None and page.show(cautious, "power"),
        }
    )


def _power_rows(page: Page) -> list[list[View]]:
    """Every half knot from manoeuvring up to the last speed that any motor reaches at peak."""
    rows = []
    for speed in page.column(f"{page.motors[0]}.speed_power", "speed_kn") if page.motors else ():
        keys = [page.find(f"{motor}.speed_power", speed_kn=speed) for motor in page.motors]
        reached = any(page.value(f"{key}.within_peak") for key in keys if key)
        whole = abs(speed / STEP - round(speed / STEP)) < 1e-6
        if None not in keys and reached and whole and speed >= SLOWEST:
            rows.append([_there(page.view(str(key), SpeedPower)) for key in keys])
    return rows


def _there(view: View | None) -> View:
    assert view is not None
    return view


def _low_speed(page: Page) -> Part | None:
    motor = next(iter(motors_of(page)), None)
    if motor is None or not motor.it.low_speed:
        return None
    rows = motor.it.low_speed
    return part(
        "low_speed",
        pieces(TEMPLATE, "low_speed")(rows[0]),
        closing=pieces(TEMPLATE, "low_speed_table")(motor.it.name, rows),
    )


def _service(page: Page) -> Part:
    it = page.view("service_factor", ServiceFactor)
    return part(
        "service",
        pieces(TEMPLATE, "service")(it),
        closing=pieces(TEMPLATE, "service_table")(it),
    )


def stream(page: Page) -> Part | None:
    """What a mile over the ground needs against a stream."""
    motors = [motor for motor in motors_of(page) if page.value(f"{motor.key}.stream.rows")]
    if not motors:
        return None
    chart = figure(
        "foul-stream",
        pieces(TEMPLATE, "stream_chart_title")(motors[0]),
        pieces(TEMPLATE, "stream_chart_note")(),
        lambda: foul_stream(page),
    )
    rows = [[motor.it.stream.rows[place] for motor in motors] for place in STREAMS]
    table = pieces(TEMPLATE, "stream_table")(motors, rows, widths(10, 3 * len(motors)))
    return part("stream", Markup(), chart, closing=table)


def under_sail(page: Page) -> Part | None:
    """What the propeller costs under sail, and what it could give back."""
    key = (page.motors or page.options)[0]
    rows = _there(page.view(key, OptionAnswers)).under_sail.rows
    states = [
        (name, words) for name, words in STATES if any(getattr(row, name).there for row in rows)
    ]
    if not states:
        return None
    said = Markup("").join(pieces(TEMPLATE, "under_sail")(motor) for motor in motors_of(page))
    table = pieces(TEMPLATE, "under_sail_table")(
        rows,
        states,
        widths(16, len(states)),
        [getattr(row, name) for row in rows for name, _ in STATES],
    )
    return part("under_sail", said, closing=table)


def forms(page: Page) -> Part | None:
    """Her resistance by each published form."""
    rows = page.views("second_opinions", OpinionRows)
    if not rows:
        return None
    grouped = _grouped(rows)
    growth = Markup()
    if page.value("trial.growth") is not None:
        growth = page.show("trial.growth", "ratio:signed")
    trial = page.view("trial", TrialTable) if page.value("trial") else None
    band = page.view("form_band", FormBand)
    table = pieces(TEMPLATE, "forms_table")(
        grouped, grouped[0], [31, 25, *[44 // len(grouped[0])] * len(grouped[0])]
    )
    return part("forms", pieces(TEMPLATE, "forms")(band, trial, growth), closing=table)


def _grouped(rows: Iterable[View]) -> list[list[View]]:
    """The rows of each form, in the order of the analysis."""
    found: dict[str, list[View]] = {}
    for row in rows:
        found.setdefault(str(row.name), []).append(row)
    return list(found.values())


def closing(page: Page) -> tuple[Part | None, ...]:
    """Inputs that look unusual, and the sources that this report cites."""
    warned = [page.words(key, "warning") for key in page.keys("warnings")]
    cited = [
        {"key": page.words(f"{key}.key"), "text": page.words(f"{key}.text")}
        for key in page.keys("sources")
    ]
    return (
        part("warnings", pieces(TEMPLATE, "warnings")(warned)) if warned else None,
        part("sources", pieces(TEMPLATE, "sources")(cited)),
    )
