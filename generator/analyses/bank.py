"""What does the bank hold, keep back and have to give?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.demand import Scale, Weather
from generator.analyses.plant import Store, battery_power, discharge_limit
from generator.analyses.power import Power, at_points
from generator.analyses.reserve import Reserve
from generator.analyses.weight import Weight
from generator.arrays import Array, Numbers
from generator.case.case import Case
from generator.case.option import Option
from generator.physics.energy.battery import current, rate


@dataclass(frozen=True)
class BankResult:
    """Energy J, current A, rate 1/s, mass kg; arrays are per draw."""

    nominal: Numbers
    usable: Numbers
    usable_aged: Numbers
    available: Array
    available_aged: Array
    mass: Numbers | None
    cruise_current: Array
    cruise_rate: Array
    peak_current: Array
    peak_rate: Array
    limit: Numbers
    rate_limit: Numbers


def bank_result(
    case: Case,
    option: Option,
    found: Power,
    scale: Scale,
    kept: Reserve,
    held: Store,
    weight: Weight,
) -> BankResult | None:
    """Energy above the reserve and the currents that cruise and peak power ask for."""
    bank, motor = option.bank, option.motor
    if bank is None or motor is None:
        return None
    cruise = np.atleast_2d(np.asarray(case.planning.cruise_speed))
    curve = at_points(case, option, found, scale, cruise, Weather(0.0, 1.0))
    peak_drain = battery_power(motor, motor.peak_power, motor.rated_speed, case.factors)
    cruise_current = np.asarray(current(curve.output.drain, bank.nominal_voltage))
    peak_current = np.atleast_2d(np.asarray(current(peak_drain, bank.nominal_voltage)))
    return BankResult(
        nominal=held.nominal,
        usable=held.usable,
        usable_aged=held.usable_aged,
        available=np.maximum(np.asarray(held.usable) - kept.of_new, 0.0),
        available_aged=np.maximum(np.asarray(held.usable_aged) - kept.of_aged, 0.0),
        mass=weight.bank_mass,
        cruise_current=cruise_current,
        cruise_rate=np.asarray(rate(cruise_current, bank.charge)),
        peak_current=peak_current,
        peak_rate=np.asarray(rate(peak_current, bank.charge)),
        limit=discharge_limit(bank),
        rate_limit=bank.cruise_rate_limit,
    )
