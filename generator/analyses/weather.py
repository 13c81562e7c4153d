"""What sun, warmth and wind do her waters give, month by month and hour by hour?"""

from __future__ import annotations

from dataclasses import dataclass

from generator.arrays import Array

HOURS = 8760
DAYS = 365


@dataclass(frozen=True)
class Months:
    """Twelve mean months at her waters, (12,) each, and where they come from.

    ``sun`` and ``clear`` are J/m2 a day on the level, ``air`` and ``water`` degC, ``wind`` m/s
    at an anchorage. ``spread`` is the standard deviation of a day over the month's mean.
    """

    sun: Array
    clear: Array
    spread: Array
    air: Array
    water: Array
    wind: Array
    wind_shape: float
    sun_source: str  # case, weather file, grid
    sun_period: str
    air_source: str
    air_period: str
    year_doubt: float  # share, nine times in ten
    month_doubt: float
    notes: tuple[str, ...]


@dataclass(frozen=True)
class Weather:
    """Hours of many years, all of them with the means of the months.

    ``sun`` is W/m2 on the level, (8760, years); ``wind`` m/s at an anchorage, likewise. ``air``
    and ``water`` are degC, (8760,); ``cold`` is what single days are colder or warmer than the
    mean, (365, years). ``height`` and ``bearing`` of the sun are degrees, (8760,).
    """

    latitude: float
    longitude: float
    months: Months
    sun: Array
    wind: Array
    air: Array
    water: Array
    cold: Array
    height: Array
    bearing: Array

    @property
    def years(self) -> int:
        """How many years of weather there are."""
        return int(self.sun.shape[1])
