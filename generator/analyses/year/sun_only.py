"""How fast, how far and how soon by the sun alone, month by month?"""

from __future__ import annotations

from collections.abc import Mapping
from typing import ClassVar

import numpy as np

from generator.analyses.motion.plant import within
from generator.analyses.motion.power import Power
from generator.analyses.year.house import HouseLoads
from generator.analyses.year.panel_yield import PanelYield
from generator.analyses.year.year import Year
from generator.arrays import Array
from generator.case.months import MONTHS
from generator.records import number, record
from generator.tables.method import method

HALF = 0.5  # of the bank, for the days at anchor
DAY = 86400.0  # s
LEAST_THROUGH = method("passage.least_through_water")
ANCHOR, MOTORING = 2, 5  # places in the modes of the house
DIM = 0.25  # quantile of the years and days that is told beside the mean


REASONS = {
    "noon_speed": "below_the_curve",
    "refill": "house_takes_the_sun",
    "refill_off": "panels_give_nothing",
}


@record
class SunMonth:
    """One month, by the best estimate; nan where the panels cannot.

    ``noon_speed`` is held in the brightest hour of a clear day, the house served first;
    ``distance`` is a day's at the slow speed, after a day of the house. Refilled at anchor is half
    of the bank, with the house load and with it off.
    """

    month: str
    daily: float = number("energy", "from the panels, a day")
    daily_dim: float = number("energy", "a day of the dimmest quarter")
    noon: float = number("watts", "power of a clear noon")
    noon_speed: float = number("speed", "speed in full sun")
    distance: float = number("distance", "a day’s run, house on")
    distance_off: float = number("distance", "a day’s run, house off")
    refill: float = number("days", "time to refill, house on")
    refill_off: float = number("days", "time to refill, house off")
    absent: ClassVar[Mapping[str, str]] = REASONS


@record
class SunOnly:
    """What the panels alone do, by the best estimate.

    ``slow_speed`` is that of least energy a mile at which she is steered, ``slow_drain`` its power
    without the house.
    """

    months: tuple[SunMonth, ...]
    best: SunMonth
    worst: SunMonth
    slow_speed: float = number("speed", "speed of least energy a mile")
    slow_drain: float = number("watts", "power at that speed")
    half: float = number("energy", "half of the bank")
    house_daily: float = number("energy", "house at anchor, a day")
    house_under_way: float = number("watts", "house under way")
    performance: float = number("percent", "share of rating and sunshine that arrives")


def sun_only(
    found: Power, panels: PanelYield, loads: HouseLoads, year: Year, efficiency: float
) -> SunOnly | None:
    """Read the calm curve at the power that the panels give; none where no speed is held."""
    curve = found.curves["calm"]
    fits = np.atleast_2d(within(curve.output.load, curve.demand.feasible))[0]
    if not fits.any():
        return None
    speed, drain = found.speed[fits], np.atleast_2d(curve.output.drain)[0][fits]
    house, anchored = float(loads.power[MOTORING]), float(loads.power[ANCHOR]) * DAY
    steered = speed >= min(LEAST_THROUGH, float(speed[-1])) - 1e-9
    slow = int(np.argmin(np.where(steered, (drain + house) / speed, np.inf)))
    daily = panels.monthly.mean(axis=1)
    half = HALF * year.capacity
    return _told(
        {
            "daily": daily,
            "daily_dim": np.quantile(panels.monthly, DIM, axis=1),
            "noon": panels.noon,
            "noon_speed": np.interp(panels.noon - house, drain, speed, left=np.nan),
            "distance": np.maximum(daily * efficiency - anchored, 0.0) / drain[slow] * speed[slow],
            "distance_off": daily * efficiency / drain[slow] * speed[slow],
            "refill": _time(half, daily * efficiency - anchored),
            "refill_off": _time(half, daily * efficiency),
        },
        slow_speed=float(speed[slow]),
        slow_drain=float(drain[slow]),
        half=half,
        house_daily=anchored,
        house_under_way=house,
        performance=panels.performance,
    )


def _told(columns: Mapping[str, Array], **whole: float) -> SunOnly:
    """Month by month, the best and the worst again beside them."""
    months = tuple(
        SunMonth(name, **{key: float(values[place]) for key, values in columns.items()})
        for place, name in enumerate(MONTHS)
    )
    daily = columns["daily"]
    return SunOnly(months, months[int(np.argmax(daily))], months[int(np.argmin(daily))], **whole)


def _time(half: float, net: Array) -> Array:
    """How long a net yield of so much a day takes [s]."""
    return np.asarray(np.divide(half * DAY, net, out=np.full(12, np.nan), where=net > 0.0))
