"""Which months does a season of the case file name?"""

from __future__ import annotations

MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September",
    "October", "November", "December",
)  # fmt: skip


def season_months(season: str) -> tuple[int, ...]:
    """Places 0 to 11 of the months from first to last, over the turn of the year if need be."""
    first, last = (MONTHS.index(name) for name in season.split(" to "))
    count = (last - first) % 12 + 1
    return tuple((first + step) % 12 for step in range(count))
