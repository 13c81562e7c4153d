"""What does one option bring to the year: bank, sources, loads, and what its legs ask for?"""

from __future__ import annotations

import numpy as np

from generator.analyses.handling.under_sail import UnderSail
from generator.analyses.motion.plant import Store, within
from generator.analyses.motion.power import KNOT
from generator.analyses.percentiles import best, first_row
from generator.analyses.store.bank_state import taken
from generator.analyses.store.outfit import Outfit
from generator.analyses.use.departures import OptionYear
from generator.analyses.use.outings import Outings
from generator.analyses.year.house import HouseLoads
from generator.analyses.year.panel_yield import PanelYield
from generator.analyses.year.weather import Sky
from generator.arrays import Array
from generator.case.case import Case
from generator.case.option import Bank, Option
from generator.physics.energy.cell import charge_rate_limit
from generator.physics.energy.taper import taper_share
from generator.tables.method import method

SHARES = np.array([1.0, 0.85, 0.7])  # of the owner's speed that are tried in turn
HOUR = 3600.0
TURNING = np.array([3.9, 4.0, 5.0, 6.0]) * KNOT  # below 4 kn under sail nothing is gained
IN_WATER = method("bank.water_share")
LEAST_MADE_GOOD = method("passage.least_against_sea")


def option_year(
    outfit: Outfit,
    place: int,
    sail: UnderSail,
    panels: PanelYield | None,
    loads: HouseLoads,
    sky: Sky,
    times: Outings,
) -> OptionYear | None:
    """None for an option without a bank."""
    case, option = outfit.case, outfit.option
    bank, supply = option.bank, option.supply
    if bank is None or supply is None or panels is None:
        return None
    capacity, floor = _bank(outfit.store)
    reserve = float(best(outfit.reserve.of_new)[0])
    energy, time = _legs(outfit)
    kept_under_way = np.where(times.sailing, panels.under_way, 1.0)[:, np.newaxis]
    charger = first_row(supply.charger)
    full = capacity - floor
    machine = first_row(supply.genset) if supply.genset else None
    return OptionYear(
        place=place,
        capacity=capacity,
        floor=floor,
        reserve=min(reserve, full),
        leg_energy=energy,
        leg_time=time,
        house=loads.power[times.mode.astype(int)],
        sun=panels.sun * kept_under_way,
        wind=panels.wind,
        screw=_screw(case, option, sail, times),
        plug=_plug(case, option, float(charger.efficiency)),
        plug_efficiency=float(charger.efficiency),
        most=_most(bank, capacity, sky),
        taper=taper_share(bank.chemistry, HOUR),
        efficiency=min(float(best(case.prices.charging_efficiency)[0] / charger.efficiency), 1.0),
        genset=(
            float(machine.power),
            reserve + float(machine.start) * (full - reserve),
            reserve + float(machine.stop) * (full - reserve),
        )
        if machine
        else (0.0, 0.0, 0.0),
    )


def _bank(held: Store) -> tuple[float, float]:
    """Capacity and floor of the bank half way through its life, as warm as in season [J]."""
    assert held.aged is not None
    assert held.new is not None
    share = float(best(held.aged.condition.share)[0] * best(held.new.cold_share)[0])
    capacity = float(best(held.nominal)[0]) * share
    return capacity, capacity * float(best(held.aged.floor)[0])


def _legs(outfit: Outfit) -> tuple[Array, Array]:
    """Energy and time of each leg in ordinary weather, by the calm curve, at three speeds."""
    curve = outfit.power.curves["calm"]
    fits = np.atleast_2d(within(curve.output.load, curve.demand.feasible))[0]
    drawn = np.atleast_2d(taken(outfit.option.bank, outfit.store.aged, curve.output.drain))[0]
    drain = np.where(fits, drawn, np.nan)
    legs = [first_row(leg) for leg in outfit.case.legs]
    tried = np.array([float(leg.speed) for leg in legs])[:, np.newaxis] * SHARES
    stream = np.array([[float(leg.stream)] for leg in legs])
    distance = np.array([[float(leg.distance)] for leg in legs])
    ground = np.where(tried - stream >= LEAST_MADE_GOOD, tried - stream, np.nan)
    time = distance / ground
    energy = np.interp(tried, outfit.power.speed, drain, left=np.nan, right=np.nan) * time
    return energy, np.where(np.isnan(energy), np.nan, time)


def _screw(case: Case, option: Option, sail: UnderSail, times: Outings) -> Array:
    """Power of the screw turned by the water, over the hours of day sails [W]."""
    plan, hours = first_row(case.planning), float(times.sailing.sum())
    supply = option.supply
    if supply is None or not supply.regeneration or not hours:
        return np.zeros(times.sailing.shape)
    # lacking: a screw that gives nothing back
    given = np.concatenate([[0.0], np.nan_to_num(best(sail.rows.returned))])
    power = float(np.interp(float(plan.sailing_speed), TURNING, given, left=0.0))
    return np.asarray(times.sailing * power * min(float(plan.sailing_time) / HOUR / hours, 1.0))


def _plug(case: Case, option: Option, efficiency: float) -> float:
    """The smaller of socket and charger, into the bank [W]; the socket where it is known."""
    berth = first_row(case.berth)
    socket = np.inf
    if berth.breaker is not None and berth.voltage is not None:
        socket = float(berth.breaker * berth.voltage * berth.breaker_share) * efficiency
    assert option.charger_power is not None
    given = float(best(option.charger_power)[0])
    return min(socket, given) if berth.shore_power else 0.0


def _most(bank: Bank, capacity: float, sky: Sky) -> Array:
    """What the bank takes on each day, by how warm it is [W]."""
    warm = IN_WATER * sky.water + (1.0 - IN_WATER) * sky.air
    return charge_rate_limit(bank.chemistry, warm) * capacity
