"""Which values about weather, sources and the calendar of a year cannot hold together?"""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from generator.case.check import Finding, si
from generator.case.files.weather_file import DAYS_BEFORE, Refusal, WeatherFile
from generator.case.leaf import Given
from generator.case.months import MONTHS, season_months
from generator.case.said import Place
from generator.case.schema import CaseKeys, OptionKeys

HOUR = 3600.0  # s
MONTH, YEAR = 730.0, 8760.0  # h
SEASONS_FROM = 25.0  # degrees of latitude: nearer the equator summer has no more sun than winter
AWAY = 5.0  # degrees between the boat and the station of a weather file
WEATHER = ("waters", "weather_file")


def find_year_contradictions(
    case: CaseKeys, weather: WeatherFile | Refusal | None
) -> Iterator[Finding]:
    """All faults between keys that the energy year uses."""
    yield from _place(case)
    yield from _months(case)
    yield from _calendar(case)
    if weather is not None:
        yield from _weather(case, weather)
    for number, option in enumerate(case.options):
        yield from _sources(option, ("options", number, "supply"))


def _place(case: CaseKeys) -> Iterator[Finding]:
    """Half a position."""
    pair = {"latitude": case.waters.latitude, "longitude": case.waters.longitude}
    for name, other in (("latitude", "longitude"), ("longitude", "latitude")):
        if pair[other] and name not in case.waters.model_fields_set:
            hope = f"expected the {name} that goes with {other} {_shown(pair[other])}"
            yield Finding(("waters", name), "is missing", hope)
    if case.waters.sun and not pair["latitude"] and not case.waters.weather_file:
        yield Finding(("waters", "latitude"), "is missing", "expected it beside waters.sun")


def _months(case: CaseKeys) -> Iterator[Finding]:
    """Sunshine of more or fewer than twelve months, or of the other half of the world."""
    sun = case.waters.sun
    if not sun:
        return
    if len(sun) != len(MONTHS):
        problem = f"has {len(sun)} months"
        yield Finding(("waters", "sun"), problem, "expected 12, January first")
    elif _turned(si(case.waters.latitude), [si(given) for given in sun]):
        problem = f"has more sun in winter than in summer at {_shown(case.waters.latitude)}"
        yield Finding(("waters", "sun"), problem, "expected the months of her own hemisphere")


def _turned(latitude: float, sun: list[float]) -> bool:
    """Whether winter is brighter than summer, where that cannot be."""
    june, december = sum(sun[4:8]), sum(sun[10:] + sun[:2])
    north = latitude > 0.0
    return abs(latitude) >= SEASONS_FROM and (june < december if north else june > december)


def _weather(case: CaseKeys, found: WeatherFile | Refusal) -> Iterator[Finding]:
    """A weather file that cannot be read, has gaps, or belongs to another place."""
    if isinstance(found, Refusal):
        yield Finding(WEATHER, f"{case.waters.weather_file} {found.problem}", found.expected)
        return
    days = np.split(found.sun, DAYS_BEFORE[1:] * 24)
    monthly = [float(month.mean()) for month in days]
    if _turned(found.latitude, monthly):
        problem = f"{found.name} has more sun in winter than in summer at {found.latitude:.1f}"
        yield Finding(WEATHER, problem, "expected a file that is not turned upside down")
    latitude, longitude = si(case.waters.latitude), si(case.waters.longitude)
    where = f"{found.name} is of {found.place} at {found.latitude:.1f}, {found.longitude:.1f}"
    if latitude * found.latitude < 0.0:
        hope = f"expected a file of her own hemisphere, latitude {_shown(case.waters.latitude)}"
        yield Finding(WEATHER, where, hope)
    elif max(abs(latitude - found.latitude), abs(longitude - found.longitude)) > AWAY:
        yield Finding(WEATHER, where, f"expected a station within {AWAY:g} degrees of her")


def _calendar(case: CaseKeys) -> Iterator[Finding]:
    """More hours of legs, or nights away, than the year or the season of a leg has."""
    total = 0.0
    for number, leg in enumerate(case.legs):
        hours = si(leg.times_per_year) * si(leg.distance) / si(leg.speed) / HOUR
        nights = si(leg.times_per_year) * (leg.nights_away.value if leg.nights_away else 0.0)
        spent = hours + 24.0 * nights
        total += spent if spent == spent else 0.0
        months = season_months(leg.season) if leg.season else range(12)
        if spent > MONTH * len(months):
            problem = f"makes {spent:,.0f} h of passages and nights away a year"
            hope = f"expected at most the {MONTH * len(months):,.0f} h of its season"
            yield Finding(("legs", number, "times_per_year"), problem, hope)
    if total > YEAR:
        problem = f"make {total:,.0f} h of passages and nights away a year"
        yield Finding(("legs",), problem, "expected at most the 8,760 h that a year has")
    under_sail = case.planning.sailing_time
    if under_sail and under_sail.value > YEAR * HOUR:
        hope = "expected at most the 8,760 h that a year has"
        yield Finding(("planning", "sailing_time"), f"is {under_sail.shown}", hope)


def _sources(option: OptionKeys, place: Place) -> Iterator[Finding]:
    """Sources of a plant that has no use for them, or that cannot run as told."""
    supply = option.supply
    if option.kind not in (None, "battery") and "supply" in option.model_fields_set:
        hope = f"expected none for an option of kind {option.kind}"
        yield Finding(place, "is given", hope)
    start, stop = supply.genset.start, supply.genset.stop
    if start and stop and start.value >= stop.value:
        problem = f"is {start.shown}, no lower than stop"
        yield Finding((*place, "genset", "start"), problem, "expected less than stop")


def _shown(given: Given | None) -> str:
    return given.shown if given else ""
