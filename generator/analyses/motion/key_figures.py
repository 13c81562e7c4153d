"""Which single numbers of an option do criteria, sentences and the comparison rest on?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.motion.bench import at_shaft, full_power, plant_of
from generator.analyses.motion.plant import LIMITS, OVERSPEED
from generator.analyses.motion.power import Curve, Power, at_speed
from generator.analyses.percentiles import scalar, spread
from generator.analyses.use.legs import LegResult, Legs
from generator.arrays import Array, Flags
from generator.case.case import Case
from generator.case.diesel import Diesel
from generator.case.option import Motor, Option
from generator.records import number, record

POWERS = {"power": 3.0, "torque": 2.0, "turns": 1.0}  # of the turns, where the curve ends
Plant = Motor | Diesel


@record
class Reached:
    """Where power, torque or turns of the plate first meet the propeller in a calm; per draw.

    ``limit``: which of LIMITS, in most draws. The speed is the last of the hull form where the
    limit lies beyond it.
    """

    limit: str
    speed: Array = number("speed", "speed where a limit is met")
    turns: Array = number("rpm", "motor turns where it is met")
    torque: Array = number("torque", "motor torque where it is met")
    power: Array = number("power", "motor power where it is met")
    shaft_power: Array = number("power", "shaft power where it is met", cautious="low")


@dataclass(frozen=True)
class KeyFigures:
    """Powers W, drain W or m3/s, per draw; nan where the hull form does not reach the cruise."""

    reached: Reached
    rated_shaft_power: Array  # of the plate behind bearings and gear, on any propeller
    clean_need: Array  # shaft power of the clean hull at planned cruise
    cruise_thrust: Array  # N, in service
    cruise_shaft_power: Array  # in service
    cruise_drain: Array
    service_share: Array  # shaft power in service over clean, at planned cruise
    worst_leg: int | None  # place of the must-make leg with the least in hand

    @property
    def continuous_shaft_power(self) -> Array:
        """S1 power at the shaft [W], as far as her own propeller in a calm lets it come about."""
        return self.reached.shaft_power


def key_figures(case: Case, option: Option, power: Power, legs: Legs) -> KeyFigures:
    """Read the curves at planned cruise and find the worst leg."""
    cruise = float(np.asarray(case.planning.cruise_speed).flat[0])
    curve, plant = power.curves["calm"], plant_of(option)
    clean = at_speed(_known(power.clean.shaft_power, power.clean.feasible), power.speed, cruise)
    usable = curve.demand.feasible
    shaft = at_speed(_known(curve.demand.shaft_power, usable), power.speed, cruise)
    return KeyFigures(
        reached=_reached(curve, power.speed, plant),
        rated_shaft_power=at_shaft(plant, full_power(plant)),
        clean_need=clean,
        cruise_thrust=at_speed(_known(curve.demand.thrust, usable), power.speed, cruise),
        cruise_shaft_power=shaft,
        cruise_drain=at_speed(_known(curve.output.drain, usable), power.speed, cruise),
        service_share=shaft / clean,
        worst_leg=_worst_leg(legs.results),
    )


def _known(values: Array, usable: Flags) -> Array:
    return np.atleast_2d(np.where(usable, values, np.nan))


def _reached(calm: Curve, speed: Array, plant: Plant) -> Reached:
    """The first of the plate's limits on the calm curve, in logarithms between its points.

    Beyond the last speed of the hull form turns, torque and power go on by 1, 2 and 3.
    """
    power, turns, good = np.broadcast_arrays(
        *(np.atleast_2d(v) for v in (calm.output.power, calm.output.turns, calm.demand.feasible))
    )
    of_power, of_turns = (
        np.log(values / np.atleast_2d(np.asarray(rated)))
        for values, rated in ((power, full_power(plant)), (turns, plant.rated_speed))
    )
    shares = np.stack(  # in the order of LIMITS
        np.broadcast_arrays(of_power, of_power - of_turns, of_turns - np.log(OVERSPEED))
    )
    load = shares.max(axis=0)
    power, turns, good = (np.broadcast_to(v, load.shape) for v in (power, turns, good))
    fits = good & (load <= 0.0)
    rows, end = np.arange(load.shape[0]), speed.size - 1
    last = np.where(fits.all(axis=1), end, np.argmin(fits, axis=1) - 1)
    low = np.maximum(last, 0)
    high = np.minimum(low + 1, end)
    open_end = (high == low) | ~good[rows, high]
    step = np.where(open_end, 1.0, load[rows, high] - load[rows, low])
    share = np.where(open_end, 0.0, np.clip(-load[rows, low] / step, 0.0, 1.0))

    def between(values: Array) -> Array:
        found = values[..., rows, low]
        more = np.where(open_end, found, values[..., rows, high])
        return np.asarray(found + share * (more - found))

    left = between(shares)  # what is in hand of each limit, below 0
    growth = -left / np.array([[POWERS[name]] for name in LIMITS[: len(left)]])
    further = np.where(open_end, np.maximum(growth.min(axis=0), 0.0), 0.0)
    binding = np.where(open_end, growth.argmin(axis=0), left.argmax(axis=0))
    stands = last >= 0  # False where not even the slowest speed is held
    given = np.where(stands, np.exp(between(np.log(power)) + POWERS["power"] * further), 0.0)
    spins = np.where(stands, np.exp(between(np.log(turns)) + further), 0.0)
    made = speed[low] + share * (speed[high] - speed[low])
    given, spins = given[:, np.newaxis], spins[:, np.newaxis]
    return Reached(
        speed=np.where(stands, made, 0.0)[:, np.newaxis],
        turns=spins,
        torque=np.where(spins > 0.0, given / np.maximum(spins, 1e-9), 0.0),
        power=given,
        shaft_power=at_shaft(plant, given),
        limit=LIMITS[int(np.bincount(binding[1:] if binding.size > 1 else binding).argmax())],
    )


def _worst_leg(legs: tuple[LegResult, ...]) -> int | None:
    must = [place for place, leg in enumerate(legs) if leg.must_make]
    return min(must, key=lambda place: _in_hand(legs[place]), default=None)


def _in_hand(leg: LegResult) -> tuple[float, float]:
    """How likely it is made above the reserve, then how much is left over."""
    return leg.powered * leg.untouched, scalar(spread(leg.ratio, "low").low)
