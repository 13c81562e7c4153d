"""Will she be charged: at the berth, without it, and through the year?"""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from generator.analyses.option import OptionAnswers
from generator.analyses.year.climate import Climate
from generator.analyses.year.house import HouseLoads
from generator.report.figures.season_balance import season_balance
from generator.report.page import Page
from generator.report.parts import Figure, Part
from generator.report.template import pieces
from generator.report.view import View
from generator.search import Smallest

TEMPLATE = "sections/charge.html"
RECHARGE = 11  # the criterion
SEEN = 0.5  # kWh, L or h a year: less is printed as nothing
BERTH = (
    ("typical", False), ("typical_hours", True), ("worst", False), ("worst_hours", True),
    ("into_bank", False), ("least_charger", False),
)  # fmt: skip
YEAR = (
    "motor", "house", "sun", "spilled", "wind", "screw", "genset", "genset_fuel", "shore",
    "shore_wall",
)  # fmt: skip


@dataclass(frozen=True)
class MotorBerth:
    """One motor at the berth."""

    option: View
    called: Markup
    berth: View
    smallest: View | None
    smaller: bool  # a smaller one than the battery quoted would do
    age: Markup  # of the battery that the verdict is for


@dataclass(frozen=True)
class Place:
    """The berth, and what is alike for all motors there."""

    name: Markup
    breaker: Markup
    share: Markup
    shore_power: bool
    same_limit: bool
    in_time: bool  # with every motor, as the criterion has it
    any_days: bool


@dataclass(frozen=True)
class MotorYear:
    """One motor through the year."""

    option: View
    called: Markup
    year: View
    month: View  # the one that decides
    sun: View | None
    sun_known: bool
    panels: bool
    plugged: bool  # in the month that decides
    all_made: bool
    below_reserve: bool
    too_cold: bool


@dataclass(frozen=True)
class Sky:
    """The weather of the years, and what is alike for all motors in it."""

    years: Markup
    source: str
    period: Markup
    file: Markup
    year_doubt: Markup
    month_doubt: Markup
    panels: bool
    same_panels: bool
    all_made: bool
    same_month: bool
    reserve_kept: bool


def parts(page: Page) -> tuple[Part, ...]:
    """The berth and the year; where no option has a battery, that."""
    if not page.motors:
        return (Part("berth-part", "", body=pieces(TEMPLATE, "nothing")()),)
    return tuple(made for made in (_berth(page), _year(page)) if made is not None)


def _called(page: Page, motor: str) -> Markup:
    return page.text(page.called(motor))


def _berth(page: Page) -> Part | None:
    motors = [made for motor in page.motors if (made := _at_berth(page, motor)) is not None]
    if not motors:
        return None
    limits = {each.berth.bound_by for each in motors}
    place = Place(
        page.words("berth.name"),
        page.show("berth.breaker_a", "current"),
        page.show("berth.breaker_share_pct", "percent"),
        shore_power=bool(page.value("berth.shore_power")),
        same_limit=len(limits) == 1,
        in_time=all(_in_time(page, each) for each in motors),
        any_days=any(each.berth.outings.there for each in motors),
    )
    lines = [line for line in BERTH if any(getattr(each.berth, line[0]).there for each in motors)]
    table = pieces(TEMPLATE, "berth_table")(motors, lines, _width(motors))
    title = pieces(TEMPLATE, "berth_title")()
    return Part("berth-part", title, body=pieces(TEMPLATE, "berth")(motors, place), closing=table)


def _in_time(page: Page, each: MotorBerth) -> bool:
    row = page.find(f"{each.option._key}.verdict.criteria", id=RECHARGE)
    return row is not None and page.value(f"{row}.result") == "go"


def _at_berth(page: Page, motor: str) -> MotorBerth | None:
    option = page.view(motor, OptionAnswers)
    if option is None or option.use.berth is None:
        return None
    age = page.show(f"{motor}.bank.ages.1.after_years", "years")
    smallest = page.view(f"{motor}.use.smallest", Smallest)
    return MotorBerth(
        option, _called(page, motor), option.use.berth, smallest, _smaller(page, motor), age
    )


def _smaller(page: Page, motor: str) -> bool:
    """Whether the smallest battery that is enough differs from her own as they are printed."""
    key = f"{motor}.use.smallest"
    if page.value(f"{key}.bank_kwh") is None:
        return False
    bank, own = (page.plain(f"{key}.{name}_kwh", "energy") for name in ("bank", "own_nominal"))
    return bank != own


def _width(motors: list[MotorBerth] | list[MotorYear]) -> str:
    return str(48 // len(motors))


def _year(page: Page) -> Part | None:
    years = [made for motor in page.motors if (made := _through(page, motor)) is not None]
    weather = page.view("weather", Climate)
    loads = page.view("house_loads", HouseLoads)
    if not years or weather is None or loads is None:
        return None
    sky = _sky(page, years)
    body = pieces(TEMPLATE, "season")(years, sky)
    lines = [name for name in YEAR if any(_seen(each.year, name) for each in years)]
    closing = pieces(TEMPLATE, "year_table")(years, lines, _width(years))
    closing += pieces(TEMPLATE, "house")(years, loads, sky)
    title = pieces(TEMPLATE, "year_title")()
    return Part("year", title, figures=(_balance(page, years),), body=body, closing=closing)


def _through(page: Page, motor: str) -> MotorYear | None:
    option = page.view(motor, OptionAnswers)
    if option is None or option.energy_year is None:
        return None
    year, sun = option.energy_year, option.use.sun
    month = next(each for each in year.months if each.month == year.governing_month)
    return MotorYear(
        option,
        _called(page, motor),
        year,
        month,
        sun=sun,
        sun_known=sun is not None and sun.use.there,
        plugged=_seen(month, "shore"),
        panels=_seen(year, "panels"),
        all_made=page.value(f"{motor}.energy_year.legs_made") == page.value(
            f"{motor}.energy_year.legs_wanted"
        ),
        below_reserve=_seen(year, "below_reserve"),
        too_cold=_seen(year, "cold_worst"),
    )  # fmt: skip


def _seen(view: View, name: str) -> bool:
    """Whether a sum of a year is there and more than nothing."""
    value = getattr(view, name).value
    return value is not None and value >= SEEN


def _sky(page: Page, years: list[MotorYear]) -> Sky:
    return Sky(
        page.show("weather.years", "count"),
        str(page.value("weather.sun_source")),
        page.words("weather.sun_period"),
        page.words("weather.file") if page.value("weather.file") else Markup(),
        page.show("weather.year_doubt_pct", "percent"),
        page.show("weather.month_doubt_pct", "percent"),
        panels=any(each.panels for each in years),
        same_panels=len({each.year.panels.value for each in years}) == 1,
        all_made=all(each.all_made for each in years),
        same_month=len({each.year.governing_month for each in years}) == 1,
        reserve_kept=not any(each.below_reserve for each in years),
    )


def _balance(page: Page, years: list[MotorYear]) -> Figure:
    """The months of the first motor: the others use nearly the same."""
    shown = years[0]
    others = {1: "none", 2: "one"}.get(len(years), "several")
    finding = pieces(TEMPLATE, "balance_title")(shown)
    note = pieces(TEMPLATE, "balance_note")(shown, others)
    motor = shown.option._key
    return Figure("season-balance", finding, note, lambda: season_balance(page, motor))
