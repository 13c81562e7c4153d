"""How fast, how far and how soon by the sun alone, month by month?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.motion.plant import within
from generator.analyses.motion.power import Power
from generator.analyses.year.house import HouseLoads
from generator.analyses.year.panel_yield import PanelYield
from generator.analyses.year.year import Year
from generator.arrays import Array
from generator.tables.method import method

HALF = 0.5  # of the bank, for the days at anchor
DAY = 86400.0  # s
LEAST_THROUGH = method("passage.least_through_water")
ANCHOR, MOTORING = 2, 5  # places in the modes of the house
DIM = 0.25  # quantile of the years and days that is told beside the mean


@dataclass(frozen=True)
class SunOnly:
    """What the panels alone do, by the best estimate, (12,) by month; nan where they cannot.

    ``noon_speed`` m/s is held by the panels in the brightest hour of a clear day, the house
    served first; ``distance`` m a day at ``slow_speed``, the speed of least energy a mile at
    which she is steered, after a day of the house, ``distance_off`` with the house off.
    ``refill`` and ``refill_off`` are days at anchor to give back half of the bank, with
    the house load and with it off.
    """

    daily: Array  # J a day, mean
    dim: Array  # J a day, of the dimmest quarter of the years
    noon_power: Array  # W
    noon_speed: Array
    slow_speed: float
    slow_drain: float  # W at that speed, without the house
    distance: Array
    distance_off: Array
    refill: Array
    refill_off: Array
    half: float  # J
    house_daily: float  # J a day at anchor, off the bank
    house_under_way: float  # W


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
    return SunOnly(
        daily=daily,
        dim=np.quantile(panels.monthly, DIM, axis=1),
        noon_power=panels.noon,
        noon_speed=np.interp(panels.noon - house, drain, speed, left=np.nan),
        slow_speed=float(speed[slow]),
        slow_drain=float(drain[slow]),
        distance=np.maximum(daily * efficiency - anchored, 0.0) / drain[slow] * speed[slow],
        distance_off=daily * efficiency / drain[slow] * speed[slow],
        refill=_days(half, daily * efficiency - anchored),
        refill_off=_days(half, daily * efficiency),
        half=half,
        house_daily=anchored,
        house_under_way=house,
    )


def _days(half: float, net: Array) -> Array:
    return np.asarray(np.divide(half, net, out=np.full(12, np.nan), where=net > 0.0))
