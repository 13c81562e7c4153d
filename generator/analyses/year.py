"""How does a year go, hour by hour: is there charge when she wants to leave, and from where?"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil

import numpy as np

from generator.analyses.outings import Departure, Outings
from generator.analyses.weather import Sky
from generator.arrays import Array
from generator.physics.energy.charge_year import (
    Charging,
    Course,
    Flows,
    Hook,
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
class OptionYear:
    """What one option brings to the year, its best estimate. J, W, s.

    ``leg_energy`` and ``leg_time`` are (legs, speeds), at the owner's speed first, then slower;
    nan where it cannot be done. ``house`` is by hour, ``sun`` and ``wind`` by hour and year.
    """

    place: int  # of the option in the case
    capacity: float  # of the bank, half worn
    floor: float  # below which nothing is drawn
    reserve: float  # above the floor, never planned for
    leg_energy: Array
    leg_time: Array
    house: Array  # W, (8760,)
    sun: Array  # W, (8760, years)
    wind: Array  # W, (365, years)
    screw: Array  # W, (8760,)
    plug: float  # W into the bank while plugged in
    plug_efficiency: float  # wall to bank
    most: Array  # W that the bank takes, by its temperature, (365, years)
    taper: float  # share of the room left that an hour can fill
    efficiency: float  # of the bank, in and out
    genset: tuple[float, float, float]  # W, start and stop as charge above the floor [J]; W 0: none


@dataclass(frozen=True)
class LegYear:
    """How often a leg was wanted and made in a year, (years,) each."""

    wanted: int
    made: Array  # at the owner's speed
    slowed: Array  # at a slower speed, for want of charge
    refused: Array


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
    governing_month: int  # 0 to 11, that with the least charge in the worst tenth of its hours
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
    motoring = _Motoring(options, flows, times)
    course = charge_course(flows, charging, full, machine, motoring.hooks())
    end = course.state[-1]
    if np.abs(end - full).max() > AGAIN * full.max():
        motoring = motoring.afresh()
        course = charge_course(flows, charging, end, machine, motoring.hooks())
    return tuple(
        _year(number, options, sky, times, flows, course, motoring)
        for number in range(len(options))
    )


class _Motoring:
    """Takes the decision to leave, and writes what the leg draws into the loads."""

    def __init__(self, options: tuple[OptionYear, ...], flows: Flows, times: Outings) -> None:
        self.options, self.flows, self.times = options, flows, times
        self.energy = np.stack([option.leg_energy for option in options], axis=-1)
        self.time = np.stack([option.leg_time for option in options], axis=-1)
        self.reserve = np.array([[option.reserve] for option in options])
        self.genset = np.array([[option.genset[0]] for option in options])
        self.drawn = np.zeros_like(flows.load)
        self.taken = np.full((len(times.departures), *flows.own.shape[1:]), -1)

    def afresh(self) -> _Motoring:
        """The loads without any leg."""
        self.flows.load[...] -= self.drawn
        return _Motoring(self.options, self.flows, self.times)

    def hooks(self) -> dict[int, Hook]:
        """One decision for every departure."""
        return {
            departure.hour: self._hook(number, departure)
            for number, departure in enumerate(self.times.departures)
        }

    def _hook(self, number: int, departure: Departure) -> Hook:
        def leave(state: Array) -> int:
            return self._leave(number, departure, state)

        return leave

    def _leave(self, number: int, departure: Departure, state: Array) -> int:
        """The fastest speed whose energy lies above the reserve, or none."""
        energy, time = self.energy[departure.leg], self.time[departure.leg]
        last = departure.hour
        open_ = np.ones(state.shape, dtype=bool)
        for speed, (need, spent) in enumerate(zip(energy, time, strict=True)):
            need, spent = need[:, np.newaxis], spent[:, np.newaxis]
            goes = open_ & (state - self.reserve + self.genset * spent >= need)
            if not goes.any():
                continue
            hours = ceil(float(np.nanmax(spent)) / HOUR - 1e-9)
            rows = slice(departure.hour, min(departure.hour + hours, HOURS))
            hourly = np.where(goes, need / (rows.stop - rows.start), 0.0)
            self.flows.load[rows] += hourly
            self.drawn[rows] += hourly
            self.taken[number] = np.where(goes, speed, self.taken[number])
            open_ &= ~goes
            last = max(last, rows.stop)
        return max(last, departure.hour + 1)

    def counts(self, leg: int, option: int) -> LegYear:
        """How a leg went in one option."""
        numbers = [n for n, d in enumerate(self.times.departures) if d.leg == leg]
        taken = self.taken[numbers, option]
        return LegYear(
            wanted=len(numbers),
            made=(taken == 0).sum(axis=0).astype(np.float64),
            slowed=(taken > 0).sum(axis=0).astype(np.float64),
            refused=(taken < 0).sum(axis=0).astype(np.float64),
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


def _year(
    number: int,
    options: tuple[OptionYear, ...],
    sky: Sky,
    times: Outings,
    flows: Flows,
    course: Course,
    motoring: _Motoring,
) -> Year:
    option, wall = options[number], options[number].plug_efficiency
    machine = course.machine[:, min(number, course.machine.shape[1] - 1)]
    state = course.state[:-1, number]
    wind = np.repeat(option.wind, 24, axis=0) * HOUR
    screw = np.broadcast_to((option.screw * HOUR)[:, np.newaxis], state.shape)
    motor = motoring.drawn[:, number]
    plug, lost = course.plug[:, number], course.lost[:, number]
    sources = {
        "sun": _monthly(option.sun * HOUR),
        "wind": _monthly(wind),
        "screw": _monthly(screw),
        "shore": _monthly(plug),
        "genset": _monthly(np.broadcast_to(machine, state.shape)),
    }
    house = flows.load[:, number] - motor
    uses = {"motor": _monthly(motor), "house": _monthly(house), "charging losses": _monthly(lost)}
    needed = _quantile(uses["motor"] + uses["house"])
    moved = np.diff(course.state[:, number], axis=0)
    return Year(
        place=option.place,
        capacity=option.capacity,
        floor=option.floor,
        reserve=option.reserve,
        state=(state + option.floor) / option.capacity,
        sources=sources,
        uses=uses,
        spilled=_monthly(course.spilled[:, number]),
        unserved=_monthly(course.unserved[:, number]),
        legs=tuple(motoring.counts(leg, number) for leg in range(option.leg_energy.shape[0])),
        hours_below_reserve=(state < option.reserve * (1.0 - 1e-9)).sum(axis=0).astype(float),
        hours_cold=(option.most <= 0.0).sum(axis=0) * 24.0,
        shore_wall=plug.sum(axis=0) / wall,
        fuel=genset_fuel(machine / HOUR, option.genset[0]).sum(axis=0) * HOUR * np.ones(sky.years),
        cycles=np.maximum(-moved, 0.0).sum(axis=0) / option.capacity,
        governing_month=_governing(state),
        months_alone=tuple(
            month
            for month in range(12)
            if np.quantile(sources["sun"][month] * option.efficiency, THREE_IN_FOUR)
            >= needed[month]
        ),
        weekly_sun=_weekly(option.sun * HOUR),
        weekly_house=_weekly(house),
        weekly_legs=_legs_by_week(option, times),
        imbalance=_imbalance(number, flows, course, option.capacity),
    )


def _quantile(values: Array) -> Array:
    return np.asarray(np.quantile(values, 1.0 - THREE_IN_FOUR, axis=1))


def _governing(state: Array) -> int:
    """The month whose worst tenth of hours is the emptiest."""
    ends = np.cumsum(MONTH_LENGTHS)[:-1] * 24
    low = [float(np.quantile(part, 0.1)) for part in np.split(state, ends)]
    return int(np.argmin(low))


def _legs_by_week(option: OptionYear, times: Outings) -> Array:
    weeks = np.zeros(WEEKS)
    for departure in times.departures:
        need = option.leg_energy[departure.leg, 0]
        weeks[min(departure.hour // 168, WEEKS - 1)] += 0.0 if np.isnan(need) else need
    return weeks


def _imbalance(number: int, flows: Flows, course: Course, capacity: float) -> float:
    """What the flows of an hour leave unexplained of the change of charge."""
    moved = np.diff(course.state[:, number], axis=0)
    machine = course.machine[:, min(number, course.machine.shape[1] - 1)]
    came = flows.own[:, number] - course.spilled[:, number] + course.plug[:, number] + machine
    went = flows.load[:, number] - course.unserved[:, number] + course.lost[:, number]
    return float(np.abs(moved - came + went).max() / capacity)
