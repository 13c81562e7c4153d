"""What do years and cycles leave of the bank, and which of the two decides?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.motion.demand import Scale, Weather
from generator.analyses.motion.hull import Vessel
from generator.analyses.motion.plant import house_drain, passage_time
from generator.analyses.motion.power import on_hull
from generator.analyses.percentiles import scalar, side_by_side, spread
from generator.analyses.store.bank_state import Condition
from generator.analyses.store.cold_months import coldest
from generator.arrays import Array, Numbers
from generator.case.case import Case
from generator.case.option import Bank, Option
from generator.physics.energy.ageing import (
    LOST_AT_END,
    calendar_loss,
    cycle_loss,
    iron_phosphate_calendar_loss,
    iron_phosphate_cycle_loss,
)
from generator.physics.energy.battery import nominal_energy
from generator.tables.method import method

YEAR = 365.0 * 86400.0  # s
WORD_AT = method("judging.age")  # years: the age of the bank that the word is for
LONGEST = 40  # years that a life is looked for


@dataclass(frozen=True)
class Ageing:
    """Shares of capacity lost at the end of the horizon, and the conditions to look at."""

    cycles: Array  # full cycles a year
    calendar: Array  # lost by rest until the horizon
    wear: Array  # lost by cycles until the horizon
    life: Array  # years until a fifth is lost
    cycle_years: Array  # years until the cycles alone would wear it out
    published: Array | None  # share left by the published cell itself, iron phosphate only
    new: Condition
    aged: Condition  # at the age that the word is for
    last: Condition  # at the end of the horizon


def ageing(
    case: Case, option: Option, hull: Vessel, scale: Scale, at: float | None = None
) -> Ageing | None:
    """Age the bank by the calendar and by the owner's legs.

    ``at`` years is the age to be judged; without it that of the word, or half-way to the renewal
    of a bank that lasts less than twice as long.
    """
    bank = option.bank
    if bank is None:
        return None
    nominal = np.asarray(nominal_energy(bank.nominal_voltage, bank.charge))
    cycles = _yearly_energy(case, option, hull, scale, nominal) / nominal
    horizon = float(case.prices.horizon)
    calendar, wear = _losses(case, bank, cycles, horizon)
    season, cold = case.waters.temperature, coldest(case)
    life = _life(case, bank, cycles)
    word_at = min(WORD_AT, 0.5 * scalar(spread(life).middle), horizon)
    return Ageing(
        cycles=cycles,
        calendar=calendar,
        wear=wear,
        life=life,
        cycle_years=np.asarray(bank.cycle_life / np.maximum(cycles, 1e-9)),
        published=_published(case, bank, cycles, horizon),
        new=Condition("new", 0.0, 1.0, 1.0, season),
        aged=_condition(case, bank, cycles, "aged", word_at if at is None else at, cold),
        last=_condition(case, bank, cycles, "last", horizon, cold),
    )


def _yearly_energy(case: Case, option: Option, hull: Vessel, scale: Scale, nominal: Array) -> Array:
    """What the owner's legs draw in a year of ordinary weather [J].

    No passage takes more than the bank holds: one that cannot be motored wears it like that.
    """
    if not case.legs:
        return np.zeros((1, 1))
    speeds = side_by_side(*(leg.speed for leg in case.legs))
    calm = on_hull(case, option, hull, None, scale, speeds, Weather(0.0, 1.0))
    drain = np.atleast_2d(calm.output.drain) + house_drain(case, option)
    hours = side_by_side(*(leg.times_per_year * passage_time(leg) for leg in case.legs))
    times = side_by_side(*(leg.times_per_year for leg in case.legs))
    return _worn_by(drain * hours, times * np.atleast_2d(nominal))


def _worn_by(yearly: Array, emptied: Array) -> Array:
    """Sum over the legs; a leg without a value wears the bank as if each passage emptied it."""
    # lacking: the sum must stand, for all else rests on it, and no passage can wear her more
    filled = np.where(np.isnan(yearly), emptied, yearly)
    return np.asarray(filled.sum(axis=1, keepdims=True))


def _losses(case: Case, bank: Bank, cycles: Array, years: float | Array) -> tuple[Array, Array]:
    """Shares lost by rest and by cycles after some years."""
    warm, time = case.waters.temperature + bank.above_water, np.asarray(years) * YEAR
    life = np.asarray(bank.calendar_life) * YEAR
    rest = calendar_loss(bank.chemistry, time, life, warm, bank.resting_state)
    return rest, cycle_loss(cycles * years, bank.cycle_life)


def _condition(
    case: Case, bank: Bank, cycles: Array, name: str, years: float, temperature: Numbers
) -> Condition:
    """Capacity and resistance after some years; a worn bank is replaced, not nursed."""
    if bank.aged_share is not None:
        lost = (1.0 - np.asarray(bank.aged_share)) * years / float(case.prices.horizon)
    else:
        rest, wear = _losses(case, bank, cycles, years)
        lost = np.minimum(rest + wear, LOST_AT_END)
    growth = 1.0 + np.asarray(bank.resistance_growth) * lost / LOST_AT_END
    return Condition(name, years, np.asarray(1.0 - lost), np.asarray(growth), temperature)


def _life(case: Case, bank: Bank, cycles: Array) -> Array:
    """Years until a fifth of the capacity is gone, whole years joined by straight lines."""
    years = np.arange(LONGEST + 1.0)
    rest, wear = _losses(case, bank, cycles, years)
    lost = np.atleast_2d(rest + wear)
    over = lost >= LOST_AT_END
    first = np.where(over.any(axis=1), np.argmax(over, axis=1), LONGEST)[:, np.newaxis]
    below, above = (np.take_along_axis(lost, np.maximum(first + step, 0), 1) for step in (-1, 0))
    share = np.clip((LOST_AT_END - below) / np.where(above > below, above - below, 1.0), 0.0, 1.0)
    return np.asarray(first - 1.0 + share)


def _published(case: Case, bank: Bank, cycles: Array, years: float) -> Array | None:
    """Share left by the published cell as it stands, for comparison."""
    if bank.chemistry != "LFP":
        return None
    warm = case.waters.temperature + bank.above_water
    rest = iron_phosphate_calendar_loss(years * YEAR, warm, bank.resting_state)
    wear = iron_phosphate_cycle_loss(cycles * years, warm, bank.usable_share, 2.0 * cycles / YEAR)
    return np.asarray(1.0 - rest - wear)
