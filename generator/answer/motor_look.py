"""What of an option's verdict hangs on its motor alone, and what does it ask of a bank?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.handling.docking import docking
from generator.analyses.handling.headwind import asked_winds, headwind
from generator.analyses.handling.holding import HOLDING_TIME, holding
from generator.analyses.handling.stream import stream
from generator.analyses.motion.bench import TOP_TIME
from generator.analyses.motion.hull import vessel
from generator.analyses.motion.key_figures import key_figures
from generator.analyses.motion.plant import Store, peak_drain, peak_lasts, store
from generator.analyses.motion.power import power
from generator.analyses.percentiles import best, scalar, spread
from generator.analyses.store.bank_size import BySize, by_size
from generator.analyses.store.bank_state import draws_current
from generator.analyses.store.floor import with_floor
from generator.analyses.store.outfit import Outfit
from generator.analyses.store.reserve import Outline, reserve, reserve_power
from generator.analyses.use.coverage import Needs, passage_needs
from generator.analyses.use.exposed_part import Curves
from generator.analyses.use.legs import Legs, passages
from generator.analyses.verdict.criteria.catalogue import criteria
from generator.analyses.verdict.criteria.evaluate import JUDGES
from generator.analyses.weight.weight import weigh
from generator.answer.desk import FAILS, RANK, Desk, Look
from generator.answer.remedy import Change
from generator.arrays import Array
from generator.case.case import Case
from generator.case.option import Option
from generator.one_option import CALM, Ground

OF_POWER = (4, 5, 6, 7, 9, 24)  # rows of the motor, where the bank gives it its current
MATCH = 23  # a matched motor passes it, unless a new propeller is too near the hull
LASTS = {4: HOLDING_TIME, 7: TOP_TIME, 9: TOP_TIME, 24: 0.0}  # s for which the peak must last
SIZES = np.geomspace(0.25, 3.0, 10)  # times the bank of the look
WITHOUT_LIMIT = 1e6  # A: a bank that gives whatever is asked


@dataclass(frozen=True, eq=False)
class Asked:
    """What the passages take at one speed, each exposed part at its cheapest, whatever the bank."""

    outfit: Outfit
    legs: Legs
    needs: tuple[Needs, ...]


@dataclass(frozen=True, eq=False)
class MotorLook:
    """One motor behind a bank of its own C rate, whose current limit is left out.

    ``limit`` is what the motor may take of that bank [A]; ``nominal`` its energy [J]; ``factor``
    how many times it is the bank of the option.
    """

    power: float  # W
    found: Findings
    limit: Array
    nominal: float
    factor: float
    ranks: dict[int, int]  # of the rows of the motor that decide, were its bank large enough
    slower: tuple[Change, ...]
    count: int  # draws

    @cached_property
    def asked(self) -> tuple[Asked, ...]:
        """The passages at each of the speeds."""
        curves: Curves = {}
        return tuple(_asked(self.found.outfit, each, self.count, curves) for each in self.slower)

    @cached_property
    def sizes(self) -> BySize:
        """What is usable of a bank behind this motor, over its size."""
        return by_size(self.found.case, self.found.option, self.found.store, SIZES)

    @property
    def short(self) -> tuple[int, ...]:
        """Rows in which no bank helps: the motor is too small."""
        return tuple(row for row in OF_POWER if self.ranks.get(row) == FAILS)

    def left(self, row: int) -> float:
        """Of the power that a row rests on: the share that the bank of the look gives [-]."""
        motor, aged = self.found.option.motor, self.found.store.aged
        assert motor is not None
        assert aged is not None
        assert self.found.power.as_set is not None
        time = LASTS.get(row)
        if time is None or not peak_lasts(self.found.option, time):
            return _share(self.limit, self.found.power.as_set.continuous_asked)
        peak = peak_drain(motor, self.found.case.factors)
        return _share(self.limit, np.atleast_2d(draws_current(aged, peak)))


def _share(limit: Array, asked: Array) -> float:
    """In the middle of the draws; nothing where the bank sags before it gives so much."""
    share = scalar(spread(limit / asked, "low").middle)
    return share if np.isfinite(share) else 0.0


def rank_of(row: int, found: Findings) -> int:
    """How bad one row is: 0 passes or only tells, 1 with conditions, 2 fails."""
    criterion = next(each for each in criteria() if each.id == row)
    judged = JUDGES[row](criterion, found)
    return RANK.get(judged.result, 0) if judged.decides else 0


def motor_look(
    desk: Desk, base: Look, change: Change | None, slower: Sequence[Change]
) -> MotorLook:
    """The option with another motor, and its passages with each change of their speeds."""
    ground, own = desk.ground, base.findings
    case = ground.case if change is None else change.applied(ground.case, desk.count)
    option, scale = case.options[own.place], ground.trial.scale
    factor = max(1.0, _power(option) / _power(own.option))
    weight = weigh(case, option)  # with the bank as specified
    assert option.bank is not None
    option = replace(option, bank=option.bank.resized(factor))
    held, limit = _without_limit(case, option, own)
    hull = vessel(case.boat, case.waters, weight.net, option.propeller)
    found = power(case, option, hull, scale, held.aged, CALM)
    outline = Outline(case, option, found, scale, held)
    held = with_floor(outline, reserve_power(outline))
    outfit = Outfit(case, option, scale, found, held, reserve(case, option, found, scale, held))
    judged = _judged_on(ground, replace(own, weight=weight), outfit)
    ranks = {row: rank_of(row, judged) for row in OF_POWER if row in base.ranks}
    fits = base.ranks[MATCH]
    return MotorLook(
        power=_power(option),
        found=judged,
        limit=limit,
        nominal=scalar(best(held.nominal)),
        factor=factor,
        ranks={**ranks, MATCH: fits if change is None or fits == FAILS else 0},
        slower=tuple(slower),
        count=desk.count,
    )


def _judged_on(ground: Ground, base: Findings, outfit: Outfit) -> Findings:
    """What rows of power and energy read, the rest as the option has it."""
    case, option, scale, found = outfit.case, outfit.option, outfit.scale, outfit.power
    against = headwind(case, option, found, scale, asked_winds(case, brief=True))
    key = key_figures(case, option, found, base.legs)
    aged = outfit.store.aged
    assert base.bank is not None
    assert aged is not None
    assert found.as_set is not None
    drawn = np.atleast_2d(draws_current(aged, key.cruise_drain))
    charge = np.asarray(option.bank.charge) if option.bank is not None else 1.0
    return replace(
        base,
        case=case,
        option=option,
        power=found,
        headwind=against,
        holding=holding(outfit, against, ground.yard),
        docking=docking(case, option, found, scale),
        stream=stream(case, option, found, scale),
        store=outfit.store,
        reserve=outfit.reserve,
        key=key,
        bank=replace(
            base.bank, as_set=found.as_set, drive_current=drawn, cruise_current=drawn,
            cruise_rate=drawn / charge, aged=aged,
        ),
    )  # fmt: skip


def _without_limit(case: Case, option: Option, base: Findings) -> tuple[Store, Array]:
    """The bank at the ages of the study, giving whatever is asked; and what it may be asked."""
    new, aged, last = base.store.new, base.store.aged, base.store.last
    assert new is not None
    assert aged is not None
    assert last is not None
    held = store(case, option, (new.condition, aged.condition, last.condition))
    assert held.aged is not None
    told = held.aged.limits
    free = replace(told, bank=WITHOUT_LIMIT, motor=np.full((1, 1), WITHOUT_LIMIT))
    return replace(held, aged=replace(held.aged, limits=free)), told.motor


def _asked(outfit: Outfit, change: Change, count: int, curves: Curves) -> Asked:
    """The passages against an empty store, where each is told at the cheapest speed outside."""
    case = change.applied(outfit.case, count)
    empty = replace(outfit.store, usable_aged=np.zeros((1, 1)))
    own = replace(outfit, case=case, store=empty)
    legs = passages(own, curves)
    return Asked(replace(own, store=outfit.store), legs, passage_needs(own, legs))


def _power(option: Option) -> float:
    assert option.motor is not None
    return scalar(best(option.motor.continuous_power))
