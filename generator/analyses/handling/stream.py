"""What does a mile over the ground cost against a stream, and does she pass the gates?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

import numpy as np

from generator.analyses.motion.demand import Scale, Weather
from generator.analyses.motion.plant import house_drain, within
from generator.analyses.motion.power import KNOT, Power, at_points
from generator.analyses.percentiles import spread
from generator.arrays import Array, Flags, Numbers
from generator.case.case import Case
from generator.case.option import Option
from generator.case.usage import Leg, as_if_marked, must_be_made
from generator.records import number, record, working
from generator.tables.method import method

STREAMS = np.arange(0.0, 4.01, 0.25) * KNOT
LEAST_THROUGH = method("passage.least_through_water")
LEAST_OVER = method("passage.least_over_ground")


TOO_SLOW = "too_slow_over_ground"


@record
class Gate:
    """One leg with a stream against her; per draw.

    ``at_springs``: the leg names its spring stream; else its mean stream is taken.
    """

    kept_in: str
    name: str
    must_make: bool
    at_springs: bool
    stream: Numbers = number("speed", "stream at the gate", cautious="high", expected=True)
    margin: Array = number("speed", "continuous speed less stream", cautious="low")
    least: Array = number("per_mile", "cheapest mile at the gate", cautious="high")
    through: float = number("speed", "speed of the cheapest mile")
    leg: Leg = working()
    absent: Mapping[str, str] = field(
        default_factory=lambda: dict.fromkeys(("least", "through"), TOO_SLOW)
    )


@record
class StreamRows:
    """A mile over the ground against each of STREAMS, per draw; ``through`` of the best estimate.

    At planned cruise, and at the speed that asks for least; none where she makes less than 1 kn
    over the ground or does not hold the speed.
    """

    ALONG: ClassVar[str] = "stream"
    kept_in: str
    stream: Array = number("speed", "stream against her")
    cruise: Array = number("per_mile", "mile at planned cruise", cautious="high")
    least: Array = number("per_mile", "cheapest mile", cautious="high")
    through: Array = number("speed", "its speed through the water")
    over: Array = number("speed", "its speed over the ground")
    absent: Mapping[str, str] = field(
        default_factory=lambda: dict.fromkeys(("cruise", "least", "through", "over"), TOO_SLOW)
    )


@record
class Stream:
    """What miles over the ground cost, and the gates of the legs."""

    kept_in: str
    rows: StreamRows
    gates: tuple[Gate, ...]
    doubles: float | None = number("speed", "stream that doubles a mile")
    absent: Mapping[str, str] = field(default_factory=lambda: {"doubles": "not_doubled"})


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
    through = np.array([through for _, through in found_each])
    least = np.concatenate([least for least, _ in found_each], axis=1)
    kept = "tank" if option.bank is None else "bank"
    return Stream(
        kept_in=kept,
        rows=StreamRows(kept, STREAMS, np.asarray(at_cruise), least, through, through - STREAMS),
        gates=tuple(
            _gate(leg, must or place == asked, found, (drain, held), kept)
            for place, (leg, must) in enumerate(zip(case.legs, marked, strict=True))
            if _against(leg)[0] is not None
        ),
        doubles=_doubling(spread(least).middle),
    )


def _doubling(costs: Array) -> float | None:
    """Stream [m/s] that doubles the least energy for a mile, straight between the rows."""
    goal = 2.0 * costs[0]
    for place, cost in enumerate(costs):
        if not np.isfinite(cost):
            return None
        if cost >= goal:
            share = (goal - costs[place - 1]) / (cost - costs[place - 1])
            return float(STREAMS[place - 1] + share * (STREAMS[1] - STREAMS[0]))
    return None


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


def _gate(leg: Leg, must_make: bool, found: Power, calm: tuple[Array, Flags], kept_in: str) -> Gate:
    """``calm`` is the drain over speed, and where it is held."""
    against, springs = _against(leg)
    assert against is not None
    least, through = cheapest(found.speed, *calm, np.asarray(against))
    return Gate(
        kept_in=kept_in,
        name=leg.name,
        must_make=must_make,
        at_springs=springs,
        stream=against,
        margin=np.atleast_2d(found.top.continuous - np.asarray(against)),
        least=least,
        through=through,
        leg=leg,
    )
