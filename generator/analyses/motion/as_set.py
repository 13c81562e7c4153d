"""To what is the motor set, and what power does that leave at its shaft?"""

from __future__ import annotations

import numpy as np

from generator.analyses.motion.plant import battery_power, peak_drain, warm_power
from generator.analyses.percentiles import scalar, spread
from generator.analyses.store.bank_state import BankState, draws_current
from generator.arrays import Array, Numbers
from generator.case.factors import Factors
from generator.case.option import Motor
from generator.records import number, record, working
from generator.tables.method import method

TOLD_WHOLE = method("wiring.held_share")  # of a rating: more than that is all of it
STEPS = 12  # losses move by a sixth of what power does: after so many the power is exact


@record
class AsSet:
    """The motor with the battery currents that its controller is set to; bank old and cold.

    Powers are those at its shaft, at rated turns, from a half-full bank: the one value of peak and
    of continuous power that this option has. Without a bank that limits it they are the plate's,
    and the warm rating.
    """

    rule: str  # stated or customary: where the limit comes from
    peak_cut: bool  # below the plate in the middle of the draws
    continuous_cut: bool  # below the warm rating
    limit: Array = number("current", "battery current that the motor may take", cautious="low")
    peak_power: Array = number("power", "peak power as set", cautious="low")
    continuous_power: Array = number("power", "continuous power as set", cautious="low")
    continuous_asked: Array = working()  # A, that the warm rating takes; nan where there is none
    peak_current: float = number("current", "battery current set, at peak")
    continuous_current: float = number("current", "battery current set, for good")


def as_set(motor: Motor, aged: BankState, factors: Factors) -> AsSet:
    """What plate, bank and limits leave together; currents are entered once, powers are drawn."""
    warm = np.atleast_2d(np.asarray(warm_power(motor, factors)))
    drain = battery_power(motor, warm, motor.rated_speed, factors)
    peak = _left(motor, aged, factors, motor.peak_power, peak_drain(motor, factors))
    steady = _left(motor, aged, factors, warm, drain)
    asked = np.atleast_2d(draws_current(aged, drain))
    most = _entered(aged.peak_current, aged, "high")
    return AsSet(
        rule=aged.limits.rule,
        peak_cut=_cut(peak, motor.peak_power),
        continuous_cut=_cut(steady, warm),
        limit=aged.limits.motor,
        peak_power=peak,
        continuous_power=steady,
        continuous_asked=asked,
        peak_current=most,
        continuous_current=min(_entered(asked, aged, "middle"), most),
    )


def power_from(motor: Motor, drain: Numbers, factors: Factors) -> Array:
    """Power at the motor's shaft, at rated turns, that a power at the terminals brings [W]."""
    power = np.asarray(drain, dtype=np.float64)
    for _ in range(STEPS):
        lost = battery_power(motor, power, motor.rated_speed, factors) - power
        power = np.maximum(drain - lost, 0.0)
    return power


def power_of(motor: Motor, aged: BankState, factors: Factors, current: float) -> Array:
    """The same of a battery current [A], from a bank half full."""
    drain = current * (aged.open_half - aged.resistance_half * current)
    return power_from(motor, np.maximum(np.minimum(drain, aged.given_half), 0.0), factors)


def _left(motor: Motor, aged: BankState, factors: Factors, rated: Numbers, drain: Numbers) -> Array:
    """A rating as far as the bank gives it [W]."""
    enough = aged.given_half >= np.asarray(drain)
    if enough.all():  # the usual case, and a search of twelve steps saved
        whole = np.broadcast_shapes(np.shape(rated), enough.shape)
        return np.atleast_2d(np.broadcast_to(np.asarray(rated, dtype=np.float64), whole))
    return np.atleast_2d(np.where(enough, rated, power_from(motor, aged.given_half, factors)))


def _entered(current: Array, aged: BankState, end: str) -> float:
    """The current that is entered: what is asked, within the middle of what is given [A]."""
    given = np.minimum(draws_current(aged, aged.given_half), aged.limits.motor)
    asked, most = spread(current), scalar(spread(given).middle)
    told = scalar(asked.high if end == "high" else asked.middle)
    return min(told, most) if np.isfinite(told) else most


def _cut(left: Array, rated: Numbers) -> bool:
    return scalar(spread(left / np.asarray(rated), "low").middle) < TOLD_WHOLE
