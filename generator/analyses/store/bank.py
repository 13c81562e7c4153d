"""What does the bank hold, keep back and have to give?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field

import numpy as np

from generator.analyses.motion.as_set import AsSet
from generator.analyses.motion.demand import Weather
from generator.analyses.motion.plant import controller_cut_off, house_drain, peak_drain
from generator.analyses.motion.power import at_points
from generator.analyses.percentiles import lacking_share, scalar, spread
from generator.analyses.store.ageing import Ageing
from generator.analyses.store.bank_state import (
    BankState,
    cells_of,
    cut_off,
    draws_current,
)
from generator.analyses.store.outfit import Outfit
from generator.analyses.weight.weight import Weight
from generator.arrays import Array, Numbers
from generator.case.option import Bank
from generator.physics.energy.battery import rate
from generator.physics.energy.cell import LEAD, charge_ceiling, charge_rate_limit
from generator.records import number, record, working
from generator.tables.cell_labels import cell_counts

LONGEST_TOLD = 999.0  # years; a bank that no leg draws on would last for ever by its cycles


@record
class BankAge:
    """The bank in one condition: new, at the age of the word, or last; per draw."""

    name: str
    after: float = number("years", "age of the bank")
    temperature: Numbers = number("temperature", "temperature of the cells", cautious="low")
    age: Numbers = number("share", "capacity left by age", cautious="low")
    capacity: Array = number("share", "capacity left by age and cold", cautious="low")
    resistance: Array = number("resistance", "resistance at half charge", cautious="high")
    peak_floor: Array = number("percent", "charge below which peak power ends", cautious="high")
    sag_floor: Array = number("percent", "floor that the power asked for sets", cautious="high")
    sag_and_gauge: Array = number("percent", "the same with the gauge's error", cautious="high")
    floor: Array = number("percent", "floor counted", cautious="high")
    usable: Array = number("energy", "usable above the floor", cautious="low")
    to_reserve: Array = number("energy", "left above the reserve", cautious="low")
    peak_current: Array = number("current", "current at peak, where it ends", cautious="high")
    peak_voltage: Array = number("voltage", "voltage at peak, where it ends", cautious="low")
    peak_held: Array = number("power", "power held at the floor", cautious="low")
    peak_reached: float = number("share", "chance that peak power is reached")
    absent: Mapping[str, str] = field(default_factory=dict)


@record
class BankResult:
    """Energy J, current A, rate 1/s, mass kg; arrays are per draw.

    Currents are those of the aged, cold bank: at half charge for cruise, for peak at the lowest
    charge that holds it. The floor is that of the greatest power which passages and reserve ask
    for; below ``peak_floor`` peak power is no longer there.
    """

    chemistry: str
    lead: bool
    floor_by: str  # sag (under the power asked for) or depth: what sets the floor of the aged bank
    limited_by: str  # calendar or cycles
    cells_by: str  # maker, label or usual: who tells how many cells are in series
    peak_never_held: bool  # old, cold and full, the bank does not give peak power
    several_strings: bool
    as_set: AsSet  # the motor within what this bank gives
    ages: tuple[BankAge, BankAge, BankAge]  # new, aged, last
    nominal_voltage: float = number("voltage", "voltage on the label")
    charge: float = number("charge", "charge on the label")
    nominal: float = number("energy", "nominal energy")
    usable: Numbers = number("energy", "usable, new", cautious="low")
    usable_aged: Numbers = number("energy", "usable, aged", cautious="low")
    available: Array = number("energy", "left for passages, new", cautious="low")
    available_aged: Array = number("energy", "left for passages, aged", cautious="low")
    mass: Numbers | None = number("mass", "mass of the bank", cautious="high")
    cruise_current: Array = number("current", "current at cruise", cautious="high")
    cruise_rate: Array = number("rate", "rate at cruise", cautious="high")
    peak_current: Array = number("current", "current at peak", cautious="high")
    peak_rate: Array = number("rate", "rate at peak", cautious="high")
    discharge_limit: Numbers = number("current", "limit of the bank", cautious="low")
    cells: int = number("count", "cells in series")
    ceiling: float = number("voltage", "highest voltage on charge")
    other_cells: int | None = number("count", "cells that the same label also names")
    other_ceiling: float | None = number("voltage", "highest voltage that those reach")
    strings: int = number("count", "strings side by side")
    blocks_in_series: int = number("count", "blocks in series")
    cut_off: Array = number("voltage", "voltage at which it is cut off", cautious="high")
    peak_power: Array = number("power", "peak power at the terminals", cautious="high")
    gauge_error: Numbers = number("percent", "error of the gauge", cautious="high")
    planned_floor: Numbers = number("percent", "left by the planned depth", cautious="high")
    coldest: Numbers = number("temperature", "coldest in use", cautious="low")
    cold: Array = number("share", "charge left by the cold", cautious="low")
    cold_charge: Array = number("current", "charge current at the coldest", cautious="low")
    cycles_per_year: Array = number("ratio", "full cycles a year", cautious="high")
    calendar_loss: Array = number("percent", "lost to the calendar", cautious="high")
    cycle_loss: Array = number("percent", "lost to cycles", cautious="high")
    life: Array = number("years", "years until a fifth is lost", cautious="low")
    cycle_life: Array = number("years", "years by cycles alone", cautious="low")
    published: Array | None = number("share", "left of a published cell", cautious="low")
    resting: Numbers = number("share", "state of charge at rest")
    rate_limit: Numbers = working()
    drive_current: Array = working()  # A at cruise, of the motor alone
    cold_charge_low: float = working()  # 1/s, rate at the tenth percentile of the coldest
    states: tuple[BankState, BankState, BankState] = working()  # new, aged, last
    aged: BankState = working()  # by which the motor is set
    left: tuple[Array, Array, Array] = working()  # J above the reserve in each of them
    ageing: Ageing = working()
    absent: Mapping[str, str] = field(default_factory=dict)


def bank_result(outfit: Outfit, weight: Weight, aged: Ageing | None) -> BankResult | None:
    """Energy above the reserve and the currents that cruise and peak power ask for."""
    case, option, held, kept = outfit.case, outfit.option, outfit.store, outfit.reserve
    bank, motor = option.bank, option.motor
    if bank is None or motor is None or aged is None:
        return None
    assert held.new is not None
    assert held.aged is not None
    assert held.last is not None
    assert outfit.power.as_set is not None
    cruise = np.atleast_2d(np.asarray(case.planning.cruise_speed))
    curve = at_points(case, option, outfit.power, outfit.scale, cruise, Weather(0.0, 1.0))
    cruise_current = draws_current(held.aged, curve.output.drain + house_drain(case, option))
    peak_current = held.aged.peak_current
    states = (held.new, held.aged, held.last)
    share = case.planning.reserve_share
    new, old, last = (
        np.maximum(state.usable - np.maximum(kept.demand, state.usable * share), 0.0)
        for state in states
    )
    left = (new, old, last)
    ages = tuple(_age(state, above) for state, above in zip(states, left, strict=True))
    cold, other = np.asarray(aged.aged.temperature), _other_count(bank)
    return BankResult(
        chemistry=bank.chemistry,
        lead=bank.chemistry in LEAD,
        floor_by=_floor_by(held.aged),
        cells_by=_cells_by(bank),
        limited_by="calendar" if _more(aged.calendar - aged.wear) else "cycles",
        peak_never_held=bool(scalar(spread(held.aged.peak_floor).middle) >= 1.0),
        several_strings=bank.blocks.parallel > 1,
        as_set=outfit.power.as_set,
        ages=(ages[0], ages[1], ages[2]),
        nominal_voltage=scalar(bank.nominal_voltage),
        charge=scalar(bank.charge),
        nominal=scalar(held.nominal),
        usable=held.usable,
        usable_aged=held.usable_aged,
        available=np.maximum(np.asarray(held.usable) - kept.of_new, 0.0),
        available_aged=np.maximum(np.asarray(held.usable_aged) - kept.of_aged, 0.0),
        mass=weight.bank_mass,
        cruise_current=cruise_current,
        cruise_rate=np.asarray(rate(cruise_current, bank.charge)),
        peak_current=peak_current,
        peak_rate=np.asarray(rate(peak_current, bank.charge)),
        discharge_limit=held.aged.limits.bank,
        cells=cells_of(bank),
        ceiling=charge_ceiling(bank.chemistry, cells_of(bank)),
        other_cells=other,
        other_ceiling=None if other is None else charge_ceiling(bank.chemistry, other),
        strings=bank.blocks.parallel,
        blocks_in_series=bank.blocks.series,
        cut_off=cut_off(bank, controller_cut_off(bank, motor)),
        peak_power=np.atleast_2d(np.asarray(peak_drain(motor, case.factors))),
        gauge_error=held.aged.gauge_error,
        planned_floor=held.aged.planned_floor,
        coldest=cold,
        cold=held.aged.cold_share,
        cold_charge=charge_rate_limit(bank.chemistry, cold) * np.asarray(bank.charge),
        cycles_per_year=aged.cycles,
        calendar_loss=aged.calendar,
        cycle_loss=aged.wear,
        life=aged.life,
        cycle_life=np.minimum(aged.cycle_years, LONGEST_TOLD),
        published=aged.published,
        resting=bank.resting_state,
        rate_limit=bank.cruise_rate_limit,
        drive_current=np.atleast_2d(draws_current(held.aged, curve.output.drain)),
        cold_charge_low=scalar(charge_rate_limit(bank.chemistry, spread(cold).low)),
        states=states,
        aged=held.aged,
        left=left,
        ageing=aged,
        absent={
            **dict.fromkeys(("cruise_current", "cruise_rate"), "cruise_not_given"),
            **dict.fromkeys(("peak_current", "peak_rate"), "peak_not_given"),
            **dict.fromkeys(("other_cells", "other_ceiling"), "one_count"),
            "mass": "not_weighed",
            **dict.fromkeys(("available", "available_aged"), "cannot_hold"),
            "published": "no_published_cell",
        },
    )


def _age(state: BankState, left: Array) -> BankAge:
    """One condition of the bank."""
    return BankAge(
        name=state.condition.name,
        after=state.condition.years,
        temperature=state.condition.temperature,
        age=state.condition.share,
        capacity=state.capacity,
        resistance=state.resistance_half,
        peak_floor=state.peak_floor,
        sag_floor=state.sag_floor,
        sag_and_gauge=np.minimum(state.sag_floor + np.asarray(state.gauge_error), 1.0),
        floor=state.floor,
        usable=state.usable,
        to_reserve=left,
        peak_current=state.peak_current,
        peak_voltage=state.peak_voltage,
        peak_held=state.floor_held,
        peak_reached=1.0 - lacking_share(state.peak_current),
        absent=dict.fromkeys(("peak_current", "peak_voltage"), "peak_not_given")
        | {"to_reserve": "cannot_hold"},
    )


def _cells_by(bank: Bank) -> str:
    """Who tells how many cells are in series: the maker, the label, or what is usual."""
    if bank.cells is not None or bank.end_of_charge is not None:
        return "maker"
    return "label" if _other_count(bank) is None else "usual"


def _other_count(bank: Bank) -> int | None:
    """The number of cells that is not taken, where the label fits two and nobody says which."""
    if bank.cells is not None or bank.end_of_charge is not None:
        return None
    counts = cell_counts(bank.chemistry, scalar(bank.nominal_voltage))
    return counts[1] if len(counts) > 1 else None


def _floor_by(aged: BankState) -> str:
    """Whether the power asked for or the planned depth sets the floor of the aged bank."""
    by_sag = aged.sag_floor + np.asarray(aged.gauge_error)
    sag = scalar(spread(by_sag - np.asarray(aged.planned_floor)).middle) > 0.0
    return "sag" if sag else "depth"


def _more(difference: Array) -> bool:
    return bool(scalar(spread(difference).middle) >= 0.0)
