"""How does each row of the verdict fall as the bank behind one motor grows?"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import best, held_share, scalar
from generator.analyses.use.berth import refill
from generator.analyses.use.coverage import covered
from generator.analyses.use.leg_energy import in_hand
from generator.analyses.use.legs import LegResult
from generator.analyses.weight.weight import Weight
from generator.answer.desk import FAILS
from generator.answer.motor_look import MATCH, OF_POWER, Asked, MotorLook, rank_of
from generator.arrays import Array, Places

HOUSE, BY_ENERGY, BY_CURRENT, BY_CHARGE, BY_MASS = 13, (1, 2), (3, 14), 11, 16
MOVED = (*OF_POWER, MATCH, HOUSE, *BY_ENERGY, *BY_CURRENT, BY_CHARGE, BY_MASS)
WHOLE = 0.9  # of a power: so much of it counts as that motor still


@dataclass(frozen=True, eq=False)
class Column:
    """One motor at one speed: how bad each row is at each size of bank, (sizes,) by row."""

    ranks: dict[int, Places]


def columns(
    looks: Sequence[MotorLook], sizes: Sequence[float], mass_held: bool = False
) -> list[list[Column]]:
    """By motor, then by speed. ``sizes`` are nominal energies [J], rising.

    ``mass_held`` leaves out that a larger bank is a heavier one. Of a motor that is too small
    only the rows in which it is are told: no bank mends them.
    """
    return [_of_motor(look, looks, sizes, mass_held) for look in looks]


def _of_motor(
    look: MotorLook, looks: Sequence[MotorLook], sizes: Sequence[float], mass_held: bool
) -> list[Column]:
    count, found = len(sizes), look.found
    if look.short:
        ranks = {row: np.full(count, FAILS) for row in look.short}
        return [Column(ranks)] * len(look.slower)
    fixed = {MATCH: np.full(count, look.ranks[MATCH])} | _as_limited(look, looks, sizes)
    fixed |= _falling(BY_CURRENT, count, lambda at: _with_limit(look, sizes[at]))
    if mass_held:
        fixed[BY_MASS] = np.full(count, rank_of(BY_MASS, found))
    else:
        fixed |= _falling((BY_MASS,), count, lambda at: _heavier(look, sizes[at]))
    rows = BY_ENERGY if found.case.house.separate_bank else (*BY_ENERGY, HOUSE)
    return [
        Column(
            fixed
            | {BY_CHARGE: np.full(count, rank_of(BY_CHARGE, _berthed(look, each)))}
            | _falling(rows, count, _at_speed(look, each, sizes))
        )
        for each in look.asked
    ]


def _at_speed(look: MotorLook, asked: Asked, sizes: Sequence[float]) -> Callable[[int], Findings]:
    return lambda at: _with_energy(look, asked, sizes[at])


def _falling(rows: tuple[int, ...], count: int, at: Callable[[int], Findings]) -> dict[int, Places]:
    """Ranks over all sizes, by halving: between two sizes of the same ranks nothing changes."""
    table = np.zeros((len(rows), count), dtype=np.intp)

    def told(place: int) -> tuple[int, ...]:
        found = at(place)
        table[:, place] = [rank_of(row, found) for row in rows]
        return tuple(table[:, place])

    def between(low: int, high: int, first: tuple[int, ...], last: tuple[int, ...]) -> None:
        if first == last:
            table[:, low:high] = np.array(first)[:, np.newaxis]
        elif high - low > 1:
            middle = (low + high) // 2
            ranks = told(middle)
            between(low, middle, first, ranks)
            between(middle, high, ranks, last)

    between(0, count - 1, told(0), told(count - 1))
    return dict(zip(rows, table, strict=True))


def _as_limited(
    look: MotorLook, looks: Sequence[MotorLook], sizes: Sequence[float]
) -> dict[int, Places]:
    """Rows of power where the bank's current sets the motor down: those of a smaller motor."""
    found = {}
    for row in look.ranks:
        if row != MATCH:
            most = look.power * look.left(row) / look.nominal
            left = [min(look.power, most * size) for size in sizes]
            found[row] = np.array([_rank_at(row, look, looks, power) for power in left])
    return found


def _rank_at(row: int, look: MotorLook, looks: Sequence[MotorLook], power: float) -> int:
    """The best of the motors that are no larger than what is left; never better than itself.

    Below the smallest of the map it is one step worse than that.
    """
    if power >= WHOLE * look.power:
        return look.ranks[row]
    able = [each.ranks[row] for each in looks if each.power <= power / WHOLE]
    least = min(looks[0].ranks[row] + 1, FAILS)
    return max(look.ranks[row], min(able, default=least))


def _with_limit(look: MotorLook, size: float) -> Findings:
    """What rows of reserve and current read of a bank of a size."""
    found, factor = look.found, size / look.nominal
    assert found.bank is not None
    usable, kept = stock(look, factor)
    told = replace(found.bank.as_set, limit=look.limit * factor)
    bank = replace(found.bank, as_set=told, cruise_rate=found.bank.cruise_rate / factor)
    return replace(
        found,
        bank=bank,
        store=replace(found.store, usable_aged=usable),
        reserve=replace(found.reserve, of_aged=kept),
    )


def stock(look: MotorLook, factor: float) -> tuple[Array, Array]:
    """What is usable, aged, and what of it the reserve keeps [J]."""
    usable = look.sizes.usable_at(factor)
    share = np.asarray(look.found.case.planning.reserve_share)
    return usable, np.maximum(look.found.reserve.demand, usable * share)


def _with_energy(look: MotorLook, asked: Asked, size: float) -> Findings:
    """What rows of passages read of a bank of a size, at one speed."""
    usable, kept = stock(look, size / look.nominal)
    above = np.maximum(usable - kept, 0.0)
    items = tuple(_leg(item, usable, above) for item in asked.legs.results)
    legs = replace(asked.legs, results=items)
    must = [place for place, item in enumerate(items) if item.must_make]
    worst = min(must, key=lambda place: items[place].powered * items[place].untouched, default=None)
    found = look.found
    inside = None if found.use.coverage is None else covered(asked.outfit, legs, asked.needs)
    return replace(
        found,
        case=asked.outfit.case,
        legs=legs,
        key=replace(found.key, worst_leg=worst),
        use=replace(found.use, coverage=inside),
        store=replace(found.store, usable_aged=usable),
    )


def _leg(item: LegResult, usable: Array, above: Array) -> LegResult:
    """The leg against another stock; what the motor does not hold has no need at any size."""
    available = np.maximum(above - item.before, 0.0)
    return replace(
        item,
        above=above,
        available=available,
        ratio=in_hand(item.need, available),
        untouched=_among(item, available),
        with_reserve=_among(item, usable - item.before),
        unworked=None if item.unworked is None else _leg(item.unworked, usable, above),
    )


def _among(item: LegResult, there: Array) -> float:
    """Share of the draws that the motor holds in which so much is enough."""
    return held_share(item.need <= there) / item.powered if item.powered > 0.0 else 0.0


def _berthed(look: MotorLook, asked: Asked) -> Findings:
    """The usual day at one speed, put back into the bank as specified."""
    found, berth = look.found, look.found.use.berth
    if berth is None or berth.into_bank is None or not asked.needs:
        return found
    calm = asked.needs[0].calm
    day = [calm[place] for place in berth.places]
    typical = sum(day, np.zeros((1, 1)))
    assert found.option.bank is not None
    bank = found.option.bank.resized(1.0 / look.factor)
    held = replace(found.store, nominal=np.asarray(found.store.nominal) / look.factor)
    hours = refill(bank, held, typical, berth.into_bank)
    berth = replace(berth, typical=np.atleast_2d(typical), typical_hours=hours)
    return replace(found, use=replace(found.use, berth=berth))


def _heavier(look: MotorLook, size: float) -> Findings:
    """The boat with the mass that a bank of another size has more, all else as it floats."""
    weight = look.found.weight
    mass = 0.0 if weight.bank_mass is None else scalar(best(weight.bank_mass))
    extra = mass * (size / (look.nominal / look.factor) - 1.0)
    return replace(look.found, weight=_loaded(weight, extra))


def _loaded(weight: Weight, extra: float) -> Weight:
    left = None if weight.plate_left is None else weight.plate_left - extra
    return replace(weight, added_mass=weight.added_mass + extra, plate_left=left)
