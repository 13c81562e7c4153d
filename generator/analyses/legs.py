"""Which of the owner's legs fit, and does the leg that must be made?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.bank_state import taken
from generator.analyses.demand import Scale, Weather
from generator.analyses.leg_energy import spent_before
from generator.analyses.plant import LEAST_MADE_GOOD, Store, house_drain, passage_time, within
from generator.analyses.power import Curve, Power, at_points
from generator.analyses.reserve import Reserve
from generator.analyses.spread import side_by_side
from generator.arrays import Array, Flags
from generator.case.case import Case
from generator.case.option import Option
from generator.case.usage import Leg

SLOWER = (1.0, 0.85, 0.7, 0.55)  # shares of the exposed speed that are tried in turn


@dataclass(frozen=True)
class LegResult:
    """One leg under one option. J or m3, s, m/s; arrays are per draw."""

    leg: Leg
    must_make: bool
    need: Array  # nan where it cannot be done
    time: Array
    exposed_speed: Array
    above: Array  # usable above the reserve, when charged
    before: Array  # what the legs before it on the same outing take, in a calm; inf: not made
    available: Array  # above less before, never below 0
    ratio: Array  # available over need; 0 where it cannot be done
    beyond_limit: bool
    bank_short: bool  # the motor would do it, the bank does not give the current


@dataclass(frozen=True)
class Legs:
    """All legs, and what the year takes out of the store in ordinary weather."""

    results: tuple[LegResult, ...]
    yearly: Array  # J or m3
    yearly_time: Array  # s


def is_must_make(leg: Leg) -> bool:
    """A leg without refuge that cannot be sailed instead."""
    return not leg.refuge and not leg.sailable


def passages(
    case: Case, option: Option, found: Power, scale: Scale, kept: Reserve, held: Store
) -> Legs:
    """Energy or fuel of every leg, against what the aged store holds above the reserve."""
    if not case.legs:
        zero = np.zeros((1, 1))
        return Legs((), zero, zero)
    calm = at_points(
        case,
        option,
        found,
        scale,
        side_by_side(*(leg.speed for leg in case.legs)),
        Weather(0.0, 1.0),
    )
    above = np.maximum(np.asarray(held.usable_aged) - kept.of_aged, 0.0)
    results, house = [], house_drain(case, option)
    spent = spent_before(case, option, _calm_needs(case, option, held, calm))
    yearly, yearly_time = np.zeros((1, 1)), np.zeros((1, 1))
    curves: dict[tuple[bytes, ...], Curve] = {}
    for place, leg in enumerate(case.legs):
        drain = np.atleast_2d(calm.output.drain)[:, [place]] + house
        fits, by_motor = (
            np.atleast_2d(within(load, calm.demand.feasible))[:, [place]]
            for load in (calm.output.load, calm.output.motor_load)
        )
        stock = (above, spent[place])
        results.append(
            _leg(case, option, found, scale, leg, drain, fits, by_motor, stock, held, curves)
        )
        time = leg.times_per_year * passage_time(leg)
        yearly = yearly + drain * time
        yearly_time = yearly_time + time
    return Legs(tuple(results), yearly, yearly_time)


def _calm_needs(case: Case, option: Option, held: Store, calm: Curve) -> list[Array]:
    """What each leg takes in a calm at the owner's speed; infinite where it cannot be made."""
    drain = np.atleast_2d(calm.output.drain) + house_drain(case, option)
    loss = np.atleast_2d(taken(option.bank, held.aged, drain))
    fits = np.atleast_2d(within(calm.output.load, calm.demand.feasible)) & np.isfinite(loss)
    return [
        np.where(fits[:, [place]], loss[:, [place]] * passage_time(leg), np.inf)
        for place, leg in enumerate(case.legs)
    ]


def _leg(
    case: Case,
    option: Option,
    found: Power,
    scale: Scale,
    leg: Leg,
    calm_drain: Array,
    calm_fits: Flags,
    calm_by_motor: Flags,
    stock: tuple[Array, Array],
    held: Store,
    curves: dict[tuple[bytes, ...], Curve],
) -> LegResult:
    sheltered = np.asarray(leg.distance - leg.exposed_distance)
    calm_time = sheltered / np.maximum(np.asarray(leg.speed - leg.foul_stream), LEAST_MADE_GOOD)
    exposed_time, exposed_loss, speed, beyond, short = _exposed(
        case, option, found, scale, leg, held, curves
    )
    calm_loss = np.atleast_2d(taken(option.bank, held.aged, calm_drain))
    short = short or bool((calm_by_motor & ~(calm_fits & np.isfinite(calm_loss)))[0].any())
    need = calm_time * calm_loss + exposed_time * exposed_loss
    too_slow = np.asarray(leg.speed - leg.foul_stream) < LEAST_MADE_GOOD
    cannot = ~calm_fits | too_slow | ~np.isfinite(need)
    need = np.where(cannot, np.nan, need)
    above, before = stock
    available = np.maximum(above - before, 0.0)
    ratio = np.where(cannot, 0.0, available / np.where(cannot, 1.0, need))
    return LegResult(
        leg=leg,
        must_make=is_must_make(leg),
        need=need,
        time=np.asarray(calm_time + exposed_time),
        exposed_speed=speed,
        above=above,
        before=before,
        available=available,
        ratio=ratio,
        beyond_limit=beyond,
        bank_short=short,
    )


def _exposed(
    case: Case,
    option: Option,
    found: Power,
    scale: Scale,
    leg: Leg,
    held: Store,
    curves: dict[tuple[bytes, ...], Curve],
) -> tuple[Array, Array, Array, bool, bool]:
    """Time, loss and speed of the exposed part: the fastest tried speed that the plant holds."""
    if float(np.asarray(leg.exposed_distance).flat[0]) <= 0.0:
        zero = np.zeros((1, 1))
        return zero, zero, zero + np.asarray(leg.exposed_speed), False, False
    tried = np.asarray(leg.exposed_speed) * np.array(SLOWER)
    key = tuple(np.asarray(part).tobytes() for part in (tried, leg.wind, leg.fetch))
    if key not in curves:  # legs of a long list meet the same weather at the same speeds
        weather = Weather(leg.wind, leg.fetch)
        curves[key] = at_points(case, option, found, scale, tried, weather)
    curve = curves[key]
    over_ground = np.asarray(tried - leg.foul_stream)
    loss = np.atleast_2d(
        taken(option.bank, held.aged, curve.output.drain + house_drain(case, option))
    )
    workable = curve.demand.feasible & ~curve.demand.beyond_limit
    workable = workable & (over_ground >= LEAST_MADE_GOOD)
    by_motor = np.atleast_2d(within(curve.output.motor_load, workable))[0].any()
    fits: Flags = np.atleast_2d(within(curve.output.load, workable) & np.isfinite(loss))
    first = np.argmax(fits, axis=1)[:, np.newaxis]
    possible = np.any(fits, axis=1, keepdims=True)

    def pick(values: Array) -> Array:
        table = np.broadcast_to(values, fits.shape)
        return np.where(possible, np.take_along_axis(table, first, axis=1), np.nan)

    made_good = pick(np.maximum(over_ground, LEAST_MADE_GOOD))
    beyond = bool(np.atleast_2d(curve.demand.beyond_limit)[0].any())
    time = np.asarray(leg.exposed_distance) / made_good
    short = bool(by_motor and not fits[0].any())
    return time, pick(loss), pick(np.atleast_2d(tried)), beyond, short
