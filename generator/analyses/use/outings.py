"""When does she leave, where does she lie, and who is on board, hour by hour?"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil

import numpy as np

from generator.analyses.motion.plant import passage_time
from generator.analyses.percentiles import first_row
from generator.analyses.year.weather import Sky
from generator.arrays import Array, Flags
from generator.case.case import Case
from generator.case.months import season_months
from generator.case.season import said_season
from generator.case.usage import Leg
from generator.physics.energy.climate import MONTH_OF_DAY
from generator.tables.method import method

DAYS, HOURS = 365, 8760
LEAVES = round(method("use.leaves") / 3600.0)  # hours of the day
FIRST_LIGHT = round(method("use.first_light") / 3600.0)
DUSK = round(method("use.dusk") / 3600.0)
BETWEEN = round(method("use.between_legs") / 3600.0)  # hours from one leg of a day to the next
A_DAY = method("use.longest_day")
SLOWEST_SHARE = method("use.slowest_share")
UNATTENDED, HARBOUR, ANCHOR, DAY_SAIL, PASSAGE, MOTORING = range(6)  # places in house.MODES


@dataclass(frozen=True)
class Departure:
    """One leg on the calendar: hour of the year and place of the leg in the case."""

    hour: int
    leg: int


@dataclass(frozen=True)
class Outings:
    """The year of the boat; (8760,) each."""

    season: tuple[int, ...]  # months in which she is used
    season_given: bool
    departures: tuple[Departure, ...]
    unplaced: int  # legs that found no room in the year
    mode: Array  # place in the modes of the house
    plugged: Flags
    sailing: Flags  # day sail: heeled, sails up
    example: int  # day of the outing nearest to midsummer


def outings(case: Case, sky: Sky) -> Outings:
    """Spread the outings over the season; legs of one day follow one another."""
    legs = tuple(first_row(leg) for leg in case.legs)
    said = said_season(case)
    season = said or _sunny_half(sky)
    mode = np.full(HOURS, float(UNATTENDED))
    plugged = np.full(HOURS, bool(case.berth.shore_power))
    sailing = np.zeros(HOURS, dtype=bool)
    departures: list[Departure] = []
    unplaced, free = 0, 0
    for day, wanted in sorted(_wanted(legs, season).items()):
        for leg in wanted:
            start = max(day * 24 + LEAVES, free)
            long = ceil(float(passage_time(legs[leg])) / SLOWEST_SHARE / 3600.0)
            home = _home(legs[leg], start, long)
            if home > HOURS:
                unplaced += 1
                continue
            departures.append(Departure(start, leg))
            _live_aboard(mode, plugged, sailing, legs[leg], (start, start + long, home))
            free = max(start + long + BETWEEN, home if legs[leg].nights_away else 0)
    summer = 196 if sky.latitude >= 0.0 else 15
    days = _fullest([departure.hour // 24 for departure in departures])
    return Outings(
        season=season,
        season_given=bool(said),
        departures=tuple(departures),
        unplaced=unplaced,
        mode=mode,
        plugged=plugged,
        sailing=sailing,
        example=min(days, key=lambda day: abs(day - summer), default=summer),
    )


def _fullest(days: list[int]) -> list[int]:
    """The days with most legs: an outing is shown whole, with its way home."""
    most = max((days.count(day) for day in days), default=0)
    return [day for day in days if days.count(day) == most]


def _sunny_half(sky: Sky) -> tuple[int, ...]:
    """The six months with most light above the air, in their order; in the tropics all."""
    top = sky.months.top
    if np.ptp(top) < 0.35 * top.mean():
        return tuple(range(12))
    halves = [sum(top[(first + step) % 12] for step in range(6)) for first in range(12)]
    first = int(np.argmax(halves))
    return tuple((first + step) % 12 for step in range(6))


def _wanted(legs: tuple[Leg, ...], season: tuple[int, ...]) -> dict[int, list[int]]:
    """Legs by day: each outing has days of its own, and its later legs join some of them.

    An outing is a leg that follows none, with those that follow it. Where the season has too few
    days for all, the outings made less often share days with the others.
    """
    by_day: dict[int, list[int]] = {}
    days_of: dict[int, Array] = {}
    first = [place for place, leg in enumerate(legs) if leg.follows is None]
    rest = [place for place, leg in enumerate(legs) if leg.follows is not None]
    for place in (*sorted(first, key=lambda place: -float(legs[place].times_per_year)), *rest):
        leg = legs[place]
        count = round(float(leg.times_per_year))
        if leg.follows is not None:
            days = days_of[leg.follows]
        else:
            days = _days(season_months(leg.season) if leg.season else season)
            free = days[~np.isin(days, list(by_day))]
            days = free if len(free) >= count else days
        days_of[place] = _even(days, count) if count else days[:0]
        for day in days_of[place].tolist():
            by_day.setdefault(int(day), []).append(place)
    return {day: sorted(found) for day, found in by_day.items()}


def _days(months: tuple[int, ...]) -> Array:
    return np.concatenate([np.flatnonzero(month == MONTH_OF_DAY) for month in months]).astype(float)


def _even(days: Array, count: int) -> Array:
    """``count`` of the days, evenly spread."""
    places = ((np.arange(count) + 0.5) * len(days) / count).astype(int)
    return np.asarray(days[places])


def _home(leg: Leg, start: int, long: int) -> int:
    """Hour at which she lies at her berth again."""
    nights = round(float(leg.nights_away))
    end = start + long
    return end if not nights else (end // 24 + nights) * 24 + DUSK - 2


def _live_aboard(
    mode: Array, plugged: Flags, sailing: Flags, leg: Leg, hours: tuple[int, int, int]
) -> None:
    """Fill in the day of a leg, the leg itself, and the nights after it."""
    start, end, home = hours
    morning, evening = start // 24 * 24 + FIRST_LIGHT, (end - 1) // 24 * 24 + DUSK
    away = slice(end, home)
    mode[away] = ANCHOR
    plugged[start : max(home, evening)] = False  # out for the day, whatever she motors of it
    by_day = slice(min(morning, start), max(evening, end))
    at_berth = mode[by_day] == UNATTENDED
    mode[by_day] = np.where(at_berth, DAY_SAIL, mode[by_day])
    if home > end:
        mode[end:home] = np.where(mode[end:home] == DAY_SAIL, ANCHOR, mode[end:home])
    underway = slice(start, end)
    long = float(passage_time(leg)) > A_DAY
    mode[underway] = PASSAGE if long else MOTORING
    sailing[by_day] = True
    night = slice(max(evening, end), min(max(evening, end) + 12, HOURS))
    quiet = (mode[night] == UNATTENDED) & (home <= max(evening, end))
    mode[night] = np.where(quiet, HARBOUR, mode[night])
