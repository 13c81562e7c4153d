"""How long is she charging at her berth, and what is left without a plug?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.motion.plant import Store
from generator.analyses.percentiles import best, scalar, spread
from generator.analyses.store.outfit import Outfit
from generator.analyses.use.legs import Legs
from generator.arrays import Array, Numbers
from generator.case.case import Case
from generator.case.option import Bank, Option
from generator.physics.energy.cell import charge_rate_limit
from generator.physics.energy.charging import acceptance, supply_power, time_to_full
from generator.tables.method import method

CURRENTS = (4.0, 6.0, 8.0, 10.0, 13.0, 16.0, 20.0, 25.0, 32.0, 40.0, 50.0)  # A, of chart 9
VOLTAGE = method("berth.voltage")


@dataclass(frozen=True)
class Berthed:
    """Charging of one option. J, W, s, A, V; per draw. Times are of the bank as new.

    ``typical`` is what comes home missing on a usual day, nan where a leg cannot be motored;
    ``worst`` a bank drawn to its reserve.
    """

    days: float  # of use in a year
    typical: Array
    worst: Array
    wall: Array | None  # W that the derated breaker gives; none where it is not known
    into_bank: Array | None  # W, the least of breaker, charger and bank
    bound_by: str  # berth, charger, bank: what holds the charge back, best estimate
    hours_typical: Array | None  # s
    hours_worst: Array | None
    currents: tuple[float, ...]
    voltage: float
    by_current_typical: Array  # s, (draws, currents)
    by_current_worst: Array
    least_charger: float | None  # W into the bank that put a usual day back in ten hours
    outings: Array  # usual days between full and the reserve, bank aged


def berthed(outfit: Outfit, legs: Legs, wanted: float) -> Berthed | None:
    """Hours to full at the berth; none without a bank. ``wanted`` [s] sizes the charger."""
    case, option, held = outfit.case, outfit.option, outfit.store
    kept, bank, berth = outfit.reserve, option.bank, case.berth
    days = days_of_use(case)
    if bank is None or option.supply is None or days <= 0.0:
        return None
    most = most_power_in(case, bank)
    typical = legs.yearly / days
    worst = np.maximum(np.asarray(held.usable) - kept.of_new, 0.0)
    voltage = VOLTAGE if berth.voltage is None else float(best(berth.voltage)[0])
    derated = np.asarray(berth.breaker_share)
    row = np.atleast_2d(np.asarray(supply_power(np.array(CURRENTS), voltage, derated)))
    wall = None
    if berth.shore_power and berth.breaker is not None and berth.voltage is not None:
        wall = np.atleast_2d(supply_power(berth.breaker, berth.voltage, derated))
    aged = np.maximum(np.asarray(held.usable_aged) - kept.of_aged, 0.0)
    into = None if wall is None else bank_power(option, most, wall)
    return Berthed(
        days=days,
        typical=np.atleast_2d(typical),
        worst=np.atleast_2d(worst),
        wall=wall,
        into_bank=into,
        bound_by="" if wall is None else _bound(option, most, wall),
        hours_typical=None if into is None else refill(bank, held, typical, into),
        hours_worst=None if into is None else refill(bank, held, worst, into),
        currents=CURRENTS,
        voltage=voltage,
        by_current_typical=refill(bank, held, typical, bank_power(option, most, row)),
        by_current_worst=refill(bank, held, worst, bank_power(option, most, row)),
        least_charger=_least_charger(bank, most, held, typical, wanted),
        outings=np.atleast_2d(aged / np.maximum(typical, 1.0)),
    )


def days_of_use(case: Case) -> float:
    """As many days a year as the leg that is made most often: a usual day has its share of each."""
    return max((float(best(leg.times_per_year)[0]) for leg in case.legs), default=0.0)


def bank_power(option: Option, most: Numbers, wall: Array) -> Array:
    """Power into the bank [W]: the least of what breaker, charger and bank allow."""
    assert option.supply is not None
    assert option.charger_power is not None
    given = wall * np.asarray(option.supply.charger.efficiency)
    return np.asarray(np.minimum(np.minimum(given, option.charger_power), most))


def most_power_in(case: Case, bank: Bank) -> Numbers:
    """Power at the greatest charge current that the bank takes at the season's warmth [W]."""
    warmth = np.asarray(case.waters.temperature + bank.above_water)
    rate = np.minimum(acceptance(bank.chemistry).rate, charge_rate_limit(bank.chemistry, warmth))
    return np.asarray(bank.charge * bank.nominal_voltage * rate)


def _bound(option: Option, most: Numbers, wall: Array) -> str:
    """What holds the charge back, best estimate."""
    assert option.supply is not None
    assert option.charger_power is not None
    limits = {
        "berth": float(best(wall * np.asarray(option.supply.charger.efficiency))[0]),
        "charger": float(best(option.charger_power)[0]),
        "bank": float(best(most)[0]),
    }
    return min(limits, key=lambda name: limits[name])


def refill(bank: Bank, held: Store, taken: Array, power: Array) -> Array:
    """Time from a bank that has given ``taken`` [J] until it is full [s]."""
    takes = acceptance(bank.chemistry)
    nominal = np.asarray(held.nominal)
    state = np.clip(1.0 - np.asarray(taken) / nominal, 0.0, 1.0)
    rate = np.asarray(power) / nominal
    return time_to_full(state, rate, takes.time_constant, takes.tail, takes.kept)


def _least_charger(
    bank: Bank, most: Numbers, held: Store, typical: Array, wanted: float
) -> float | None:
    """Power into the bank that refills a usual day in time in nine draws of ten [W]."""
    low, high = 0.0, 2.0 * float(np.max(most))
    enough = spread(refill(bank, held, typical, np.minimum(high, most))).high
    if not scalar(enough) <= wanted:
        return None
    for _ in range(30):
        middle = 0.5 * (low + high)
        power = np.minimum(middle, most)
        late = not scalar(spread(refill(bank, held, typical, power)).high) <= wanted
        low, high = (middle, high) if late else (low, middle)
    return high
