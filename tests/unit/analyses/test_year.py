"""The year of a small case: legs, house, sources, cold, and what the page is told."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from pathlib import Path
from typing import Any, NamedTuple

import numpy as np
import pytest

from generator.analyses.findings import Findings
from generator.analyses.use.departures import OptionYear
from generator.analyses.use.outings import MOTORING, UNATTENDED, Departure, Outings, outings
from generator.analyses.year.climate import climate
from generator.analyses.year.energy_year import EnergyYear
from generator.analyses.year.house import MODES, HouseLoads, house
from generator.analyses.year.weather import Sky, weather, weather_years
from generator.analyses.year.year import Year, years
from generator.case.case import Case
from generator.case.months import MONTHS
from generator.case.open import read_case
from generator.draws import drawn, make_draws
from generator.physics.energy.climate import MONTH_LENGTHS, MONTH_OF_DAY, month_days
from generator.report.results_file import build
from generator.study import run
from tests.alone import alone
from tests.unit.case.faulty import changed
from tests.unit.case.weather_text import energyplus

KILOWATT_HOUR = 3.6e6
HOURS, YEARS = 8760, 2
PLACE = "country: DK\n  latitude: 55.7\n  longitude: 12.6"
PLUG = ("shore_power: false", "shore_power: true\n  breaker: 10 A\n  voltage: 230 V")
BANK = "    bank: {chemistry: LFP, nominal_voltage: 51.2 V, charge: 300 Ah}\n"


def case_of(folder: str, *exchanges: tuple[str, str], place: str = PLACE) -> Case:
    path = Path(folder) / "boat.yaml"
    path.write_text(changed(("country: DK", place), *exchanges), encoding="utf-8")
    return read_case(path)


class Around(NamedTuple):
    """What all options live in."""

    loads: HouseLoads
    sky: Sky
    times: Outings


@lru_cache(maxsize=16)
def around(folder: str, *exchanges: tuple[str, str], place: str = PLACE) -> Around:
    """As the study makes it, before any option."""
    case = case_of(folder, *exchanges, place=place)
    moved = drawn(case, make_draws(case, 0))
    sky = weather(moved)
    assert sky is not None
    times = outings(moved, sky)
    assert times is not None
    return Around(house(moved), sky, times)


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> str:
    return str(tmp_path_factory.mktemp("year"))


@lru_cache(maxsize=16)
def found(folder: str, *exchanges: tuple[str, str]) -> Findings:
    """Of the battery option, studied alone."""
    return alone(case_of(folder, *exchanges), 2, 0, year=True).findings


def year_of(folder: str, *exchanges: tuple[str, str]) -> Year:
    year = found(folder, *exchanges).year
    assert year is not None
    return year


def supplied(text: str) -> tuple[str, str]:
    return BANK, f"{BANK}    supply: {text}\n"


def calendar(hours: tuple[int, ...] = (4000,), plugged: bool = False) -> Outings:
    return Outings(
        season=(5,), season_given=True, departures=tuple(Departure(hour, 0) for hour in hours),
        unplaced=0, mode=np.zeros(HOURS), plugged=np.full(HOURS, plugged),
        sailing=np.zeros(HOURS, dtype=bool), example=166,
    )  # fmt: skip


@lru_cache(maxsize=1)
def sky() -> Sky:
    return weather_years((55.7, 12.6), (), None, YEARS)


def plain(**changes: Any) -> OptionYear:
    """10 kWh above the floor, 2 kWh reserve, one leg of 5 kWh in two hours, no source."""
    base = OptionYear(
        place=0, capacity=12.0 * KILOWATT_HOUR, floor=2.0 * KILOWATT_HOUR,
        reserve=2.0 * KILOWATT_HOUR, leg_energy=np.array([[5.0, 4.0, 3.0]]) * KILOWATT_HOUR,
        leg_time=np.array([[2.0, 2.5, 3.0]]) * 3600.0, house=np.zeros(HOURS),
        sun=np.zeros((HOURS, YEARS)), wind=np.zeros((365, YEARS)), screw=np.zeros(HOURS),
        plug=0.0, plug_efficiency=0.9, most=np.full((365, YEARS), 5e3), taper=1.0,
        efficiency=1.0, genset=(0.0, 0.0, 0.0),
    )  # fmt: skip
    return replace(base, **changes)


def ran(option: OptionYear, times: Outings) -> Year:
    return years((option,), sky(), times)[0]


def test_legs_go_then_slow_down_then_stay_as_the_bank_runs_down() -> None:
    """Ten above the floor, two kept: five for the first leg leaves five, so three for the next."""
    times = calendar((4000, 4100, 4200))
    year = ran(plain(), times)
    legs = year.legs[0]
    # The year ends lower than it began, so it is run again from there, where nothing is left.
    assert (legs.made[0], legs.slowed[0], legs.refused[0]) == (0, 0, 3)
    good = ran(plain(plug=1e3), replace(times, plugged=np.arange(HOURS) < 3990))
    assert (good.legs[0].made[0], good.legs[0].slowed[0], good.legs[0].refused[0]) == (1, 1, 1)
    assert good.uses["motor"].sum(axis=0) == pytest.approx(8.0 * KILOWATT_HOUR)
    assert good.sources["shore"].sum(axis=0) == pytest.approx(8.0 * KILOWATT_HOUR)
    assert good.shore_wall == pytest.approx(8.0 * KILOWATT_HOUR / 0.9)
    assert good.hours_below_reserve == pytest.approx(0.0)
    assert good.cycles == pytest.approx(8.0 / 12.0)


def test_a_leg_that_cannot_be_held_is_refused() -> None:
    never = np.full((1, 3), np.nan)
    year = ran(plain(leg_energy=never, leg_time=never, plug=1e3), calendar(plugged=True))
    assert year.legs[0].refused == pytest.approx(1.0)


def test_house_of_a_bank_without_source_runs_empty_and_is_told() -> None:
    year = ran(plain(house=np.full(HOURS, 10.0)), calendar(()))
    used = 10.0 * HOURS * 3600.0
    assert year.unserved.sum(axis=0) == pytest.approx(used)  # run again from empty
    assert year.state[-1] == pytest.approx(2.0 / 12.0)
    assert year.hours_below_reserve == pytest.approx(HOURS)


def test_cold_locks_the_plug_out() -> None:
    most = np.full((365, YEARS), 5e3)
    most[:31] = 0.0
    year = ran(plain(most=most, plug=1e3, house=np.full(HOURS, 1.0)), calendar((100,), True))
    assert year.hours_cold == pytest.approx(31 * 24.0)
    assert year.state[120:700].max() < 1.0
    assert year.state[800] == pytest.approx(1.0)
    assert year.unserved.sum() == pytest.approx(0.0)  # the plug serves the house


def test_a_genset_runs_between_its_charges_and_burns_by_its_line() -> None:
    """2 kW of load without end, 3 kW of genset: it must run two hours in three."""
    option = plain(
        house=np.full(HOURS, 2000.0), genset=(3000.0, 3 * KILOWATT_HOUR, 8 * KILOWATT_HOUR)
    )
    year = ran(option, calendar(()))
    ran_hours = year.sources["genset"].sum(axis=0) / (3.0 * KILOWATT_HOUR)
    assert ran_hours == pytest.approx(HOURS * 2.0 / 3.0, rel=0.01)
    litres = (0.246 * 3.0 + 0.08145 * 3.0) * ran_hours
    assert year.fuel * 1e3 == pytest.approx(litres, rel=1e-6)
    assert year.unserved.sum() == pytest.approx(0.0)


def test_every_hour_of_the_example_balances_to_a_millionth(folder: str) -> None:
    year = year_of(folder, supplied(
        "{panels: [{name: p, power: 400 W}], genset: {power: 2 kW}, regeneration: true, "
        "wind: {rotor_diameter: 1.1 m}}"
    ))  # fmt: skip
    assert year.imbalance <= 1e-6
    came = sum(year.sources.values()) - year.spilled + year.unserved
    went = sum(year.uses.values())
    stored = (year.state[-1] - year.state[0]) * year.capacity
    assert (came - went).sum(axis=0) == pytest.approx(stored, abs=0.2 * KILOWATT_HOUR)


def test_more_panels_ask_less_of_the_plug(folder: str) -> None:
    few = year_of(folder, PLUG, supplied("{panels: [{name: p, power: 100 W}]}"))
    many = year_of(folder, PLUG, supplied("{panels: [{name: p, power: 800 W}]}"))
    assert many.sources["sun"] == pytest.approx(8.0 * few.sources["sun"], rel=0.02)
    assert (many.shore_wall < few.shore_wall).all()


def test_wind_is_counted_by_its_own_law(folder: str) -> None:
    """The mean of the cube, not the cube of the mean: more than twice as much here."""
    windy = found(folder, supplied("{wind: {rotor_diameter: 1.1 m, rated_power: 4 kW}}"))
    assert windy.panels is not None
    assert windy.year is not None
    speed = around(folder).sky.wind
    of_mean = 0.5 * 1.225 * np.pi / 4 * 1.1**2 * 0.25 * speed.mean() ** 3
    assert windy.panels.wind.mean() > 2.0 * of_mean


def test_without_a_plug_nothing_comes_from_the_wall(folder: str) -> None:
    year = year_of(folder)
    assert year.shore_wall.max() == 0.0
    assert sum(leg.refused.sum() for leg in year.legs) > 0.0


def test_legs_lie_in_their_season_and_follow_the_times_a_year(folder: str) -> None:
    summer = ("sailable: true", "sailable: true\n    season: July to August")
    times = around(folder, summer).times
    assert times.unplaced == 0
    days = np.array([departure.hour // 24 for departure in times.departures])
    assert len(days) == 20
    assert set(MONTH_OF_DAY[days].tolist()) == {6, 7}
    assert (times.mode[[d.hour for d in times.departures]] == MOTORING).all()
    assert not times.plugged[[d.hour for d in times.departures]].any()
    assert times.mode[0] == UNATTENDED


def test_nights_away_are_nights_without_a_plug(folder: str) -> None:
    times = around(folder, PLUG, ("sailable: true", "sailable: true\n    nights_away: 2")).times
    away = HOURS - times.plugged.sum()
    assert away >= 20 * 2 * 24


def test_season_is_the_sunny_half_in_the_south_too_and_the_whole_year_in_the_tropics(
    folder: str,
) -> None:
    def season(latitude: float) -> tuple[int, ...]:
        return around(folder, place=PLACE.replace("55.7", f"{latitude}")).times.season

    assert season(55.7) == (3, 4, 5, 6, 7, 8)
    assert season(-36.7) == (9, 10, 11, 0, 1, 2)
    assert season(5.0) == tuple(range(12))


def test_house_of_a_mode_is_its_day_through_the_converter(folder: str) -> None:
    """0.9 kWh at anchor is 37.5 W, at 92 % 40.8 W, and 5 W for the converter: 45.8 W."""
    loads = around(folder).loads
    assert loads.power[MODES.index("anchor")] == pytest.approx(45.76, abs=0.01)
    cooked = around(folder, ("separate_bank: ", "cooking: 1.2 kWh\n  separate_bank: ")).loads
    more = 1.2e3 / 24.0 / 0.92 + 15.0
    assert cooked.power[2] - loads.power[2] == pytest.approx(more, abs=0.01)


def test_days_of_a_month_keep_its_mean() -> None:
    months = np.array([1.0, 2.0, 4.0, 6.0, 7.5, 8.0, 7.6, 6.5, 4.4, 2.6, 1.3, 0.8])
    days = month_days(months)
    found = np.bincount(MONTH_OF_DAY, days) / MONTH_LENGTHS
    assert found == pytest.approx(months)


@pytest.mark.parametrize("place", [(55.7, 12.6), (-36.7, 174.9), (10.0, -61.0), (69.6, 18.9)])
def test_years_of_weather_have_the_months_they_were_made_from(place: tuple[float, float]) -> None:
    made = weather_years(place, (), None, 25)
    for month in range(12):
        days = month == MONTH_OF_DAY
        assert made.days[days].mean() == pytest.approx(made.months.sun[month], rel=1e-9)
    by_hour = made.sun.reshape(365, 24, 25).sum(axis=1) * 3600.0
    assert by_hour == pytest.approx(made.days, abs=1.0)
    assert made.sun.min() >= 0.0


def test_own_months_come_before_the_grid(folder: str) -> None:
    values = (1, 2, 3, 4, 5, 6, 6, 5, 4, 3, 2, 1)
    told = ", ".join(f"{value} kWh/m2" for value in values)
    sky = around(folder, place=f"{PLACE}\n  sun: [{told}]").sky
    assert sky.months.sun_source == "case"
    assert sky.months.sun / KILOWATT_HOUR == pytest.approx(values)


def test_a_weather_file_gives_the_months_and_the_place(tmp_path: Path) -> None:
    (tmp_path / "quay.epw").write_text(energyplus(), encoding="utf-8")
    path = tmp_path / "boat.yaml"
    path.write_text(changed(("country: DK", "country: DK\n  weather_file: quay.epw")), "utf-8")
    case = read_case(path)
    sky = weather(drawn(case, make_draws(case, 0)))
    assert sky is not None
    assert case.weather is not None
    assert (sky.months.sun_source, sky.latitude) == ("weather file", 51.6)
    assert sky.days.mean() == pytest.approx(case.weather.sun.mean() * 86400.0)


def test_without_a_position_there_is_no_year_and_the_results_say_why(tmp_path: Path) -> None:
    path = tmp_path / "boat.yaml"
    path.write_text(changed(), encoding="utf-8")
    case = read_case(path)
    tree = build(case, run(case, make_draws(case, 0)))
    assert tree["weather"] is None
    assert tree["options"][2]["energy_year"] is None
    assert "latitude" in tree["options"][2]["energy_year_why"]


def test_results_tell_months_legs_and_sums(folder: str) -> None:
    case = case_of(folder, supplied("{panels: [{name: p, power: 350 W}]}"))
    tree = build(case, run(case, make_draws(case, 0)))
    year = tree["options"][2]["energy_year"]
    assert len(year["months"]) == 12
    total = sum(row["used_kwh"] for row in year["months"])
    assert total == pytest.approx(year["motor_kwh"] + year["house_kwh"])
    assert year["legs_wanted"] == 20
    told = {row["month"]: row["words"] for row in year["months"]}
    assert told["December"] == "sun falls short, bank runs empty"
    assert told["March"] == "sun covers house"


def months_of(folder: str, *exchanges: tuple[str, str]) -> EnergyYear:
    sums = found(folder, *exchanges).energy_year
    assert sums is not None
    return sums


def test_a_month_has_the_middle_and_the_quarters_of_its_years(folder: str) -> None:
    """Of an odd number of years the middle one is one of them, and so are the quarters of 25."""
    panels = supplied("{panels: [{name: p, power: 350 W}]}")
    sums, year = months_of(folder, panels), year_of(folder, panels)
    june, sun = sums.months[5], np.sort(year.sources["sun"][5])
    assert sun.size == 25
    assert [june.sun_dim, june.sun, june.sun_bright] == pytest.approx([sun[6], sun[12], sun[18]])
    assert june.used == june.house + june.motor
    assert sums.house == pytest.approx(sum(month.house for month in sums.months))


def test_the_charge_around_an_outing_is_that_of_its_years(folder: str) -> None:
    """The example begins twelve hours before midnight of its day, and holds three days."""
    sums, year = months_of(folder), year_of(folder)
    course = sums.example
    assert course.hour[[0, 12, -1]].tolist() == [-43200.0, 0.0, 59 * 3600.0]
    number, month = sums.example_day.split()
    day = int(np.flatnonzero(MONTHS.index(month) == MONTH_OF_DAY)[0]) + int(number) - 1
    assert course.charge[1:, 12] == pytest.approx(year.state[day * 24])


def test_hours_of_the_year_are_told_in_hours(folder: str) -> None:
    """Kept as seconds; the worst year is no shorter than the mean one."""
    sums, year = months_of(folder), year_of(folder)
    assert sums.below_reserve / 3600.0 == pytest.approx(year.hours_below_reserve.mean())
    assert sums.cold / 3600.0 == pytest.approx(year.hours_cold.mean())
    assert sums.cold_worst >= sums.cold


def test_a_month_without_a_number_says_why(folder: str) -> None:
    """In December at 55.7 N the house takes more than 350 W of panels give."""
    case = case_of(folder, supplied("{panels: [{name: p, power: 350 W}]}"))
    tree = build(case, run(case, make_draws(case, 0)))
    december = tree["options"][2]["sun_only"]["months"][11]
    assert december["refill_d"] is None
    assert december["refill_why"] == "the house takes all that the panels give"
    assert december["refill_off_d"] > 0.0


def test_the_climate_is_that_of_the_sky(folder: str) -> None:
    """A year on the level is the days of its months; a month is as doubtful as its source."""
    sky = around(folder).sky
    found = climate(sky)
    assert found is not None
    assert found.year == pytest.approx(sum(sky.months.sun * MONTH_LENGTHS))
    assert found.latitude == pytest.approx(np.radians(55.7))
    june = found.months[5]
    assert june.month == "June"
    assert june.sun_day_low / june.sun_day == pytest.approx(1.0 - found.month_doubt)
    assert june.sun_day_high + june.sun_day_low == pytest.approx(2.0 * june.sun_day)
    assert climate(None) is None
