"""Technical appendix: battery and reserve, motor under load, chemistries and losses."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from generator.report.figures.losses_ledger import losses_ledger
from generator.report.figures.peak_time import peak_time
from generator.report.page import Page
from generator.report.parts import Part
from generator.report.sections.technical import TEMPLATE, Motor, figure, motors_of, part, widths
from generator.report.template import pieces

SEAS = ("calm", "wind_15", "wind_20", "wind_25")
LEAD = ("AGM", "flooded")
AGES = 3
MOST = 2  # batteries whose columns fit side by side


@dataclass(frozen=True)
class Plan:
    """What the reserve is kept for, by the owner's plan."""

    share: Markup
    manoeuvring_time: Markup
    hold_time: Markup
    hold_wind: Markup

    @classmethod
    def of(cls, page: Page) -> Plan:
        """That of the report."""
        return cls(
            page.show("planning.reserve_share_pct", "percent"),
            page.show("planning.manoeuvring_time_min", "minutes"),
            page.show("planning.hold_time_min", "minutes"),
            page.show("planning.hold_wind_kn", "wind"),
        )


@dataclass(frozen=True)
class Hold:
    """At what speed she is to hold on, and against which wind."""

    speed: Markup
    wind: Markup


@dataclass(frozen=True)
class Seas:
    """Columns of the table of hold times."""

    names: list[str]
    heads: list[Markup]
    widths: list[int]


def bank(page: Page) -> Part | None:
    """Energy from nominal to what is left for passages, and the battery by age."""
    motors = [motor for motor in motors_of(page) if motor.it.bank is not None]
    if not motors:
        return None
    table = pieces(TEMPLATE, "bank_table")(motors, widths(48, len(motors)))
    for first in range(0, len(motors), MOST):
        some = motors[first : first + MOST]
        name = str(some[0].it.id)
        table += pieces(TEMPLATE, "ages_table")(some, name, widths(28, AGES * len(some)))
    return part("bank", pieces(TEMPLATE, "bank")(motors, Plan.of(page)), closing=table)


def duty(page: Page) -> Part | None:
    """How long each motor delivers its peak, and how long it keeps each speed."""
    motors = [motor for motor in motors_of(page) if motor.it.duty is not None]
    if not motors:
        return None
    cruise = page.show("planning.cruise_speed_kn", "speed")
    hold = Hold(
        page.show("planning.hold_speed_kn", "speed"), page.show("planning.hold_wind_kn", "wind")
    )
    body = Markup("").join(
        pieces(TEMPLATE, "duty")(motor, cruise, hold, _same(page, motor)) for motor in motors
    )
    chart = figure(
        "peak-time",
        pieces(TEMPLATE, "duty_chart_title")(motors[0]),
        pieces(TEMPLATE, "duty_chart_note")(cruise),
        lambda: peak_time(page, [motor.key for motor in motors]),
    )
    tables = Markup("").join(
        pieces(TEMPLATE, "duty_table")(motor, _seas(page))
        for motor in motors
        if motor.it.duty.speeds
    )
    return part("duty", body, chart, closing=tables)


def _same(page: Page, motor: Motor) -> bool:
    """Whether the peak lasts as long from cold as after cruise, as it is printed."""
    cold, warm = (
        page.plain(f"{motor.key}.duty.peak_{way}_min", "minutes") for way in ("cold", "warm")
    )
    return cold == warm


def _seas(page: Page) -> Seas:
    heads = []
    for sea in SEAS:
        wind = page.find("sea_states", id=sea)
        calm = page.value(f"{wind}.wind_kn") in (None, 0, 0.0)
        heads.append(Markup("Calm") if calm else page.text(f"{{{wind}.wind_kn|wind}} ahead"))
    return Seas(list(SEAS), heads, [10, 13, 13, 16, 16, 16, 16])


def chemistries(page: Page) -> Part | None:
    """A battery of each other chemistry for the same need."""
    motors = [motor for motor in motors_of(page) if motor.it.chemistries is not None]
    if not motors:
        return None
    body, tables = Markup(), Markup()
    for motor in motors:
        banks = motor.it.chemistries.banks
        lead = next((each for each in banks if each.chemistry in LEAD), None)
        body += pieces(TEMPLATE, "chemistries")(motor, lead)
        lithium = [each for each in banks if each.chemistry not in LEAD]
        priced = not page.value("case.redacted")
        tables += pieces(TEMPLATE, "chemistries_table")(motor, lithium, priced)
    return part("chemistries", body, closing=tables)


def losses(page: Page) -> Part | None:
    """Where the battery's power goes before it reaches the water."""
    motors = [motor for motor in motors_of(page) if motor.it.losses]
    if not motors:
        return None
    rows = motors[0].it.losses
    chart = figure(
        "losses-ledger",
        pieces(TEMPLATE, "losses_chart_title")(motors[0], rows[min(1, len(rows) - 1)]),
        pieces(TEMPLATE, "losses_chart_note")(),
        lambda: losses_ledger(page, [motor.key for motor in motors]),
    )
    return part("losses", Markup(), chart)


def whole_bank(page: Page) -> Part | None:
    """Range if nothing were kept back, in a sentence."""
    told = [motor for motor in motors_of(page) if _ranged(motor)]
    return part("whole_bank", pieces(TEMPLATE, "whole_bank")(told)) if told else None


def _ranged(motor: Motor) -> bool:
    whole = motor.whole
    return bool(whole is not None and whole.whole_bank.there and whole.range.there)
