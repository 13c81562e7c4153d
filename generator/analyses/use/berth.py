"""How long is she charging at her berth, and what is left without a plug?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field

import numpy as np

from generator.analyses.motion.demand import Weather
from generator.analyses.motion.plant import Store, house_drain, passage_time
from generator.analyses.motion.power import at_points
from generator.analyses.percentiles import best, lacking_share, scalar, side_by_side, spread
from generator.analyses.store.outfit import Outfit
from generator.arrays import Array, Numbers
from generator.case.case import Case
from generator.case.option import Bank, Option
from generator.case.usage import Leg
from generator.physics.energy.cell import charge_rate_limit
from generator.physics.energy.charging import acceptance, supply_power, time_to_full
from generator.records import number, record, working
from generator.tables.method import method

CURRENTS = (4.0, 6.0, 8.0, 10.0, 13.0, 16.0, 20.0, 25.0, 32.0, 40.0, 50.0)  # A, of chart 9
VOLTAGE = method("berth.voltage")
TENTH = 0.1  # share of the draws beyond the pessimistic end
ROUNDS, PIECES = 10, 8  # of the search for a charger: each round cuts what is left in pieces
USUALLY = 0.5  # share of its days on which a leg follows, so that it is part of the usual one


@record
class Charging:
    """Time to full over the breaker of a berth, per draw."""

    ALONG = "breaker"
    breaker: Array = number("current", "breaker at the berth")
    typical: Array = number("hours", "time to full after a normal day", cautious="high")
    worst: Array = number("hours", "time to full from the reserve", cautious="high")
    absent: Mapping[str, str] = field(default_factory=dict)


@record
class Berthed:
    """Charging of one option. J, W, s, A, V; per draw. Times are of the bank as new.

    ``typical`` is what comes home missing on a usual day, one outing of the kind that is made
    most; nan where a leg of it cannot be motored;
    ``worst`` a bank drawn to its reserve.
    """

    outing: tuple[str, ...]  # the legs of a usual day
    bound_by: str | None  # berth, charger, bank: what holds the charge back, best estimate
    shore_power: bool
    days: float = number("mean_count", "usual days a year")
    typical: Array = number("energy", "energy used on a normal day", cautious="high")
    worst: Array = number("energy", "energy from full to the reserve", cautious="high")
    wall: Array | None = number("power", "power that the derated breaker supplies", expected=True)
    into_bank: Array | None = number("power", "power into the battery", expected=True)
    voltage: float = number("voltage", "voltage of the berth")
    typical_hours: Array | None = number("hours", "time to full after a normal day", "high")
    worst_hours: Array | None = number("hours", "time to full from the reserve", cautious="high")
    least_charger: float | None = number("power", "power that recharges a normal day in time")
    outings: Array = number("mean_count", "normal days from full to the reserve, aged", "low")
    places: tuple[int, ...] = working()  # of the legs of a usual day
    charging: Charging = working()  # over other breakers
    absent: Mapping[str, str] = field(default_factory=dict)


def berthed(outfit: Outfit, wanted: float) -> Berthed | None:
    """Hours to full at the berth; none without a bank. ``wanted`` [s] sizes the charger."""
    case, option, held = outfit.case, outfit.option, outfit.store
    kept, bank, berth = outfit.reserve, option.bank, case.berth
    outing, days = usual_day(case.legs)
    if bank is None or option.supply is None or days <= 0.0:
        return None
    most = most_power_in(case, bank)
    typical = _taken_on(outfit, outing)
    worst = np.maximum(np.asarray(held.usable) - kept.of_new, 0.0)
    voltage = VOLTAGE if berth.voltage is None else float(best(berth.voltage)[0])
    derated = np.asarray(berth.breaker_share)
    row = np.atleast_2d(np.asarray(supply_power(np.array(CURRENTS), voltage, derated)))
    wall = None
    if berth.shore_power and berth.breaker is not None and berth.voltage is not None:
        wall = np.atleast_2d(supply_power(berth.breaker, berth.voltage, derated))
    aged = np.maximum(np.asarray(held.usable_aged) - kept.of_aged, 0.0)
    into = None if wall is None else bank_power(option, most, wall)
    hours = None if into is None else refill(bank, held, typical, into)
    by_current = refill(bank, held, typical, bank_power(option, most, row))
    return Berthed(
        outing=tuple(case.legs[place].name for place in outing),
        bound_by=None if wall is None else _bound(option, most, wall),
        shore_power=berth.shore_power,
        days=days,
        typical=np.atleast_2d(typical),
        worst=np.atleast_2d(worst),
        wall=wall,
        into_bank=into,
        voltage=voltage,
        typical_hours=hours,
        worst_hours=None if into is None else refill(bank, held, worst, into),
        least_charger=_least_charger(bank, most, held, typical, wanted),
        outings=np.atleast_2d(aged / np.maximum(typical, 1.0)),
        places=outing,
        charging=Charging(
            breaker=np.array(CURRENTS),
            typical=by_current,
            worst=refill(bank, held, worst, bank_power(option, most, row)),
            absent=dict.fromkeys(("typical", "worst"), never_full(by_current)),
        ),
        absent=without(typical, hours),
    )


def without(typical: Array, hours: Array | None) -> dict[str, str]:
    """Why a number of the berth is absent."""
    never = "no_breaker" if hours is None else never_full(hours)
    return {
        **dict.fromkeys(("typical", "worst", "outings"), "leg_beyond"),
        **dict.fromkeys(("wall", "into_bank"), "no_breaker"),
        **dict.fromkeys(("typical_hours", "worst_hours"), never),
        "least_charger": "leg_beyond" if lacking_share(typical) > TENTH else "bank_takes_no_more",
    }


def never_full(hours: Array) -> str:
    """Why there is no time to full: what came home missing is not known, or nothing charges."""
    return "leg_beyond" if np.isnan(hours).any() else "nothing_charges_at_all"


def usual_day(legs: tuple[Leg, ...]) -> tuple[tuple[int, ...], float]:
    """Places of the legs of the outing that is made most, and how often a year it is.

    An outing is a leg that follows none, with those that follow it on at least half of its days;
    of two that are made as often, the longer.
    """
    firsts = [place for place, leg in enumerate(legs) if leg.follows is None]
    outings = {place: _with_followers(legs, place) for place in firsts}

    def often_and_long(place: int) -> tuple[float, float]:
        long = sum(float(best(legs[each].distance)[0]) for each in outings[place])
        return float(best(legs[place].times_per_year)[0]), long

    most = max(firsts, key=often_and_long, default=None)
    if most is None:
        return (), 0.0
    return outings[most], float(best(legs[most].times_per_year)[0])


def _with_followers(legs: tuple[Leg, ...], first: int) -> tuple[int, ...]:
    """A leg and all that follow it on most of its days, without a charge between."""
    often = float(best(legs[first].times_per_year)[0])
    found = [first]
    for before in found:  # grows while it is walked: what follows a follower is of the same day
        found += [
            place
            for place, leg in enumerate(legs)
            if leg.follows == before and place not in found
            and float(best(leg.times_per_year)[0]) >= USUALLY * often
        ]  # fmt: skip
    return tuple(found)


def _taken_on(outfit: Outfit, outing: tuple[int, ...]) -> Array:
    """What the legs of an outing take, in ordinary weather [J]; nan where one is not motored."""
    legs = [outfit.case.legs[place] for place in outing]
    speeds = side_by_side(*(leg.speed for leg in legs))
    curve = at_points(
        outfit.case, outfit.option, outfit.power, outfit.scale, speeds, Weather(0.0, 1.0)
    )
    drain = np.atleast_2d(curve.output.drain) + house_drain(outfit.case, outfit.option)
    times = side_by_side(*(passage_time(leg) for leg in legs))
    return np.asarray((drain * times).sum(axis=1, keepdims=True))


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
    for _ in range(ROUNDS):
        steps = np.linspace(low, high, PIECES + 1)
        times = spread(refill(bank, held, typical, np.minimum(steps[1:-1], most))).high
        late = int(np.count_nonzero(~(times <= wanted)))  # more power never takes longer
        low, high = float(steps[late]), float(steps[late + 1])
    return high
