"""What does the year of one option come to: its sums, months, legs, and three days of it?"""

from __future__ import annotations

import numpy as np

from generator.analyses.use.departures import LegYear
from generator.analyses.use.outings import Outings
from generator.analyses.year.panel_yield import PanelYield
from generator.analyses.year.year import Year
from generator.arrays import Array
from generator.case.case import Case
from generator.case.months import MONTHS
from generator.physics.energy.climate import MONTH_LENGTHS
from generator.records import number, record

HOUR = 3600.0  # s
DIM, BRIGHT = 0.25, 0.75  # quantiles over the years of weather
LOWEST = 0.01  # of the hours of a month
EMPTY = 0.01  # of what motor and house ask for: below it nobody notices
STARTS = np.cumsum((0, *MONTH_LENGTHS))
BEFORE, SHOWN = 12, 72  # hours before the day of the example, and hours shown


@record
class YearMonth:
    """One month: means over the years of weather, but for the sun, whose middle year is told.

    ``carried`` by the sun: no_panels, all (motor and house), house or short.
    """

    SAID_BY, SAID_IN = "year_month", "year"
    month: str
    carried: str
    motored: bool
    runs_empty: bool
    plugged: bool
    sun: float = number("energy", "sun on the panels, middle year")
    sun_dim: float = number("energy", "sun on the panels, dimmest quarter")
    sun_bright: float = number("energy", "sun on the panels, brightest quarter")
    wind: float = number("energy", "from the wind generator")
    screw: float = number("energy", "from the turning screw")
    genset: float = number("energy", "from the genset")
    shore: float = number("energy", "from the plug")
    house: float = number("energy", "house")
    motor: float = number("energy", "motor")
    used: float = number("energy", "motor and house")
    spilled: float = number("energy", "sun that finds the bank full")
    lowest_charge: float = number("percent", "charge of its emptiest hours")


@record
class YearLeg:
    """How often a leg is wanted and made in a mean year."""

    name: str
    wanted: int = number("count", "times wanted")
    made: float = number("mean_count", "times made at the owner’s speed")
    slowed: float = number("mean_count", "times made slower")
    refused: float = number("mean_count", "times refused for want of charge")
    refused_worst: float = number("mean_count", "times refused in the worst year")


@record
class ChargeCourse:
    """Three days around an outing; rows of ``charge`` are the years, their mean first."""

    ALONG = "hour"
    hour: Array = number("hours", "time from midnight before the outing")
    charge: Array = number("percent", "charge of the bank", cautious="low")


@record
class EnergyYear:
    """A mean year at the terminals of the bank; the bank is half way through its life."""

    season_from: str
    season_to: str
    season_given: bool
    governing_month: str
    months: tuple[YearMonth, ...]
    legs: tuple[YearLeg, ...]
    example: ChargeCourse
    example_day: str
    panels: float = number("watts", "panels, as rated")
    capacity: float = number("energy", "capacity half way through its life")
    floor: float = number("percent", "floor of the bank")
    reserve_line: float = number("percent", "charge at which the reserve begins")
    legs_wanted: int = number("count", "legs wanted")
    legs_unplaced: int = number("count", "legs that the year has no room for")
    legs_made: float = number("mean_count", "legs made at the owner’s speed")
    legs_slowed: float = number("mean_count", "legs made slower")
    legs_refused: float = number("mean_count", "legs refused for want of charge")
    legs_refused_worst: float = number("mean_count", "legs refused in the worst year")
    sun: float = number("energy", "sunshine on the panels")
    wind: float = number("energy", "from the wind generator")
    screw: float = number("energy", "from the turning propeller")
    shore: float = number("energy", "shore power into the battery")
    genset: float = number("energy", "from the genset")
    motor: float = number("energy", "energy used by the motor")
    house: float = number("energy", "energy used by the house")
    charging_losses: float = number("energy", "losses of charging")
    spilled: float = number("energy", "surplus that finds the battery full")
    unserved: float = number("energy", "load that finds the bank empty")
    shore_wall: float = number("energy", "energy bought at the berth")
    genset_fuel: float = number("fuel", "fuel of the genset")
    below_reserve: float = number("hours", "time below the reserve")
    cold: float = number("hours", "time too cold to be charged")
    cold_worst: float = number("hours", "time too cold, worst year")
    cycles: float = number("ratio", "cycles of the bank, house included")
    mean_charge: float = number("percent", "mean charge")


def energy_year(case: Case, year: Year, panels: PanelYield, times: Outings) -> EnergyYear:
    """Sums over the years of weather of what was followed hour by hour."""
    refused = sum((leg.refused for leg in year.legs), np.zeros(1))
    return EnergyYear(
        season_from=MONTHS[times.season[0]],
        season_to=MONTHS[times.season[-1]],
        season_given=times.season_given,
        governing_month=MONTHS[year.governing_month],
        months=tuple(_month(year, panels, month) for month in range(12)),
        legs=tuple(_leg(leg.name, own) for leg, own in zip(case.legs, year.legs, strict=True)),
        example=_example(year, times.example),
        example_day=_date(times.example),
        panels=panels.rated,
        capacity=year.capacity,
        floor=year.floor / year.capacity,
        reserve_line=(year.floor + year.reserve) / year.capacity,
        legs_wanted=sum(leg.wanted for leg in year.legs),
        legs_unplaced=times.unplaced,
        legs_made=sum(float(leg.made.mean()) for leg in year.legs),
        legs_slowed=sum(float(leg.slowed.mean()) for leg in year.legs),
        legs_refused=sum(float(leg.refused.mean()) for leg in year.legs),
        legs_refused_worst=float(refused.max()),
        **_totals(year),
        shore_wall=float(year.shore_wall.mean()),
        genset_fuel=float(year.fuel.mean()),
        below_reserve=float(year.hours_below_reserve.mean()) * HOUR,
        cold=float(year.hours_cold.mean()) * HOUR,
        cold_worst=float(year.hours_cold.max()) * HOUR,
        cycles=float(year.cycles.mean()),
        mean_charge=float(year.state.mean()),
    )


def _totals(year: Year) -> dict[str, float]:
    """Energy of a mean year by source and use."""
    flows = {**year.sources, **year.uses, "spilled": year.spilled, "unserved": year.unserved}
    return {
        name.replace(" ", "_"): float(values.sum(axis=0).mean()) for name, values in flows.items()
    }


def _month(year: Year, panels: PanelYield, month: int) -> YearMonth:
    sun = year.sources["sun"][month]
    dim = float(np.quantile(sun, DIM))
    wind, screw, genset, shore = (
        float(year.sources[name][month].mean()) for name in ("wind", "screw", "genset", "shore")
    )
    house, motor = (float(year.uses[name][month].mean()) for name in ("house", "motor"))
    alone = month in year.months_alone
    carried = "all" if alone else "house" if dim >= house else "short"
    unserved = float(year.unserved[month].mean())
    state = year.state[STARTS[month] * 24 : STARTS[month + 1] * 24]
    return YearMonth(
        month=MONTHS[month],
        carried=carried if panels.rated else "no_panels",
        motored=motor > 0.0,
        runs_empty=unserved > EMPTY * (house + motor),
        plugged=shore > 0.0 and not alone,
        sun=float(np.quantile(sun, 0.5)),
        sun_dim=dim,
        sun_bright=float(np.quantile(sun, BRIGHT)),
        wind=wind,
        screw=screw,
        genset=genset,
        shore=shore,
        house=house,
        motor=motor,
        used=house + motor,
        spilled=float(year.spilled[month].mean()),
        lowest_charge=float(np.quantile(state, LOWEST)),
    )


def _leg(name: str, leg: LegYear) -> YearLeg:
    return YearLeg(
        name=name,
        wanted=leg.wanted,
        made=float(leg.made.mean()),
        slowed=float(leg.slowed.mean()),
        refused=float(leg.refused.mean()),
        refused_worst=float(leg.refused.max()),
    )


def _date(day: int) -> str:
    month = int(np.searchsorted(STARTS, day, side="right")) - 1
    return f"{day - int(STARTS[month]) + 1} {MONTHS[month]}"


def _example(year: Year, day: int) -> ChargeCourse:
    """Three days around an outing: charge by the hour."""
    first = max(day * 24 - BEFORE, 0)
    charge = year.state[first : first + SHOWN].T
    hours = np.arange(charge.shape[1], dtype=np.float64) - BEFORE
    return ChargeCourse(np.asarray(hours * HOUR), np.vstack([charge.mean(axis=0), charge]))
