"""What does it cost to buy and to own?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.money.cost_ledger import Ledger, Payment
from generator.analyses.use.legs import Legs
from generator.arrays import Array, Numbers
from generator.case.case import Case
from generator.case.diesel import Diesel
from generator.case.option import Option
from generator.case.prices import BANK, HARDWARE
from generator.money.present_value import annuity, cumulative, present_value
from generator.money.wear import overhaul_chance, wear, wear_at_even_chance

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


@dataclass(frozen=True)
class Cost:
    """Money of one option, currency of the case, costs positive; arrays are per draw."""

    payments: tuple[Payment, ...]
    use: Use
    first: Array
    contingency: Array
    energy: Array  # per year
    service: Array  # per year
    other: Array  # per year: what the ledger names as yearly
    overhaul: Overhaul | None
    flows: Array  # (draws, years + 1), beyond the horizon too, nothing sold at the end
    residual: Array  # at the end of the horizon
    present_value: Array  # over the horizon
    cumulative: Array  # (draws, horizon + 1), as paid
    equal_yearly: Array  # the present value as equal payments over the horizon
    ledger: Ledger
    priced: bool  # False where the case gives no first cost for what has to be fitted

    @property
    def yearly(self) -> Array:
        """Energy, service and what else comes every year."""
        return self.energy + self.service + self.other


def cost(case: Case, option: Option, legs: Legs, lines: Ledger) -> Cost:
    """First cost, what each year takes, later payments, and their present value."""
    prices, horizon = case.prices, case.prices.horizon
    use = _use(case, legs)
    energy, service = _energy(case, option, use), _service(case, option)
    first = _sum(lines, "first") + lines.contingency
    other = _sum(lines, "yearly")
    risk = _overhaul(case, option, use, lines)
    flows = _flows(lines, first, energy + service + other)
    if risk is not None and risk.counted:
        flows = flows + np.diff(risk.chance, axis=1, prepend=0.0) * np.asarray(prices.overhaul)
    residual = _residual(case, option, lines)
    if prices.terms == "nominal":
        growth = (1.0 + np.asarray(prices.inflation)) ** np.arange(lines.years + 1.0)
        flows, residual = flows * growth, residual * growth[..., horizon : horizon + 1]
    within = flows[:, : horizon + 1]
    sold = residual / (1.0 + np.asarray(prices.discount_rate)) ** horizon
    worth = present_value(within, prices.discount_rate).reshape(-1, 1) - sold
    return Cost(
        payments=lines.payments,
        use=use,
        first=first,
        contingency=lines.contingency,
        energy=energy,
        service=service,
        other=other,
        overhaul=risk,
        flows=flows,
        residual=residual,
        present_value=worth,
        cumulative=cumulative(within, 0.0),
        equal_yearly=np.asarray(annuity(worth, prices.discount_rate, horizon)),
        ledger=lines,
        priced=_priced(case, option, lines),
    )


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


def _sum(lines: Ledger, when: str) -> Array:
    found = np.zeros((1, 1))
    for row in lines.payments:
        if row.when == when:
            found = found + row.amount
    return found


def _flows(lines: Ledger, first: Array, yearly: Array) -> Array:
    once = [row for row in lines.payments if row.when == "once" and row.year is not None]
    columns = [first, yearly, *(row.amount for row in once), *(row.year for row in once)]
    draws = max(column.shape[0] for column in columns if column is not None)
    flows = np.zeros((lines.years + 1, draws)).T  # a year's payments lie side by side
    flows[:, :1] += first
    flows[:, 1:] += yearly
    rows = np.arange(draws)
    for row in once:
        assert row.year is not None
        year = np.broadcast_to(row.year, (draws, 1))[:, 0].astype(np.int64)
        amount = np.broadcast_to(row.amount, (draws, 1))[:, 0]
        inside = year <= lines.years
        flows[rows[inside], year[inside]] += amount[inside]
    return flows


def _residual(case: Case, option: Option, lines: Ledger) -> Array:
    """Engine and motor by the share of the register, the bank by what is left of its life."""
    fitted, bank = np.zeros((1, 1)), np.zeros((1, 1))
    for row in lines.payments:
        if row.when == "first" and row.part in HARDWARE:
            fitted = fitted + np.maximum(row.amount, 0.0)
        elif row.when == "first" and row.part == BANK:
            bank = bank + np.maximum(row.amount, 0.0)
    worth = fitted * np.asarray(case.prices.residual_share)
    own = any(row.part == BANK and row.source != "register" for row in lines.payments
              if row.when == "once")  # fmt: skip
    if option.bank is None or own:
        return np.asarray(worth)
    lives = case.prices.horizon / np.atleast_2d(np.asarray(option.bank.lasts, dtype=np.float64))
    replaced = np.ceil(lives) - 1.0  # banks bought after the first one
    price = np.where(replaced > 0.0, bank * np.asarray(case.prices.battery_later), bank)
    return np.asarray(worth + price * (replaced + 1.0 - lives))


def _energy(case: Case, option: Option, use: Use) -> Array:
    prices = case.prices
    if option.bank is not None:
        price: Numbers = np.asarray(prices.electricity) * prices.electricity_trend
        return np.atleast_2d(use.energy / prices.charging_efficiency * price)
    price = np.asarray(prices.diesel) * prices.diesel_trend
    return np.atleast_2d(use.energy * price)


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
    years = np.arange((lines.years if counted else case.prices.horizon) + 1.0)
    worn = np.atleast_2d(wear(hours + hourly * years, age + years, life, calendar))
    today = worn[:, :1]
    shape = np.asarray(engine.wear_shape)
    if option.kind == "keep" and engine.condition == DYING:
        return _due(np.maximum(today, 1.0), years, counted)
    even = wear_at_even_chance(today, shape)
    pace = np.maximum(hourly / life, 1.0 / calendar)
    return Overhaul(
        wear=today,
        years_left=np.asarray((even - today) / pace),
        chance=overhaul_chance(today, worn, shape),
        counted=counted,
    )


def _due(wear_today: Array, years: Array, counted: bool) -> Overhaul:
    """Of a dying engine, whatever the meter says: its overhaul falls into the first year."""
    chance = np.broadcast_to(np.where(years > 0.0, 1.0, 0.0), (wear_today.shape[0], years.size))
    return Overhaul(wear_today, np.zeros_like(wear_today), np.asarray(chance), counted)


def _past(case: Case, option: Option, engine: Diesel, hourly: Array) -> tuple[Numbers, Numbers]:
    """Hours run and years since new; a new engine has neither, no meter follows the years."""
    if option.kind != "keep":
        return 0.0, 0.0
    age = 0.0 if engine.year is None else max(float(int(case.study.date[:4]) - engine.year), 0.0)
    return hourly * age if engine.hours is None else engine.hours, age
