"""What does a mile over the ground cost against a stream, and does she pass the gates?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.motion.demand import Scale, Weather
from generator.analyses.motion.plant import house_drain, within
from generator.analyses.motion.power import KNOT, Power, at_points
from generator.arrays import Array, Flags, Numbers
from generator.case.case import Case
from generator.case.option import Option
from generator.case.usage import Leg, as_if_marked, must_be_made
from generator.tables.method import method

STREAMS = np.arange(0.0, 4.01, 0.25) * KNOT
LEAST_THROUGH = method("passage.least_through_water")
LEAST_OVER = method("passage.least_over_ground")


@dataclass(frozen=True)
class Gate:
    """One leg with a stream against her. m/s, J/m or m3/m, per draw."""

    leg: Leg
    must_make: bool
    stream: Numbers
    at_springs: bool  # the leg names its spring stream; else its mean stream is taken
    margin: Array  # speed on the continuous rating less the stream
    least: Array  # energy or fuel for a metre over the ground, nan where she cannot
    through: float  # speed through the water that asks for it, best estimate


@dataclass(frozen=True)
class Stream:
    """Energy or fuel for a metre over the ground against each of STREAMS, per draw."""

    cruise: Array  # at planned cruise through the water; nan below 1 kn over the ground
    least: Array  # at the speed that asks for least; nan where none is held
    through: Array  # m/s, that speed through the water, best estimate, one per stream
    top: Array  # m/s, on the continuous rating in a calm
    gates: tuple[Gate, ...]


def stream(case: Case, option: Option, found: Power, scale: Scale) -> Stream:
    """Calm-water drain, house load with it, over the speed that the stream leaves."""
    calm = found.curves["calm"]
    house = house_drain(case, option)
    drain = np.atleast_2d(calm.output.drain + house)
    held = np.atleast_2d(within(calm.output.load, calm.demand.feasible))
    cruise = np.atleast_2d(np.asarray(case.planning.cruise_speed))
    curve = at_points(case, option, found, scale, cruise, Weather(0.0, 1.0))
    planned = np.where(
        within(curve.output.load, curve.demand.feasible), curve.output.drain + house, np.nan
    )
    over = cruise - STREAMS
    at_cruise = np.where(over >= LEAST_OVER - 1e-9, planned / np.maximum(over, LEAST_OVER), np.nan)
    marked, asked = must_be_made(case.legs), as_if_marked(case.legs, case.waters.exposure)
    found_each = [cheapest(found.speed, drain, held, each) for each in STREAMS]
    return Stream(
        cruise=np.asarray(at_cruise),
        least=np.concatenate([least for least, _ in found_each], axis=1),
        through=np.array([through for _, through in found_each]),
        top=found.top.continuous,
        gates=tuple(
            _gate(leg, must or place == asked, found, drain, held)
            for place, (leg, must) in enumerate(zip(case.legs, marked, strict=True))
            if _against(leg)[0] is not None
        ),
    )


def cheapest(speed: Array, drain: Array, held: Flags, stream: Numbers) -> tuple[Array, float]:
    """Least drain over speed made over the ground, per draw, and the best estimate's speed.

    Never below 2.5 kn through the water and 1 kn over the ground. nan where no speed is held.
    """
    over = np.atleast_2d(speed - np.asarray(stream))
    good = held & (speed >= LEAST_THROUGH - 1e-9) & (over >= LEAST_OVER - 1e-9)
    cost = np.where(good, drain / np.maximum(over, LEAST_OVER), np.inf)
    place = cost.argmin(axis=1)
    lowest = cost[np.arange(cost.shape[0]), place]
    through = float(speed[place[0]]) if np.isfinite(lowest[0]) else float("nan")
    return np.where(np.isfinite(lowest), lowest, np.nan)[:, np.newaxis], through


def _against(leg: Leg) -> tuple[Numbers | None, bool]:
    """The stream of a leg's gate: at springs if named, else a mean foul stream."""
    if leg.spring_stream is not None:
        return leg.spring_stream, True
    if float(np.asarray(leg.foul_stream).flat[0]) > 0.0:
        return leg.foul_stream, False
    return None, False


def _gate(leg: Leg, must_make: bool, found: Power, drain: Array, held: Flags) -> Gate:
    against, springs = _against(leg)
    assert against is not None
    least, through = cheapest(found.speed, drain, held, np.asarray(against))
    return Gate(
        leg=leg,
        must_make=must_make,
        stream=against,
        at_springs=springs,
        margin=np.atleast_2d(found.top.continuous - np.asarray(against)),
        least=least,
        through=through,
    )
