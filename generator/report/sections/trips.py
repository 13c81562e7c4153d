"""Section: will she make the owner's trips, and what is left after the one that must be made?"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Any

from markupsafe import Markup

from generator.analyses.handling.range_bars import RangeBar
from generator.analyses.motion.sea_states import SeaState
from generator.analyses.option import OptionAnswers
from generator.analyses.use.leg_help import LegHelp
from generator.analyses.verdict.criteria.must_make_leg import MustMakeLeg
from generator.report.figures.energy_walk import energy_walk, walked
from generator.report.figures.range_bars import range_bars
from generator.report.page import Page
from generator.report.parts import Figure, Part
from generator.report.template import pieces
from generator.report.view import View

TEMPLATE = "sections/trips.html"
DOUBLE = re.compile(r"[ \n]+")  # no-break spaces stay: one is between a number and its unit
MUST = 1  # the criterion on the trip that must be made
MOST_TRIPS = 12  # on the page; all of them are in the table of the folder


@dataclass(frozen=True)
class Motor:
    """One motor, its ranges in a calm, its counts of trips, and the trip that must be made."""

    view: View
    called: Markup
    start: Markup
    calm: View | None  # with the battery as old as the verdict's
    new: View | None
    slower: View | None
    must: View | None
    help: View | None

    @property
    def whole(self) -> Any:
        """Its full name."""
        return self.view.name

    @property
    def covered(self) -> Any:
        """Trips that it makes in a year; none without a passage."""
        return self.view.use.coverage


@dataclass(frozen=True)
class TripRow:
    """One trip with one motor, and what would mend it."""

    whole: Any
    leg: View
    help: View | None


@dataclass(frozen=True)
class Trip:
    """One trip as its owner gave it, and how each motor does on it."""

    name: Markup
    must_make: bool
    after: Any
    distance: Markup
    speed: Markup
    exposed: Markup | None
    wind: Markup
    stream: Markup | None
    rows: list[TripRow]


@dataclass(frozen=True)
class Sea:
    """A sea in which no motor has a range."""

    state: View
    bar: View


@dataclass(frozen=True)
class Depth:
    """What depth and width of a trip mean for the power curve."""

    name: Markup
    depth: Markup
    speed: Markup
    froude: Markup
    enough: bool


def parts(page: Page) -> tuple[Part | None, ...]:
    """Range, trips, and the bad day of the trip that must be made; nothing without a motor."""
    if not page.motors:
        return ()
    motors = [_motor(page, key) for key in page.motors]
    return (_range(page, motors), _trips(page, motors), _bad_day(page, motors))


def row_at_cruise(page: Page, option: str, sea: str, age: str = "new") -> str | None:
    """The key of an option's range row in a sea; diesels have a tank instead of an age."""
    rows = f"{option}.range_at_cruise"
    return page.find(rows, sea=sea, bank_age=age) or page.find(rows, sea=sea, bank_age="tank")


def must_make_row(page: Page, option: str) -> str | None:
    """The key of the option's result on its worst must-make leg."""
    worst = page.value(f"{option}.worst_leg")
    rows = f"{option}.legs"
    return page.find(rows, must_make=True) if worst is None else f"{rows}.{worst}"


def _said(name: str, *given: Any) -> Markup:
    """Words of the template on one line."""
    return Markup(DOUBLE.sub(" ", str(pieces(TEMPLATE, name)(*given))).strip())


def _motor(page: Page, key: str) -> Motor:
    view = page.view(key, OptionAnswers)
    assert view is not None
    calm, new = (row_at_cruise(page, key, "calm", age) for age in ("aged", "new"))
    row = page.find(f"{key}.verdict.criteria", id=MUST)
    must = page.view(f"{row}.facts", MustMakeLeg) if row else None
    leg = must_make_row(page, key)
    helps = _helps(page, key)
    return Motor(
        view=view,
        called=page.text(page.called(key)),
        start=page.text(page.called(key, True)),
        calm=page.view(calm, RangeBar) if calm else None,
        new=page.view(new, RangeBar) if new else None,
        slower=page.view(f"{key}.range_slower", RangeBar),
        must=must if must is not None and must.leg else None,
        help=helps.get(int(leg.rpartition(".")[2])) if leg else None,
    )


def _helps(page: Page, motor: str) -> dict[int, View]:
    """What would mend a trip, by its place."""
    return {int(each.leg): each for each in page.views(f"{motor}.use.failing", LegHelp)}


def _age(page: Page) -> Markup:
    """Age of the battery for which trips are judged: of the first motor, for they seldom differ."""
    return page.show(f"{page.motors[0]}.bank.ages.1.after_years", "years")


def _range(page: Page, motors: list[Motor]) -> Part:
    age = _age(page)
    body = _said("range", motors, _beyond(page), age)
    chart = Figure(
        "range-bars", _said("range_title", motors), _said("range_note", age),
        lambda: range_bars(page, "range-bars"),
    )  # fmt: skip
    return Part("range", _said("range_head"), body=body, figures=(chart,))


def _beyond(page: Page) -> list[Sea]:
    """Seas in which no motor has a range."""
    found = []
    for key in page.keys("sea_states"):
        state = page.view(key, SeaState)
        assert state is not None
        rows = [row_at_cruise(page, motor, state.id, "aged") for motor in page.motors]
        seen = [view for row in rows if row and (view := page.view(row, RangeBar)) is not None]
        if seen and state.id != "calm" and not any(view.range.there for view in seen):
            found.append(Sea(state, seen[0]))
    return found


def _trips(page: Page, motors: list[Motor]) -> Part:
    head = _said("trips_head")
    if not page.value("legs"):
        return Part("legs-part", head, body=_said("no_trips"))
    passages = all(motor.covered is not None for motor in motors)
    body = _said("counts", motors) if passages else _said("no_passage")
    trips = [_trip(page, place) for place in range(len(page.value("legs")))]
    shown = trips
    if len(trips) > MOST_TRIPS:
        shown = sorted(trips, key=_order)[:MOST_TRIPS]
    depths = [_said("depth", each) for each in _depths(page)]
    table = pieces(TEMPLATE, "table")(shown, len(trips) > len(shown))
    return Part("legs-part", head, body=body, closing=table + Markup("").join(depths))


def _order(trip: Trip) -> tuple[bool, bool]:
    """Trips that a motor does not make first, then those that must be made."""
    return all(row.leg.fits for row in trip.rows), not trip.must_make


def _trip(page: Page, place: int) -> Trip:
    key = f"legs.{place}"
    rows: list[TripRow] = []
    for motor in page.motors:
        option = page.view(motor, OptionAnswers)
        assert option is not None
        rows.append(TripRow(option.name, option.legs[place], _helps(page, motor).get(place)))
    return Trip(
        name=page.words(f"{key}.name"),
        must_make=bool(page.value(f"{key}.must_make")),
        after=rows[0].leg.after,
        distance=page.show(f"{key}.distance_nm", "distance"),
        speed=page.show(f"{key}.speed_kn", "speed"),
        exposed=_shown_if(page, f"{key}.exposed_distance_nm", "distance"),
        wind=page.show(f"{key}.wind_kn", "wind"),
        stream=_shown_if(page, f"{key}.foul_stream_kn", "speed"),
        rows=rows,
    )


def _shown_if(page: Page, key: str, form: str) -> Markup | None:
    """A number that is worth a word only where there is any of it."""
    return page.show(key, form) if page.value(key) else None


def _depths(page: Page) -> list[Depth]:
    """The trips in water so shallow or narrow that it was looked at."""
    return [
        Depth(
            name=page.words(f"{key}.name"),
            depth=page.show(f"{key}.depth_m", "height"),
            speed=page.show(f"{key}.speed_kn", "speed"),
            froude=page.show(f"{key}.depth_froude", "ratio"),
            enough=bool(page.value(f"{key}.deep_enough") and page.value(f"{key}.wide_enough")),
        )
        for key in page.keys("legs")
        if page.value(f"{key}.depth_froude")
    ]


def _bad_day(page: Page, motors: list[Motor]) -> Part | None:
    head = _said("bad_day_head")
    if not page.value("legs"):
        return None
    judged = [motor for motor in motors if motor.must is not None]
    if page.must_make is None or not judged:
        return Part("bad-day-part", head, body=_said("none_must"))
    trip = _trip(page, int(page.must_make.rpartition(".")[2]))
    body = pieces(TEMPLATE, "bad_day")(judged, trip, _age(page))
    return Part("bad-day-part", head, body=body, figures=_walk(page, motors))


def _walk(page: Page, motors: list[Motor]) -> tuple[Figure, ...]:
    keys = walked(page)
    if not keys:
        return ()
    shown = [motor for key, motor in zip(page.motors, motors, strict=True) if key in keys]
    without = [
        motor
        for key, motor in zip(page.motors, motors, strict=True)
        if not page.value(f"{key}.use.walk")
    ]
    name = page.words(f"legs.{page.value(f'{keys[0]}.use.walk_leg')}.name")
    return (
        Figure(
            "energy-walk", _said("walk_title", shown, name), _said("walk_note", without),
            lambda: energy_walk(page),
        ),
    )  # fmt: skip
