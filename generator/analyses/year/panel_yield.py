"""What do an option's panels and its wind generator give, hour by hour?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.percentiles import first_row
from generator.analyses.year.weather import Sky
from generator.arrays import Array
from generator.case.option import Option
from generator.case.supply import PanelGroup
from generator.physics.energy.climate import MONTH_LENGTHS, MONTH_OF_DAY, month_days
from generator.physics.energy.sun import cell_temperature, light_on_panel, panel_power
from generator.physics.energy.wind_generator import wind_power

DAYS, HOURS = 365, 8760


@dataclass(frozen=True)
class PanelYield:
    """Power into the bank by the best estimate [W]; what heel takes is a share of it.

    ``sun`` is (8760, years) at anchor, ``wind`` (365, years). ``noon`` is (12,): the brightest
    hour of a clear day. ``monthly`` is J a day, (12, years).
    """

    rated: float  # W of all panels
    sun: Array
    wind: Array
    under_way: float  # share of the yield that is left under sail
    noon: Array
    monthly: Array
    performance: float  # yield over rated power times the sun on the level
    factor: Array  # per draw: shade over its best estimate, (draws, 1)


def panel_yield(option: Option, sky: Sky) -> PanelYield | None:
    """None for an option without a bank."""
    supply = option.supply
    if option.bank is None or supply is None:
        return None
    groups = [first_row(group) for group in supply.panels]
    air = np.repeat(month_days(sky.months.air), 24)[:, np.newaxis]
    wind = np.repeat(month_days(sky.months.wind), 24)[:, np.newaxis]
    power = np.zeros_like(sky.sun)
    clear, kept = np.zeros(HOURS), 0.0
    for group in groups:
        power += _group(group, sky, sky.sun, air, wind)
        clear += _group(group, sky, sky.path.clear[:, np.newaxis], air, wind)[:, 0]
        kept += float(group.power * group.under_way)
    rated = float(sum(group.power for group in groups))
    days = power.reshape(DAYS, 24, -1).sum(axis=1) * 3600.0
    sunshine = sky.days.sum() / 1000.0 * rated
    return PanelYield(
        rated=rated,
        sun=power,
        wind=_wind(option, sky),
        under_way=kept / rated if rated else 1.0,
        noon=_noon(clear),
        monthly=np.array([days[month == MONTH_OF_DAY].mean(axis=0) for month in range(12)]),
        performance=float(days.sum() / sunshine) if rated else 0.0,
        factor=_factor(option),
    )


def _group(group: PanelGroup, sky: Sky, sun: Array, air: Array, wind: Array) -> Array:
    """One group of panels in one light."""
    heading = None if group.heading is None else float(group.heading)
    light = light_on_panel(sun, sky.path, float(group.tilt), heading)
    kept = float(group.shading * group.salt * group.conversion)
    cells = cell_temperature(light * group.shading * group.salt, air, wind, group.mounting)
    return panel_power(group.power, light, cells, group.heat_loss, kept)


def _noon(clear: Array) -> Array:
    """Brightest hour of the middle day of each month."""
    middle = np.cumsum(MONTH_LENGTHS) - MONTH_LENGTHS // 2 - 1
    return np.asarray(clear.reshape(DAYS, 24)[middle].max(axis=1))


def _factor(option: Option) -> Array:
    """What the doubt of shade and conversion makes of the yield, by power of the groups."""
    assert option.supply is not None
    drawn, best = np.zeros((1, 1)), 0.0
    for group in option.supply.panels:
        kept = np.atleast_2d(group.power * group.shading * group.salt * group.conversion)
        drawn, best = drawn + kept, best + float(kept.flat[0])
    return drawn / best if best else np.ones((1, 1))


def _wind(option: Option, sky: Sky) -> Array:
    """Mean power of each day; the hours of a day are taken alike."""
    machine = option.supply.wind if option.supply else None
    if machine is None:
        return np.zeros_like(sky.wind)
    known = first_row(machine)
    return wind_power(
        sky.wind, known.rotor_diameter, known.efficiency, known.cut_in, known.rated_power
    )
