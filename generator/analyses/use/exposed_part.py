"""At which speeds is the exposed part of a leg held, and what does each cost?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.motion.demand import Weather
from generator.analyses.motion.plant import house_drain, within
from generator.analyses.motion.power import Curve, at_points
from generator.analyses.store.bank_state import taken
from generator.analyses.store.outfit import Outfit
from generator.analyses.use.leg_energy import LEAST_OVER, ROUGH_THROUGH
from generator.arrays import Array, Flags, Numbers
from generator.case.usage import Leg

Curves = dict[tuple[bytes, ...], Curve]  # by speeds, wind and fetch
STEPS = 7  # speeds tried on the exposed part, from the owner's down to the least that is a passage


@dataclass(frozen=True)
class Exposed:
    """The part of a leg in wind and sea over the tried speeds, fastest first; (draws, speeds)."""

    time: Array
    loss: Array
    speed: Array
    held: Flags
    by_motor: Flags  # whether the motor alone holds one of them, per draw
    beyond_limit: bool
    swept: bool  # not even the speed that the owner holds there makes way over the ground


def exposed(outfit: Outfit, leg: Leg, curves: Curves) -> Exposed:
    """What the tried speeds lose in wind and sea, and which of them are held."""
    case, option = outfit.case, outfit.option
    if float(np.asarray(leg.exposed_distance).flat[0]) <= 0.0:
        zero = np.zeros((1, 1))
        yes = zero == 0.0
        return Exposed(zero, zero, zero + np.asarray(leg.exposed_speed), yes, yes, False, False)
    stream = leg.stream
    tried = _tried(leg, stream)
    key = tuple(np.asarray(part).tobytes() for part in (tried, leg.wind, leg.fetch))
    if key not in curves:  # legs of a long list meet the same weather at the same speeds
        weather = Weather(leg.wind, leg.fetch)
        curves[key] = at_points(case, option, outfit.power, outfit.scale, tried, weather)
    curve = curves[key]
    over_ground = np.atleast_2d(tried - stream)
    drain = curve.output.drain + house_drain(case, option)
    loss = np.atleast_2d(taken(option.bank, outfit.store.aged, drain))
    workable = curve.demand.feasible & (over_ground >= LEAST_OVER - 1e-9)
    by_motor = np.atleast_2d(within(curve.output.motor_load, workable))
    held: Flags = np.atleast_2d(within(curve.output.load, workable) & np.isfinite(loss))
    return Exposed(
        time=np.asarray(leg.exposed_distance) / np.maximum(over_ground, LEAST_OVER),
        loss=loss,
        speed=np.atleast_2d(tried),
        held=held,
        by_motor=np.asarray(by_motor.any(axis=1, keepdims=True)),
        beyond_limit=bool(np.atleast_2d(curve.demand.beyond_limit)[0].any()),
        swept=bool((over_ground[0] < LEAST_OVER - 1e-9).all()),
    )


def _tried(leg: Leg, stream: Numbers) -> Array:
    """From the speed that the owner holds there down to the least that is a passage."""
    fastest = np.atleast_2d(leg.exposed_speed)
    slowest = np.minimum(np.maximum(LEAST_OVER + np.asarray(stream), ROUGH_THROUGH), fastest)
    return np.asarray(fastest + (slowest - fastest) * np.linspace(0.0, 1.0, STEPS))
