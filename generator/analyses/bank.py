"""What does the bank hold, keep back and have to give?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.ageing import Ageing
from generator.analyses.bank_state import (
    BankState,
    cells_of,
    cut_off,
    discharge_limit,
    draws_current,
)
from generator.analyses.demand import Scale, Weather
from generator.analyses.plant import Store, controller_cut_off, house_drain, peak_drain
from generator.analyses.power import Power, at_points
from generator.analyses.reserve import Reserve
from generator.analyses.spread import scalar, spread
from generator.analyses.weight import Weight
from generator.arrays import Array, Numbers
from generator.case.case import Case
from generator.case.option import Option
from generator.physics.energy.battery import rate
from generator.physics.energy.cell import LEAD, charge_rate_limit


@dataclass(frozen=True)
class BankResult:
    """Energy J, current A, rate 1/s, mass kg; arrays are per draw.

    Currents are those of the aged, cold bank: at half charge for cruise, at the floor for peak.
    """

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
    states: tuple[BankState, BankState, BankState]  # new, midlife, aged
    left: tuple[Array, Array, Array]  # J above the reserve in each of them
    ageing: Ageing
    cells: int
    cut_off: Array  # V, the higher of management system and controller
    peak_power: Array  # W at the terminals
    cold_charge: Array  # 1/s, charge rate at the coldest
    cold_charge_low: float  # 1/s, the same in the coldest of ten draws
    lead: bool


def bank_result(
    case: Case,
    option: Option,
    found: Power,
    scale: Scale,
    kept: Reserve,
    held: Store,
    weight: Weight,
    aged: Ageing | None,
) -> BankResult | None:
    """Energy above the reserve and the currents that cruise and peak power ask for."""
    bank, motor = option.bank, option.motor
    if bank is None or motor is None or aged is None:
        return None
    assert held.new is not None
    assert held.midlife is not None
    assert held.aged is not None
    cruise = np.atleast_2d(np.asarray(case.planning.cruise_speed))
    curve = at_points(case, option, found, scale, cruise, Weather(0.0, 1.0))
    drain = curve.output.drain + house_drain(case, option)
    cruise_current = draws_current(held.aged, drain)
    peak_current = held.aged.peak_current
    states = (held.new, held.midlife, held.aged)
    demand, share = kept.demand, case.planning.reserve_share
    left = [
        np.maximum(state.usable - np.maximum(demand, state.usable * share), 0.0) for state in states
    ]
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
        states=states,
        left=(left[0], left[1], left[2]),
        ageing=aged,
        cells=cells_of(bank),
        cut_off=cut_off(bank, controller_cut_off(bank, motor)),
        peak_power=np.atleast_2d(np.asarray(peak_drain(motor, case.factors))),
        cold_charge=charge_rate_limit(bank.chemistry, aged.aged.temperature),
        cold_charge_low=scalar(
            charge_rate_limit(bank.chemistry, spread(np.asarray(aged.aged.temperature)).low)
        ),
        lead=bank.chemistry in LEAD,
    )
