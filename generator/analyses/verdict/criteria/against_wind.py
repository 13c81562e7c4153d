"""How is a speed held against a wind judged, and what is said where the sea is too steep?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.motion.demand import Weather
from generator.analyses.motion.plant import OVERSPEED, ceiling
from generator.analyses.motion.power import KNOT, Curve, at_points
from generator.analyses.percentiles import scalar, spread
from generator.analyses.verdict.criteria.criterion import CONDITIONAL, GO, NO, Criterion, Judgement
from generator.arrays import Array
from generator.tables.method import method

GEAR_SHARE = method("motor.single_gear")
MOST_BEYOND = 0.1  # share of draws; more than that and the tenth percentile is no answer


@dataclass(frozen=True)
class Held:
    """Speed made good against one wind, per draw, and whether the sea's formula holds there."""

    wind: float  # m/s
    speed: Array  # m/s
    beyond: bool
    height: float  # m, by the fetch law
    limit: float  # m


def held(found: Findings, speed: Array, wind: float) -> Held:
    """Read a ladder at one wind, straight between its steps."""
    ladder = found.headwind
    place = min(int(wind / KNOT + 1e-9), speed.shape[1] - 2)
    share = min(wind / KNOT - place, 1.0)

    def at(table: Array) -> Array:
        low, high = table[:, [place]], table[:, [place + 1]]
        return np.asarray(low + share * (high - low))

    height = at(ladder.height)
    limit = np.asarray(found.power.seas["calm"].limit)
    over = np.broadcast_to(height > limit, np.broadcast_shapes(height.shape, np.shape(limit)))
    beyond = bool(over.flat[0]) or float(over.mean()) > MOST_BEYOND
    return Held(wind, at(speed), beyond, scalar(height[:1]), float(limit.flat[0]))


def judged(criterion: Criterion, found: Findings, what: Held, rating: str) -> Judgement:
    """The tenth percentile of the speed against the limits; never a plain go in too steep a sea."""
    told = spread(what.speed / KNOT, "low")
    low = scalar(told.low)
    result = criterion.judge(low)
    if what.beyond and result == GO:
        result = CONDITIONAL
    numbers = {
        "wind_kn": what.wind / KNOT,
        "made_kn": scalar(told.middle),
        "made_low_kn": low,
        "height_m": what.height,
        "height_limit_m": what.limit,
    }
    flip, more = (
        ("", {}) if result == GO else _flip(criterion, found, what, rating.startswith("at peak"))
    )
    return Judgement(
        criterion,
        scalar(told.middle),
        low,
        "kn",
        result,
        _why(what, rating),
        flip,
        _condition(what, result),
        numbers=numbers | more,
    )


def _why(what: Held, rating: str) -> str:
    if what.beyond:
        return (
            "against {here.wind_kn|wind} not by engine alone, for any option: the sea of "
            "{here.height_m|length} is beyond the wave formula's {here.height_limit_m|length}; "
            f"in a sea of that limit she makes {{here.made_kn|speed}} {rating} "
            "({here.made_low_kn|speed} at the pessimistic end)"
        )
    return (
        f"{{here.made_kn|speed}} made good against {{here.wind_kn|wind}} {rating} "
        "(one in ten: below {here.made_low_kn|speed})"
    )


def _condition(what: Held, result: str) -> str:
    if what.beyond and result != NO:
        return "Above {here.wind_kn|wind} ahead she motor-sails or bears away"
    return ""


def _flip(
    criterion: Criterion, found: Findings, what: Held, peak: bool
) -> tuple[str, dict[str, float]]:
    """Shaft power and torque that hold the limit's speed in nine draws of ten, and those there.

    Where power is enough and torque is not, the reduction that turns one into the other.
    """
    speed = np.array([criterion.go * KNOT])
    weather = Weather(what.wind, found.case.waters.fetch)
    curve = at_points(found.case, found.option, found.power, found.trial.scale, speed, weather)
    power = scalar(spread(curve.demand.shaft_power).high)
    torque = scalar(spread(curve.demand.torque).high)
    if what.beyond:
        return "sail set with the engine, or another day", {}
    if not np.isfinite(power):
        return "a propeller that carries more thrust", {}
    there = ceiling(found.option, found.case.factors, peak)
    given = scalar(spread(np.asarray((there.power - there.standing) * there.share)).low)
    twist = scalar(spread(np.asarray(there.torque * there.share)).low)
    numbers = {
        "flip_kw": power / 1e3,
        "flip_newtonmetre": torque,
        "given_kw": given / 1e3,
        "given_newtonmetre": twist,
    }
    text = (
        "{here.flip_kw|power} and {here.flip_newtonmetre|torque} at the shaft, where warm "
        "{here.given_kw|power} and {here.given_newtonmetre|torque} are there"
    )
    ratio = _reduction(found, torque / twist)
    if torque > twist and power <= given * GEAR_SHARE and _turns(found, curve, ratio):
        numbers["flip_ratio"] = ratio
        text = f"a reduction of {{here.flip_ratio|ratio}}: {text}"
    return text, numbers


def _turns(found: Findings, curve: Curve, ratio: float) -> bool:
    """Whether the motor turns so fast on that reduction."""
    shaft = scalar(np.asarray(curve.demand.shaft_speed))
    motor = found.option.motor
    return motor is not None and shaft * ratio <= OVERSPEED * scalar(motor.rated_speed)


def _reduction(found: Findings, short: float) -> float:
    """The gear ratio that brings the torque wanted, its own loss with it."""
    motor = found.option.motor
    if motor is None:
        return np.nan
    own = scalar(np.asarray(motor.gear_ratio))
    return own * short / (GEAR_SHARE if own == 1.0 else 1.0)
