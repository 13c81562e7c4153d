"""Does she leave, at which speed, or stay for want of charge?"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil

import numpy as np

from generator.analyses.use.outings import Departure, Outings
from generator.arrays import Array
from generator.physics.energy.charge_year import Flows, Hook

HOUR, HOURS = 3600.0, 8760


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


class Motoring:
    """Takes the decision to leave, and writes what the leg draws into the loads."""

    def __init__(self, options: tuple[OptionYear, ...], flows: Flows, times: Outings) -> None:
        self.options, self.flows, self.times = options, flows, times
        self.energy = np.stack([option.leg_energy for option in options], axis=-1)
        self.time = np.stack([option.leg_time for option in options], axis=-1)
        self.reserve = np.array([[option.reserve] for option in options])
        self.genset = np.array([[option.genset[0]] for option in options])
        self.drawn = np.zeros_like(flows.load)
        self.taken = np.full((len(times.departures), *flows.own.shape[1:]), -1)

    def afresh(self) -> Motoring:
        """The loads without any leg."""
        self.flows.load[...] -= self.drawn
        return Motoring(self.options, self.flows, self.times)

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
            # lacking: an option that cannot do it has no time; the clock waits for those that can
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
        """How often a leg was made in one option, at the owner's speed or slower."""
        numbers = [n for n, d in enumerate(self.times.departures) if d.leg == leg]
        taken = self.taken[numbers, option]
        return LegYear(
            wanted=len(numbers),
            made=(taken == 0).sum(axis=0).astype(np.float64),
            slowed=(taken > 0).sum(axis=0).astype(np.float64),
            refused=(taken < 0).sum(axis=0).astype(np.float64),
        )
