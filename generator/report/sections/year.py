"""Part of the results: does the charge last through the year, and what does the sun carry?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.figures.season_balance import season_balance
from generator.report.figures.weekend import weekend
from generator.report.page import Page, joined
from generator.report.parts import (
    Figure,
    Part,
    Row,
    Table,
    numbers,
    reasons,
    without_columns,
    without_empty,
    words,
)

SOURCES = {
    "grid": "the world grid of {weather.sun_period|given} at her position",
    "weather file": "the months of the weather file",
    "case": "the twelve values of the case",
}
MONTH = (
    ("sun_day_kwh_m2", "sunshine:bare"), ("sun_kwh", "energy:bare"), ("sun_dim_kwh", "energy:bare"),
    ("house_kwh", "energy:bare"), ("motor_kwh", "energy:bare"), ("shore_kwh", "energy:bare"),
    ("lowest_charge_pct", "percent:bare"),
)  # fmt: skip
ALONE = (
    ("daily_kwh", "energy:bare"), ("noon_speed_kn", "speed:bare"), ("distance_nm", "distance:bare"),
    ("distance_off_nm", "distance:bare"),
    ("refill_days_d", "days:bare"), ("refill_off_days_d", "days:bare"),
)  # fmt: skip


def part(page: Page) -> Part:
    """What the year brings by option, the months in plain words, and the sun alone."""
    motors = [motor for motor in page.motors if page.value(f"{motor}.energy_year")]
    if not motors:
        return Part("year", "")
    shown = next((m for m in motors if page.value(f"{m}.sun_only")), motors[0])
    text = [_weather(page, shown), *(_year(page, motor) for motor in motors), _house(page, shown)]
    if page.value(f"{shown}.sun_only"):
        text.append(_alone(page, shown))
    figures = (_balance(page, shown), _weekend(page, motors))
    tables = (_months(page, shown), *_alone_table(page, shown))
    return Part("year", "Sun, house and the year", tuple(text), figures, tables)


def _weather(page: Page, shown: str) -> Markup:
    source, year = SOURCES[page.value("weather.sun_source")], f"{shown}.energy_year"
    whose = "by the owner’s own words" if page.value(f"{year}.season_given") else (
        "the lightest months, for the case names no season"
    )  # fmt: skip
    file = " {weather.file|given}" if page.value("weather.file") else ""
    return page.text(
        f"The sun comes from {source}{file}: {{weather.year_kwh_m2|sunshine}} a year on the level, "
        "to be trusted to {weather.year_doubt_pct|percent} of a year and "
        "{weather.month_doubt_pct|percent} of a month. {weather.years|count} years of days that "
        "scatter as they do there were run hour by hour, with a bank half way through its life and "
        "legs in ordinary weather; the worst leg is judged under Legs. Cold days down to "
        "{weather.cold_snap_k|count} K below the month are in it. She is used from "
        f"{{{year}.season_from|given}} to {{{year}.season_to|given}}, {whose}."
    )


def _year(page: Page, motor: str) -> Markup:
    """What became of legs, charge, plug and genset."""
    year = f"{motor}.energy_year"
    sentence = (
        f"{{{motor}.name|given}}: of {{{year}.legs_wanted|count}} legs a year {_legs(page, year)}; "
        "she uses "
        f"{{{year}.motor_kwh|energy}} for the motor and {{{year}.house_kwh|energy}} for the house "
        f"and takes {{{year}.shore_wall_kwh|energy}} from the wall, in {{{year}.cycles|ratio}} "
        f"cycles of the bank, house included. {{{year}.governing_month|given}} governs, when her "
        f"charge falls lowest, to {{{_governing(page, year)}.lowest_charge_pct|percent}}"
    )
    hours = page.value(f"{year}.below_reserve_h")
    sentence += f", with {{{year}.below_reserve_h|hours}} below the reserve." if hours else "."
    if page.value(f"{year}.genset_fuel_l"):
        sentence += f" The genset burns {{{year}.genset_fuel_l|fuel}}."
    if page.value(f"{year}.cold_worst_h"):
        sentence += (
            f" The bank is too cold to be charged for {{{year}.cold_h|hours}}, and for "
            f"{{{year}.cold_worst_h|hours}} in the worst year."
        )
    return page.text(sentence)


def _governing(page: Page, year: str) -> str | None:
    """The month of the table that the year is named by."""
    return page.find(f"{year}.months", month=page.value(f"{year}.governing_month"))


def _legs(page: Page, year: str) -> str:
    """How many legs went how."""
    if page.value(f"{year}.legs_made") == page.value(f"{year}.legs_wanted"):
        return "all are made at the owner’s speed"
    return (
        f"{{{year}.legs_made|mean_count}} are made at the owner’s speed, "
        f"{{{year}.legs_slowed|mean_count}} slower and {{{year}.legs_refused|mean_count}} refused "
        "for want of charge"
    )


def _house(page: Page, motor: str) -> Markup:
    """What the diesel gave beside propulsion."""
    anchor = "house_loads.modes.2"
    said = page.text(
        "The diesel’s alternator gave the house about {house_loads.alternator_kwh|energy} a year; "
        "now all of it comes from the bank. At anchor the house draws "
        f"{{{anchor}.consumers_w|watts}} day and night, and its converter "
        f"{{{anchor}.loss_w|watts}} more."
    )
    lost = page.value("house_loads.lost_services") or []
    if not lost:
        return said
    named = joined([page.words(f"house_loads.lost_services.{n}") for n in range(len(lost))], ", ")
    return (
        said
        + Markup(" Not in these sums, and no longer given by an engine: ")
        + named
        + page.text("; by electricity it would come on top.")
    )


def _alone(page: Page, motor: str) -> Markup:
    sun = f"{motor}.sun_only"
    return page.text(
        f"By the sun alone, {{{motor}.name|given}} makes {{{sun}.best.distance_nm|distance}} a day "
        f"in {{{sun}.best.month|given}} and {{{sun}.worst.distance_nm|distance}} in "
        f"{{{sun}.worst.month|given}} once the house has its {{{sun}.house_daily_kwh|energy}}, and "
        f"{{{sun}.best.distance_off_nm|distance}} and {{{sun}.worst.distance_off_nm|distance}} "
        f"with the house off, at {{{sun}.slow_speed_kn|speed}}; of what rating and "
        f"sunshine promise, {{{sun}.performance_pct|percent}} reaches the bank."
    )


def _balance(page: Page, motor: str) -> Figure:
    months = [row for row in page.keys(f"{motor}.energy_year.months")]
    most = max(months, key=lambda key: page.value(f"{key}.used_kwh"))
    asks = (
        f"{{{motor}.name|given}}: {{{most}.month|given}} asks most, "
        f"{{{most}.used_kwh|energy}} for motor and house, "
    )
    given = f"{{{most}.shore_kwh|energy}} from the plug with its losses; no panels are aboard."
    told = "{weather.years|count} years of weather."
    if page.value(f"{motor}.energy_year.panels_w"):
        given = (
            f"and the sun gives {{{most}.sun_kwh|energy}}, {{{most}.sun_dim_kwh|energy}} in the "
            "dimmest quarter of years"
        )
        given += _spilled(page, f"{motor}.energy_year")
        told = (
            f"{{weather.years|count}} years of weather; {{{motor}.energy_year.panels_w|watts}} of "
            "panels; sun that finds the bank full is counted as given."
        )
    finding, note = page.text(asks + given), page.text(told)
    return Figure("season-balance", finding, note, lambda: season_balance(page, motor))


def _spilled(page: Page, year: str) -> str:
    """What the panels of a year give to a bank that is full."""
    if not page.value(f"{year}.spilled_kwh"):
        return "."
    return (
        f"; of {{{year}.sun_kwh|energy}} a year {{{year}.spilled_kwh|energy}} find the bank full "
        "and are lost."
    )


def _weekend(page: Page, motors: list[str]) -> Figure:
    first = f"{motors[0]}.energy_year"
    lowest = {
        motor: min(
            page.keys(f"{motor}.energy_year.example"),
            key=lambda key: float(page.value(f"{key}.charge_pct")),
        )
        for motor in motors
    }
    found = "; ".join(
        f"{{{motor}.name|given}} {{{key}.charge_pct|percent}}" for motor, key in lowest.items()
    )
    finding = page.text(
        f"Around the outing of {{{first}.example_day|given}} the charge falls to: {found}."
    )
    note = page.text(
        "Hours from midnight before the outing; band: eight tenths of "
        "{weather.years|count} years of weather; dashed: the reserve."
    )
    return Figure("weekend", finding, note, lambda: weekend(page))


def _months(page: Page, motor: str) -> Table:
    energy = page.unit("energy")
    columns = (
        words("Month", 12), numbers("Sun a day", 9, page.unit("sunshine")),
        numbers("Panels", 8, energy), numbers("Dim years", 8, energy), numbers("House", 8, energy),
        numbers("Motor", 8, energy), numbers("Plug", 8, energy), numbers("Low charge", 8, "%"),
        words("In words", 31),
    )  # fmt: skip
    rows = tuple(
        _month(page, key, f"weather.months.{number}")
        for number, key in enumerate(page.keys(f"{motor}.energy_year.months"))
    )
    caption = page.text(
        f"The months of {{{motor}.name|given}}: energy of the month at the bank, and the charge "
        "below which one hour in a hundred lies. Every option is in energy_year_months.csv"
    )
    table = Table("year-months", caption, columns, rows, (), "long")
    if page.value(f"{motor}.energy_year.panels_w"):
        return table
    return without_columns(table, ("Sun a day", "Panels", "Dim years"))


def _month(page: Page, key: str, weather: str) -> Row:
    cells = [
        page.show(f"{weather if name.startswith('sun_day') else key}.{name}", form)
        for name, form in MONTH
    ]
    return Row(page.words(f"{key}.month"), (*cells, page.words(f"{key}.told")))


def _alone_table(page: Page, motor: str) -> tuple[Table, ...]:
    """Speed, miles and days by the sun alone; none without panels."""
    sun = f"{motor}.sun_only"
    if not page.value(sun):
        return ()
    keys = page.keys(f"{sun}.months")
    columns = (
        words("Month", 20), numbers("A day", 16, page.unit("energy")),
        numbers("Speed in full sun", 16, page.unit("speed")),
        numbers("A day’s run, house on", 14, page.unit("distance")),
        numbers("House off", 10, page.unit("distance")),
        numbers("Days to refill, house on", 14), numbers("House off", 10),
    )  # fmt: skip
    rows = tuple(
        Row(page.words(f"{key}.month"), tuple(page.show(f"{key}.{n}", form) for n, form in ALONE))
        for key in keys
    )
    caption = page.text(
        f"The sun alone, {{{motor}.name|given}}: house load under way "
        f"{{{sun}.house_under_way_w|watts}}; refilled at anchor are {{{sun}.half_kwh|energy}}, "
        f"half of the bank, with the house at {{{sun}.house_daily_kwh|energy}} a day"
    )
    used = [f"{key}.{name}" for key in keys for name, _ in ALONE]
    table = Table("sun-alone", caption, columns, rows, reasons(page, used), "long")
    return (without_empty(table),)
