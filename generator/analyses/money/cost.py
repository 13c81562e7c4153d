"""What does it cost to buy and to own?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.money.bill import Bill
from generator.analyses.money.cost_ledger import Ledger, Payment
from generator.analyses.percentiles import best
from generator.analyses.use.legs import Legs
from generator.arrays import Array, Numbers
from generator.case.case import Case
from generator.case.diesel import Diesel
from generator.case.option import Option
from generator.case.prices import BANK, HARDWARE
from generator.money.present_value import annuity, cumulative, present_value
from generator.money.residual import worth_by_age
from generator.money.wear import overhaul_chance, wear, wear_at_even_chance
from generator.physics.energy.genset import genset_fuel

DYING = "dying"  # the state of an engine that asks for its overhaul at once


@dataclass(frozen=True)
class Use:
    """What a year takes, per draw: J or m3, s, m."""

    energy: Array
    time: Array
    distance: Array


@dataclass(frozen=True)
class Overhaul:
    """The risk that a diesel carries; arrays are per draw."""

    wear: Array  # share of its life used today
    years_left: Array  # until an overhaul is as likely as not
    chance: Array  # of an overhaul by the end of each year, (draws, years + 1)
    counted: bool  # False where the owner's ledger holds one
    price: Array  # of one, contingency included


@dataclass(frozen=True)
class Cost:
    """Money of one option, currency of the case, costs positive; arrays are per draw."""

    payments: tuple[Payment, ...]
    use: Use
    charged_by: str  # fuel, wall, genset, own (sun and wind), nothing
    bought: Array  # J a year at the wall
    burnt: Array  # m3 of diesel a year, by the engine or by the genset that charges the bank
    first: Array
    energy: Array  # per year
    service: Array  # per year
    other: Array  # per year: what the ledger names as yearly
    overhaul: Overhaul | None
    flows: Array  # (draws, horizon + 1), nothing sold at the end
    residual: Array  # at the end of the horizon
    yearly_worth: Array  # today, of what comes every year of the horizon
    end_worth: Array  # today, of the residual
    present_value: Array  # over the horizon
    cumulative: Array  # (draws, horizon + 1), as paid
    equal_yearly: Array  # the present value as equal payments over the horizon
    ledger: Ledger
    priced: bool  # False where the case gives no first cost for what has to be fitted

    @property
    def yearly(self) -> Array:
        """Energy, service and what else comes every year."""
        return self.energy + self.service + self.other

    @property
    def bill(self) -> Bill:
        """The expected case; what the rounding of the lines leaves is contingency."""
        whole, first = Bill.whole, Bill.whole(self.first)
        later = best(self.present_value) - best(self.first) - best(self.yearly_worth)
        return Bill(
            first=first,
            contingency=first - sum(whole(r.amount) for r in self.payments if r.when == "first"),
            energy=whole(self.energy),
            service=whole(self.service),
            other=whole(self.other),
            yearly_worth=whole(self.yearly_worth),
            later_worth=whole(later + best(self.end_worth)),
            end_worth=whole(self.end_worth),
        )


def cost(case: Case, option: Option, legs: Legs, lines: Ledger) -> Cost:
    """First cost, what each year takes, later payments, and their present value."""
    prices, horizon = case.prices, case.prices.horizon
    use, charged_by = _use(case, legs), _charged_by(case, option)
    bought, burnt = _bought(case, option, use, charged_by)
    energy, service = _energy(case, bought, burnt), _service(case, option)
    first, other = lines.sum("first"), lines.sum("yearly")
    risk = _overhaul(case, option, use, lines)
    flows = _flows(lines, horizon, first, energy + service + other)
    if risk is not None and risk.counted:
        flows = flows + np.diff(risk.chance, axis=1, prepend=0.0) * risk.price
    residual = _residual(case, option, lines)
    growth = 1.0 + (np.asarray(prices.inflation) if prices.terms == "nominal" else 0.0)
    raised = growth ** np.arange(horizon + 1.0)
    flows, residual = flows * raised, residual * raised[..., horizon : horizon + 1]
    sold = residual / (1.0 + np.asarray(prices.discount_rate)) ** horizon
    paid = present_value(flows, prices.discount_rate).reshape(-1, 1)
    return Cost(
        payments=lines.payments,
        use=use,
        charged_by=charged_by,
        bought=bought,
        burnt=burnt,
        first=first,
        energy=energy,
        service=service,
        other=other,
        overhaul=risk,
        flows=flows,
        residual=residual,
        yearly_worth=(energy + service + other) * _yearly_factor(case, raised),
        end_worth=sold,
        present_value=paid - sold,
        cumulative=cumulative(flows, 0.0),
        equal_yearly=np.asarray(annuity(paid - sold, prices.discount_rate, horizon)),
        ledger=lines,
        priced=_priced(case, option, lines),
    )


def _yearly_factor(case: Case, raised: Array) -> Array:
    """Worth today of one unit of money in each year of the horizon, over one unit."""
    units = np.atleast_2d(raised).copy()
    units[:, 0] = 0.0
    return present_value(units, case.prices.discount_rate).reshape(-1, 1)


def _priced(case: Case, option: Option, lines: Ledger) -> bool:
    """What is aboard need not be bought, but a dying engine needs an overhaul, at a given price."""
    if option.kind != "keep":
        return lines.priced
    if option.diesel is None or option.diesel.condition != DYING:
        return True
    given = {item.path for item in case.assumptions if item.origin == "given"}
    return "prices.overhaul" in given or any(row.part == "overhaul" for row in lines.payments)


def _use(case: Case, legs: Legs) -> Use:
    scale = np.asarray(case.prices.use_scale)
    miles = np.zeros((1, 1))
    for leg in case.legs:
        miles = miles + np.asarray(leg.distance) * np.asarray(leg.times_per_year)
    return Use(
        np.atleast_2d(legs.yearly * scale),
        np.atleast_2d(legs.yearly_time * scale),
        np.atleast_2d(miles * scale),
    )


def _flows(lines: Ledger, years: int, first: Array, yearly: Array) -> Array:
    once = [(row.year, row.amount + row.contingency) for row in lines.payments
            if row.when == "once" and row.year is not None]  # fmt: skip
    columns = [first, yearly, *(part for pair in once for part in pair)]
    draws = max(column.shape[0] for column in columns)
    flows = np.zeros((years + 1, draws)).T  # a year's payments lie side by side
    flows[:, :1] += first
    flows[:, 1:] += yearly
    rows = np.arange(draws)
    for when, amount in once:
        year = np.broadcast_to(when, (draws, 1))[:, 0].astype(np.int64)
        paid = np.broadcast_to(amount, (draws, 1))[:, 0]
        inside = year <= years
        flows[rows[inside], year[inside]] += paid[inside]
    return flows


def _residual(case: Case, option: Option, lines: Ledger) -> Array:
    """Engine and motor by the share of the register, the bank by what is left of its life."""
    fitted = np.zeros((1, 1))
    for row in lines.payments:
        if row.when == "first" and row.part in HARDWARE:
            fitted = fitted + np.maximum(row.amount, 0.0)
    worth = fitted * np.asarray(case.prices.residual_share)
    if option.bank is None:
        return np.asarray(worth)
    life = np.atleast_2d(np.asarray(option.bank.lasts, dtype=np.float64))
    price, age = _bank_at_end(case, lines, life)
    return np.asarray(worth + worth_by_age(price, age, life))


def _bank_at_end(case: Case, lines: Ledger, life: Array) -> tuple[Array, Array]:
    """What the bank cost that is aboard at the end of the horizon, and how old it is then."""
    horizon, none = float(case.prices.horizon), np.zeros((1, 1))
    banks = [row for row in lines.payments if row.part == BANK and row.when != "yearly"]
    first = sum((np.maximum(row.amount, 0.0) for row in banks if row.when == "first"), none)
    bought = [(row.year, np.maximum(row.amount, 0.0)) for row in banks
              if row.source != "register" and row.year is not None]  # fmt: skip
    if not bought:
        replaced = np.ceil(horizon / life) - 1.0  # each when the life of that before it has ended
        later = np.where(replaced > 0.0, np.asarray(case.prices.battery_later), 1.0)
        return np.asarray(first * later), horizon - replaced * life
    price, year = first, none
    for when, paid in sorted(bought, key=lambda each: float(best(each[0])[0])):
        inside, after = when <= horizon, when > year  # it takes the place of those before it
        price = np.where(inside, np.where(after, paid, price + paid), price)
        year = np.where(inside, np.maximum(when, year), year)
    return price, horizon - year


def _charged_by(case: Case, option: Option) -> str:
    """Where the energy of its legs comes from: fuel, wall, genset, own (sun, wind) or nothing."""
    if option.bank is None:
        return "fuel"
    if case.berth.shore_power:
        return "wall"
    supply = option.supply
    if supply is not None and supply.genset is not None:
        return "genset"
    return "own" if supply is not None and supply.extra else "nothing"


def _bought(case: Case, option: Option, use: Use, charged_by: str) -> tuple[Array, Array]:
    """J at the wall and m3 of diesel in a year; sun and wind are not bought, nor what never comes.

    A genset without a plug is counted for all of it at its rated power: what sun and wind spare it
    is not known here.
    """
    taken = np.atleast_2d(use.energy / case.prices.charging_efficiency)
    nil = taken * 0.0  # nan stays where a leg cannot be motored
    if charged_by == "fuel":
        return nil, np.atleast_2d(use.energy)
    if charged_by == "genset":
        assert option.supply is not None
        assert option.supply.genset is not None
        power = np.asarray(option.supply.genset.power)
        return nil, np.asarray(taken * (genset_fuel(power, power) / power))
    return (taken if charged_by == "wall" else nil), nil


def _energy(case: Case, bought: Array, burnt: Array) -> Array:
    prices = case.prices
    electricity = np.asarray(prices.electricity) * prices.electricity_trend
    diesel = np.asarray(prices.diesel) * prices.diesel_trend
    return np.asarray(bought * electricity + burnt * diesel)


def _service(case: Case, option: Option) -> Array:
    prices = case.prices
    price = prices.electric_service if option.kind == "battery" else prices.diesel_service
    return np.atleast_2d(np.asarray(price, dtype=np.float64))


def _overhaul(case: Case, option: Option, use: Use, lines: Ledger) -> Overhaul | None:
    """Wear today and the chance of an overhaul year by year."""
    engine = option.diesel
    if engine is None:
        return None
    hourly = np.asarray(use.time)
    if engine.hours_per_year is not None and option.kind == "keep":
        hourly = np.atleast_2d(np.asarray(engine.hours_per_year) * case.prices.use_scale)
    hours, age = _past(case, option, engine, hourly)
    life, calendar = np.asarray(engine.life), np.asarray(engine.calendar_life)
    counted = not any(row.part == "overhaul" for row in lines.payments)
    price = np.atleast_2d(case.prices.overhaul * (1.0 + np.asarray(case.prices.contingency)))
    years = np.arange(case.prices.horizon + 1.0)
    worn = np.atleast_2d(wear(hours + hourly * years, age + years, life, calendar))
    today = worn[:, :1]
    shape = np.asarray(engine.wear_shape)
    if option.kind == "keep" and engine.condition == DYING:
        return _due(np.maximum(today, 1.0), years, counted, price)
    even = wear_at_even_chance(today, shape)
    pace = np.maximum(hourly / life, 1.0 / calendar)
    return Overhaul(
        wear=today,
        years_left=np.asarray((even - today) / pace),
        chance=overhaul_chance(today, worn, shape),
        counted=counted,
        price=price,
    )


def _due(wear_today: Array, years: Array, counted: bool, price: Array) -> Overhaul:
    """Of a dying engine, whatever the meter says: its overhaul falls into the first year."""
    chance = np.broadcast_to(np.where(years > 0.0, 1.0, 0.0), (wear_today.shape[0], years.size))
    return Overhaul(wear_today, np.zeros_like(wear_today), np.asarray(chance), counted, price)


def _past(case: Case, option: Option, engine: Diesel, hourly: Array) -> tuple[Numbers, Numbers]:
    """Hours run and years since new; a new engine has neither, no meter follows the years."""
    if option.kind != "keep":
        return 0.0, 0.0
    age = 0.0 if engine.year is None else max(float(int(case.study.date[:4]) - engine.year), 0.0)
    return hourly * age if engine.hours is None else engine.hours, age
