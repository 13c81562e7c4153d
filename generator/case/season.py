"""In which months is she used, by the owner's own words?"""

from __future__ import annotations

from generator.case.case import Case
from generator.case.months import season_months


def said_season(case: Case) -> tuple[int, ...]:
    """Her season as the owner names it, in its order; empty where he names none.

    Without one for the boat it is the shortest run of months that holds the seasons of all her
    outings, if each of them has one.
    """
    if case.planning.season:
        return season_months(case.planning.season)
    named = [leg.season for leg in case.legs if leg.follows is None]
    if not named or not all(named):
        return ()
    return _shortest_run({month for season in named for month in season_months(season)})


def used_months(case: Case) -> tuple[int, ...]:
    """Her season and the months of legs that are made outside of it; empty where none is named."""
    named = {month for leg in case.legs if leg.season for month in season_months(leg.season)}
    season = said_season(case)
    return tuple(sorted(named | set(season))) if season else ()


def _shortest_run(used: set[int]) -> tuple[int, ...]:
    """The months from one of those used to another, over the turn of the year if that is less."""

    def run_from(first: int) -> tuple[int, ...]:
        count = max((month - first) % 12 for month in used) + 1
        return tuple((first + step) % 12 for step in range(count))

    return min((run_from(month) for month in sorted(used)), key=len)
