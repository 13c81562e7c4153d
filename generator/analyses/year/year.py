"""How does a year go, hour by hour: is there charge when she wants to leave, and from where?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.use.departures import LegYear, Motoring, OptionYear
from generator.analyses.use.outings import Outings
from generator.analyses.year.weather import Sky
from generator.arrays import Array
from generator.physics.energy.charge_year import (
    Charging,
    Course,
    Flows,
    Machine,
    charge_course,
)
from generator.physics.energy.climate import MONTH_LENGTHS
from generator.physics.energy.genset import genset_fuel

SOURCES = ("sun", "wind", "screw", "shore", "genset")
USES = ("motor", "house", "charging losses")
HOUR, HOURS, DAYS = 3600.0, 8760, 365
WEEKS = 52
AGAIN = 0.01  # of full: a year that ends further from where it began is run once more
THREE_IN_FOUR = 0.25  # quantile that three years in four exceed


@dataclass(frozen=True)
class Year:
    """One option over many years of weather; energy J at the terminals of the bank.

    ``sources`` and ``uses`` are (12, years) by name, ``spilled`` and ``unserved`` likewise: sun
    that found the bank full, load that found it empty. ``state`` is charge over capacity at the
    beginning of every hour, (8760, years). The weeks are (52, years).
    """

    place: int
    capacity: float
    floor: float
    reserve: float
    state: Array
    sources: dict[str, Array]
    uses: dict[str, Array]
    spilled: Array
    unserved: Array
    legs: tuple[LegYear, ...]
    hours_below_reserve: Array  # (years,)
    hours_cold: Array  # in which the bank takes no charge
    shore_wall: Array  # J from the wall
    fuel: Array  # m3 of the genset
    cycles: Array  # charge through the bank over its capacity
    governing_month: int  # 0 to 11, that with the least charge in its emptiest hours
    months_alone: tuple[int, ...]  # sun covers motor and house, three years in four
    weekly_sun: Array  # what the panels can give
    weekly_house: Array
    weekly_legs: Array  # what the legs would take at the owner's speed, (52,)
    imbalance: float  # greatest error of an hour's energy balance, over capacity


def years(options: tuple[OptionYear, ...], sky: Sky, times: Outings) -> tuple[Year, ...]:
    """Run all options through all years of weather at once."""
    if not options:
        return ()
    flows = _flows(options, sky, times)
    charging = _charging(options, sky)
    full = np.broadcast_to(charging.full, flows.own.shape[1:])
    machine = _machine(options)
    motoring = Motoring(options, flows, times)
    course = charge_course(flows, charging, full, machine, motoring.hooks())
    end = course.state[-1]
    if np.abs(end - full).max() > AGAIN * full.max():
        motoring = motoring.afresh()
        course = charge_course(flows, charging, end, machine, motoring.hooks())
    return tuple(
        _year(
            _books(number, option, flows, course, motoring),
            times,
            tuple(motoring.counts(leg, number) for leg in range(len(option.leg_energy))),
        )
        for number, option in enumerate(options)
    )


def _flows(options: tuple[OptionYear, ...], sky: Sky, times: Outings) -> Flows:
    shape = (HOURS, len(options), sky.years)
    own, plug, load = np.empty(shape), np.empty(shape), np.empty(shape)
    for number, option in enumerate(options):
        own[:, number] = (option.sun + option.screw[:, np.newaxis]) * HOUR
        if option.wind.any():
            own[:, number] += np.repeat(option.wind, 24, axis=0) * HOUR
        plug[:, number] = (times.plugged * option.plug * HOUR)[:, np.newaxis]
        load[:, number] = (option.house * HOUR)[:, np.newaxis]
    return Flows(own, plug, load)


def _charging(options: tuple[OptionYear, ...], sky: Sky) -> Charging:
    def column(*values: float) -> Array:
        return np.array(values)[:, np.newaxis]

    return Charging(
        full=column(*(option.capacity - option.floor for option in options)),
        most=np.stack([option.most * HOUR for option in options], axis=1),
        taper=column(*(option.taper for option in options)),
        efficiency=column(*(option.efficiency for option in options)),
    )


def _machine(options: tuple[OptionYear, ...]) -> Machine | None:
    table = np.array([option.genset for option in options]).T[:, :, np.newaxis]
    if not table[0].any():
        return None
    return Machine(power=table[0] * HOUR, start=table[1], stop=table[2])


def _monthly(hours: Array) -> Array:
    starts = np.concatenate([[0], np.cumsum(MONTH_LENGTHS)[:-1]]) * 24
    return np.asarray(np.add.reduceat(hours, starts, axis=0))


def _weekly(hours: Array) -> Array:
    weeks = hours[: WEEKS * 168]
    return np.asarray(weeks.reshape(WEEKS, 168, *weeks.shape[1:]).sum(axis=1))


@dataclass(frozen=True)
class _Books:
    """Every flow of one option by the hour, (8760, years) [J]; states one more."""

    option: OptionYear
    state: Array  # above the floor
    own: Array
    plug: Array
    machine: Array
    spilled: Array
    unserved: Array
    lost: Array
    motor: Array
    house: Array


def _books(
    number: int, option: OptionYear, flows: Flows, course: Course, motoring: Motoring
) -> _Books:
    motor, plug = motoring.drawn[:, number], course.plug[:, number]
    machine = course.machine[:, min(number, course.machine.shape[1] - 1)]
    return _Books(
        option=option,
        state=course.state[:, number],
        own=flows.own[:, number],
        plug=plug,
        machine=np.broadcast_to(machine, plug.shape),
        spilled=course.spilled[:, number],
        unserved=course.unserved[:, number],
        lost=course.lost[:, number],
        motor=motor,
        house=flows.load[:, number] - motor,
    )


def _year(books: _Books, times: Outings, legs: tuple[LegYear, ...]) -> Year:
    option, state = books.option, books.state[:-1]
    sources = _sources(books)
    uses = {
        "motor": _monthly(books.motor),
        "house": _monthly(books.house),
        "charging losses": _monthly(books.lost),
    }
    moved, burnt = np.diff(books.state, axis=0), books.machine / HOUR
    return Year(
        place=option.place,
        capacity=option.capacity,
        floor=option.floor,
        reserve=option.reserve,
        state=(state + option.floor) / option.capacity,
        sources=sources,
        uses=uses,
        spilled=_monthly(books.spilled),
        unserved=_monthly(books.unserved),
        legs=legs,
        hours_below_reserve=(state < option.reserve * (1.0 - 1e-9)).sum(axis=0).astype(float),
        hours_cold=(option.most <= 0.0).sum(axis=0) * 24.0,
        shore_wall=books.plug.sum(axis=0) / option.plug_efficiency,
        fuel=genset_fuel(burnt, option.genset[0]).sum(axis=0) * HOUR,
        cycles=np.maximum(-moved, 0.0).sum(axis=0) / option.capacity,
        governing_month=_governing(state),
        months_alone=_alone(sources["sun"] * option.efficiency, uses["motor"] + uses["house"]),
        weekly_sun=_weekly(option.sun * HOUR),
        weekly_house=_weekly(books.house),
        weekly_legs=_legs_by_week(option, times),
        imbalance=_imbalance(books),
    )


def _sources(books: _Books) -> dict[str, Array]:
    """Energy by month and source; that of the panels with what was spilled."""
    option = books.option
    screw = np.broadcast_to((option.screw * HOUR)[:, np.newaxis], books.plug.shape)
    return {
        "sun": _monthly(option.sun * HOUR),
        "wind": _monthly(np.repeat(option.wind, 24, axis=0) * HOUR),
        "screw": _monthly(screw),
        "shore": _monthly(books.plug),
        "genset": _monthly(books.machine),
    }


def _alone(sun: Array, used: Array) -> tuple[int, ...]:
    """Months in which the sun of three years in four covers what three years in four use."""
    dim = np.quantile(sun, THREE_IN_FOUR, axis=1)
    asked = np.quantile(used, 1.0 - THREE_IN_FOUR, axis=1)
    return tuple(np.flatnonzero(dim >= asked).tolist())


def _governing(state: Array) -> int:
    """The month whose emptiest hours, one in a hundred, are the emptiest."""
    ends = np.cumsum(MONTH_LENGTHS)[:-1] * 24
    low = [float(np.quantile(part, 0.01)) for part in np.split(state, ends)]
    return int(np.argmin(low))


def _legs_by_week(option: OptionYear, times: Outings) -> Array:
    weeks = np.zeros(WEEKS)
    for departure in times.departures:
        need = option.leg_energy[departure.leg, 0]
        # lacking: a leg that cannot be done is not left for, and takes nothing in its week
        weeks[min(departure.hour // 168, WEEKS - 1)] += 0.0 if np.isnan(need) else need
    return weeks


def _imbalance(books: _Books) -> float:
    """What the flows of an hour leave unexplained of the change of charge."""
    came = books.own - books.spilled + books.plug + books.machine
    went = books.motor + books.house - books.unserved + books.lost
    return float(np.abs(np.diff(books.state, axis=0) - came + went).max() / books.option.capacity)
